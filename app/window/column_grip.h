// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

namespace underlawn {

// Left edge of a column of fixed width, to drag it wider; a double click makes it as it was. The width is
// remembered from one day to the next.
class ColumnGrip : public QWidget {
  Q_OBJECT

 public:
  ColumnGrip(QWidget& column, int least, int most);

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void take(int width);

  QWidget& column_;
  int least_, most_;
  int from_ = 0, width_ = 0;  // of the drag: where it began, and the column then
};

}  // namespace underlawn
