// SPDX-License-Identifier: GPL-3.0-or-later
// The pressure test in the words a crew needs while it pumps; the whole form is the record sheet's.
#include <cmath>

#include "dig/dig_words.h"
#include "flow/loop_network.h"
#include "plan/coil_watch.h"
#include "plan/record/test_curves.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

QString lasting(double seconds) {
  const long minutes = std::lround(seconds / 60);
  if (minutes < 60) return QObject::tr("%1 min").arg(minutes);
  return minutes % 60 == 0 ? QObject::tr("%1 h").arg(minutes / 60)
                           : QObject::tr("%1 h %2 min").arg(minutes / 60).arg(minutes % 60);
}

namespace {

QString pressure(const Plan& plan, double pascal) {
  return text_of(print_quantity(Quantity::pressure, pascal, plan.units));
}

QString phase_words(const Plan& plan, const TestPhase& phase) {
  switch (phase.kind) {
    case PhaseKind::pump:
      return QObject::tr("bring to %1").arg(pressure(plan, phase.pressure));
    case PhaseKind::hold:
      return QObject::tr("hold there with make-up water");
    case PhaseKind::shut_in:
      return QObject::tr("valve shut, read the gauge");
  }
  return {};
}

}  // namespace

BlockPtr test_table(const Plan& plan, const Outcome& outcome) {
  if (!outcome.flow) return nullptr;
  const auto curves = test_curves(volume_of(outcome.flow->loop), plan.test, plan.units);
  if (!curves) return nullptr;
  const TestProgramme& programme = curves->test.programme;
  const double start = shut_in_start(programme), end = programme_end(programme);
  std::vector<std::vector<Cell>> rows;
  rows.push_back({{QObject::tr("Filled with")}, {QObject::tr("water, never air"), std::nullopt, true}});
  rows.push_back({{QObject::tr("Pressure at the gauge")},
                  {pressure(plan, curves->test.pressure.at_gauge), std::nullopt, true}});
  rows.push_back(
      {{QObject::tr("Fill and flush before")}, {lasting(plan.crew.test_filling), std::nullopt, true}});
  for (const TestPhase& phase : programme.phases)
    rows.push_back({{phase_words(plan, phase)}, {lasting(phase.duration), std::nullopt, true}});
  rows.push_back({{QObject::tr("In all, as the calendar has it")},
                  {lasting(plan.crew.test_filling + programme_end(programme)), std::nullopt, true}});
  rows.push_back({{QObject::tr("A sound loop falls, after the valve is shut, from")},
                  {pressure(plan, curves->band.expected.pressure_at(start)), std::nullopt, true}});
  rows.push_back(
      {{QObject::tr("to no less than")}, {pressure(plan, curves->band.low_at(end)), std::nullopt, true}});
  return std::make_shared<Table>(
      QObject::tr("PRESSURE TEST"), std::vector<Column>{{"", Align::left, true}, {"", Align::right}},
      std::move(rows), 10,
      QObject::tr(
          "Gauge %1 over the lowest pipe. Polyethylene creeps: the loop may fall so far and be sound. The "
          "record sheet has the readings. Nobody in a trench and nobody near caps and joints while it is "
          "pumped up "
          "and held; let the pressure down to nothing before a cap is cut.")
          .arg(shown_length(plan, plan.test.gauge_height)));
}

QString coil_watch_words(const Plan& plan, const Outcome& outcome) {
  const std::vector<CoilWatch> coils = coil_watches(plan, outcome);
  if (coils.empty()) return {};
  const CoilHold& hold = coils.front().hold;  // as of all
  return QObject::tr("%1 at %2, then %3")
      .arg(lasting(kCoilProved), pressure(plan, hold.proved), pressure(plan, hold.kept));
}

BlockPtr coil_watch_table(const Plan& plan, const Outcome& outcome) {
  const std::vector<CoilWatch> coils = coil_watches(plan, outcome);
  if (coils.empty()) return nullptr;
  const CoilHold& first = coils.front().hold;  // only the time and what is least are of each its own
  std::vector<std::vector<Cell>> rows;
  const auto add = [&](const QString& what, const QString& value) {
    rows.push_back({{what}, {value, std::nullopt, true}});
  };
  add(QObject::tr("Filled with"), QObject::tr("water, never air"));
  add(QObject::tr("Laid on its bed, nothing over it: bring to"), pressure(plan, first.proved));
  add(QObject::tr("hold there with make-up water, look for leaks"), lasting(kCoilProved));
  add(QObject::tr("let down to"), pressure(plan, first.kept));
  add(QObject::tr("valve shut; who drives the machine that covers it reads the gauge, before the first earth "
                  "and when it is covered"),
      "☐");
  for (const CoilWatch& coil : coils)
    add(QObject::tr("Coil %1, %2 later as the calendar has it: no less than")
            .arg(coil.trench)
            .arg(lasting(coil.hold.covered)),
        pressure(plan, coil.hold.least));
  const QString names = text_of(trenches_named(coils_covered_early(outcome)));
  auto table = std::make_shared<Table>(
      QObject::tr("COILS COVERED BEFORE THE TEST"),
      std::vector<Column>{{"", Align::left, true}, {"", Align::right}}, std::move(rows), 10,
      QObject::tr(
          "For %1, each alone, the gauge on a hose from its capped ends up over the edge, read there. No "
          "source gives a pressure for this: the first is "
          "the test pressure of the whole loop, the second its working pressure, both at the gauge. Nobody "
          "in "
          "the trench and nobody near the caps at the higher one. A faster fall: stop, let it down, uncover "
          "and mend. Let the pressure down to nothing before a cap is cut.")
          .arg(names));
  table->keep_on_a_page();
  return table;
}

}  // namespace underlawn::sheet
