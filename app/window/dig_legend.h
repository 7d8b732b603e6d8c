// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "sheets/signs.h"
#include "window/document.h"

class QAction;

namespace underlawn {

class Canvas;

// What the lines of the order of digging mean, as on its sheet: a paper card in the lower left corner of the
// drawing while they are shown. Clicks go through it.
class DigLegend : public QWidget {
  Q_OBJECT

 public:
  DigLegend(Document& document, Canvas& canvas, QAction& shown);
  int signs() const { return static_cast<int>(signs_.size()); }

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void follow();
  void place();

  Document& document_;
  Canvas& canvas_;
  QAction& shown_;
  std::vector<sheet::Sign> signs_;
};

}  // namespace underlawn
