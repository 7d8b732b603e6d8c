// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/figures/groups.h"
#include "site/clearances.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

void add_crossing(Figures& all, const Plan& plan, const Crossing& c, std::size_t number) {
  const Feature* f = find_feature(plan.site, c.feature_id);
  const std::string key = "crossing." + std::to_string(number);
  const std::string name =
      f != nullptr ? say("Crossing {}, {}", number, display_name(*f)) : say("Crossing {}", number);
  const std::string line = c.conduit == Conduit::header ? "header.length" : "run.length";
  std::vector<std::string> lines = {"site.features"};
  if (all.find(line) != nullptr) lines.insert(lines.begin(), line);
  derived(all, key + ".x", name + ", x", c.at.x, Q::length, {say("where the two lines meet"), lines, ""});
  derived(all, key + ".y", name + ", y", c.at.y, Q::length, {say("where the two lines meet"), lines, ""});
  derived(all, key + ".angle", say("{}, angle", name), c.angle, Q::angle,
          {say("between the two lines"), lines, ""});
  const bool utility = f != nullptr && f->kind == FeatureKind::utility;
  if (utility)
    derived(all, key + ".utility_depth", say("{}, depth to its top", name), c.utility_depth, Q::length,
            {say("as entered; to be proved by hand digging"),
             {"site.feature." + std::to_string(c.feature_id) + ".depth"},
             ""});
  derived(all, key + ".trench_depth", say("{}, depth of our trench", name), c.trench_depth, Q::length,
          {say("as asked"), {"dig.run_depth"}, ""});
  if (!utility) return;
  derived(all, key + ".hand_dig", say("{}, hand dig to each side along our trench", name), c.hand_dig,
          Q::length,
          {say("(tolerance zone 18 in + run width/2 x cos(angle))/sin(angle), at most 10 m"),
           {key + ".angle", "dig.run_width"},
           say("tolerance zone 18 in each side (laonecall.com); state law governs")});
}

}  // namespace

void add_crossings(Figures& all, const Plan& plan, const Outcome& outcome) {
  const auto& crossings = outcome.layout.crossings;
  derived(all, "layout.crossings", say("Crossings"), static_cast<double>(crossings.size()), Quantity::count,
          {say("places where header or run meets what must be crossed with care"),
           {"layout.circuits_placed", "site.features"},
           ""});
  for (std::size_t i = 0; i < crossings.size(); ++i) add_crossing(all, plan, crossings[i], i + 1);
}

}  // namespace underlawn::figures
