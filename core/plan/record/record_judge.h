// SPDX-License-Identifier: GPL-3.0-or-later
// What the record of a job tells, all of it but the gauge's curve (test_verdict.h).
#pragma once

#include <vector>

#include "flow/hydraulics.h"
#include "plan/plan.h"
#include "plan/record/fill_judge.h"
#include "plan/record/flush_judge.h"

namespace underlawn {

struct RecordJudgement {
  std::vector<RecordLine> test;                      // who, gauge, medium, and what came before what
  std::vector<std::optional<FlushJudgement>> flush;  // as JobRecord::flush; nothing where it was refused
  std::vector<RecordLine> flush_lines;               // of all of them, and of both directions together
  FlushJudgement flush_asked;                        // with all circuits open, nothing read
  FillJudgement fill;
  std::vector<RecordLine> lines() const;  // all
};

// `flow` may be null while the loop is not solved: then only the test is judged. Without `temperatures`
// winter is as cold as typed.
RecordJudgement judge_record(const Plan& plan, const Flow* flow, const Temperatures* temperatures);

// What came before what; keys begin with "order.". Only what surely was too early is bad.
std::vector<RecordLine> judge_order(const JobRecord& record, const AsBuilt& built);

}  // namespace underlawn
