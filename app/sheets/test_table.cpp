// SPDX-License-Identifier: GPL-3.0-or-later
// The pressure test in the words a crew needs while it pumps; the whole form is the record sheet's.
#include <cmath>

#include "flow/loop_network.h"
#include "plan/record/test_curves.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

QString pressure(const Plan& plan, double pascal) {
  return text_of(print_quantity(Quantity::pressure, pascal, plan.units));
}

QString lasting(double seconds) {
  const double hours = seconds / 3600;
  return hours < 1 ? QObject::tr("%1 min").arg(std::round(seconds / 60))
                   : QObject::tr("%1 h").arg(std::round(hours * 10) / 10);
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
  for (const TestPhase& phase : programme.phases)
    rows.push_back({{phase_words(plan, phase)}, {lasting(phase.duration), std::nullopt, true}});
  rows.push_back({{QObject::tr("A sound loop falls, after the valve is shut, from")},
                  {pressure(plan, curves->band.expected.pressure_at(start)), std::nullopt, true}});
  rows.push_back(
      {{QObject::tr("to no less than")}, {pressure(plan, curves->band.low_at(end)), std::nullopt, true}});
  return std::make_shared<Table>(
      QObject::tr("PRESSURE TEST"), std::vector<Column>{{"", Align::left, true}, {"", Align::right}},
      std::move(rows), 10,
      QObject::tr(
          "Gauge %1 over the lowest pipe. Polyethylene creeps: the loop may fall so far and be sound. The "
          "record sheet has the readings.")
          .arg(shown_length(plan, plan.test.gauge_height)));
}

}  // namespace underlawn::sheet
