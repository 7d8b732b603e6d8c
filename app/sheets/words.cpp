// SPDX-License-Identifier: GPL-3.0-or-later
// Cautions, order of digging, findings: what is said in words.
#include "dig/dig.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "plan/finding.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

bool us(const Plan& plan) {
  return plan.units == UnitSystem::us;
}

QString crossings_text(const Outcome& outcome) {
  const auto n = outcome.layout.crossings.size();
  return n == 1 ? "X1" : QObject::tr("X1 to X%1").arg(n);
}

QString word(Severity severity) {
  switch (severity) {
    case Severity::error:
      return QObject::tr("ERROR");
    case Severity::warning:
      return QObject::tr("WARNING");
    case Severity::hint:
      return QObject::tr("Note");
  }
  return "";
}

QString measured(const Plan& plan, const Finding& f) {
  // A check that measures nothing says nothing.
  if (f.measured == f.required) return "";
  return QObject::tr("Is %1, asked %2.")
             .arg(text_of(print_quantity(f.quantity, f.measured, plan.units)),
                  text_of(print_quantity(f.quantity, f.required, plan.units))) +
         " ";
}

}  // namespace

BlockPtr cautions(const Plan& plan, const Outcome& outcome) {
  const QString slope = shown(plan, outcome, "dig.slope");
  const QString soil = text_of(std::string(soil_name(plan.ground.soil)));
  std::vector<Item> items{
      {"1", QObject::tr("A trench wall can fall without warning and kill."),
       QObject::tr("No one enters a trench %1 deep or deeper without a protective system (slope, shoring or "
                   "shield), nor "
                   "any trench that a competent person has not looked into. This plan takes the soil for %2: "
                   "slope %3. "
                   "29 CFR 1926 Subpart P; 1926.652(a)(1), Table B-1.")
           .arg(us(plan) ? "5 ft" : "1.5 m", soil, slope)},
      {"2", QObject::tr("Call before you dig."),
       QObject::tr(
           "811 in the United States, your one-call service elsewhere. Wait until every line is marked. "
           "Private "
           "lines "
           "(well, septic, propane, lights, sprinklers) are not marked by the service: find them yourself.")},
      {"3", QObject::tr("Dig by hand in the tolerance zone."),
       QObject::tr(
           "Commonly %1 to each side of a marked line; state law governs. Support what is laid bare. A gas "
           "smell: leave, keep flames and switches off, call from afar.")
           .arg(us(plan) ? "18 in" : "0.46 m")},
      {"4", QObject::tr("Spoil and machines stand back."),
       QObject::tr("At least %1 from the edge. 1926.651(j)(2).").arg(us(plan) ? "2 ft" : "0.61 m")},
      {"5", QObject::tr("A way out."),
       QObject::tr("A ladder or ramp within %1 of everyone in a trench %2 deep or deeper. 1926.651(c)(2).")
           .arg(us(plan) ? "25 ft" : "7.6 m", us(plan) ? "4 ft" : "1.2 m")},
      {"6", QObject::tr("A competent person looks daily"),
       QObject::tr("before work, after rain and after anything that may loosen the ground. Water in the "
                   "trench: everyone "
                   "out. "
                   "1926.651(k).")},
      {"7", QObject::tr("Test with water, never with air."),
       QObject::tr(
           "Compressed air in pipe can burst it with deadly force. Fill, purge and pressure-test before any "
           "joint is "
           "buried (ASTM F2164).")},
      {"8", QObject::tr("Local codes govern."),
       QObject::tr("This sheet is a plan and no permit. Distances to wells, septic parts and lot lines "
                   "follow your local "
                   "code; "
                   "work that asks for a licence is left to those who hold it.")}};
  return std::make_shared<Items>(QObject::tr("CAUTIONS"), std::move(items), 9.5, 2);
}

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

}  // namespace

