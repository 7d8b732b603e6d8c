// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTimer>
#include <QWidget>

#include "plots/chart_view.h"
#include "window/document.h"

namespace underlawn {

// The charts of temperature_charts.h, kept current while they are seen.
class TemperaturesPanel : public QWidget {
  Q_OBJECT

 public:
  explicit TemperaturesPanel(Document& document, QWidget* parent = nullptr);
  ChartView* water() const { return water_; }
  ChartView* ground() const { return ground_; }
  ChartView* load() const { return load_; }

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void refresh_soon();
  void refresh();

  Document& document_;
  ChartView* water_;
  ChartView* ground_;
  ChartView* load_;
  QTimer soon_;
};

}  // namespace underlawn
