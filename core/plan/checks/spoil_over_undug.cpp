// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "dig/dig_order.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plane/strip.h"

namespace underlawn::checks {

namespace {

constexpr double kSpeck = 0.05;  // m2 that are not spoken of

double covered(const DigStep& step, const DigStep& other) {
  const Region trench = region_of(strip_along(other.line, other.top));
  double sum = 0;
  for (const Ring& ring : step.spoil) sum += area(intersect(region_of(ring), trench));
  return sum;
}

std::string part_of(const DigStep& step) {
  if (step.kind == DigKind::trench) return "trench-" + std::to_string(step.trench);
  return (step.kind == DigKind::header ? "header" : "run") +
         (step.part > 0 ? "-" + std::to_string(step.part) : std::string());
}

}  // namespace

// Measured on the heaps and trenches as they come out, whatever the search thought.
std::vector<Finding> spoil_over_undug(const Plan&, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (outcome.order == nullptr) return findings;
  const auto& steps = outcome.order->steps;
  for (std::size_t i = 0; i < steps.size(); ++i)
    for (std::size_t j = 0; j < steps.size(); ++j) {
      if (i == j || (j < i && steps[j].kind == DigKind::trench)) continue;
      const double over = covered(steps[i], steps[j]);
      if (over <= kSpeck) continue;
      Finding f =
          make_finding("spoil_over_undug", part_of(steps[i]) + "/" + part_of(steps[j]), Severity::error,
                       say("Spoil of {} lies on {}", step_name(steps[i]), step_name(steps[j])));
      set_measure(f, over, 0, Quantity::area);
      f.advice = say("Have spoil trucked off, or move the trenches apart.");
      f.source = say("spoil at least 2 ft from every edge: 29 CFR 1926.651(j)(2)");
      f.places = {steps[i].line, steps[j].line};
      findings.push_back(std::move(f));
    }
  return findings;
}

}  // namespace underlawn::checks
