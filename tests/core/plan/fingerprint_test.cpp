// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/fingerprint.h"

#include <gtest/gtest.h>

#include "support/sample_plans.h"

namespace underlawn {

TEST(Fingerprint, IsTwelveHexDigitsAndTheSameForTheSamePlan) {
  const std::string mark = fingerprint(sample::half_acre());
  EXPECT_EQ(mark, fingerprint(sample::half_acre()));
  ASSERT_EQ(mark.size(), 12u);
  EXPECT_EQ(mark.find_first_not_of("0123456789abcdef"), std::string::npos);
}

TEST(Fingerprint, DoesNotHearOfWhatDigsTheSameHoles) {
  Plan plan = sample::half_acre();
  plan.title.owner = "Somebody else";
  plan.units = UnitSystem::metric;
  plan.accepted = {{"a", "b"}};
  plan.site.features[0].name = "Home";
  plan.site.features[0].note = "red roof";
  plan.site.lot[0].at.x = -0.0;
  EXPECT_EQ(fingerprint(plan), fingerprint(sample::half_acre()));
}

TEST(Fingerprint, HearsOfEachThingThatIsDugOtherwise) {
  const std::string before = fingerprint(sample::half_acre());
  const auto changed = [&](auto change) {
    Plan plan = sample::half_acre();
    change(plan);
    return fingerprint(plan) != before;
  };
  EXPECT_TRUE(changed([](Plan& p) { p.site.lot[2].at.x += 1e-9; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.lot[2].setback += 0.1; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.features[3].kind = FeatureKind::no_dig; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.features[3].points[0].y += 1; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.features[3].run_clearance = 0; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.features[8].depth = 1; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.features[8].may_cross = false; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.features[8].utility = UtilityKind::gas; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.entry.reset(); }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.north = 0; }));
  EXPECT_TRUE(changed([](Plan& p) { p.site.rules = {{FeatureKind::tree, 1, 1}}; }));
  EXPECT_TRUE(changed([](Plan& p) { p.ground.soil = SoilType::type_a; }));
  EXPECT_TRUE(changed([](Plan& p) { p.wishes.pipe = "1 in DR 11"; }));
  EXPECT_TRUE(changed([](Plan& p) { p.wishes.circuits = 3; }));
  EXPECT_TRUE(changed([](Plan& p) { p.wishes.coil_in_run = false; }));
  EXPECT_TRUE(changed([](Plan& p) { p.wishes.given = {{{0, 0}, {10, 0}}}; }));
}

}  // namespace underlawn
