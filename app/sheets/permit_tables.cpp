// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/permit_tables.h"

#include "base/say.h"
#include "canvas/bearing.h"
#include "pipe/fluid.h"
#include "plan/checks/measure.h"
#include "plan/header_words.h"
#include "plane/region.h"
#include "sheets/contents.h"
#include "site/clearances.h"

namespace underlawn::sheet {

namespace {

QString capital(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

// "(a)", "(b)", ... "(27)".
QString letter(std::ptrdiff_t index) {
  return index < 26 ? QString("(%1)").arg(QChar('a' + static_cast<int>(index)))
                    : QString("(%1)").arg(index + 1);
}

}  // namespace

bool is_dimensioned(const Plan& plan, const Clearing& c) {
  if (!c.coil || distance(c.line.a, c.line.b) < 0.3) return false;
  const bool near = c.measured <= 4 * c.required;
  if (c.feature_id == 0) return near;
  const Feature* f = find_feature(plan.site, c.feature_id);
  if (f == nullptr) return false;
  switch (f->kind) {
    case FeatureKind::septic_tank:
    case FeatureKind::drain_field:
    case FeatureKind::reserve_field:
    case FeatureKind::well:
    case FeatureKind::easement:
      return true;
    case FeatureKind::house:
      return near;
    default:
      return false;
  }
}

BlockPtr clearing_table(const Plan& plan, const std::vector<Clearing>& all) {
  if (all.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  std::vector<std::string> sources;  // each once, told under the table by its letter
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Clearing& c = all[i];
    const bool kept = !falls_short(c.measured, c.required);
    if (std::ranges::find(sources, c.source) == sources.end()) sources.push_back(c.source);
    const auto source = std::ranges::find(sources, c.source) - sources.begin();
    rows.push_back({{QString("D%1").arg(i + 1), std::nullopt, is_dimensioned(plan, c)},
                    {text_of(c.dug) + " – " + text_of(c.thing)},
                    {shown_length(plan, c.measured), std::nullopt, true},
                    {shown_length(plan, c.required)},
                    {kept ? QObject::tr("kept", "a clearance") : QObject::tr("SHORT", "a clearance"),
                     std::nullopt, !kept},
                    {letter(source)}});
  }
  const QString note = QObject::tr(
      "Measured from the edge of the trench floor to the thing as drawn: of each thing the nearest coil "
      "trench, "
      "and the nearest of header and run where they may not cross it. Numbers in bold are drawn on the "
      "first page. Local codes govern where they ask for more. By: %1");
  QStringList by;
  for (std::size_t i = 0; i < sources.size(); ++i)
    by << QString("%1 %2.").arg(letter(static_cast<std::ptrdiff_t>(i)), text_of(sources[i]));
  return std::make_shared<Table>(QObject::tr("CLEARANCES"),
                                 std::vector<Column>{{QObject::tr("No.")},
                                                     {QObject::tr("Shortest distance"), Align::left, true},
                                                     {QObject::tr("Is", "a distance"), Align::right},
                                                     {QObject::tr("Asked"), Align::right},
                                                     {"", Align::left},
                                                     {QObject::tr("By", "a source"), Align::left}},
                                 std::move(rows), 9, note.arg(by.join(" ")));
}

BlockPtr loop_table(const Plan& plan, const Outcome& outcome) {
  std::vector<std::vector<Cell>> rows;
  const auto row = [&](const QString& name, const QString& value) { rows.push_back({{name}, {value}}); };
  row(QObject::tr("Kind"), QObject::tr("closed loop, %1 in trenches")
                               .arg(text_of(std::string(pattern_name(outcome.coil.pattern)))));
  for (const auto& [name, key] :
       {std::pair(QObject::tr("Circuits"), "layout.circuits_placed"),
        std::pair(QObject::tr("Trench depth"), "dig.trench_depth"),
        std::pair(QObject::tr("Depth of header and run"), "dig.run_depth"),
        std::pair(QObject::tr("Pipe in all"), "buy.counted_pipe"),
        std::pair(QObject::tr("Liquid in the loop"), "flow.volume"),
        std::pair(QObject::tr("Antifreeze by volume"), "flow.volume_fraction"),
        std::pair(QObject::tr("Freezing point"), "flow.freezing_point"),
        std::pair(QObject::tr("Dug, with the sides chosen"), "dig.total.bank_volume"),
        std::pair(QObject::tr("Lawn torn up"), "layout.lawn")})
    if (outcome.figures.find(key) != nullptr) row(name, shown(plan, outcome, key));
  row(QObject::tr("Coil pipe"), QObject::tr("%1 polyethylene").arg(text_of(plan.wishes.pipe)));
  row(QObject::tr("Header and run"),
      QObject::tr("%1 polyethylene").arg(text_of(header_and_run_sizes(plan, outcome))));
  row(QObject::tr("Fluid"), text_of(std::string(fluid_name(plan.flow.fluid))));
  return std::make_shared<Table>(QObject::tr("THE LOOP"),
                                 std::vector<Column>{{"", Align::left, true}, {"", Align::right, true}},
                                 std::move(rows), 9.5);
}

BlockPtr lot_table(const Plan& plan) {
  const Ring lot = lot_ring(plan.site);
  if (lot.size() < 3) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (std::size_t i = 0; i < lot.size(); ++i) {
    const Point along = lot[(i + 1) % lot.size()] - lot[i];
    rows.push_back({{QString::number(i + 1), std::nullopt, true},
                    {shown_length(plan, norm(along))},
                    {quarter_bearing(along, plan.site.north)},
                    {shown_length(plan, plan.site.lot[i].setback)}});
  }
  rows.push_back(
      {{QObject::tr("Area")}, {text_of(print_quantity(Quantity::area, area(lot), plan.units))}, {""}, {""}});
  return std::make_shared<Table>(QObject::tr("THE LOT"),
                                 std::vector<Column>{{QObject::tr("Edge")},
                                                     {QObject::tr("Length"), Align::right},
                                                     {QObject::tr("Bearing"), Align::right},
                                                     {QObject::tr("Setback"), Align::right}},
                                 std::move(rows), 9.5);
}

BlockPtr elsewhere_table(const Plan& plan) {
  std::vector<std::vector<Cell>> rows;
  for (int kind = 0; kind < kFeatureKinds; ++kind) {
    const auto k = static_cast<FeatureKind>(kind);
    const bool there = std::ranges::any_of(plan.site.features, [&](const Feature& f) { return f.kind == k; });
    if (!there) continue;
    for (const PublishedClearance& other : clearance_default(k).others)
      rows.push_back({{capital(text_of(std::string(kind_name(k))))},
                      {shown_length(plan, other.distance)},
                      {text_of(translated(other.source))}});
  }
  if (rows.empty()) return nullptr;
  return std::make_shared<Table>(
      QObject::tr("ASKED ELSEWHERE"),
      std::vector<Column>{{QObject::tr("To", "a thing")},
                          {QObject::tr("Distance"), Align::right},
                          {QObject::tr("Published in"), Align::left, true}},
      std::move(rows), 9,
      QObject::tr("For comparison only: most of these are written for bored loops, and none holds "
                  "here unless it is this place's own."));
}

BlockPtr permit_notes(const Plan& plan, const Outcome& outcome) {
  const QString slope = shown(plan, outcome, "dig.slope");
  std::vector<Item> items{
      {"1", "",
       QObject::tr("Lot line, buildings and what is buried are as given to the designer. This drawing is no "
                   "survey.")},
      {"2", "",
       QObject::tr("Local codes and the authority that grants the permit govern. Work that asks for a "
                   "licence is left to "
                   "those who hold it.")},
      {"3", "",
       QObject::tr(
           "Closed loop: the fluid stays in the pipe. Nothing is pumped from or let into the ground.")},
      {"4", "",
       QObject::tr("Loop pressure-tested with water, never with air, before any joint is covered (ASTM "
                   "F2164); record "
                   "handed over.")},
      {"5", "",
       QObject::tr("Utility locating service called before digging; tolerance zones dug by hand; private "
                   "lines found by "
                   "the owner or a locator.")},
      {"6", "",
       QObject::tr("Trenches entered only with a protective system where 29 CFR 1926 Subpart P asks for one; "
                   "this plan reckons with a slope of %1.")
           .arg(slope)},
      {"7", "",
       QObject::tr("Ends of pipe capped until joined. Warning tape over every trench. Surface made good and "
                   "seeded.")},
      {"8", "", QObject::tr("As-built ties are taken before covering and kept with the house.")}};
  return std::make_shared<Items>(QObject::tr("NOTES"), std::move(items), 9.5, 2);
}

}  // namespace underlawn::sheet
