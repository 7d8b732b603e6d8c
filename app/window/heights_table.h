// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/document.h"
#include "window/edited_table.h"

namespace underlawn {

// All spot heights as numbers, edited in place: x, y and height.
class HeightsTable : public EditedTable {
  Q_OBJECT

 public:
  explicit HeightsTable(Document& document, QWidget* parent = nullptr);
  void refresh();

 private:
  void take(int row, int column) override;

  Document& document_;
};

}  // namespace underlawn
