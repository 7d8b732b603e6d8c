// SPDX-License-Identifier: GPL-3.0-or-later
#include <numbers>
#include <set>

#include "base/say.h"
#include "base/wording.h"
#include "plan/bounded_number.h"
#include "plan/plan_troubles.h"
#include "plane/region.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr double kPi = std::numbers::pi;

void check_ring(std::vector<Trouble>& troubles, const Ring& ring, const std::string& name) {
  if (auto checked = checked_ring(ring, name); !checked) troubles.push_back(checked.error());
}

void check_count(std::vector<Trouble>& troubles, const Feature& f) {
  const std::size_t n = f.points.size();
  const std::string thing = say("Number of points of {}", display_name(f));
  const bool line = shape_of(f.kind) == FeatureShape::line;
  if (!line && n != 1)
    troubles.push_back(
        {"not_one_point", thing, std::to_string(n), say("exactly 1"), say("Place it again or delete it.")});
  if (line && n < 2)
    troubles.push_back({"line_too_short", thing, std::to_string(n), say("at least 2"),
                        say("Draw the line again or delete it.")});
  if (line && n > static_cast<std::size_t>(kMostRingPoints))
    troubles.push_back({"line_too_long", thing, std::to_string(n),
                        say("at most {}", std::to_string(kMostRingPoints)),
                        say("Draw the line with fewer points.")});
}

void check_shape(std::vector<Trouble>& troubles, const Plan& plan, const Feature& f) {
  const std::string name = display_name(f);
  if (shape_of(f.kind) == FeatureShape::area) return check_ring(troubles, f.points, name);
  check_count(troubles, f);
  check_places(troubles, plan, f.points, name);
}

void check_feature(std::vector<Trouble>& troubles, const Plan& plan, const Feature& f) {
  check_shape(troubles, plan, f);
  const std::string name = display_name(f);
  const std::string zero = say("Enter the distance digging has to keep, 0 for none.");
  if (f.trench_clearance)
    check_numbers(troubles, plan,
                  {{say("{} trench clearance", name), Quantity::length, *f.trench_clearance, 0, 1000, false,
                    zero, "trench clearance"}});
  if (f.run_clearance)
    check_numbers(troubles, plan,
                  {{say("{} run clearance", name), Quantity::length, *f.run_clearance, 0, 1000, false, zero,
                    "run clearance"}});
  if (f.kind == FeatureKind::tree)
    check_numbers(troubles, plan,
                  {{say("{} trunk diameter", name), Quantity::diameter, f.trunk_diameter, 0, 10, true,
                    say("Measure the trunk 4.5 ft (1.4 m) above the ground."), "trunk diameter"}});
  if (f.kind == FeatureKind::utility)
    check_numbers(troubles, plan,
                  {{say("{} depth", name), Quantity::length, f.depth, 0, 20, false,
                    say("Enter the depth from the ground to its top."), "utility depth"}});
}

void check_ids(std::vector<Trouble>& troubles, const Site& site) {
  std::set<int> seen;
  for (const Feature& f : site.features) {
    const std::string id = std::to_string(f.id);
    if (f.id <= 0)
      troubles.push_back({"id_not_positive", say("Id of {}", display_name(f)), id, say("1 or more"),
                          say("Give it a free id.")});
    if (!seen.insert(f.id).second)
      troubles.push_back({"id_twice", say("Id of {}", display_name(f)), id, say("used once in the plan"),
                          say("Give one of the two a free id.")});
  }
}

void check_setbacks(std::vector<Trouble>& troubles, const Plan& plan) {
  const auto& lot = plan.site.lot;
  for (std::size_t i = 0; i < lot.size(); ++i)
    check_numbers(
        troubles, plan,
        {{say("Setback of lot edge {}", std::to_string(i + 1)), Quantity::length, lot[i].setback, 0, 1000,
          false, say("Enter the distance kept free along the edge, 0 for none."), "setback"}});
}

void check_rules(std::vector<Trouble>& troubles, const Plan& plan) {
  for (const ClearanceRule& r : plan.site.rules) {
    const std::string kind = capitalised(kind_name(r.kind));
    const std::string advice = say("Enter the distance digging has to keep, 0 for none.");
    check_numbers(troubles, plan,
                  {{say("{} clearance rule for trenches", kind), Quantity::length, r.trench, 0, 1000, false,
                    advice, "trench clearance rule"},
                   {say("{} clearance rule for header and run", kind), Quantity::length, r.run, 0, 1000,
                    false, advice, "run clearance rule"}});
  }
}

void check_heights(std::vector<Trouble>& troubles, const Plan& plan) {
  const auto& heights = plan.site.heights;
  if (heights.size() > kMostHeights)
    troubles.push_back({"too_many_heights", say("Number of spot heights"), std::to_string(heights.size()),
                        say("at most {}", std::to_string(kMostHeights)),
                        say("Leave out those that tell least.")});
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const std::size_t before = troubles.size();
    const std::string name = say("Spot height {}", std::to_string(i + 1));
    check_places(troubles, plan, {heights[i].at}, name);
    check_numbers(troubles, plan,
                  {{name, Quantity::length, heights[i].height, -kHighest, kHighest, false,
                    say("Measure heights from a bench mark nearer to the lot."), "spot height"}});
    if (troubles.size() > before) return;  // one tells enough
  }
}

}  // namespace

std::vector<Trouble> site_troubles(const Plan& plan) {
  std::vector<Trouble> troubles;
  if (!plan.site.lot.empty()) check_ring(troubles, lot_ring(plan.site), say("Lot line"));
  check_setbacks(troubles, plan);
  check_ids(troubles, plan.site);
  for (const Feature& f : plan.site.features) check_feature(troubles, plan, f);
  if (plan.site.entry) check_places(troubles, plan, {plan.site.entry->at}, say("Entry point"));
  check_rules(troubles, plan);
  check_heights(troubles, plan);
  check_numbers(troubles, plan,
                {{mark("North"), Quantity::angle, plan.site.north, -2 * kPi, 2 * kPi, false,
                  say("Turn the north arrow.")},
                 {mark("Root zone factor"), Quantity::count, plan.site.root_zone_factor, 0, 100, false,
                  say("Enter the radius of the root zone in trunk diameters; 12 to 18 is usual.")}});
  return troubles;
}

}  // namespace underlawn
