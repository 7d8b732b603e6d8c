// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/stake_out.h"

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

// The figures of the line or trench that the point belongs to.
std::vector<std::string> place_of(const Figures& all, const Layout& layout, const Tie& tie) {
  for (const Trench& t : layout.trenches) {
    const Polyline line = middle_line(t);
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (distance(line[i], tie.at) > kSameStake) continue;
      const std::string point = i == 0                 ? ".head"
                                : i + 1 == line.size() ? ".end"
                                                       : ".bend_" + std::to_string(i);
      return {"site.features", trench_key(t.number) + point + "_x", trench_key(t.number) + point + "_y"};
    }
  }
  const bool header = tie.key.starts_with("header") && all.find("header.length") != nullptr;
  const std::string line = header ? "header.length" : "run.length";
  return all.find(line) != nullptr ? std::vector<std::string>{"site.features", line}
                                   : std::vector<std::string>{"site.features"};
}

}  // namespace

void add_stake_out(Figures& all, const Outcome& outcome) {
  for (const Tie& tie : outcome.stake_out.ties) {
    const std::string key = "stake." + tie_part(tie);
    const std::string label = say("Stake {}", tie.point);
    const How how{say("taped in the plane from the house corner"), place_of(all, outcome.layout, tie), ""};
    derived(all, key + ".first_distance", say("{}, from corner {}", label, tie.first), tie.first_distance,
            Quantity::length, how);
    derived(all, key + ".second_distance", say("{}, from corner {}", label, tie.second), tie.second_distance,
            Quantity::length, how);
    derived(all, key + ".cut", say("{}, angle at which the tapes cut", label), tie.cut, Quantity::angle,
            {say("between the two tapes, 0 where a house hides a corner"),
             {key + ".first_distance", key + ".second_distance", "site.features"},
             ""});
  }
}

}  // namespace underlawn::figures
