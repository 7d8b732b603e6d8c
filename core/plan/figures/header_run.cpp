// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "dig/dig.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

constexpr const char* kTwoPipes = mark("2 x trench length: supply and return");

}  // namespace

void add_header_run(Figures& all, const Outcome& outcome) {
  const Layout& layout = outcome.layout;
  if (!layout.header.legs.empty()) {
    derived(all, "header.length", say("Header trench"), layout.header.length, Quantity::length,
            {say("sum of its legs, shortest found through the trench heads"),
             {"layout.circuits_placed", "site.routable_area"},
             ""});
    derived(all, "header.pipe", say("Header pipe"), 2 * layout.header.length, Quantity::length,
            {translated(kTwoPipes), {"header.length"}, ""});
  }
  if (layout.run.line.size() < 2) return;
  derived(all, "run.length", say("Supply run"), layout.run.length, Quantity::length,
          {say("shortest way found from the entry point to the header round all obstacles"),
           {"layout.circuits_placed", "site.routable_area", "site.features"},
           ""});
  derived(all, "run.shared", say("Stretch of the run in a coil trench"),
          stretch_in_supply_trenches(layout.run.line, layout.trenches), Quantity::length,
          {say("part of the run on the floor of a coil trench, dug once"),
           {"run.length", "layout.supply_trenches"},
           ""});
  derived(all, "run.pipe", say("Supply run pipe"), 2 * layout.run.length, Quantity::length,
          {translated(kTwoPipes), {"run.length"}, ""});
}

}  // namespace underlawn::figures
