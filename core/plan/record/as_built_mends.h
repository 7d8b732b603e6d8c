// SPDX-License-Identifier: GPL-3.0-or-later
// What would mend an as-built loop that no longer holds: each mend worked out in full, never guessed.
#pragma once

#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "plan/record/as_built_solve.h"

namespace underlawn {

enum class MendKind { more_circuit, run_coil, full_coils, throttle, antifreeze, together };

struct Mend {
  MendKind kind = MendKind::more_circuit;
  std::string what;                 // "One more circuit: 62 ft of trench with 480 ft of pipe"
  std::string caution;              // "" where there is nothing to heed
  std::vector<Hold> holds;          // with it; Hold::built is what it does
  bool enough = false;              // all that the plan itself holds, holds with it
  Layout layout;                    // with it
  std::function<void(Plan&)> take;  // as an edit of the plan it was found for; none: by hand alone
  std::string by_hand;              // what is to be done that no edit does; may be ""
  std::vector<int> trenches;        // numbers of those that it adds or changes
};

struct Mends {
  std::vector<Mend> all;               // those that are enough first, then by kind
  std::vector<std::string> not_found;  // "No further trench fits on the lot."
};

using MendsProgress = std::function<void(double share, const std::string& what)>;

// For temperatures: one more circuit, the shortest that holds, where the lot has room beside what lies; a
// coil in the supply run, or more pipe in the one there; the planned coils in trenches that got less. For
// balance: a valve's K in the circuits that take most. For freezing: the least share of antifreeze that holds
// at the temperatures it then makes itself. Where none of them is enough, the first that is warm enough with
// valves and antifreeze together. Lengths to 0.3 m, shares to 0.1 %. None that leaves the loop no better than
// it is. Empty where all holds.
Mends find_mends(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built, LaidSolver& solver,
                 const MendsProgress& progress = {}, std::stop_token stop = {});

// K of a valve in each circuit (as Layout::trenches) that brings the flows within `most` of one another at
// the design flow, closing no more than is needed: those that take most first. Refuses what the network
// refuses.
struct Throttled {
  std::vector<double> k;     // by circuit, in the bore of the coils; 0: open
  std::vector<double> head;  // m over the valve at the design flow
  Flow flow;                 // of the loop with them
};
Result<Throttled> throttled(const Flow& flow, const FlowWishes& wishes, double most);

}  // namespace underlawn
