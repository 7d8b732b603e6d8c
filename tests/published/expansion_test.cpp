// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/expansion.h"

#include "flow/charge.h"
#include "pipe/liquid_volume.h"

namespace underlawn {
namespace {

// One cubic metre of DR 11.
ExpansionLoop cubic_metre() {
  ExpansionLoop loop;
  loop.loop = {{{"pipe", 0.034, 0.04216, 11, 1 / (0.78539816339745 * 0.034 * 0.034)}}};
  return loop;
}

}  // namespace

// Water 999.703 kg/m3 at 10 C and 995.650 at 30 C (CRC Handbook): 4.07 L per m3; polyethylene 9e-5 per F
// lengthwise (PPI Handbook): free 3 x 1.62e-4 x 20 = 9.72 L, held lengthwise 2 x 1.45 x 1.62e-4 x 20 = 9.40
// L.
TEST(PublishedExpansion, PolyethyleneOutgrowsWater) {
  ExpansionLoop loop = cubic_metre();
  const VolumeChange held = volume_change(loop, 10, 30).value();
  EXPECT_NEAR(held.liquid * 1000, 4.07, 0.02);
  EXPECT_NEAR(held.bore * 1000, 9.40, 0.01);
  loop.hold = PipeHold::free;
  EXPECT_NEAR(volume_change(loop, 10, 30)->bore * 1000, 9.72, 0.01);
  EXPECT_GT(held.drawn(), 0);
}

// ASHRAE Handbook tables, propylene glycol 20 vol % (about 20.6 % by mass): 1024.32 kg/m3 at 5 C, 1019.01 at
// 20, 1010.16 at 40. Melinder's set, which we use, grows less in the cold: within a fifth of ASHRAE's.
TEST(PublishedExpansion, GlycolGrowsAsTheHandbookSays) {
  const auto growth = [](double from, double to) {
    return liquid_growth(Fluid::propylene_glycol, 0.206, from, to).value();
  };
  EXPECT_NEAR(growth(5, 20) / (1024.32 / 1019.01 - 1), 1, 0.2);
  EXPECT_NEAR(growth(20, 40) / (1019.01 / 1010.16 - 1), 1, 0.06);
}

// By hand, water, 10 C at the fill with an hour's creep (E 534e6 x 1.32), 20 C after half a year
// (E 534e6 x 4383^-0.075 x 1.073): taken per Pa 13.3e-9 + 0.48e-9 and 30.6e-9 + 0.48e-9; drawn
// 10 x 4.698e-4 - (999.703/998.207 - 1) = 3.20e-3. From 300 kPa: (300e3 x 13.76e-9 - 3.20e-3)/31.1e-9 = 30
// kPa.
TEST(PublishedExpansion, AClosedLoopLosesPressureInSummerByHand) {
  ChargeWishes wishes;
  wishes.settling = 3600;
  const Charge charge = charge_to(cubic_metre(), {10, 10, 20}, wishes, 300e3).value();
  EXPECT_NEAR(charge.summer, 30e3, 2e3);
}

}  // namespace underlawn
