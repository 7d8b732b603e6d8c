// SPDX-License-Identifier: GPL-3.0-or-later
// What is brought along, as far as the plan knows it, and the forms that are filled in.
#include <cmath>

#include "cost/bill.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/protection.h"
#include "plan/coil_watch.h"
#include "plan/roots_driven.h"
#include "sheets/contents.h"
#include "sheets/crew_needs.h"

namespace underlawn::sheet {

namespace {

// Tapes are sold so long; what lies between is no length that a crew has.
double tape_to_bring(UnitSystem units, double metres) {
  constexpr double kFoot = 0.3048;
  const std::vector<double> sold =
      units == UnitSystem::us ? std::vector<double>{50 * kFoot, 100 * kFoot, 200 * kFoot, 300 * kFoot}
                              : std::vector<double>{20, 30, 50, 100};
  for (double length : sold)
    if (metres <= length) return length;
  return 0;
}

QString tape_words(const Plan& plan, const Outcome& outcome) {
  const LongestTape longest = longest_tape(plan, outcome);
  const QString pull = QObject::tr("The longest pull is %1, from %2 to %3.")
                           .arg(shown_length(plan, longest.metres), longest.from, longest.to);
  const double tape = tape_to_bring(plan.units, longest.metres);
  if (tape == 0)
    return pull + " " +
           QObject::tr("No usual tape is as long: join two, or measure that one with an instrument.");
  const QString length = plan.units == UnitSystem::us ? QString("%1 ft").arg(std::lround(tape / 0.3048))
                                                      : QString("%1 m").arg(std::lround(tape));
  return QObject::tr("Two tapes of %1.").arg(length) + " " + pull;
}

QString volume(const Plan& plan, double cubic_metres) {
  return text_of(print_quantity(Quantity::volume, cubic_metres, plan.units));
}

// Two feet or more between its walls, and 3 ft of ladder over the edge: common practice, no source.
QString shield_words(const Plan& plan) {
  return QObject::tr(
             "rated for %1 of depth in %2, %3 above the ground, about %4 or more clear inside. The cut is %5 "
             "wide: dig wider where it stands, at the joints.")
      .arg(shown_length(plan, plan.wishes.run_depth), text_of(std::string(soil_name(plan.ground.soil))),
           plan.units == UnitSystem::us ? "18 in" : "0.46 m", plan.units == UnitSystem::us ? "2 ft" : "0.6 m",
           shown_length(plan, plan.wishes.run_width));
}

std::size_t ladders(const DigOrder& order) {
  std::size_t all = 0;
  for (const DigStep& step : order.steps)
    if (is_entered(step.sides)) all += step.ladders.size();
  return all;
}

QString safety_words(const Plan& plan, const Outcome& outcome) {
  QStringList all;
  if (outcome.order != nullptr)
    if (const std::size_t n = ladders(*outcome.order); n > 0)
      all << QObject::tr("%1 ladders, each %2 over the edge")
                 .arg(n)
                 .arg(plan.units == UnitSystem::us ? "3 ft" : "0.9 m");
  if (!roots_driven(plan, outcome).empty()) all << QObject::tr("mats or planks for the roots");
  all << QObject::tr("fence or barriers and lamps for what stays open at night");
  return all.join("; ");
}

// "Tie 592; Warning tape 476'-8\""
QString goods_words(const Plan& plan, const Outcome& outcome) {
  QStringList all;
  if (outcome.bill != nullptr)
    for (const BillLine& line : outcome.bill->lines)
      for (const char* key : {"tie", "warning_tape", "tracer_wire"})
        if (line.row == key)
          all << QString("%1 %2").arg(text_of(line.item),
                                      text_of(amount_text(line.unit, line.needed, plan.units)));
  return all.join("; ");
}

int loads(const Plan& plan, double loose) {
  return static_cast<int>(std::ceil(loose / std::max(0.1, plan.crew.truck_load) - 1e-9));
}

QString sand_words(const Plan& plan, const Outcome& outcome) {
  double sand = 0;
  for (const DigStep& step : outcome.order->steps) sand += step.work.bedding;
  double first = -1;  // s, when the first coil trench is dug
  for (const CrewTask& t : outcome.calendar->tasks)
    if (t.station == CrewStation::digging && t.step >= 0 &&
        outcome.order->steps[static_cast<std::size_t>(t.step)].trench > 0 && (first < 0 || t.end < first))
      first = t.end;
  const int day = static_cast<int>(std::max(0.0, first - 1) / outcome.calendar->day_length) + 1;
  return QObject::
      tr("%1 in all, %2 loads of %3; the first lies ready on day %4, when the first coil trench is dug. The "
         "plan has no place for it: by the machines' way in, off all ways and edges.")
          .arg(volume(plan, sand))
          .arg(loads(plan, sand))
          .arg(volume(plan, plan.crew.truck_load))
          .arg(day);
}

QString machine_words(const Plan& plan, const Outcome& outcome) {
  const Machine& dig = plan.dig.excavator;
  const Machine& fill = plan.crew.loader;
  QString all = QObject::tr("Excavator %1 wide, digs %2 deep, reaches %3. Loader %4 wide.")
                    .arg(shown_length(plan, dig.width), shown_length(plan, dig.depth),
                         shown_length(plan, dig.reach), shown_length(plan, fill.width));
  if (const double off = hauled_loose(*outcome.order); off > 0)
    all += " " + QObject::tr("Truck of %1: %2 loads off, as many back.")
                     .arg(volume(plan, plan.crew.truck_load))
                     .arg(loads(plan, off));
  return all;
}

QString test_words(const Outcome& outcome) {
  QStringList all{QObject::tr("pump, gauge, flush cart, clean water")};
  if (!coils_covered_early(outcome).empty())
    all << QObject::tr("a gauge on a hose for each coil that is covered before the test");
  return all.join("; ");
}

void add_works(std::vector<Item>& items, const Plan& plan, const Outcome& outcome) {
  const auto add = [&](const QString& lead, const QString& text) {
    if (!text.isEmpty()) items.push_back({"☐", lead, text});
  };
  if (plan.dig.run_sides == Sides::shield) add(QObject::tr("Shield"), shield_words(plan));
  add(QObject::tr("For the trenches"), safety_words(plan, outcome));
  add(QObject::tr("Goods"), goods_words(plan, outcome));
  if (outcome.order != nullptr && outcome.calendar != nullptr && !outcome.calendar->tasks.empty()) {
    add(QObject::tr("Sand"), sand_words(plan, outcome));
    add(QObject::tr("Machines"), machine_words(plan, outcome));
  }
  add(QObject::tr("For the test"), test_words(outcome));
}

}  // namespace

BlockPtr bring_and_fill(const Plan& plan, const Outcome& outcome) {
  if (outcome.stake_out.ties.empty()) return nullptr;
  std::vector<Item> items;
  const auto add = [&](const QString& lead, const QString& text) { items.push_back({"☐", lead, text}); };
  add(QObject::tr("Tapes and stakes"),
      tape_words(plan, outcome) + " " +
          QObject::tr("%1 stakes with their names on them.").arg(outcome.stake_out.ties.size()));
  add_works(items, plan, outcome);
  add(QObject::tr("LOCATE TICKET"), QObject::tr("on this sheet, before anything is dug"));
  add(QObject::tr("TEST, FLUSH AND FILL RECORD, blank form"),
      QObject::tr("by the tester while it is done: pressures, flows, times, who saw it"));
  add(QObject::tr("AS BUILT FORM, nothing recorded yet"),
      QObject::tr("two tapes for every head, end, bend and joint, before it is covered"));
  return std::make_shared<Items>(QObject::tr("TO BRING AND TO FILL IN"), std::move(items), 9.5, 2);
}

}  // namespace underlawn::sheet
