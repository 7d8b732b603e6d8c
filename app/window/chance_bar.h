// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "plan/sizing/chance.h"

namespace underlawn {

// The share of draws that hold, as a filled bar, with its 95 % interval as a line across it.
class ChanceBar : public QWidget {
  Q_OBJECT

 public:
  explicit ChanceBar(const Chance& chance, QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Chance chance_;
};

}  // namespace underlawn
