// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks of the test, flush and fill record: as a blank form, or with what was written down.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "plan/record/record_judge.h"
#include "plan/record/test_curves.h"
#include "sheets/block.h"

namespace underlawn::sheet {

struct RecordFacts {
  const Plan& plan;
  const Outcome& outcome;
  bool blank = true;
  RecordJudgement judged;
  std::optional<TestCurves> curves;  // none where the loop or its test is not solved
};

BlockPtr record_cautions(const RecordFacts& f);
BlockPtr coil_form(const RecordFacts& f);  // null where no coil is covered before the test
BlockPtr test_form(const RecordFacts& f);
BlockPtr test_picture(const RecordFacts& f);   // the curve expected, the readings over it
BlockPtr readings_form(const RecordFacts& f);  // pressure expected and read, time by time
BlockPtr flush_form(const RecordFacts& f);
BlockPtr drop_table(const RecordFacts& f);  // what the flush gauges show with all and with fewer circuits
BlockPtr fill_form(const RecordFacts& f);
BlockPtr record_verdicts(const RecordFacts& f);  // null for a blank form
BlockPtr signature_form(const RecordFacts& f);

}  // namespace underlawn::sheet
