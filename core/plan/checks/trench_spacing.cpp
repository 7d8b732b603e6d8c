// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

struct Gap {
  double measured, required;
  bool ends;  // between trench ends, not between middle lines
};

// Side by side the middle lines keep the spacing; otherwise the floors keep the gap at ends. Of trenches that
// bend, what is worse.
Gap gap_between(const Trench& a, const Trench& b, const Wishes& wishes) {
  const Gaps gaps = gaps_between(a, b);
  Gap ends{0, 0, true};
  if (gaps.at_ends) ends = {*gaps.at_ends, wishes.end_gap, true};
  if (!gaps.beside) return ends;
  const Gap beside{*gaps.beside, wishes.spacing, false};
  return !gaps.at_ends || beside.required - beside.measured >= ends.required - ends.measured ? beside : ends;
}

}  // namespace

std::vector<Finding> trench_spacing(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  const auto& trenches = outcome.layout.trenches;
  for (std::size_t i = 0; i < trenches.size(); ++i)
    for (std::size_t j = i + 1; j < trenches.size(); ++j) {
      const Gap gap = gap_between(trenches[i], trenches[j], plan.wishes);
      if (!falls_short(gap.measured, gap.required)) continue;
      Finding f = make_finding("trench_spacing", trench_part(trenches[i]) + "/" + trench_part(trenches[j]),
                               Severity::error,
                               say("Trenches {} and {} are too close", std::to_string(trenches[i].number),
                                   std::to_string(trenches[j].number)));
      set_measure(f, gap.measured, gap.required);
      f.advice = gap.ends
                     ? say("Keep the distance asked for of undisturbed ground at their ends, or ask for "
                           "fewer circuits.")
                     : say("Keep the distance asked for between middle lines, or ask for fewer circuits.");
      f.source = say("spacing asked for in the plan");
      f.places = {axis(trenches[i]), axis(trenches[j])};
      findings.push_back(std::move(f));
    }
  return findings;
}

}  // namespace underlawn::checks
