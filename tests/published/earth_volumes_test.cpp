// SPDX-License-Identifier: GPL-3.0-or-later
// Swell, shrinkage and heaps against handbook tables and worked examples.
#include <algorithm>
#include <numbers>

#include "dig/dig.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;
constexpr double kCubicFoot = kFoot * kFoot * kFoot;

const EarthPreset& preset(std::string_view name) {
  const auto& all = earth_presets();
  const auto at = std::find_if(all.begin(), all.end(), [&](const EarthPreset& p) { return p.name == name; });
  EXPECT_NE(at, all.end()) << name;
  return *at;
}

Ground ground_of(double swell, double shrinkage) {
  Ground g;
  g.swell = swell;
  g.shrinkage = shrinkage;
  return g;
}

// One trench, vertical, no bedding, of the given bank volume.
EarthWork dug(double bank, const Ground& ground) {
  Layout layout;
  Trench t;
  t.end = {bank, 0};
  t.width = t.depth = 1;
  layout.trenches = {t};
  Wishes wishes;
  wishes.bedding = 0;
  return make_dig(layout, wishes, ground).trenches.at(0);
}

struct UnitWeights {
  const char* preset;
  double loose, bank, compacted;  // lb per cubic yard
};

// Nunnally, Construction Methods and Management, Table 2-5 (seen as quoted in a homework thread at
// transtutors.com; its percents and factors also as quoted from KSU's CE 417 notes, ch. 2).
constexpr UnitWeights kTable25[] = {{"clay", 2310, 3000, 3750},
                                    {"common earth", 2480, 3100, 3450},
                                    {"blasted rock", 3060, 4600, 3550},
                                    {"sand and gravel", 2860, 3200, 3650}};

}  // namespace

TEST(PublishedEarth, PresetsFollowFromTheUnitWeightsOfTable25) {
  for (const UnitWeights& w : kTable25) {
    EXPECT_NEAR(preset(w.preset).swell, w.bank / w.loose - 1, 0.005) << w.preset;
    EXPECT_NEAR(preset(w.preset).shrinkage, 1 - w.bank / w.compacted, 0.005) << w.preset;
  }
}

// US Army FM 5-434, Table 1-1 (from memory): bank to loose and bank to compacted.
TEST(PublishedEarth, PresetsAgreeWithTheArmysFactors) {
  const std::tuple<const char*, double, double> rows[] = {{"sand", 1.11, 0.95},
                                                          {"common earth", 1.25, 0.90},
                                                          {"clay, tight", 1.43, 0.90},
                                                          {"blasted rock", 1.50, 1.30}};
  for (const auto& [name, loose, compacted] : rows) {
    EXPECT_NEAR(1 + preset(name).swell, loose, 1e-12) << name;
    EXPECT_NEAR(1 - preset(name).shrinkage, compacted, 1e-12) << name;
  }
}

// Nunnally ch. 2, worked example, seen in kg/m3 in notes for a course (scribd.com/doc/253007510: 1163 loose,
// 1661 bank, 2077 compacted: load factor 0.70, shrinkage factor 0.80): 1960 lb/yd3 loose, 2800 bank, 3500
// compacted: swell 43 %, shrinkage 20 %; 1 000 000 loose yards are 700 000 in bank and 560 000 compacted.
TEST(PublishedEarth, LooseBankAndCompactedGoTogetherAsInNunnallysExample) {
  const double swell = 2800.0 / 1960 - 1, shrinkage = 1 - 2800.0 / 3500;
  EXPECT_NEAR(swell, 0.43, 0.005);
  EXPECT_NEAR(shrinkage, 0.20, 1e-12);
  const EarthWork w = dug(700'000, ground_of(swell, shrinkage));
  EXPECT_NEAR(w.loose, 1'000'000, 1);
  // Filling all 700 000 again takes 700 000/0.8 of bank, 175 000 more than there is: 250 000 loose.
  EXPECT_NEAR(w.surplus_loose, -250'000, 1);
}

// Worked at spikevm.com: 200 cubic yards at 40 % swell are 280 loose.
TEST(PublishedEarth, FortyPercentSwellOfTwoHundredIsTwoHundredAndEighty) {
  EXPECT_NEAR(dug(200, ground_of(0.40, 0.10)).loose, 280, 1e-9);
}

// Nunnally ch. 2, worked example (from memory): 100 bank yd3 at 25 % swell, bank 30 ft long, 37 degrees: V
// 3375 ft3, B 24.4 ft, H 9.2 ft.
TEST(PublishedEarth, TheSpoilBankIsThatOfNunnallysExample) {
  const double loose = dug(100, ground_of(0.25, 0.10)).loose * 27 * kCubicFoot;
  EXPECT_NEAR(loose / kCubicFoot, 3375, 1e-6);
  const SpoilHeap heap = spoil_heap(loose, 30 * kFoot, 37 * std::numbers::pi / 180);
  EXPECT_NEAR(heap.width / kFoot, 24.4, 0.05);
  EXPECT_NEAR(heap.height / kFoot, 9.2, 0.05);
}

}  // namespace underlawn
