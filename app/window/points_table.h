// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/document.h"
#include "window/edited_table.h"

namespace underlawn {

// Points as numbers, edited in place: x and y; for the lot line also length and setback of the edge from each
// corner.
class PointsTable : public EditedTable {
  Q_OBJECT

 public:
  struct Of {
    bool lot = false;
    int feature_id = 0;
    bool locked = false;  // feature_id: the trench's place in Wishes::locked
  };
  PointsTable(Document& document, Of of, QWidget* parent = nullptr);
  void refresh();

 private:
  std::vector<Point> points() const;
  void show_cell(int row, int column, double value, bool may_edit);
  void take(int row, int column) override;
  Plan with_setbacks(int row, double value) const;
  Plan with(int row, int column, double value) const;

  Document& document_;
  Of of_;
};

}  // namespace underlawn
