// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <string>
#include <vector>

#include "cost/price_book.h"
#include "window/document.h"
#include "window/edited_table.h"

namespace underlawn {

// The price book, edited in place; each cell that is entered is one entry of the history. A price is for the
// unit shown with it; what is sold together is several numbers with / between; an emptied price is not known.
// Prices nobody changed are pale. Under an item whose rolls have prices of their own, or whose rolls were
// asked for, is a line for each roll.
class PriceTable : public EditedTable {
  Q_OBJECT

 public:
  enum class Show { on_bill, changed, all };

  explicit PriceTable(Document& document, QWidget* parent = nullptr);
  void refresh();
  void show_only(Show show);
  Show showing() const { return show_; }
  void reset_current();  // the row the keyboard is in becomes as usual; an item of one's own goes
  void add_item();
  void show_rolls();  // of the row the keyboard is in: a line for each, or none again
  const std::vector<PriceRow>& rows() const { return rows_; }  // by line: the same for the lines of its rolls
  int roll_of(int line) const {
    return rolls_[static_cast<std::size_t>(line)];
  }  // place in packs; -1: the item

 private:
  enum Column { item, sold_by, price, date, columns };
  void take(int row, int column) override;
  QString enter(PriceRow& row, int column, const QString& typed) const;
  QString cell(const PriceRow& row, int column) const;
  QString roll_cell(const PriceRow& row, int roll, int column) const;
  QString enter_roll(PriceRow& row, int roll, const QString& typed) const;
  QString price_text(const PriceRow& row, double each) const;
  void add_lines(PriceRow row);
  void show_line(int line);
  void show_whole_item(int line);
  bool wanted(const PriceRow& row) const;
  void commit(PriceRow row);
  UnitSystem units() const { return document_.plan().units; }

  Document& document_;
  Show show_ = Show::on_bill;
  std::vector<PriceRow> rows_;  // as shown, by line
  std::vector<int> rolls_;      // likewise
  std::set<std::string> open_;  // keys of items whose rolls were asked for
};

}  // namespace underlawn