namespace {

QString kind_of_sides(const DigStep& step) {
  switch (step.sides) {
    case Sides::stay_out:
      return QObject::tr("vertical sides, nobody goes in");
    case Sides::slope:
      return QObject::tr("sides laid back");
    case Sides::shield:
      return QObject::tr("people only in the shield");
    case Sides::shoring:
      return QObject::tr("shored before anybody goes in");
  }
  return {};
}

QString crossings_of(const DigStep& step) {
  QStringList names;
  for (int i : step.crossings) names << "X" + QString::number(i + 1);
  return names.join(", ");
}

// "Trench 2 from its head back to its end; spoil to the south, 10'-11" wide, into trench 1."
Item step_item(const Plan& plan, const DigStep& step, int number) {
  QStringList sentences{QString("%1; %2; %3.")
                            .arg(text_of(way_of_digging(step)),
                                 text_of(spoil_words(step, plan.site, plan.units)), kind_of_sides(step))};
  if (!step.crossings.empty()) sentences << QObject::tr("Expose %1 by hand first.").arg(crossings_of(step));
  if (!step.into.empty())
    sentences << QObject::tr("Before that, coil of %1 laid, under pressure, bedded.")
                     .arg(text_of(trenches_named(step.into)));
  if (!step.filled_first.empty())
    sentences << QObject::tr("Before that, fill in %1, its coil under pressure.")
                     .arg(text_of(trenches_named(step.filled_first)));
  if (!step.no_room.empty()) sentences << QObject::tr("NO ROOM FOR SPOIL: truck it off.");
  if (!step.reached) sentences << QObject::tr("NO WAY FOR THE MACHINE: ask the designer.");
  return {QString::number(number), text_of(step_name(step)), sentences.join(" ")};
}

}  // namespace

BlockPtr order_of_digging(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return nullptr;
  std::vector<Item> items;
  const auto add = [&](const QString& text) { items.push_back({"•", "", text}); };
  add(QObject::tr(
      "Locate ticket valid, all lines marked, private lines found. Stake every point from two house corners; "
      "measure between stakes as a check."));
  if (!outcome.layout.crossings.empty()) add(QObject::tr("Expose %1 by hand.").arg(crossings_text(outcome)));
  if (outcome.order != nullptr) {
    int n = 0;
    for (const DigStep& step : outcome.order->steps) items.push_back(step_item(plan, step, ++n));
    add(QObject::tr("Spoil begins %1 from the edge. The machine backs the way it digs.")
            .arg(shown_length(plan, plan.dig.spoil_off)));
  }
  add(laying_words(outcome.coil));
  add(QObject::tr(
      "Join, then fill with water and test before any joint is covered. Leave no open trench unguarded "
      "overnight."));
  add(QObject::tr(
          "Bedding %1 round the pipe, free of stones; backfill in lifts; warning tape in the upper backfill. "
          "Take the as-built ties before covering.")
          .arg(shown(plan, outcome, "dig.bedding")));
  return std::make_shared<Items>(QObject::tr("ORDER OF DIGGING"), std::move(items), 10);
}

BlockPtr open_findings(const Plan& plan, const Outcome& outcome) {
  std::vector<Item> items;
  for (const Trouble& trouble : outcome.troubles) items.push_back({"!", text_of(trouble.message()), ""});
  for (const Finding& f : outcome.findings)
    if (!f.accepted)
      items.push_back(
          {"!", word(f.severity) + ": " + text_of(f.title), measured(plan, f) + text_of(f.advice)});
  if (items.empty())
    items.push_back({"✓", "", QObject::tr("The checks of the program found nothing that is not accepted.")});
  return std::make_shared<Items>(QObject::tr("OPEN FINDINGS"), std::move(items), 9.5);
}

BlockPtr accepted_findings(const Plan&, const Outcome& outcome) {
  std::vector<Item> items;
  for (const Finding& f : outcome.findings)
    if (f.accepted)
      items.push_back(
          {"✓", text_of(f.title), QObject::tr("Accepted by the designer: %1").arg(text_of(f.reason))});
  if (items.empty()) return nullptr;
  return std::make_shared<Items>(QObject::tr("ACCEPTED FINDINGS"), std::move(items), 9.5);
}

}  // namespace underlawn::sheet
