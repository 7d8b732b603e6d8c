// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/materials_tables.h"

#include "cost/estimate.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

QString amount(const Plan& plan, double value) {
  return text_of(print_quantity(Quantity::money, value, plan.units));
}

}  // namespace

BlockPtr estimate_table(const Plan& plan, const Outcome& outcome) {
  const bool sloped = plan.dig.coil_sides == Sides::slope;
  const Estimate& estimate = sloped ? outcome.cost.sloped : outcome.cost.vertical;
  if (estimate.lines.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (const CostLine& line : estimate.lines) {
    if (line.amount == 0) continue;
    rows.push_back({{text_of(line.thing)},
                    {text_of(print_quantity(line.quantity, line.amount, plan.units))},
                    {text_of(print_price(line.price, line.quantity, plan.units))},
                    {amount(plan, line.sum)}});
  }
  rows.push_back({{"In all, " + text_of(plan.wishes.prices.currency), std::nullopt, true},
                  {""},
                  {""},
                  {amount(plan, estimate.total), std::nullopt, true}});
  return std::make_shared<Table>(
      "WHAT IT TAKES AND COSTS",
      std::vector<Column>{
          {"", Align::left, true}, {"Amount", Align::right}, {"Price", Align::right}, {"Sum", Align::right}},
      std::move(rows), 10.5,
      QString("Trench sides %1. Prices are the designer's own; amounts follow from the drawing.")
          .arg(sloped ? "laid back at the protective slope" : "upright"));
}

BlockPtr pieces_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (const Trench& t : outcome.layout.trenches)
    rows.push_back({{QString("%1-S, %1-R").arg(t.number), std::nullopt, true},
                    {text_of(plan.wishes.pipe)},
                    {shown_length(plan, t.coil.coil_length)},
                    {QString("coil of trench %1, one piece").arg(t.number)}});
  return std::make_shared<Table>(
      "COILS, ONE PIECE EACH",
      std::vector<Column>{
          {"Tag"}, {"Pipe", Align::left}, {"Length", Align::right}, {"For", Align::left, true}},
      std::move(rows), 10.5);
}

}  // namespace underlawn::sheet
