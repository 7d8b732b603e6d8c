// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of numbers: trenches, pipe.
#include <QRegularExpression>
#include <cmath>

#include "cost/bill.h"
#include "cost/print_price.h"
#include "plan/coil_ends.h"
#include "plan/figures/fineness.h"
#include "plan/figures/groups.h"
#include "plan/header_words.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

QString shown_length(const Plan& plan, double metres) {
  // Feet-inches to the half inch; metres to the centimetre.
  const Fineness fineness = plan.units == UnitSystem::us ? Fineness::normal : Fineness::coarse;
  return text_of(print_quantity(Quantity::length, metres, plan.units, fineness));
}

QString shown_pitch(const Plan& plan, double metres) {
  const Fineness fineness = figures::fineness_of_pitch(plan.units);
  return text_of(print_quantity(Quantity::length, metres, plan.units, fineness));
}

namespace {

const QRegularExpression kDigit("[1-9]");

// What the price of a line of the bill is for; null for every other figure.
const Figure* priced(const Outcome& outcome, const std::string& key) {
  constexpr std::string_view kPrice = "price.";
  return key.starts_with(kPrice) ? outcome.figures.find("amount." + key.substr(kPrice.size())) : nullptr;
}

}  // namespace

QString shown(const Plan& plan, const Outcome& outcome, const std::string& key) {
  const Figure* figure = outcome.figures.find(key);
  if (figure == nullptr) return "–";
  if (key.ends_with(".pitch")) return shown_pitch(plan, figure->value);
  if (figure->quantity == Quantity::length) return shown_length(plan, figure->value);
  if (const Figure* amount = priced(outcome, key); amount != nullptr)
    return text_of(print_price(figure->value, amount->quantity, plan.units));
  const Fineness fineness = figures::fineness_of(key, plan.units, Fineness::normal);
  const UnitSystem units = figures::units_of(key, plan.units);
  const QString usual = text_of(print_quantity(figure->quantity, figure->value, units, fineness));
  // Twenty grams are not 0.0 kg.
  return figure->value == 0 || usual.contains(kDigit)
             ? usual
             : text_of(print_quantity(figure->quantity, figure->value, units, Fineness::fine));
}

EndDepths end_depths(const Outcome& outcome, std::size_t trench) {
  if (trench < outcome.dig.floors.size()) {
    const FloorLevel& f = outcome.dig.floors[trench];
    return {f.ground_head - f.floor_head, f.ground_end - f.floor_end};
  }
  const double depth = outcome.layout.trenches[trench].depth;
  return {depth, depth};
}

QString shown_loops(double loops) {
  const long tenths = std::lround(loops * 10);
  return tenths % 10 == 0 ? QString::number(tenths / 10)
                          : QString("%1 + 0.%2").arg(tenths / 10).arg(tenths % 10);
}

QString point_name(const Tie& tie) {
  return text_of(tie.point);
}

namespace {

// What of the table speaks of loops is left out where there are none.
std::vector<Column> trench_columns(bool loops) {
  const Align right = Align::right;
  std::vector<Column> columns{{QObject::tr("No.")},
                              {QObject::tr("Length"), right},
                              {QObject::tr("Floor width"), right},
                              {QObject::tr("Depth at head"), right},
                              {QObject::tr("Depth at end"), right}};
  columns.push_back({loops ? QObject::tr("Coil, whole") : QObject::tr("Pipe"), right});
  columns.push_back({QObject::tr("Cut", "length of a piece of pipe"), right});
  if (loops) columns.insert(columns.end(), {{QObject::tr("Pitch"), right}, {QObject::tr("Loops"), right}});
  columns.insert(columns.end(),
                 {{QObject::tr("Tag both pipe ends"), Align::left}, {QObject::tr("Lies in"), Align::left}});
  return columns;
}

// The legs of every trench that bends, from its head on.
QStringList bend_words(const Plan& plan, const Layout& layout) {
  QStringList words;
  for (const Trench& t : layout.trenches) {
    if (t.bends.empty()) continue;
    const Polyline line = middle_line(t);
    QStringList legs;
    for (std::size_t i = 1; i < line.size(); ++i) legs << shown_length(plan, distance(line[i - 1], line[i]));
    words << QObject::tr("Trench %1 bends, a stake at every bend; from its head %2.")
                 .arg(t.number)
                 .arg(legs.join(", "));
  }
  return words;
}

QString trench_words(const Plan& plan, const Outcome& outcome, bool loops) {
  const QString pipe = text_of(plan.wishes.pipe), lines = text_of(header_and_run_sizes(plan, outcome));
  const QString first =
      loops ? QObject::tr(
                  "Coil pipe %1, loops %2 across, return pipe included in the coil's length. Header and "
                  "supply run %3. S is the supply, R the return end at the trench head.")
                  .arg(pipe, shown(plan, outcome, "coil.loop_diameter"), lines)
            : QObject::tr(
                  "Coil pipe %1, %2, turns included. Header and supply run %3. S is the supply, R the "
                  "return end at the trench head.")
                  .arg(pipe, text_of(std::string(pattern_name(outcome.coil.pattern))), lines);
  const double end = coil_end(plan, outcome.layout, outcome.dig).length();
  QStringList all{first,
                  QObject::tr("Cut in one piece: both ends of %1, from the trench head to the joint, are "
                              "in it.")
                      .arg(shown_length(plan, end))};
  if (loops)
    all << QObject::tr(
        "Loops: whole ones and the part of one more in which the pipe is used up; it runs back from there.");
  return (all + bend_words(plan, outcome.layout)).join(" ");
}

}  // namespace

