// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/flow_wishes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

using namespace underlawn;

namespace {

bool says(const FlowWishes& w, const std::string& code) {
  const auto troubles = flow_troubles(w);
  return std::any_of(troubles.begin(), troubles.end(), [&](const Trouble& t) { return t.code == code; });
}

}  // namespace

TEST(FlowWishes, AreWellAsTheyStart) {
  for (const Trouble& t : flow_troubles({})) ADD_FAILURE() << t.message();
}

TEST(FlowWishes, RefuseAPumpWhoseHeadRises) {
  FlowWishes w;
  w.circulator.curve = {{0, 5, 50}, {3e-4, 6, 60}, {6e-4, 3, 70}};
  EXPECT_TRUE(says(w, "pump_head_rises"));
  w.circulator.curve[1].head = 4.5;
  EXPECT_FALSE(says(w, "pump_head_rises"));
  w.flush_cart.curve = {{0, 5, 50}, {3e-4, 5, 60}, {6e-4, 3, 70}};
  EXPECT_TRUE(says(w, "pump_head_rises")) << "level is not falling either";
  w.flush_cart.curve = {{0, 5, 50}, {3e-4, 4, 60}, {3e-4, 3, 70}};
  EXPECT_TRUE(says(w, "pump_flow_falls"));
  w.flush_cart.curve = {{0, 5, 50}, {3e-4, 4, 60}};
  EXPECT_TRUE(says(w, "pump_curve_points"));
  w.flush_cart.curve = {};
  w.circulator.curve = {};
  EXPECT_TRUE(flow_troubles(w).empty()) << "no pump is no trouble";
}

TEST(FlowWishes, RefuseAFluidThatFreezesOrThatNoTableCovers) {
  FlowWishes w;
  w.fluid = Fluid::water;
  const auto troubles = flow_troubles(w);
  ASSERT_EQ(troubles.size(), 1u);
  EXPECT_EQ(troubles[0].thing, "Coldest temperature of the water");
  w.fluid = Fluid::ethanol;
  w.mass_fraction = 0.61;
  EXPECT_TRUE(says(w, "fluid_concentration"));
  w.mass_fraction = std::numeric_limits<double>::quiet_NaN();
  EXPECT_TRUE(says(w, "fluid_concentration"));
}

TEST(FlowWishes, RefuseWhatIsNoNumberOrNoPipe) {
  const double nan = std::numeric_limits<double>::quiet_NaN(), much = std::numeric_limits<double>::infinity();
  for (double bad : {nan, much, -1.0}) {
    FlowWishes w;
    w.design_flow = w.capacity = w.tail = w.valves_k = w.heat_pump.head = w.hose_kit.flow = bad;
    w.purge_velocity = w.purge_volumes = w.most_imbalance = w.most_head = w.freeze_margin = bad;
    w.circulator.curve[2].head = bad;
    EXPECT_GE(flow_troubles(w).size(), 11u) << bad;
  }
  FlowWishes w;
  w.run_size = "a hose";
  w.header_sizes = {"1-1/4 in DR 11", "7 in"};
  const auto troubles = flow_troubles(w);
  ASSERT_EQ(troubles.size(), 2u);
  EXPECT_EQ(troubles[0].thing, "Header size");
  EXPECT_EQ(troubles[1].thing, "Run size");
}

TEST(FlowWishes, PumpCurveIsStraightBetweenItsPointsAndEndsAtNoHead) {
  const Circulator pump{"", {{0, 8, 60}, {4e-4, 6, 80}, {8e-4, 2, 100}}};
  EXPECT_DOUBLE_EQ(pump_head(pump, 0), 8);
  EXPECT_DOUBLE_EQ(pump_head(pump, 2e-4), 7);
  EXPECT_DOUBLE_EQ(pump_head(pump, 6e-4), 4);
  EXPECT_DOUBLE_EQ(pump_head(pump, 9e-4), 1);
  EXPECT_DOUBLE_EQ(pump_head(pump, 2e-3), 0);
  EXPECT_DOUBLE_EQ(pump_power(pump, 6e-4), 90);
  EXPECT_DOUBLE_EQ(pump_power(pump, 2e-3), 100);
}
