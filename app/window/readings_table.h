// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/document.h"
#include "window/edited_table.h"

class QPushButton;

namespace underlawn {

// What was read off the gauge since the valve was shut, edited in place, or read from a file.
class ReadingsTable : public EditedTable {
  Q_OBJECT

 public:
  explicit ReadingsTable(Document& document, QWidget* parent = nullptr);
  void refresh();
  // A table as readings_from_text takes it: one entry of the history, or what is wrong is said.
  void take_text(const QByteArray& text);

 private:
  void take(int row, int column) override;
  void enter(std::vector<PressureReading> readings);
  void add_reading();
  void remove_reading();
  void ask_file();

  Document& document_;
  QPushButton* remove_;
};

}  // namespace underlawn
