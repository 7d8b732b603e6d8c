// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "dig/dig_order.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/checks/step_words.h"

namespace underlawn::checks {

namespace {

struct Gathered {
  std::vector<const DigStep*> steps;
  std::vector<Polyline> places;
  double measured = 0, required = 0;  // of the worst

  void add(const DigStep& step, double has = 0, double needs = 0) {
    steps.push_back(&step);
    places.push_back(step.line);
    if (needs - has <= required - measured) return;
    measured = has;
    required = needs;
  }
};

void report(std::vector<Finding>& findings, const Gathered& g, const char* part, Severity severity,
            std::string title, const std::string& advice) {
  if (g.steps.empty()) return;
  Finding f = make_finding("machine_reach", part, severity, std::move(title));
  set_measure(f, g.measured, g.required);
  f.advice = advice;
  f.source = translated(kCommonPractice);
  f.places = g.places;
  findings.push_back(std::move(f));
}

Finding unknown_access() {
  Finding f = make_finding("machine_reach", "access", Severity::hint,
                           say("Nobody has said on which side machines come onto the lot"));
  f.advice = say("Draw the drive to the lot line, or say on which side of the lot they come in.");
  f.source = translated(kCommonPractice);
  return f;
}

}  // namespace

std::vector<Finding> machine_reach(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (outcome.order == nullptr || outcome.order->steps.empty()) return findings;
  const Machine& m = plan.dig.excavator;
  Gathered unreached, no_end, deep, far;
  for (const DigStep& step : outcome.order->steps) {
    if (!step.reached) unreached.add(step);
    if (!step.room_to_end) no_end.add(step);
    if (!step.deep_enough) deep.add(step, m.depth, step.depth);
    if (!step.cast_reached) far.add(step, m.reach, step.cast);
  }
  report(findings, unreached, "way", Severity::warning,
         say("No way for the machine to {}", steps_named(unreached.steps)),
         say("Take a narrower machine, open a way (fence, garden), dig in another direction, or say where "
             "machines "
             "come in."));
  report(findings, no_end, "end", Severity::warning,
         say("No place for the machine to stand at the end of {}", steps_named(no_end.steps)),
         say("Leave more room at one end of the trench, or dig its last stretch from the side."));
  report(findings, deep, "depth", Severity::warning,
         say("The machine does not dig as deep as {}", steps_named(deep.steps)),
         say("Take a machine that digs deeper, or dig less deep."));
  report(findings, far, "cast", Severity::hint,
         say("The machine does not cast to the middle of the heap of {}", steps_named(far.steps)),
         say("Take a machine with more reach, have spoil trucked off, or move it twice."));
  if (!outcome.order->access) findings.push_back(unknown_access());
  return findings;
}

}  // namespace underlawn::checks
