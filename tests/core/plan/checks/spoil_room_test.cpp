// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::spoil_room;
using crafted::keys;

}  // namespace

TEST(SpoilRoom, ATrenchWithOneFreeSideIsEnough) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(spoil_room(plan, crafted::two_trenches(plan)).empty());
}

TEST(SpoilRoom, NamesTheTrenchThatIsHemmedIn) {
  const Plan plan = crafted::plan();
  const Outcome outcome =
      crafted::outcome(plan, {crafted::trench(1, {30, 40}, {60, 40}), crafted::trench(2, {30, 44}, {60, 44}),
                              crafted::trench(3, {30, 48}, {60, 48})});
  const auto found = spoil_room(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"spoil_room/trenches"});
  EXPECT_EQ(found[0].places, (std::vector<Polyline>{{{30, 44}, {60, 44}}}));
  // 4 m between middle lines less two half widths less 2 ft kept from the next edge.
  EXPECT_NEAR(found[0].measured, 4 - 1 - 0.6096, 1e-9);
  // The widest heap, with 25 % swell at 37 degrees, 2 ft from its own edge: that of trench 3, 30 x 1 x 1.4 m3
  // less its half of what the header trench, which ends on its middle line, digs of it too.
  const double met = 0.5 * plan.wishes.run_width / 2 * plan.wishes.run_depth, bank = 42 - met / 2;
  EXPECT_NEAR(found[0].required, 0.6096 + std::sqrt(4 * bank * 1.25 / (30 * std::tan(plan.ground.repose))),
              1e-9);
}

TEST(SpoilRoom, LotLineAndHouseHemInToo) {
  const Plan plan = crafted::plan();
  const auto beside = [&](double y) {
    const auto found =
        spoil_room(plan, crafted::outcome(plan, {crafted::trench(1, {40, y}, {60, y}),
                                                 crafted::trench(2, {40, y + 4}, {60, y + 4})}));
    return found.empty() ? std::string() : found[0].title;
  };
  EXPECT_EQ(beside(21.5), "No room for the spoil beside trench 1");
  EXPECT_EQ(beside(91), "");
  EXPECT_EQ(beside(95), "No room for the spoil beside trench 2");
}

}  // namespace underlawn
