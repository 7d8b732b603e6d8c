// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/built_findings.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr double kSameLength = 0.01;  // m: what a tape tells

// What stays wrong once the trenches are filled in; spoil and machines are gone by then.
constexpr const char* kStays[] = {"trench_outside_lot",   "trench_in_setback",      "trench_in_clearance",
                                  "trench_spacing",       "run_outside_lot",        "run_in_setback",
                                  "header_run_clearance", "run_in_root_zone",       "run_through_trench",
                                  "conduits_cross",       "utility_depth_conflict", "depth_against_frost",
                                  "easement_crossed"};

double short_by(const Finding& f) {
  return std::abs(f.required - f.measured);
}

}  // namespace

std::vector<Finding> built_findings(const Outcome& planned, const Outcome& built) {
  std::vector<Finding> found;
  for (const Finding& f : built.findings) {
    if (f.accepted || std::ranges::find(kStays, f.rule) == std::end(kStays)) continue;
    const auto was = std::ranges::find(planned.findings, f.key, &Finding::key);
    if (was == planned.findings.end() || short_by(f) > short_by(*was) + kSameLength) found.push_back(f);
  }
  return found;
}

std::string built_finding_words(const Finding& finding, UnitSystem units) {
  const auto shown = [&](double m) { return print_quantity(finding.quantity, m, units); };
  if (finding.required == finding.measured) return finding.advice;
  return say(
      "{} as built; {} is asked. Dig it where it was planned before it is filled in, or have whoever "
      "designed it "
      "judge it as it lies.",
      shown(finding.measured), shown(finding.required));
}

}  // namespace underlawn
