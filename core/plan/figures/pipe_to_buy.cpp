// SPDX-License-Identifier: GPL-3.0-or-later
// Pipe as the bill counts it, before it is rounded up to what is sold.
#include <algorithm>

#include "base/say.h"
#include "cost/take_off.h"
#include "plan/coil_ends.h"
#include "plan/figures/groups.h"
#include "plan/header_words.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

double sum(const std::vector<double>& lengths) {
  double all = 0;
  for (double length : lengths) all += length;
  return all;
}

// From the trench's head to the joint, of every coil alike.
void add_ends(Figures& all, const Plan& plan, const Outcome& outcome) {
  typed(all, "buy.tail", say("Tail of a coil, from the trench's head to the header"), plan.flow.tail,
        Q::length);
  derived(all, "buy.head_depth", say("Deepest head of a coil trench"),
          deepest_head(outcome.layout, outcome.dig), Q::length,
          {say("greatest depth at a head, ground to floor"), {"dig.trench_depth"}, ""});
  const CoilEnd end = coil_end(plan, outcome.layout, outcome.dig);
  How how{say("tail, but no less than the step: deepest head - depth of the header"),
          {"buy.tail", "buy.head_depth", "dig.run_depth"},
          ""};
  if (end.over_edge) {
    derived(all, "buy.over_edge", say("End of a coil that lies over the edge"), kOverEdge, Q::length,
            {say("fixed, to be joined above the ground"), {}, say("our own, no source")});
    how = {say("tail + deepest head + what lies over the edge: nobody goes down to join"),
           {"buy.tail", "buy.head_depth", "buy.over_edge"},
           ""};
  }
  derived(all, "buy.coil_end", say("End of a coil, from the trench's head to its joint"), end.length(),
          Q::length, std::move(how));
}

void add_coils(Figures& all, const Plan& plan, const std::vector<double>& coils) {
  typed(all, "counting.pipe_spare", say("Spare coil pipe"), plan.pricing.counting.pipe_spare, Q::ratio);
  derived(all, "buy.coils", say("Coils to buy, {}", plan.wishes.pipe), static_cast<double>(coils.size()),
          Q::count, {say("one for each circuit placed"), {"layout.circuits_placed"}, ""});
  const double longest = coils.empty() ? 0 : *std::ranges::max_element(coils);
  derived(all, "buy.coil_length", say("Length of a coil, both ends included"), longest, Q::length,
          {say("(coil length, return pipe included, + 2 x end) x (1 + spare); of several the longest"),
           {"coil.length", "buy.coil_end", "counting.pipe_spare"},
           ""});
  derived(all, "buy.coil_pipe", say("Pipe in coils, {}", plan.wishes.pipe), sum(coils), Q::length,
          {say("sum over the circuits of coil and both ends x (1 + spare)"),
           {"buy.coils", "buy.coil_length"},
           ""});
}

void add_conduits(Figures& all, const Plan& plan, const Outcome& outcome, double length) {
  std::vector<std::string> from;
  for (const char* key : {"header.pipe", "run.pipe"})
    if (all.find(key) != nullptr) from.emplace_back(key);
  if (from.empty()) return;
  from.emplace_back("buy.allowance");
  derived(all, "buy.allowance", say("Allowance on header and run pipe"), kPipeAllowance, Q::ratio,
          {say("fixed, for cuts, joints and snaking"), {}, say("common practice, no source")});
  derived(all, "buy.header_pipe", say("Pipe for header and run, {}", header_and_run_sizes(plan, outcome)),
          length, Q::length,
          {say("supply and return as the loop has them, x (1 + allowance)"), std::move(from), ""});
}

}  // namespace

void add_pipe_to_buy(Figures& all, const Plan& plan, const Outcome& outcome) {
  const FlowWishes cut = flow_as_cut(plan, outcome.layout, outcome.dig);
  const JobDrawn job{outcome.layout, outcome.dig, plan.wishes, cut, outcome.flow.get()};
  const PipePieces pieces = pipe_pieces(job, plan.pricing.counting);
  double conduits = 0;
  for (const auto& [size, lengths] : pieces.conduits) conduits += sum(lengths);
  add_ends(all, plan, outcome);
  add_coils(all, plan, pieces.coils);
  add_conduits(all, plan, outcome, conduits);
  std::vector<std::string> from = {"buy.coil_pipe"};
  if (all.find("buy.header_pipe") != nullptr) from.emplace_back("buy.header_pipe");
  derived(all, "buy.counted_pipe", say("Pipe in all, as counted"), sum(pieces.coils) + conduits, Q::length,
          {say("coils + header and run"), std::move(from), ""});
}

}  // namespace underlawn::figures
