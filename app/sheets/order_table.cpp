// SPDX-License-Identifier: GPL-3.0-or-later
// The order of digging as a table of one row a step, in one place; the earth, step by step.
#include <algorithm>

#include "dig/cut_once.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "layout/crossing_tags.h"
#include "plan/figures/groups.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

QString sides_of(const DigStep& step) {
  switch (step.sides) {
    case Sides::stay_out:
      return QObject::tr("vertical, nobody goes in");
    case Sides::slope:
      return QObject::tr("laid back %1 : 1").arg(step.slope);
    case Sides::shield:
      return QObject::tr("people only in the shield");
    case Sides::shoring:
      return QObject::tr("shored before anybody goes in");
  }
  return {};
}

QString spoil_of(const Plan& plan, const DigStep& step) {
  if (step.hauled)
    return QObject::tr("trucked off, %1 loose")
        .arg(text_of(print_quantity(Quantity::volume, step.work.loose, plan.units)));
  const Point along = unit(step.line.back() - step.line.front());
  const Point out = (step.spoil_left ? 1.0 : -1.0) * left_normal(along);
  const QString side = text_of(compass_word(plan.site, out));
  return step.into.empty() ? QObject::tr("to the %1", "side of a trench").arg(side)
                           : QObject::tr("to the %1, into %2", "side of a trench")
                                 .arg(side, text_of(trenches_named(step.into)));
}

// Long x wide x high; a heap in two parts has two lengths.
QString heap_of(const Plan& plan, const DigStep& step) {
  if (step.hauled) return "–";
  QStringList lengths;
  const auto whole = [&](double metres) {
    return text_of(print_quantity(Quantity::length, metres, plan.units, Fineness::coarse));
  };
  for (const Ring& part : step.spoil) lengths << whole(distance(part[0], part[1]));
  QString all = QString(lengths.size() > 1 ? "(%1) × %2 × %3" : "%1 × %2 × %3")
                    .arg(lengths.join(" + "), whole(step.heap.width), whole(step.heap.height));
  // Metres are said once: the column is narrow.
  if (plan.units == UnitSystem::metric) all = all.remove(" m") + " m";
  return all;
}

QString exposed_first(const Plan& plan, const Outcome& outcome, const DigStep& step) {
  QStringList names;
  for (int i : step.crossings) {
    const std::string tag = crossing_tag(plan.site, outcome.layout, static_cast<std::size_t>(i));
    const Crossing& x = outcome.layout.crossings[static_cast<std::size_t>(i)];
    if (!tag.empty()) names << QObject::tr("%1 (we pass %2)").arg(text_of(tag), passing_word(plan, x));
  }
  return names.isEmpty() ? QString() : QObject::tr("Expose %1 by hand.").arg(names.join(", "));
}

QString first_of(const Plan& plan, const Outcome& outcome, const DigStep& step) {
  QStringList all;
  if (const QString crossed = exposed_first(plan, outcome, step); !crossed.isEmpty()) all << crossed;
  if (run_comes_over(step.work))
    all << QObject::tr(
               "Stays open: coil bedded, under pressure, filled to %1 deep; then the run's pipes, %2.")
               .arg(shown(plan, outcome, figures::trench_key(step.trench) + ".run_floor"),
                    step.sides == Sides::stay_out
                        ? QObject::tr("let down and bedded from the edge, nobody in the trench")
                        : QObject::tr("laid and bedded"));
  const QString uncast = text_of(print_quantity(Quantity::length, head_uncast(step.depth, plan.ground.repose),
                                                plan.units, Fineness::coarse));
  if (!step.into.empty())
    all << QObject::tr(
               "Coil of %1 laid, bedded, under pressure; fill it with this spoil, from its end up to %2 from "
               "its "
               "head.")
               .arg(text_of(trenches_named(step.into)), uncast);
  if (!step.filled_first.empty())
    all << QObject::tr(
               "Coil of %1 under pressure; fill it with its own heap, from its end up to %2 from its head.")
               .arg(text_of(trenches_named(step.filled_first)), uncast);
  if (!step.no_room.empty()) all << QObject::tr("Truck there: no room for the heap.");
  if (step.hauled && outcome.order->access && step.truck_way.empty() && step.fill_way.empty())
    all << QObject::tr("NO WAY FOR THE TRUCK: ask the designer.");
  if (!step.reached) all << QObject::tr("NO WAY FOR THE MACHINE: ask the designer.");
  return all.isEmpty() ? "–" : all.join(" ");
}

