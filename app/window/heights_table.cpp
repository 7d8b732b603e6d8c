// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/heights_table.h"

#include <QTableWidget>

#include "window/form.h"

namespace underlawn {

namespace {

constexpr int kMostRowsSeen = 12;

double& of(SpotHeight& h, int column) {
  return column == 0 ? h.at.x : column == 1 ? h.at.y : h.height;
}

}  // namespace

HeightsTable::HeightsTable(Document& document, QWidget* parent)
    : EditedTable(tr("Spot heights"), {tr("x"), tr("y"), tr("Height")}, parent), document_(document) {}

void HeightsTable::refresh() {
  filling_ = true;
  std::vector<SpotHeight> all = document_.plan().site.heights;
  table_->setRowCount(static_cast<int>(all.size()));
  for (int row = 0; row < table_->rowCount(); ++row)
    for (int column = 0; column < 3; ++column)
      set_cell(
          row, column,
          QString::fromStdString(print_quantity(
              Quantity::length, of(all[static_cast<std::size_t>(row)], column), document_.plan().units)));
  fit_rows(kMostRowsSeen);
  filling_ = false;
}

void HeightsTable::take(int row, int column) {
  const auto value = parse_quantity(Quantity::length, table_->item(row, column)->text().toStdString(),
                                    document_.plan().units);
  if (!value) return say(QString::fromStdString(value.error().message()));
  Plan plan = document_.committed();
  of(plan.site.heights[static_cast<std::size_t>(row)], column) = *value;
  const QString wrong = new_trouble(document_.committed(), plan);
  say(wrong);
  if (wrong.isEmpty()) document_.commit(std::move(plan), tr("Spot height"));
}

}  // namespace underlawn
