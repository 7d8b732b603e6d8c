// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/record_sheet.h"

#include "sheets/record_blocks.h"

namespace underlawn {

using namespace sheet;

namespace {

std::vector<Piece> pieces(const Plan& plan, const Outcome& outcome, bool blank) {
  RecordFacts f{plan, outcome, blank, judge_record(plan, outcome.flow.get(), outcome.temperatures.get()), {}};
  if (outcome.flow != nullptr)
    if (auto curves = test_curves(volume_of(outcome.flow->loop), plan.test, plan.units))
      f.curves = std::move(*curves);
  std::vector<Piece> all;
  for (auto* make : {record_cautions, coil_form, test_form, record_verdicts, test_picture, readings_form,
                     flush_form, drop_table, fill_form, signature_form})
    add(all, make(f), true);
  return all;
}

}  // namespace

RecordSheet::RecordSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : BlockSheet(plan, outcome, setup,
                 {QObject::tr("Record"), QObject::tr("TEST, FLUSH AND FILL RECORD, buried coil loop")}, 1) {
  set(pieces(plan, outcome, plan.record == JobRecord{} && plan.test.readings.empty()));
}

RecordForm::RecordForm(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : BlockSheet(plan, outcome, setup,
                 {QObject::tr("Record form"), QObject::tr("TEST, FLUSH AND FILL RECORD, blank form")}, 1) {
  set(pieces(plan, outcome, true));
}

}  // namespace underlawn
