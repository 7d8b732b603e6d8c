// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <functional>
#include <vector>

#include "window/document.h"
#include "window/edited_table.h"

namespace underlawn {

// Rows of the plan as a table that is edited in place; each cell that is entered is one entry of the history.
// A number out of its column's bounds is said under the table. What only the whole table can get wrong is
// taken and left for the plan's own troubles, or one row could never be changed before another.
class CellsTable : public EditedTable {
  Q_OBJECT

 public:
  struct Column {
    QString head;
    Quantity quantity = Quantity::count;
    std::function<double(const Plan&, std::size_t)> get;
    std::function<void(Plan&, std::size_t, double)> set;
    double low = 0, high = 0;  // SI
    bool above_low = false;    // must be more than `low`
    bool metric = false;       // in both unit systems: electric power is kW everywhere
    // Words instead of a number, where these are there.
    std::function<std::string(const Plan&, std::size_t)> get_text = {};
    std::function<void(Plan&, std::size_t, std::string)> set_text = {};
  };
  struct Of {
    QString what;  // the entry in the history, and the table's name for readers of screens
    std::vector<Column> columns;
    std::function<std::size_t(const Plan&)> rows;
    QStringList row_names = {};  // where the rows are always the same
    // Where there are none rows cannot be added or removed.
    std::function<void(Plan&)> add = {};
    std::function<void(Plan&, std::size_t)> remove = {};
  };
  CellsTable(Document& document, Of of, QWidget* parent = nullptr);
  void refresh();
  void add_row();
  void remove_row();  // the one the keyboard is in, else the last

 private:
  void build();
  QWidget* make_buttons();
  UnitSystem units(const Column& column) const;
  QString shown(const Column& column, std::size_t row) const;
  void take(int row, int column) override;
  QString enter(const Column& column, std::size_t row, const QString& typed);
  void commit(Plan plan);

  Document& document_;
  Of of_;
};

}  // namespace underlawn
