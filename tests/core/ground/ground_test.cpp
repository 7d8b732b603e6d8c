// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/ground.h"

#include <set>

namespace underlawn {

TEST(Ground, SoilTypesAreNamedAsTheRuleNamesThem) {
  EXPECT_EQ(soil_name(SoilType::stable_rock), "stable rock");
  EXPECT_EQ(soil_name(SoilType::type_a), "Type A");
  EXPECT_EQ(soil_name(SoilType::type_b), "Type B");
  EXPECT_EQ(soil_name(SoilType::type_c), "Type C");
}

TEST(Ground, UnclassedSoilIsTakenAsTheWorst) {
  EXPECT_EQ(Ground{}.soil, SoilType::type_c);
}

TEST(Ground, TheFirstPresetIsWhatANewPlanStartsWith) {
  const EarthPreset& first = earth_presets().front();
  EXPECT_EQ(first.swell, Ground{}.swell);
  EXPECT_EQ(first.shrinkage, Ground{}.shrinkage);
  EXPECT_EQ(first.repose, Ground{}.repose);
}

TEST(Ground, EveryPresetHasItsOwnNameASourceAndAHeapThatStands) {
  std::set<std::string_view> names;
  for (const EarthPreset& p : earth_presets()) {
    EXPECT_TRUE(names.insert(p.name).second) << p.name;
    EXPECT_FALSE(p.source.empty());
    EXPECT_GT(p.swell, 0);
    EXPECT_LT(p.shrinkage, 1);
    EXPECT_GT(p.repose, 0.4);
    EXPECT_LT(p.repose, 0.8);
  }
}

}  // namespace underlawn
