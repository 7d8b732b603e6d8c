// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "window/document.h"

class QTableWidget;
class QLabel;
class QPushButton;

namespace underlawn {

// A pump's points as numbers, edited in place; a point more or less by buttons.
class CurveTable : public QWidget {
  Q_OBJECT

 public:
  // `what` is the entry in the history: "Circulator curve".
  CurveTable(Document& document, Circulator FlowWishes::*pump, QString what, QWidget* parent = nullptr);
  void refresh();
  QTableWidget* table() const { return table_; }

 private:
  void show_cell(int row, int column, double value);
  void take(int row, int column);
  void enter(Plan plan);
  void add_point();
  void remove_point();

  Document& document_;
  Circulator FlowWishes::*pump_;
  QString what_;
  QTableWidget* table_;
  QPushButton *more_, *less_;
  QLabel* wrong_;
  bool filling_ = false;
};

}  // namespace underlawn
