// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/check.h"

namespace underlawn {

namespace {

// Errors first, then warnings, then hints; within one severity by key.
bool before(const Finding& a, const Finding& b) {
  if (a.severity != b.severity) return a.severity > b.severity;
  return a.key < b.key;
}

void mark_accepted(std::vector<Finding>& findings, const std::vector<Acceptance>& accepted) {
  for (Finding& f : findings)
    for (const Acceptance& a : accepted)
      if (a.finding == f.key && !a.reason.empty()) {
        f.accepted = true;
        f.reason = a.reason;
      }
}

}  // namespace

const std::vector<CheckEntry>& all_checks() {
  static const std::vector<CheckEntry> checks = {};
  return checks;
}

std::vector<Finding> run_checks(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const CheckEntry& check : all_checks())
    for (Finding& f : check.run(plan, outcome)) findings.push_back(std::move(f));
  mark_accepted(findings, plan.accepted);
  std::stable_sort(findings.begin(), findings.end(), before);
  return findings;
}

}  // namespace underlawn
