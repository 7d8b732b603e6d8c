// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/curve_table.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "window/form.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kRowHeight = 26;
constexpr std::size_t kLeastPoints = 3;
constexpr std::size_t kMostPoints = 50;
constexpr int kColumns = 3;

struct Column {
  Quantity quantity;
  double CurvePoint::*value;
  bool electric = false;  // in watts whatever the units
};
constexpr Column kColumn[kColumns] = {{Quantity::flow, &CurvePoint::flow},
                                      {Quantity::head, &CurvePoint::head},
                                      {Quantity::power, &CurvePoint::power, true}};

QString shown(const Column& c, double value, UnitSystem units) {
  return c.electric ? CurveTable::tr("%1 W").arg(std::lround(value))
                    : QString::fromStdString(print_quantity(c.quantity, value, units));
}

Result<double> read(const Column& c, QString typed, UnitSystem units) {
  const bool bare = std::none_of(typed.begin(), typed.end(), [](QChar x) { return x.isLetter(); });
  if (c.electric && bare) typed += " W";
  return parse_quantity(c.quantity, typed.toStdString(), units);
}

}  // namespace

CurveTable::CurveTable(Document& document, Circulator FlowWishes::*pump, QString what, QWidget* parent)
    : QWidget(parent),
      document_(document),
      pump_(pump),
      what_(std::move(what)),
      table_(new QTableWidget),
      more_(new QPushButton(tr("Add a point"))),
      less_(new QPushButton(tr("Remove the point"))),
      wrong_(new QLabel) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(table_);
  column->addWidget(wrong_);
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(2 * kGap);
  buttons->addWidget(more_);
  buttons->addWidget(less_);
  buttons->addStretch(1);
  column->addLayout(buttons);
  wrong_->setObjectName("wrong");
  wrong_->setWordWrap(true);
  wrong_->hide();
  table_->setObjectName("boxed");
  table_->setAccessibleName(what_);
  table_->setTabKeyNavigation(false);  // Tab leaves the table, arrows walk in it
  table_->setColumnCount(kColumns);
  table_->setHorizontalHeaderLabels({tr("Flow"), tr("Head"), tr("Power")});
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table_->verticalHeader()->setDefaultSectionSize(kRowHeight);
  table_->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
  setFocusProxy(table_);
  connect(table_, &QTableWidget::cellChanged, this, &CurveTable::take);
  connect(more_, &QPushButton::clicked, this, &CurveTable::add_point);
  connect(less_, &QPushButton::clicked, this, &CurveTable::remove_point);
}

void CurveTable::show_cell(int row, int column, double value) {
  QTableWidgetItem* item = table_->item(row, column);
  if (item == nullptr) table_->setItem(row, column, item = new QTableWidgetItem);
  item->setText(shown(kColumn[column], value, document_.plan().units));
  item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
}

void CurveTable::refresh() {
  filling_ = true;
  const auto& curve = (document_.plan().flow.*pump_).curve;
  table_->setRowCount(static_cast<int>(curve.size()));
  for (int i = 0; i < table_->rowCount(); ++i)
    for (int c = 0; c < kColumns; ++c) show_cell(i, c, curve[static_cast<std::size_t>(i)].*kColumn[c].value);
  const int rows = std::clamp(table_->rowCount(), 1, 8);
  table_->setFixedHeight(table_->horizontalHeader()->sizeHint().height() + rows * kRowHeight + 4);
  more_->setEnabled(curve.size() < kMostPoints);
  less_->setEnabled(curve.size() > kLeastPoints);
  filling_ = false;
}

void CurveTable::take(int row, int column) {
  if (filling_) return;
  const auto value = read(kColumn[column], table_->item(row, column)->text(), document_.plan().units);
  QString wrong;
  Plan plan = document_.committed();
  if (value) {
    (plan.flow.*pump_).curve[static_cast<std::size_t>(row)].*kColumn[column].value = *value;
    wrong = new_trouble(document_.committed(), plan);
  } else {
    wrong = QString::fromStdString(value.error().message());
  }
  wrong_->setText(wrong);
  wrong_->setVisible(!wrong.isEmpty());
  if (wrong.isEmpty()) enter(std::move(plan));
}

void CurveTable::enter(Plan plan) {
  document_.commit(std::move(plan), what_);
  refresh();
}

// Half-way between this point and the next, or the one before at the end: there the curve is as it was. Where
// there is no curve, a typical one to begin with.
void CurveTable::add_point() {
  Plan plan = document_.committed();
  auto& curve = (plan.flow.*pump_).curve;
  if (curve.size() < 2) {
    plan.flow.*pump_ = FlowWishes{}.*pump_;
    return enter(std::move(plan));
  }
  const int last = static_cast<int>(curve.size()) - 2;
  const auto at = static_cast<std::size_t>(std::clamp(table_->currentRow(), 0, last));
  CurvePoint middle;
  for (const Column& c : kColumn) middle.*c.value = (curve[at].*c.value + curve[at + 1].*c.value) / 2;
  curve.insert(curve.begin() + static_cast<std::ptrdiff_t>(at) + 1, middle);
  enter(std::move(plan));
}

void CurveTable::remove_point() {
  Plan plan = document_.committed();
  auto& curve = (plan.flow.*pump_).curve;
  if (curve.size() <= kLeastPoints) return;
  const int row = table_->currentRow() < 0 ? static_cast<int>(curve.size()) - 1 : table_->currentRow();
  curve.erase(curve.begin() + row);
  enter(std::move(plan));
}

}  // namespace underlawn
