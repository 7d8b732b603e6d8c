// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/curve_table.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "window/form.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kMostRowsSeen = 8;
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
    : EditedTable(what, {tr("Flow"), tr("Head"), tr("Power")}, parent),
      document_(document),
      pump_(pump),
      what_(std::move(what)),
      more_(new QPushButton(tr("Add a point"))),
      less_(new QPushButton(tr("Remove the point"))) {
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(2 * kGap);
  buttons->addWidget(more_);
  buttons->addWidget(less_);
  buttons->addStretch(1);
  column_->addLayout(buttons);
  connect(more_, &QPushButton::clicked, this, &CurveTable::add_point);
  connect(less_, &QPushButton::clicked, this, &CurveTable::remove_point);
}

void CurveTable::refresh() {
  filling_ = true;
  const auto& curve = (document_.plan().flow.*pump_).curve;
  table_->setRowCount(static_cast<int>(curve.size()));
  for (int i = 0; i < table_->rowCount(); ++i)
    for (int c = 0; c < kColumns; ++c)
      set_cell(
          i, c,
          shown(kColumn[c], curve[static_cast<std::size_t>(i)].*kColumn[c].value, document_.plan().units));
  fit_rows(kMostRowsSeen);
  more_->setEnabled(curve.size() < kMostPoints);
  less_->setEnabled(curve.size() > kLeastPoints);
  filling_ = false;
}

void CurveTable::take(int row, int column) {
  const auto value = read(kColumn[column], table_->item(row, column)->text(), document_.plan().units);
  QString wrong;
  Plan plan = document_.committed();
  if (value) {
    (plan.flow.*pump_).curve[static_cast<std::size_t>(row)].*kColumn[column].value = *value;
    wrong = new_trouble(document_.committed(), plan);
  } else {
    wrong = QString::fromStdString(value.error().message());
  }
  say(wrong);
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
