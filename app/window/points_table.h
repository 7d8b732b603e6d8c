// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "window/document.h"

class QTableWidget;
class QLabel;

namespace underlawn {

// Points as numbers, edited in place: x and y; for the lot line also length and setback of the edge from each
// corner.
class PointsTable : public QWidget {
  Q_OBJECT

 public:
  struct Of {
    bool lot = false;
    int feature_id = 0;
  };
  PointsTable(Document& document, Of of, QWidget* parent = nullptr);
  void refresh();
  QTableWidget* table() const { return table_; }

 private:
  std::vector<Point> points() const;
  void show_cell(int row, int column, double value, bool may_edit);
  void take(int row, int column);
  Plan with(int row, int column, double value) const;
  void fit_height();

  Document& document_;
  Of of_;
  QTableWidget* table_;
  QLabel* wrong_;
  bool filling_ = false;
};

}  // namespace underlawn
