// SPDX-License-Identifier: GPL-3.0-or-later
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

void add_pipe(Figures& all, const Plan& plan) {
  add_size(all, "pipe.coil", say("Coil"), plan.wishes.pipe);
  add_size(all, "pipe.header", say("Header and run"), plan.wishes.header_pipe);
}

}  // namespace underlawn::figures