BlockPtr trench_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return nullptr;
  const bool loops = !is_straight(outcome.coil.pattern);
  std::vector<std::vector<Cell>> rows;
  for (const Trench& t : outcome.layout.trenches) {
    const std::string key = figures::trench_key(t.number);
    std::vector<Cell> row{{QString::number(t.number), std::nullopt, true}};
    const EndDepths depths =
        end_depths(outcome, static_cast<std::size_t>(&t - outcome.layout.trenches.data()));
    for (const char* part : {".length", ".width"}) row.push_back({shown(plan, outcome, key + part)});
    for (const double depth : {depths.head, depths.end}) row.push_back({shown_length(plan, depth)});
    row.push_back({shown(plan, outcome, key + ".coil_length")});
    row.push_back({shown_length(plan, coil_cut(plan, outcome, t.number)), std::nullopt, true});
    if (loops) row.insert(row.end(), {{shown_pitch(plan, t.coil.pitch)}, {shown_loops(t.coil.loops)}});
    row.push_back({QString("%1-S  %1-R").arg(t.number)});
    row.push_back({t.role == TrenchRole::supply ? QObject::tr("supply trench")
                                                : QObject::tr("field", "where a trench lies")});
    rows.push_back(std::move(row));
  }
  return std::make_shared<Table>(loops ? QObject::tr("TRENCHES AND COILS") : QObject::tr("TRENCHES AND PIPE"),
                                 trench_columns(loops), std::move(rows), 10.5,
                                 trench_words(plan, outcome, loops));
}

// "1: coil of trench 1; 2: …": so that no coil is cut from a roll that another needs.
QString rolls_of_coils(const Plan& plan, const Outcome& outcome) {
  QStringList rolls;
  for (const BillLine& line : outcome.bill->lines)
    for (const Roll& roll : line.bought.rolls) {
      if (roll.to_length || line.item.find(plan.wishes.pipe) == std::string::npos) continue;
      QStringList names;
      for (int piece : roll.pieces) names << text_of(line.pieces[static_cast<std::size_t>(piece)]);
      names.removeDuplicates();
      rolls << QString("%1: %2").arg(rolls.size() + 1).arg(names.join(", "));
    }
  return rolls.isEmpty() ? QString() : QObject::tr("Rolls of coil pipe: %1.").arg(rolls.join("; "));
}

// As the bill buys it, size by size; then what is dug for header and run.
BlockPtr pipe_table(const Plan& plan, const Outcome& outcome) {
  std::vector<std::vector<Cell>> rows;
  if (outcome.bill != nullptr)
    for (const BillLine& line : outcome.bill->lines)
      if (line.group == BillGroup::pipe)
        rows.push_back({{text_of(line.item)},
                        {text_of(amount_text(line.unit, line.needed, plan.units))},
                        {text_of(packs_text(line, plan.units))}});
  for (const char* key : {"header.length", "run.length"})
    if (const Figure* f = outcome.figures.find(key))
      rows.push_back({{text_of(f->label)}, {shown(plan, outcome, key)}, {""}});
  if (rows.empty()) return nullptr;
  return std::make_shared<Table>(QObject::tr("PIPE, HEADER AND RUN"),
                                 std::vector<Column>{{"", Align::left, true},
                                                     {QObject::tr("Needed"), Align::right},
                                                     {QObject::tr("To buy"), Align::right, true}},
                                 std::move(rows), 10,
                                 outcome.bill != nullptr ? rolls_of_coils(plan, outcome) : QString());
}

}  // namespace underlawn::sheet
