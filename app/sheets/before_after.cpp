// SPDX-License-Identifier: GPL-3.0-or-later
// What is done before and after digging, in sentences.
#include <algorithm>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "layout/crossing_tags.h"
#include "plan/coil_ends.h"
#include "plan/roots_driven.h"
#include "sheets/contents.h"
#include "sheets/trench_ticks.h"

namespace underlawn::sheet {

namespace {

QString laying_words(const Coil& coil) {
  switch (coil.pattern) {
    case CoilPattern::flat_coil:
      return QObject::tr(
          "Lay and tie the coils at the pitch in the table, both pipe ends at the head, capped and tagged.");
    case CoilPattern::upright_coil:
      return coil.return_on_top
                 ? QObject::tr(
                       "Tie the coils at the pitch in the table, stand them in the trenches, the return "
                       "pipe on top of the loops, both pipe ends at the head, capped and tagged.")
                 : QObject::tr(
                       "Tie the coils at the pitch in the table, stand them in the trenches, the return "
                       "pipe on the floor beside the loops, both pipe ends at the head, capped and "
                       "tagged.");
    case CoilPattern::single_pipe:
      return QObject::tr(
          "Lay the pipe on the trench floor, backfill to the upper level, lay the return there, "
          "both pipe ends at the head, capped and tagged.");
    case CoilPattern::two_pipes:
      return QObject::tr(
          "Lay the pipe along one side of the trench floor and back along the other, both pipe "
          "ends at the head, capped and tagged.");
    default:
      return QObject::tr(
          "Lay the pipe level by level along both sides of the trench, backfill between levels, "
          "both pipe ends at the head, capped and tagged.");
  }
}

QString exposed(const Plan& plan, const Outcome& outcome) {
  QStringList names;
  for (std::size_t i = 0; i < outcome.layout.crossings.size(); ++i) {
    const std::string tag = crossing_tag(plan.site, outcome.layout, i);
    if (!tag.empty()) names << text_of(tag);
  }
  return names.join(", ");
}

QString bedding_words(const Plan& plan, const Outcome& outcome) {
  const QString thick = shown(plan, outcome, "dig.bedding");
  return outcome.coil.pattern == CoilPattern::flat_coil
             ? QObject::tr(
                   "%1 thick in all: half of it on the floor before the coil is let down, half over the "
                   "coil, cast from above once it has been proved")
                   .arg(thick)
             : QObject::tr("%1 thick in all, from the trench's floor up").arg(thick);
}

// Who goes where to join: never into a trench whose sides nothing holds.
QString joining_words(const Plan& plan) {
  switch (plan.dig.run_sides) {
    case Sides::shield:
      return QObject::tr("Joints are made in the header's and the run's trench, %1 deep, inside the shield.");
    case Sides::shoring:
      return QObject::tr(
          "Joints are made in the header's and the run's trench, %1 deep, between its shores.");
    case Sides::slope:
      return QObject::tr(
          "Joints are made in the header's and the run's trench, %1 deep, its sides laid back.");
    case Sides::stay_out:
      break;
  }
  return QObject::tr(
      "Joints are made above the ground and let down: nobody goes into the header's and the run's trench, %1 "
      "deep.");
}

QString roots_words(const Plan& plan, const Outcome& outcome) {
  QStringList names;
  for (const RootsDriven& r : roots_driven(plan, outcome))
    names << text_of(display_name(*find_feature(plan.site, r.tree)));
  if (names.isEmpty()) return {};
  return QObject::
      tr("Mats or planks over the roots of %1 before anything drives there, on dry ground only, no turning "
         "on them.")
          .arg(names.join(", "));
}

QString head_words(const Plan& plan, const Outcome& outcome) {
  QStringList all{joining_words(plan).arg(shown_length(plan, plan.wishes.run_depth))};
  const CoilEnd end = coil_end(plan, outcome.layout, outcome.dig);
  if (plan.dig.coil_sides == Sides::stay_out)
    all << QObject::tr("Nobody goes down to a coil's head, %1 deep, to lay, to bed or to join.")
               .arg(shown_length(plan, deepest_head(outcome.layout, outcome.dig)))
        << (end.over_edge
                ? QObject::tr(
                      "Both ends of a coil reach up over the edge and are joined there: %1 each beyond the "
                      "trench head, all of it in the cut of the table. Order nothing on top.")
                      .arg(shown_length(plan, end.length()))
                : QObject::tr(
                      "As the coil is let down its two pipe ends are led with a rope over the step into "
                      "the header's trench, where they are taken hold of and joined."));
  return all.join(" ");
}

// From above, for nobody goes in; common practice, no source.
QString filling_words(const Plan& plan) {
  const bool us = plan.units == UnitSystem::us;
  const QString lift = us ? "12 in" : "0.3 m", tape = shown_length(plan, tape_down(plan.wishes.trench_depth));
  return plan.dig.coil_sides == Sides::stay_out
             ? QObject::tr(
                   "Fill from the edge, nobody in the trench: in lifts of %1, each pressed with the bucket "
                   "or a "
                   "plate on the boom, not within %1 of the pipe. So too where the next trench's earth is "
                   "cast "
                   "in. Stop %2 below the ground, lay the warning tape from above, then fill to the top. "
                   "What "
                   "sinks is topped up.")
                   .arg(lift, tape)
             : QObject::tr(
                   "Fill in lifts of %1, each pressed, not within %1 of the pipe. Stop %2 below the ground, "
                   "lay "
                   "the warning tape, then fill to the top. What sinks is topped up.")
                   .arg(lift, tape);
}

// Trenches whose own earth lies in others by then, and the heaps that are still on the lot.
QString last_filled_words(const Outcome& outcome) {
  if (outcome.order == nullptr) return {};
  std::vector<int> early, open, heaps;
  for (const DigStep& s : outcome.order->steps) early.insert(early.end(), s.into.begin(), s.into.end());
  const auto filled = [&](int trench) { return std::ranges::find(early, trench) != early.end(); };
  for (const DigStep& s : outcome.order->steps) {
    if (s.kind != DigKind::trench || s.hauled) continue;
    if (!s.into.empty() && !filled(s.trench)) open.push_back(s.trench);
    if (s.into.empty() && filled(s.trench)) heaps.push_back(s.trench);
  }
  if (open.empty() || heaps.empty()) return {};
  return QObject::tr(
             "After the test the heads left open and %1, whose own earth lies in another by then, are filled "
             "with the heap of %2, carried by the loader over ground that is filled.")
      .arg(text_of(trenches_named(open)), text_of(trenches_named(heaps)));
}

// When, and by whom, as the calendar has it.
QString joiner_words(const Outcome& outcome) {
  if (outcome.calendar == nullptr) return {};
  double first = -1;
  for (const CrewTask& t : outcome.calendar->tasks)
    if (t.station == CrewStation::joining && (first < 0 || t.begin < first)) first = t.begin;
  if (first < 0) return {};
  const int day = static_cast<int>((first + 1) / outcome.calendar->day_length) + 1;
  return QObject::tr("Header and run pipes are laid and joined by the joiner, from day %1 on.").arg(day);
}

}  // namespace

BlockPtr before_and_after(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return nullptr;
  std::vector<Item> items;
  const auto add = [&](const QString& text) { items.push_back({"•", "", text}); };
  add(QObject::tr(
      "Locate ticket valid, all lines marked, private lines found. Stake every point from the two building "
      "corners in its row; measure between stakes as a check."));
  if (const QString names = exposed(plan, outcome); !names.isEmpty())
    add(QObject::tr("Expose %1 by hand.").arg(names));
  if (const QString roots = roots_words(plan, outcome); !roots.isEmpty()) add(roots);
  add(QObject::tr("Coils are made and tied above ground at the racks and let down into the trench."));
  add(laying_words(outcome.coil));
  add(head_words(plan, outcome));
  if (const QString joiner = joiner_words(outcome); !joiner.isEmpty()) add(joiner);
  add(QObject::tr(
      "Join, then fill with water and test before any joint is covered. Leave no open trench unguarded "
      "overnight."));
  add(QObject::tr("Bedding %1, free of stones. Take the as-built ties before anything covers the pipe.")
          .arg(bedding_words(plan, outcome)));
  add(filling_words(plan));
  if (const QString last = last_filled_words(outcome); !last.isEmpty()) add(last);
  return std::make_shared<Items>(QObject::tr("BEFORE DIGGING, AND AFTER"), std::move(items), 9.5, 2);
}

}  // namespace underlawn::sheet
