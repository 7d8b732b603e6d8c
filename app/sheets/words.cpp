// SPDX-License-Identifier: GPL-3.0-or-later
// Cautions, findings: what is said in words.
#include "dig/dig.h"
#include "plan/finding.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

bool us(const Plan& plan) {
  return plan.units == UnitSystem::us;
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

// One story on all pages: by the sides as they are planned.
QString as_planned(const Plan& plan, const QString& slope) {
  const auto run = [&] {
    switch (plan.dig.run_sides) {
      case Sides::stay_out:
        return QObject::tr("nobody goes into header and run either");
      case Sides::slope:
        return QObject::tr("header and run are laid back %1").arg(slope);
      case Sides::shield:
        return QObject::tr("into header and run only inside the shield");
      case Sides::shoring:
        return QObject::tr("into header and run only between shores");
    }
    return QString();
  };
  switch (plan.dig.coil_sides) {
    case Sides::stay_out:
      return QObject::tr("As planned: nobody goes into a coil trench at any time; %1.").arg(run());
    case Sides::slope:
      return QObject::tr("As planned: coil trenches are laid back %1; %2.").arg(slope, run());
    case Sides::shield:
      return QObject::tr("As planned: into coil trenches only inside the shield; %1.").arg(run());
    case Sides::shoring:
      break;
  }
  return QObject::tr("As planned: into coil trenches only between shores; %1.").arg(run());
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
                   "slope %3 where sides are laid back. 29 CFR 1926 Subpart P; 1926.652(a)(1), Table B-1.")
               .arg(us(plan) ? "5 ft" : "1.5 m", soil, slope) +
           " " + as_planned(plan, slope)},
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
