// SPDX-License-Identifier: GPL-3.0-or-later
// Clearances against the rules that print them. Most are written for bored loops; local codes govern.
#include <algorithm>

#include "site/clearances.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;
constexpr double kInch = kFoot / 12;

bool lists(FeatureKind kind, double feet, std::string_view source) {
  const auto& others = clearance_default(kind).others;
  return std::any_of(others.begin(), others.end(), [&](const PublishedClearance& c) {
    return std::abs(c.distance - feet * kFoot) < 1e-12 && c.source.find(source) != std::string_view::npos;
  });
}

double default_feet(FeatureKind kind) {
  return clearance_default(kind).trench / kFoot;
}

double root_zone_feet(double factor, double trunk_inches) {
  Site site;
  site.root_zone_factor = factor;
  Feature tree;
  tree.kind = FeatureKind::tree;
  tree.trunk_diameter = trunk_inches * kInch;
  return root_zone_radius(site, tree) / kFoot;
}

}  // namespace

// Texas 16 TAC 6.106 and Maine 144 CMR 232 ch. 6: property line 10 ft.
TEST(PublishedClearances, TheLotLineIsTenFeetAway) {
  EXPECT_NEAR(kDefaultSetback / kFoot, 10, 1e-12);
}

// Hanover Township PA (ecode360 13776143): sewage systems including the alternate drain field 25 ft, wells
// 100 ft, structures and rights-of-way 25 ft. Texas 16 TAC 6.106: septic 25 ft, sewer lines 10 ft.
TEST(PublishedClearances, SepticPartsStandTwentyFiveFeetAway) {
  EXPECT_NEAR(default_feet(FeatureKind::septic_tank), 25, 1e-12);
  EXPECT_NEAR(default_feet(FeatureKind::drain_field), 25, 1e-12);
  EXPECT_NEAR(default_feet(FeatureKind::reserve_field), 25, 1e-12);
  EXPECT_TRUE(lists(FeatureKind::well, 100, "Hanover"));
  EXPECT_TRUE(lists(FeatureKind::house, 25, "Hanover"));
  EXPECT_TRUE(lists(FeatureKind::easement, 25, "Hanover"));
  EXPECT_TRUE(lists(FeatureKind::utility, 10, "Texas 16 TAC 6.106"));
}

// Maine 144 CMR 232 ch. 6: leach field 50 ft (100 ft from 2000 gallons a day), septic tank 30 ft, private
// well 45 ft.
TEST(PublishedClearances, MainesDistancesAreListed) {
  EXPECT_NEAR(default_feet(FeatureKind::well), 45, 1e-12);
  EXPECT_TRUE(lists(FeatureKind::septic_tank, 30, "Maine"));
  EXPECT_TRUE(lists(FeatureKind::drain_field, 50, "Maine"));
  EXPECT_TRUE(lists(FeatureKind::drain_field, 100, "Maine"));
}

// Washington WAC 173-160-453: 100 ft from a water supply well. Nebraska 178 NAC 12-010: over 100 ft and over
// 1000 ft.
TEST(PublishedClearances, WellRulesOfOtherStatesAreListed) {
  EXPECT_TRUE(lists(FeatureKind::well, 100, "Washington"));
  EXPECT_TRUE(lists(FeatureKind::well, 100, "Nebraska"));
  EXPECT_TRUE(lists(FeatureKind::well, 1000, "Nebraska"));
}

// Louisiana one-call (laonecall.com): 18 in each side beyond the line where the law is silent.
TEST(PublishedClearances, TheHandDigZoneIsEighteenInches) {
  EXPECT_NEAR(kToleranceZone / kInch, 18, 1e-12);
  EXPECT_GE(clearance_default(FeatureKind::utility).run, kToleranceZone);
}

// Edina MN: 10 in of trunk, 15 ft. Vancouver WA VMC 20.170.100: 1 ft per inch. NC State Extension: 12 in, 15
// ft. Ventura CA: 11 in, 16.5 ft. Ionia MI: six times the trunk, 12 in, 6 ft.
TEST(PublishedClearances, RootZonesAreThoseOfTheTreeRules) {
  EXPECT_NEAR(root_zone_feet(18, 10), 15, 1e-9);
  EXPECT_NEAR(root_zone_feet(18, 11), 16.5, 1e-9);
  EXPECT_NEAR(root_zone_feet(15, 12), 15, 1e-9);
  EXPECT_NEAR(root_zone_feet(12, 10), 10, 1e-9);
  EXPECT_NEAR(root_zone_feet(6, 12), 6, 1e-9);
  for (double factor : {18.0, 15.0, 12.0, 6.0}) {
    const auto& rules = root_zone_rules();
    EXPECT_TRUE(
        std::any_of(rules.begin(), rules.end(), [&](const RootZoneRule& r) { return r.factor == factor; }));
  }
}

}  // namespace underlawn
