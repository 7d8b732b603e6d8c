// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/record/record_judge.h"

namespace underlawn::checks {

// What the record itself says is wrong with test, flushing or fill. An air test is an error, for it can kill.
std::vector<Finding> record_faults(const Plan& plan, const Outcome& outcome) {
  if (plan.record == JobRecord{}) return {};
  std::vector<Finding> all;
  for (const RecordLine& line : judge_record(plan, outcome.flow.get(), outcome.temperatures.get()).lines()) {
    if (line.tone != Tone::bad || (line.key.starts_with("order.") && line.key != "order.fill")) continue;
    const Severity severity = line.key == "test.medium" ? Severity::error : Severity::warning;
    Finding f = make_finding("record_faults", line.key, severity, say("Record: {}", line.title));
    set_measure(f, 0, 0, Quantity::count);
    f.advice = line.words;
    f.source = line.source;
    all.push_back(std::move(f));
  }
  return all;
}

}  // namespace underlawn::checks
