// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/clearances.h"

#include <limits>

namespace underlawn {
namespace {

Feature of_kind(FeatureKind kind) {
  Feature f;
  f.id = 1;
  f.kind = kind;
  return f;
}

Feature tree_of(double trunk) {
  Feature f = of_kind(FeatureKind::tree);
  f.trunk_diameter = trunk;
  return f;
}

}  // namespace

TEST(Clearances, EveryKindHasItsOwnRowWithASource) {
  for (int i = 0; i < kFeatureKinds; ++i) {
    const auto kind = static_cast<FeatureKind>(i);
    const ClearanceDefault& row = clearance_default(kind);
    EXPECT_EQ(row.kind, kind);
    EXPECT_FALSE(row.source.empty());
    EXPECT_GE(row.trench, row.run) << kind_name(kind);
    for (const PublishedClearance& other : row.others) {
      EXPECT_GT(other.distance, 0) << kind_name(kind);
      EXPECT_FALSE(other.source.empty()) << kind_name(kind);
    }
  }
}

TEST(Clearances, TheTableRulesWhereNothingElseIsSaid) {
  const Feature house = of_kind(FeatureKind::house);
  EXPECT_DOUBLE_EQ(trench_clearance(Site{}, house), 10 * 0.3048);
  EXPECT_DOUBLE_EQ(run_clearance(Site{}, house), 2 * 0.3048);
  EXPECT_EQ(clearance_reason(Site{}, house), "common practice, no source");
}

TEST(Clearances, ThePlansRuleForAKindGoesBeforeTheTable) {
  Site site;
  site.rules = {{FeatureKind::well, 30, 12}};
  EXPECT_EQ(trench_clearance(site, of_kind(FeatureKind::well)), 30);
  EXPECT_EQ(run_clearance(site, of_kind(FeatureKind::well)), 12);
  EXPECT_EQ(trench_clearance(site, of_kind(FeatureKind::house)), 10 * 0.3048);
  EXPECT_THAT(clearance_reason(site, of_kind(FeatureKind::well)), testing::HasSubstr("this plan's rule"));
}

TEST(Clearances, AFeaturesOwnValueGoesBeforeAllAndEachOfTheTwoAlone) {
  Site site;
  site.rules = {{FeatureKind::drive, 5, 4}};
  Feature drive = of_kind(FeatureKind::drive);
  drive.trench_clearance = 0.5;
  EXPECT_EQ(trench_clearance(site, drive), 0.5);
  EXPECT_EQ(run_clearance(site, drive), 4);
  EXPECT_THAT(clearance_reason(site, drive),
              testing::HasSubstr("trench: typed for this one; run: this plan's"));
  drive.run_clearance = 0;
  EXPECT_EQ(run_clearance(site, drive), 0);
  EXPECT_EQ(clearance_reason(site, drive), "typed for this one");
}

TEST(Clearances, ATreesRootZoneGrowsWithItsTrunkAndTheFactor) {
  Site site;
  EXPECT_DOUBLE_EQ(trench_clearance(site, tree_of(0.254)), 18 * 0.254);
  EXPECT_DOUBLE_EQ(run_clearance(site, tree_of(0.254)), 18 * 0.254);
  site.root_zone_factor = 12;
  EXPECT_DOUBLE_EQ(trench_clearance(site, tree_of(0.254)), 12 * 0.254);
  EXPECT_THAT(clearance_reason(site, tree_of(0.254)), testing::HasSubstr("Vancouver WA"));
  site.root_zone_factor = 13;
  EXPECT_THAT(clearance_reason(site, tree_of(0.254)), testing::HasSubstr("factor typed"));
}

TEST(Clearances, NoValueBringsDiggingIntoTheRootZone) {
  Feature tree = tree_of(0.3);
  tree.trench_clearance = 1;
  EXPECT_DOUBLE_EQ(trench_clearance(Site{}, tree), 5.4);
  tree.trench_clearance = 9;
  EXPECT_EQ(trench_clearance(Site{}, tree), 9);
  EXPECT_DOUBLE_EQ(run_clearance(Site{}, tree), 5.4);
  EXPECT_THAT(clearance_reason(Site{}, tree), testing::HasSubstr("never less than the root zone"));
}

TEST(Clearances, NonsenseNeverMakesANegativeDistance) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  Feature house = of_kind(FeatureKind::house);
  house.trench_clearance = -3;
  house.run_clearance = nan;
  EXPECT_EQ(trench_clearance(Site{}, house), 0);
  EXPECT_EQ(run_clearance(Site{}, house), 0);
  EXPECT_EQ(root_zone_radius(Site{}, tree_of(nan)), 0);
  EXPECT_EQ(trench_clearance(Site{}, tree_of(-1)), 0);
}

TEST(Clearances, TheDefaultRootZoneIsTheFirstPublishedRule) {
  EXPECT_EQ(root_zone_rules().front().factor, Site{}.root_zone_factor);
}

}  // namespace underlawn
