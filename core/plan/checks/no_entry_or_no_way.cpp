// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

bool joined(const Trench& t, const std::vector<ConduitLine>& lines) {
  return std::any_of(lines.begin(), lines.end(), [&](const ConduitLine& c) {
    for (std::size_t i = 1; i < c.line.size(); ++i)
      if (distance(Segment{c.line[i - 1], c.line[i]}, t.head) <= kCheckTolerance) return true;
    return false;
  });
}

Finding problem(const std::string& part, std::string title, std::string advice) {
  Finding f = make_finding("no_entry_or_no_way", part, Severity::error, std::move(title));
  f.quantity = Quantity::count;
  f.required = 1;
  f.advice = std::move(advice);
  f.source = say("every circuit runs from and to the house");
  return f;
}

}  // namespace

std::vector<Finding> no_entry_or_no_way(const Plan& plan, const Outcome& outcome) {
  if (plan.site.lot.empty()) return {};
  if (!plan.site.entry)
    return {
        problem("entry", say("The loop has no entry point into the house"), say("Set it on a house wall."))};
  const Layout& layout = outcome.layout;
  if (layout.trenches.empty()) return {};
  const Point entry = plan.site.entry->at;
  if (layout.run.line.size() < 2) {
    Finding f = problem("way", say("No way leads from the trenches to the entry point"),
                        say("Free a way: allow a crossing, lessen a clearance or move the entry point."));
    f.places = {{entry}};
    return {f};
  }
  std::vector<Finding> findings;
  const auto lines = conduit_lines(layout);
  for (const Trench& t : layout.trenches) {
    if (joined(t, lines)) continue;
    Finding f = problem(trench_part(t), say("{} is joined to no header", trench_name(t)),
                        say("Free a way to its head: allow a crossing or lessen a clearance."));
    f.places = {{t.head}};
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
