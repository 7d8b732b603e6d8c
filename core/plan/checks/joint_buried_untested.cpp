// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/record/record_judge.h"

namespace underlawn::checks {

// One finding for each of joints and trenches that the record says were filled in before the test was passed.
std::vector<Finding> joint_buried_untested(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> all;
  for (const RecordLine& line : judge_order(plan.record, plan.as_built)) {
    if (line.tone != Tone::bad || line.key == "order.fill") continue;
    Finding f = make_finding("joint_buried_untested", line.key.substr(6), Severity::error, line.title);
    f.title = say("Buried before its test: {}", line.words);
    set_measure(f, 0, 0, Quantity::count);
    f.advice = say("Open the joints, or record the test that was passed before.");
    f.source = line.source;
    f.places = conduit_places(outcome.layout);
    all.push_back(std::move(f));
  }
  return all;
}

}  // namespace underlawn::checks
