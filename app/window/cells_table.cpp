// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/cells_table.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "window/theme.h"

namespace underlawn {

namespace {

QStringList heads_of(const CellsTable::Of& of) {
  QStringList heads;
  for (const CellsTable::Column& c : of.columns) heads << c.head;
  return heads;
}

bool in_bounds(const CellsTable::Column& c, double v) {
  return v <= c.high && (c.above_low ? v > c.low : v >= c.low);
}

}  // namespace

CellsTable::CellsTable(Document& document, Of of, QWidget* parent)
    : EditedTable(of.what, heads_of(of), parent), document_(document), of_(std::move(of)) {
  build();
}

void CellsTable::build() {
  column_->setSpacing(kGap);
  if (of_.add) column_->addWidget(make_buttons());
  if (of_.columns[0].get_text)  // words are cut short before numbers are
    for (int c = 1; c < table_->columnCount(); ++c)
      table_->horizontalHeader()->setSectionResizeMode(c, QHeaderView::ResizeToContents);
  table_->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  table_->verticalHeader()->setVisible(!of_.row_names.isEmpty());
  table_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

QWidget* CellsTable::make_buttons() {
  auto* buttons = new QWidget;
  auto* row = new QHBoxLayout(buttons);
  row->setContentsMargins(0, 0, 0, 0);
  auto* add = new QPushButton(tr("Add a row"));
  auto* remove = new QPushButton(tr("Remove the row"));
  add->setAccessibleName(tr("Add a row: %1").arg(of_.what));
  remove->setAccessibleName(tr("Remove the row: %1").arg(of_.what));
  for (QPushButton* button : {add, remove}) {
    button->setObjectName("plain");
    row->addWidget(button);
  }
  row->addStretch(1);
  connect(add, &QPushButton::clicked, this, &CellsTable::add_row);
  connect(remove, &QPushButton::clicked, this, &CellsTable::remove_row);
  return buttons;
}

UnitSystem CellsTable::units(const Column& column) const {
  return column.metric ? UnitSystem::metric : document_.plan().units;
}

QString CellsTable::shown(const Column& column, std::size_t row) const {
  const Plan& plan = document_.plan();
  return QString::fromStdString(column.get_text
                                    ? column.get_text(plan, row)
                                    : print_quantity(column.quantity, column.get(plan, row), units(column)));
}

void CellsTable::refresh() {
  filling_ = true;
  const std::size_t rows = of_.rows(document_.plan());
  table_->setRowCount(static_cast<int>(rows));
  if (!of_.row_names.isEmpty()) table_->setVerticalHeaderLabels(of_.row_names);
  for (std::size_t r = 0; r < rows; ++r)
    for (std::size_t c = 0; c < of_.columns.size(); ++c) {
      const int y = static_cast<int>(r), x = static_cast<int>(c);
      set_cell(y, x, shown(of_.columns[c], r), of_.columns[c].get_text ? Qt::AlignLeft : Qt::AlignRight);
      table_->item(y, x)->setToolTip(table_->item(y, x)->text());
    }
  fit_rows(static_cast<int>(rows));
  say({});
  filling_ = false;
}

void CellsTable::commit(Plan plan) {
  document_.commit(std::move(plan), of_.what);
  refresh();
}

void CellsTable::add_row() {
  Plan plan = document_.committed();
  of_.add(plan);
  commit(std::move(plan));
}

void CellsTable::remove_row() {
  Plan plan = document_.committed();
  const std::size_t rows = of_.rows(plan);
  if (rows == 0) return;
  const int at = table_->currentRow();
  of_.remove(plan, at >= 0 && static_cast<std::size_t>(at) < rows ? static_cast<std::size_t>(at) : rows - 1);
  commit(std::move(plan));
}

QString CellsTable::enter(const Column& column, std::size_t row, const QString& typed) {
  Plan plan = document_.committed();
  if (row >= of_.rows(plan)) return {};
  if (column.set_text) {
    column.set_text(plan, row, typed.simplified().toStdString());
    commit(std::move(plan));
    return {};
  }
  const auto value = parse_quantity(column.quantity, typed.toStdString(), units(column));
  if (!value) return QString::fromStdString(value.error().message());
  const auto print = [&](double v) {
    return QString::fromStdString(print_quantity(column.quantity, v, units(column)));
  };
  if (!in_bounds(column, *value))
    return (column.above_low ? tr("%1 is %2; it must be more than %3 and at most %4.")
                             : tr("%1 is %2; it must be from %3 to %4."))
        .arg(column.head, print(*value), print(column.low), print(column.high));
  column.set(plan, row, *value);
  commit(std::move(plan));
  return {};
}

void CellsTable::take(int row, int column) {
  const Column& c = of_.columns[static_cast<std::size_t>(column)];
  const QString typed = table_->item(row, column)->text();
  const bool as_it_was = typed == shown(c, static_cast<std::size_t>(row));
  say(as_it_was ? QString() : enter(c, static_cast<std::size_t>(row), typed));
}

}  // namespace underlawn
