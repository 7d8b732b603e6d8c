// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/edited_table.h"

#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

namespace underlawn {

namespace {

constexpr int kRowHeight = 26;

}  // namespace

EditedTable::EditedTable(const QString& name, const QStringList& heads, QWidget* parent)
    : QWidget(parent), column_(new QVBoxLayout(this)), table_(new QTableWidget), wrong_(new QLabel) {
  column_->setContentsMargins(0, 0, 0, 0);
  column_->addWidget(table_);
  column_->addWidget(wrong_);
  wrong_->setObjectName("wrong");
  wrong_->setWordWrap(true);
  wrong_->hide();
  table_->setObjectName("boxed");
  table_->setAccessibleName(name);
  table_->setTabKeyNavigation(false);  // Tab leaves the table, arrows walk in it
  table_->setColumnCount(static_cast<int>(heads.size()));
  table_->setHorizontalHeaderLabels(heads);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table_->verticalHeader()->setDefaultSectionSize(kRowHeight);
  table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::AnyKeyPressed |
                          QAbstractItemView::EditKeyPressed);
  setFocusProxy(table_);
  connect(table_, &QTableWidget::cellChanged, this, [this](int row, int column) {
    if (!filling_) take(row, column);
  });
}

void EditedTable::set_cell(int row, int column, const QString& text, Qt::Alignment side) {
  QTableWidgetItem* item = table_->item(row, column);
  if (item == nullptr) table_->setItem(row, column, item = new QTableWidgetItem);
  item->setText(text);
  item->setTextAlignment(side | Qt::AlignVCenter);
}

void EditedTable::fit_rows(int most) {
  const int rows = std::clamp(table_->rowCount(), 1, std::max(most, 1));
  table_->setFixedHeight(table_->horizontalHeader()->sizeHint().height() + rows * kRowHeight + 6);
}

QString EditedTable::wrong() const {
  return wrong_->isHidden() ? QString() : wrong_->text();
}

void EditedTable::say(const QString& wrong) {
  wrong_->setText(wrong);
  wrong_->setVisible(!wrong.isEmpty());
}

}  // namespace underlawn
