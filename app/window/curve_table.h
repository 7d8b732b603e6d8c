// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/document.h"
#include "window/edited_table.h"

class QPushButton;

namespace underlawn {

// A pump's points as numbers, edited in place; a point more or less by buttons.
class CurveTable : public EditedTable {
  Q_OBJECT

 public:
  // `what` is the entry in the history: "Circulator curve".
  CurveTable(Document& document, Circulator FlowWishes::*pump, QString what, QWidget* parent = nullptr);
  void refresh();

 private:
  void take(int row, int column) override;
  void enter(Plan plan);
  void add_point();
  void remove_point();

  Document& document_;
  Circulator FlowWishes::*pump_;
  QString what_;
  QPushButton *more_, *less_;
};

}  // namespace underlawn
