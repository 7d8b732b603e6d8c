// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "pipe/pipe_size.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

void add_size(Figures& all, const std::string& key, const std::string& of, const std::string& name) {
  const auto pipe = find_pipe(name);
  if (!pipe) return;
  const std::string label = say("{} pipe {}", of, pipe->name);
  derived(all, key + ".outside_diameter", say("{}, outside diameter", label), pipe->outside_diameter,
          Quantity::diameter, {say("table, by the pipe's name"), {}, say("ASTM D3035")});
  derived(all, key + ".minimum_wall", say("{}, least wall", label), pipe->minimum_wall, Quantity::diameter,
          {say("table, by the pipe's name"), {}, say("ASTM D3035")});
}

}  // namespace

// What was asked for, which heat is reckoned with, and the sizes that the flow was solved with where they are
// others.
void add_pipe(Figures& all, const Plan& plan, const Outcome& outcome) {
  add_size(all, "pipe.coil", say("Coil"), plan.wishes.pipe);
  std::vector<std::string> laid;
  if (outcome.flow != nullptr) {
    laid.push_back(outcome.flow->sizes.run.name);
    for (const PipeSize& step : outcome.flow->sizes.steps)
      if (std::ranges::count(laid, step.name) == 0) laid.push_back(step.name);
  }
  const bool as_asked = laid.empty() || (laid.size() == 1 && laid.front() == plan.wishes.header_pipe);
  add_size(all, "pipe.header", as_asked ? say("Header and run") : say("Header and run, as asked for,"),
           plan.wishes.header_pipe);
  if (as_asked) return;
  for (std::size_t i = 0; i < laid.size(); ++i)
    add_size(all, "pipe.laid_" + std::to_string(i + 1), say("Header and run, as laid,"), laid[i]);
}

}  // namespace underlawn::figures
