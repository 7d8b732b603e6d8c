// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/explain.h"

#include "base/say.h"
#include "layout/blocked_way.h"

namespace underlawn {

namespace {

std::string metres(double value) {
  return std::to_string(value) + " m";
}

}  // namespace

std::optional<Trouble> wishes_trouble(const Wishes& w, const Coil& coil) {
  struct Bound {
    const char* code;
    std::string thing;
    double value, least, most;
  };
  const Bound bounds_[] = {
      {"trench_length_out_of_range", say("trench length"), coil.trench_length, 0.1, 1000},
      {"trench_width_out_of_range", say("trench width"), w.trench_width, 0.01, 100},
      {"spacing_out_of_range", say("spacing of trenches"), w.spacing, 0.01, 1000},
      {"end_gap_out_of_range", say("gap at trench ends"), w.end_gap, 0, 1000},
      {"run_width_out_of_range", say("width of header and run"), w.run_width, 0.01, 100}};
  for (const Bound& b : bounds_)
    if (!(b.value >= b.least && b.value <= b.most))
      return Trouble{b.code, b.thing, metres(b.value), say("{} to {}", metres(b.least), metres(b.most)),
                     say("Enter it again; nothing can be placed without it.")};
  if (w.circuits < 0)
    return Trouble{"circuits_negative", say("number of circuits"), std::to_string(w.circuits),
                   say("0 or more"), say("Enter how many circuits are wanted.")};
  return std::nullopt;
}

void explain(const Site& site, const Wishes& wishes, const Conduits& conduits, int unjoined, Layout& layout) {
  if (!site.entry) {
    layout.troubles.push_back({"no_entry_point", say("entry point"), say("not set"),
                               say("on a wall of the house"),
                               say("Set where the supply run enters the house.")});
    return;
  }
  if (layout.trenches.empty()) {
    layout.troubles.push_back(
        {"no_trench_fits", say("trenches placed"), "0", say("at least 1"),
         say("Shorten the trench, lessen a setback or clearance where the code allows, or "
             "move what is in the way.")});
    return;
  }
  if (layout.run.line.empty()) layout.troubles.push_back(no_way(site, wishes, conduits, layout.trenches));
  if (unjoined > 0 && !layout.run.line.empty())
    layout.troubles.push_back(
        {"heads_not_joined", say("trench heads that no header reaches"), std::to_string(unjoined), "0",
         say("Free a way to them: allow a crossing, lessen a clearance, or ask for fewer circuits.")});
}

}  // namespace underlawn
