// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/points_table.h"

#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>

#include "layout/given.h"
#include "plan/edits.h"
#include "window/form.h"

namespace underlawn {

namespace {

enum Column { kX, kY, kLength, kSetback };

constexpr int kMostRows = 400;  // a line traced with thousands of points is edited on the drawing
constexpr int kMostRowsSeen = 10;

}  // namespace

PointsTable::PointsTable(Document& document, Of of, QWidget* parent)
    : EditedTable(
          tr("Points"),
          of.lot ? QStringList{tr("x"), tr("y"), tr("Edge"), tr("Setback")} : QStringList{tr("x"), tr("y")},
          parent),
      document_(document),
      of_(of) {}

std::vector<Point> PointsTable::points() const {
  const Plan& plan = document_.plan();
  if (of_.lot) return lot_ring(plan.site);
  if (of_.locked) {
    const bool there = of_.feature_id < static_cast<int>(plan.wishes.locked.size());
    return there ? line_of(plan.wishes.locked[static_cast<std::size_t>(of_.feature_id)]) : Polyline{};
  }
  const Feature* f = find_feature(plan.site, of_.feature_id);
  return f != nullptr ? f->points : std::vector<Point>{};
}

void PointsTable::show_cell(int row, int column, double value, bool may_edit) {
  set_cell(row, column,
           QString::fromStdString(print_quantity(Quantity::length, value, document_.plan().units)));
  QTableWidgetItem* item = table_->item(row, column);
  item->setFlags(may_edit ? item->flags() | Qt::ItemIsEditable : item->flags() & ~Qt::ItemIsEditable);
}

void PointsTable::refresh() {
  filling_ = true;
  const auto all = points();
  const int rows = std::min<int>(static_cast<int>(all.size()), kMostRows);
  table_->setRowCount(rows);
  for (int i = 0; i < rows; ++i) {
    const auto at = static_cast<std::size_t>(i);
    show_cell(i, kX, all[at].x, true);
    show_cell(i, kY, all[at].y, true);
    if (!of_.lot) continue;
    show_cell(i, kLength, distance(all[at], all[(at + 1) % all.size()]), false);
    show_cell(i, kSetback, document_.plan().site.lot[at].setback, true);
  }
  fit_rows(kMostRowsSeen);
  filling_ = false;
}

// What is typed for one edge is that of every edge whose setback is selected with it.
Plan PointsTable::with_setbacks(int row, double value) const {
  Plan plan = edit::with_setback(document_.committed(), row, value);
  if (!table_->item(row, kSetback)->isSelected()) return plan;
  for (int i = 0; i < table_->rowCount(); ++i)
    if (table_->item(i, kSetback)->isSelected()) plan = edit::with_setback(std::move(plan), i, value);
  return plan;
}

Plan PointsTable::with(int row, int column, double value) const {
  const Plan& plan = document_.committed();
  if (column == kSetback) return with_setbacks(row, value);
  const auto kind = of_.lot      ? edit::Handle::Kind::lot_corner
                    : of_.locked ? edit::Handle::Kind::locked_point
                                 : edit::Handle::Kind::feature_point;
  const edit::Handle handle{kind, of_.feature_id, row};
  auto at = edit::handle_position(plan, handle);
  if (!at) return plan;
  (column == kX ? at->x : at->y) = value;
  return edit::moved_handle(plan, handle, *at);
}

void PointsTable::take(int row, int column) {
  const auto value = parse_quantity(Quantity::length, table_->item(row, column)->text().toStdString(),
                                    document_.plan().units);
  QString wrong;
  if (!value) {
    wrong = QString::fromStdString(value.error().message());
  } else {
    Plan plan = with(row, column, *value);
    wrong = new_trouble(document_.committed(), plan);
    if (wrong.isEmpty()) document_.commit(std::move(plan), column == kSetback ? tr("Setback") : tr("Point"));
  }
  say(wrong);
  if (wrong.isEmpty()) refresh();
}

}  // namespace underlawn