std::vector<Cell> row_of(const Plan& plan, const Outcome& outcome, const DigStep& step, int number) {
  return {{text_of(step_numeral(number)), std::nullopt, true},
          {text_of(step_name(step)), std::nullopt, true},
          {text_of(way_of_digging(step))},
          {spoil_of(plan, step)},
          {heap_of(plan, step)},
          {sides_of(step)},
          {first_of(plan, outcome, step)}};
}

}  // namespace

BlockPtr order_of_digging(const Plan& plan, const Outcome& outcome) {
  if (outcome.order == nullptr || outcome.order->steps.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (const DigStep& step : outcome.order->steps)
    rows.push_back(row_of(plan, outcome, step, static_cast<int>(rows.size()) + 1));
  QString note = QObject::tr(
                     "Spoil begins %1 from the edge; a heap is given long × wide × high. The machine backs "
                     "the way it digs.")
                     .arg(shown_length(plan, plan.dig.spoil_off));
  if (std::ranges::any_of(outcome.order->steps, [](const DigStep& s) { return !s.into.empty(); }))
    note +=
        " " + QObject::tr(
                  "A heap into a trench is given as it would lie were none of it filled in yet: it is not "
                  "there a second time. Cast nearer to a head, loose earth runs down its slope into the %1 "
                  "of floor that stay free for the joints.")
                  .arg(shown_length(plan, kHeadOpen));
  if (const QString watch = coil_watch_words(plan, outcome); !watch.isEmpty())
    note += " " + QObject::tr("Under pressure: %1, see COILS COVERED BEFORE THE TEST.").arg(watch);
  auto table = std::make_shared<Table>(QObject::tr("ORDER OF DIGGING"),
                                       std::vector<Column>{{QObject::tr("No.")},
                                                           {QObject::tr("Dig"), Align::left},
                                                           {QObject::tr("Way"), Align::left, true},
                                                           {QObject::tr("Spoil"), Align::left, true},
                                                           {QObject::tr("Heap"), Align::left, true},
                                                           {QObject::tr("Sides"), Align::left, true},
                                                           {QObject::tr("First"), Align::left, true}},
                                       std::move(rows), 9.5, note);
  table->keep_on_a_page();
  return table;
}

namespace {

QString volume(const Plan& plan, double cubic_metres) {
  return text_of(print_quantity(Quantity::volume, cubic_metres, plan.units));
}

}  // namespace

// With the sides as they are chosen; what is trucked off is counted loose, as a truck carries it.
BlockPtr volume_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.order == nullptr || outcome.order->steps.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  EarthWork sum;
  double off = 0;
  for (const DigStep& step : outcome.order->steps) {
    const EarthWork& w = step.work;
    rows.push_back({{text_of(step_numeral(static_cast<int>(rows.size()) + 1)), std::nullopt, true},
                    {text_of(step_name(step))},
                    {volume(plan, w.bank)},
                    {volume(plan, w.loose)},
                    {step.hauled ? volume(plan, w.loose) : "–", std::nullopt, step.hauled},
                    {volume(plan, w.bedding)},
                    {volume(plan, w.backfill)}});
    sum.bank += w.bank;
    sum.loose += w.loose;
    sum.bedding += w.bedding;
    sum.backfill += w.backfill;
    sum.surplus_loose += w.surplus_loose;
    off += step.hauled ? w.loose : 0;
  }
  rows.push_back({{""},
                  {QObject::tr("In all"), std::nullopt, true},
                  {volume(plan, sum.bank), std::nullopt, true},
                  {volume(plan, sum.loose), std::nullopt, true},
                  {volume(plan, off), std::nullopt, true},
                  {volume(plan, sum.bedding), std::nullopt, true},
                  {volume(plan, sum.backfill), std::nullopt, true}});
  const QString note =
      sum.surplus_loose >= 0
          ? QObject::tr(
                "Sides as chosen. Left over at the end, loose: %1. What was trucked off is brought "
                "back to fill its trench.")
                .arg(volume(plan, sum.surplus_loose))
          : QObject::tr(
                "Sides as chosen. Short at the end, loose: %1 to be brought. What was trucked off is "
                "brought back to fill its trench.")
                .arg(volume(plan, -sum.surplus_loose));
  const Align right = Align::right;
  return std::make_shared<Table>(QObject::tr("EARTH, STEP BY STEP"),
                                 std::vector<Column>{{QObject::tr("No.")},
                                                     {QObject::tr("Dig")},
                                                     {QObject::tr("Dug, in place"), right},
                                                     {QObject::tr("Spoil, loose"), right},
                                                     {QObject::tr("Trucked off, loose"), right},
                                                     {QObject::tr("Bedding sand"), right},
                                                     {QObject::tr("Filled back"), right}},
                                 std::move(rows), 10, note);
}

}  // namespace underlawn::sheet
