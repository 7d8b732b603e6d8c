// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/pipe_size.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

void add_size(Figures& all, const std::string& key, const std::string& of, const std::string& name) {
  const auto pipe = find_pipe(name);
  if (!pipe) return;
  const std::string label = of + " pipe " + pipe->name;
  derived(all, key + ".outside_diameter", label + ", outside diameter", pipe->outside_diameter,
          Quantity::diameter, {"table, by the pipe's name", {}, "ASTM D3035"});
  derived(all, key + ".minimum_wall", label + ", least wall", pipe->minimum_wall, Quantity::diameter,
          {"table, by the pipe's name", {}, "ASTM D3035"});
}

}  // namespace

void add_pipe(Figures& all, const Plan& plan) {
  add_size(all, "pipe.coil", "Coil", plan.wishes.pipe);
  add_size(all, "pipe.header", "Header and run", plan.wishes.header_pipe);
}

}  // namespace underlawn::figures
