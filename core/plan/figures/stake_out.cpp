// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/stake_out.h"

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

std::string corner_key(std::string tag) {
  for (char& c : tag)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return "stake.corner." + tag;
}

// The figures of where the point lies: of its trench, or its own.
std::vector<std::string> place_of(Figures& all, const Layout& layout, const Tie& tie) {
  for (const Trench& t : layout.trenches) {
    const Polyline line = middle_line(t);
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (distance(line[i], tie.at) > kSameStake) continue;
      const std::string point = i == 0                 ? ".head"
                                : i + 1 == line.size() ? ".end"
                                                       : ".bend_" + std::to_string(i);
      return {trench_key(t.number) + point + "_x", trench_key(t.number) + point + "_y"};
    }
  }
  const bool header = tie.key.starts_with("header") && all.find("header.length") != nullptr;
  const std::string line = header ? "header.length" : "run.length", key = "stake." + tie_part(tie);
  const How how{say("on the line that was found"),
                all.find(line) != nullptr ? std::vector<std::string>{line} : std::vector<std::string>{},
                all.find(line) != nullptr ? "" : say("the drawing")};
  derived(all, key + ".x", say("Stake {}, x", tie.point), tie.at.x, Quantity::length, how);
  derived(all, key + ".y", say("Stake {}, y", tie.point), tie.at.y, Quantity::length, how);
  return {key + ".x", key + ".y"};
}

std::vector<std::string> and_corner(std::vector<std::string> place, const std::string& tag) {
  place.push_back(corner_key(tag) + ".x");
  place.push_back(corner_key(tag) + ".y");
  return place;
}

}  // namespace

void add_stake_out(Figures& all, const Outcome& outcome) {
  for (const HouseCorner& corner : outcome.stake_out.corners) {
    const std::string key = corner_key(corner.tag);
    typed(all, key + ".x", say("House corner {}, x", corner.tag), corner.at.x, Quantity::length);
    typed(all, key + ".y", say("House corner {}, y", corner.tag), corner.at.y, Quantity::length);
  }
  for (const Tie& tie : outcome.stake_out.ties) {
    const std::string key = "stake." + tie_part(tie);
    const std::string label = say("Stake {}", tie.point);
    const std::vector<std::string> place = place_of(all, outcome.layout, tie);
    const std::string how = say("taped in the plane from the house corner");
    derived(all, key + ".first_distance", say("{}, from corner {}", label, tie.first), tie.first_distance,
            Quantity::length, {how, and_corner(place, tie.first), ""});
    derived(all, key + ".second_distance", say("{}, from corner {}", label, tie.second), tie.second_distance,
            Quantity::length, {how, and_corner(place, tie.second), ""});
    derived(all, key + ".cut", say("{}, angle at which the tapes cut", label), tie.cut, Quantity::angle,
            {say("between the two tapes, 0 where a house hides a corner"),
             and_corner(and_corner(place, tie.first), tie.second), ""});
  }
}

}  // namespace underlawn::figures
