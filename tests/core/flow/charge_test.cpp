// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/charge.h"

namespace underlawn {
namespace {

const Seasons kSeasons = {-1, 12, 25};

ExpansionLoop glycol_loop() {
  ExpansionLoop loop;
  loop.loop = {{{"coil", 0.0215, 0.0267, 11, 900}, {"header", 0.034, 0.0422, 11, 60}}};
  loop.fluid = Fluid::propylene_glycol;
  loop.mass_fraction = 0.2;
  return loop;
}

}  // namespace

TEST(Charge, KeepsTheLeastPressureWithNothingToSpare) {
  ChargeWishes wishes;
  wishes.top_above_gauge = 2;
  const Charge c = least_charge(glycol_loop(), kSeasons, wishes).value();
  EXPECT_NEAR(std::min(c.winter, c.summer), 70e3 + 2 * 9806.65, 1);
  EXPECT_GT(c.winter, c.at_fill);  // cold: the bore shrinks more than the liquid
  EXPECT_LT(c.summer, c.at_fill);
  EXPECT_GE(c.highest, c.winter);
  EXPECT_FALSE(c.tank_needed);
  EXPECT_EQ(c.tank, 0);
  const Charge again = charge_to(glycol_loop(), kSeasons, wishes, c.at_fill).value();
  EXPECT_EQ(again.winter, c.winter);
  EXPECT_EQ(again.summer, c.summer);
}

TEST(Charge, ATankIsFoundWhereTheLoopAloneGoesTooHigh) {
  ChargeWishes wishes;
  wishes.most_at_bottom = 200e3;
  const Charge c = least_charge(glycol_loop(), kSeasons, wishes).value();
  EXPECT_TRUE(c.tank_needed);
  EXPECT_LE(c.highest, 200e3 + 1);
  EXPECT_GE(std::min({c.at_fill, c.winter, c.summer}), 70e3 - 1);
  wishes.tank = 1.01 * c.tank;
  EXPECT_TRUE(least_charge(glycol_loop(), kSeasons, wishes));
  wishes.tank = 0.9 * c.tank;
  const auto small = least_charge(glycol_loop(), kSeasons, wishes);
  EXPECT_EQ(small.error().code, "charge_too_high");
  EXPECT_THAT(small.error().advice, testing::HasSubstr("larger tank"));
}

TEST(Charge, ALoopChargedTooLowDrawsAVacuum) {
  const Charge c = charge_to(glycol_loop(), {-1, 5, 35}, {}, 10e3).value();
  EXPECT_TRUE(c.vacuum || c.summer < 0);
  EXPECT_GT(c.summer, -101325);
}

TEST(Charge, AnOpenLoopGivesInWinterWhatItDrawsInSummer) {
  const OpenLoop open = open_loop(glycol_loop(), kSeasons).value();
  EXPECT_GT(open.winter, 0);
  EXPECT_LT(open.summer, 0);
  EXPECT_NEAR(open.canister, open.winter - open.summer, 1e-12);
  EXPECT_EQ(open_loop(glycol_loop(), {12, 12, 12})->canister, 0);
}

TEST(Charge, RefusesWhatCannotBe) {
  const auto code = [](const auto& r) { return r ? std::string("ok") : r.error().code; };
  ChargeWishes wishes;
  EXPECT_EQ(code(least_charge(glycol_loop(), {12, 5, 25}, wishes)), "expansion_seasons");
  EXPECT_EQ(code(least_charge(glycol_loop(), {NAN, 5, 25}, wishes)), "expansion_seasons");
  EXPECT_EQ(code(least_charge(glycol_loop(), {-30, 5, 25}, wishes)), "fluid_temperature");
  EXPECT_EQ(code(least_charge({}, kSeasons, wishes)), "loop_empty");
  EXPECT_EQ(code(charge_to(glycol_loop(), kSeasons, wishes, -1)), "charge_pressure");
  wishes.most_at_bottom = 60e3;
  EXPECT_EQ(code(least_charge(glycol_loop(), kSeasons, wishes)), "charge_no_room");
  wishes.most_at_bottom = 71e3;
  EXPECT_EQ(code(least_charge(glycol_loop(), kSeasons, wishes)), "charge_too_high");
  wishes = {};
  wishes.tank_precharge = -1;
  EXPECT_EQ(code(least_charge(glycol_loop(), kSeasons, wishes)), "charge_wish");
  wishes = {};
  wishes.settling = NAN;
  EXPECT_EQ(code(least_charge(glycol_loop(), kSeasons, wishes)), "charge_wish");
  ExpansionLoop odd = glycol_loop();
  odd.creep.poisson = 0.5;
  EXPECT_EQ(code(least_charge(odd, kSeasons, wishes = {})), "pe_creep");
}

}  // namespace underlawn
