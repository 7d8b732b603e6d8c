// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "base/quantity.h"
#include "plots/heat_colours.h"

namespace underlawn {

// The colours as a bar, with temperatures under it.
class HeatLegend : public QWidget {
  Q_OBJECT

 public:
  explicit HeatLegend(QWidget* parent = nullptr);
  void set_scale(const HeatScale& scale, UnitSystem units);
  QSize sizeHint() const override { return {210, 34}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  HeatScale scale_;
  UnitSystem units_ = UnitSystem::metric;
};

}  // namespace underlawn
