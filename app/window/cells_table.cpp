// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/cells_table.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kRowHeight = 26;

bool in_bounds(const CellsTable::Column& c, double v) {
  return v <= c.high && (c.above_low ? v > c.low : v >= c.low);
}

}  // namespace

CellsTable::CellsTable(Document& document, Of of, QWidget* parent)
    : QWidget(parent), document_(document), of_(std::move(of)), table_(new QTableWidget), wrong_(new QLabel) {
  build();
  connect(table_, &QTableWidget::cellChanged, this, &CellsTable::take);
}

void CellsTable::build() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(kGap);
  column->addWidget(table_);
  column->addWidget(wrong_);
  if (of_.add) column->addWidget(make_buttons());
  wrong_->setObjectName("wrong");
  wrong_->setWordWrap(true);
  wrong_->hide();
  QStringList heads;
  for (const Column& c : of_.columns) heads << c.head;
  table_->setObjectName("boxed");
  table_->setAccessibleName(of_.what);
  table_->setTabKeyNavigation(false);  // Tab leaves the table, arrows walk in it
  table_->setColumnCount(static_cast<int>(heads.size()));
  table_->setHorizontalHeaderLabels(heads);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  if (of_.columns[0].get_text)  // words are cut short before numbers are
    for (int c = 1; c < table_->columnCount(); ++c)
      table_->horizontalHeader()->setSectionResizeMode(c, QHeaderView::ResizeToContents);
  table_->verticalHeader()->setDefaultSectionSize(kRowHeight);
  table_->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  table_->verticalHeader()->setVisible(!of_.row_names.isEmpty());
  table_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::AnyKeyPressed |
                          QAbstractItemView::EditKeyPressed);
  setFocusProxy(table_);
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
      QTableWidgetItem* item = table_->item(y, x);
      if (item == nullptr) table_->setItem(y, x, item = new QTableWidgetItem);
      item->setText(shown(of_.columns[c], r));
      item->setToolTip(item->text());
      item->setTextAlignment((of_.columns[c].get_text ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }
  const int shown_rows = std::max(static_cast<int>(rows), 1);
  table_->setFixedHeight(table_->horizontalHeader()->sizeHint().height() + shown_rows * kRowHeight + 4);
  wrong_->hide();
  filling_ = false;
}

QString CellsTable::wrong() const {
  return wrong_->isHidden() ? QString() : wrong_->text();
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
  if (filling_) return;
  const Column& c = of_.columns[static_cast<std::size_t>(column)];
  const QString typed = table_->item(row, column)->text();
  if (typed == shown(c, static_cast<std::size_t>(row))) return;  // opened and left as it was
  const QString wrong = enter(c, static_cast<std::size_t>(row), typed);
  wrong_->setText(wrong);
  wrong_->setVisible(!wrong.isEmpty());
}

}  // namespace underlawn
