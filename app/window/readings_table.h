// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "window/document.h"

class QTableWidget;
class QLabel;
class QPushButton;

namespace underlawn {

// What was read off the gauge since the valve was shut, edited in place, or read from a file.
class ReadingsTable : public QWidget {
  Q_OBJECT

 public:
  explicit ReadingsTable(Document& document, QWidget* parent = nullptr);
  void refresh();
  // A table as readings_from_text takes it: one entry of the history, or what is wrong is said.
  void take_text(const QByteArray& text);
  QTableWidget* table() const { return table_; }

 private:
  void take(int row, int column);
  void enter(std::vector<PressureReading> readings);
  void add_reading();
  void remove_reading();
  void ask_file();
  void say(const QString& wrong);

  Document& document_;
  QTableWidget* table_;
  QPushButton* remove_;
  QLabel* wrong_;
  bool filling_ = false;
};

}  // namespace underlawn
