// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/site.h"

#include <set>

#include "site/names.h"
#include "support/catalogues.h"
#include "support/sample_plans.h"

namespace underlawn {

TEST(Site, KindsHaveTheShapeTheyAreDrawnWith) {
  EXPECT_EQ(shape_of(FeatureKind::house), FeatureShape::area);
  EXPECT_EQ(shape_of(FeatureKind::no_dig), FeatureShape::area);
  EXPECT_EQ(shape_of(FeatureKind::easement), FeatureShape::area);
  EXPECT_EQ(shape_of(FeatureKind::utility), FeatureShape::line);
  EXPECT_EQ(shape_of(FeatureKind::well), FeatureShape::point);
  EXPECT_EQ(shape_of(FeatureKind::tree), FeatureShape::point);
}

TEST(Site, EveryKindAndEveryUtilityHasANameOfItsOwn) {
  std::set<std::string> names;
  for (int i = 0; i < kFeatureKinds; ++i) names.insert(kind_name(static_cast<FeatureKind>(i)));
  EXPECT_EQ(names.size(), static_cast<std::size_t>(kFeatureKinds));
  EXPECT_EQ(names.count("thing"), 0u);
  EXPECT_EQ(kind_name(FeatureKind::drain_field), "drain field");
  EXPECT_EQ(utility_name(UtilityKind::reclaimed), "reclaimed");
}

TEST(Site, AFeatureIsFoundByItsIdOnly) {
  const Site site = sample::half_acre().site;
  ASSERT_NE(find_feature(site, sample::well), nullptr);
  EXPECT_EQ(find_feature(site, sample::well)->kind, FeatureKind::well);
  EXPECT_EQ(find_feature(site, 999), nullptr);
}

TEST(Site, TheLotRingIsTheCornersInTheirOrder) {
  const Site site = sample::half_acre().site;
  EXPECT_EQ(lot_ring(site), sample::box_feet(0, 0, 150, 145.2));
  EXPECT_TRUE(lot_ring(Site{}).empty());
}

TEST(Site, AFeatureIsCalledByItsNameOrElseByKindAndId) {
  Feature f;
  f.id = 7;
  f.kind = FeatureKind::tree;
  EXPECT_EQ(display_name(f), "Tree 7");
  f.name = "Old oak";
  EXPECT_EQ(display_name(f), "Old oak");
}

TEST(Site, ANamelessUtilityIsCalledByWhatItCarries) {
  Feature f;
  f.id = 3;
  f.kind = FeatureKind::utility;
  f.utility = UtilityKind::gas;
  EXPECT_EQ(display_name(f), "Gas line 3");
}

TEST(Site, ANameThatOnlySaysWhatAThingIsIsSaidInTheLanguageSpoken) {
  Feature tank;
  tank.kind = FeatureKind::septic_tank;
  tank.name = "Septic tank";
  Feature line;
  line.kind = FeatureKind::utility;
  line.utility = UtilityKind::gas;
  line.name = "Gas line";
  EXPECT_EQ(display_name(tank), "Septic tank");
  EXPECT_EQ(kept_name(tank, "Old tank"), "Old tank");
  const SpeakHere here(&test::marking_language(UNDERLAWN_SPANISH));
  EXPECT_NE(display_name(tank), "Septic tank");
  EXPECT_NE(display_name(line), "Gas line");
  EXPECT_EQ(kept_name(tank, display_name(tank)), "Septic tank");
  EXPECT_EQ(kept_name(line, display_name(line)), "Gas line");
  tank.name = "Old tank";
  EXPECT_EQ(display_name(tank), "Old tank");
  tank.name = "House";  // of something else: typed
  EXPECT_EQ(display_name(tank), "House");
}

}  // namespace underlawn
