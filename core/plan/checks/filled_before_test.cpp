// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "dig/dig_order.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

// One finding for all of them: they are met by one way of digging.
std::vector<Finding> filled_before_test(const Plan&, const Outcome& outcome) {
  if (outcome.order == nullptr) return {};
  Finding f = make_finding("filled_before_test", "trenches", Severity::hint, "");
  std::vector<std::string> names;
  for (const DigStep& step : outcome.order->steps)
    for (const auto* list : {&step.into, &step.filled_first})
      for (int q : *list) {
        names.push_back(std::to_string(q));
        for (const Trench& t : outcome.layout.trenches)
          if (t.number == q) f.places.push_back(axis(t));
      }
  if (names.empty()) return {};
  f.title = say("Spoil has no room between: {} filled before the loop is tested", trenches_listed(names));
  f.advice = say(
      "Keep each coil under pressure with a gauge on it while its trench is filled; heads, header and joints "
      "stay open until the whole loop is tested. A wider spacing leaves all open.");
  f.source = say("coil without a joint under pressure while covered: common practice, no source");
  return {f};
}

}  // namespace underlawn::checks
