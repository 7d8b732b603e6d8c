// SPDX-License-Identifier: GPL-3.0-or-later
// What tables whose cells are edited in place share: their looks, their height, and a line for what is wrong.
#pragma once

#include <QStringList>
#include <QWidget>

class QLabel;
class QTableWidget;
class QVBoxLayout;

namespace underlawn {

class EditedTable : public QWidget {
  Q_OBJECT

 public:
  QTableWidget* table() const { return table_; }
  QString wrong() const;  // what is wrong with the cell entered last; empty when nothing

 protected:
  // `name`: the table's, for readers of screens.
  EditedTable(const QString& name, const QStringList& heads, QWidget* parent);

  // A cell was typed; not called while the table is filled.
  virtual void take(int row, int column) = 0;

  void set_cell(int row, int column, const QString& text, Qt::Alignment side = Qt::AlignRight);
  void fit_rows(int most);  // as high as its rows, at least one and at most so many
  void say(const QString& wrong);

  QVBoxLayout* column_;
  QTableWidget* table_;
  bool filling_ = false;

 private:
  QLabel* wrong_;
};

}  // namespace underlawn
