// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/document.h"
#include "window/edited_table.h"

class QPushButton;

namespace underlawn {

// What was read off the gauge since the valve was shut, edited in place, or read from a file. A row that was
// added is blank and counts for nothing until its time and its pressure were typed.
class ReadingsTable : public EditedTable {
  Q_OBJECT

 public:
  explicit ReadingsTable(Document& document, QWidget* parent = nullptr);
  void refresh();
  // A table as readings_from_text takes it: one entry of the history, or what is wrong is said.
  void take_text(const QByteArray& text);
  QPushButton* adding() const { return add_; }
  bool has_blank() const { return blank_.has_value(); }

 private:
  void take(int row, int column) override;
  void enter(std::vector<PressureReading> readings);
  void add_reading();
  void remove_reading();
  void ask_file();

  // What was typed so far into a row that is no reading yet.
  struct Blank {
    std::optional<double> time, pressure, temperature;
  };
  void take_blank(int column);
  bool is_blank(int row) const;

  Document& document_;
  QPushButton *add_, *remove_;
  std::optional<Blank> blank_;
};

}  // namespace underlawn
