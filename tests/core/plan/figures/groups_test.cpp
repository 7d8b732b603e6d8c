// SPDX-License-Identifier: GPL-3.0-or-later
// Each figure of a small plan, worked out again from what was typed without the program's own formulas.
#include <gtest/gtest.h>

#include "plan/figures/figures.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

constexpr double kPi = 3.14159265358979323846;

// 100 m square lot; two trenches of 30 m, 1 m wide, 1.4 m deep, 4 m apart; run of 28.284 m from (50, 20) to
// (30, 40); header of 4 m; run and header 0.6 m wide and 1.2 m deep; Type B soil, swell 30 %, shrinkage 10 %,
// bedding 0.2 m.
Plan small_plan() {
  Plan plan = crafted::plan();
  plan.ground.soil = SoilType::type_b;
  plan.ground.swell = 0.3;
  plan.ground.shrinkage = 0.1;
  plan.ground.repose = kPi / 4;
  plan.wishes.bedding = 0.2;
  plan.wishes.unknown = CoilUnknown::coil_length;
  plan.wishes.pitch = 0.4;
  plan.wishes.trench_length = 30;
  Feature tree = crafted::feature(2, FeatureKind::tree, {{10, 90}});
  tree.name = "Ash";
  tree.trunk_diameter = 0.4;
  plan.site.root_zone_factor = 12;
  plan.site.features.push_back(tree);
  Feature line = crafted::feature(3, FeatureKind::utility, {{0, 30}, {100, 30}});
  line.depth = 0.7;
  plan.site.features.push_back(line);
  return plan;
}

// The length of one loop by summing chords of the curve itself.
double loop_by_chords(double diameter, double pitch) {
  const int n = 200'000;
  double sum = 0;
  double x0 = diameter / 2, y0 = 0;
  for (int i = 1; i <= n; ++i) {
    const double th = 2 * kPi * i / n;
    const double x = pitch * th / (2 * kPi) + diameter / 2 * std::cos(th);
    const double y = diameter / 2 * std::sin(th);
    sum += std::hypot(x - x0, y - y0);
    x0 = x, y0 = y;
  }
  return sum;
}

Outcome small_outcome(const Plan& plan) {
  Coil coil = *solve_coil({CoilUnknown::coil_length, 0.9, 0.4, 0, 30, 0.02667});
  Outcome outcome = crafted::two_trenches(plan);
  for (Trench& t : outcome.layout.trenches) t.coil = coil;
  outcome.coil = coil;
  outcome.layout.buildable = {{{{3, 3}, {97, 3}, {97, 97}, {3, 97}}, {}}};
  outcome.layout.direction = 0;
  outcome.layout.fits = 5;
  outcome.layout.costs = {{{Restriction::Kind::setback, 2, 0}, 3}, {{Restriction::Kind::feature, -1, 2}, 1}};
  Crossing crossing;
  crossing.feature_id = 3;
  crossing.at = {40, 30};
  crossing.angle = kPi / 4;
  crossing.utility_depth = 0.7;
  crossing.trench_depth = 1.2;
  crossing.hand_dig = 1.0;
  outcome.layout.crossings = {crossing};
  return outcome;
}

class GroupsTest : public testing::Test {
 protected:
  double value(const std::string& key) const {
    const Figure* f = figures.find(key);
    EXPECT_NE(f, nullptr) << key;
    return f != nullptr ? f->value : std::nan("");
  }
  void expect(const std::string& key, double wanted) const {
    EXPECT_NEAR(value(key), wanted, 1e-9 * std::max(1.0, std::abs(wanted))) << key;
  }
  // What is counted with another cut; how much that is, is the business of the cuts' own test.
  double met(const std::string& key, const std::string& what) const {
    const std::string parts[] = {"dig.trench.1", "dig.trench.2", "dig.header", "dig.run"};
    double sum = 0;
    for (const std::string& part : parts)
      if (key == part || key == "dig.total")
        if (const Figure* f = figures.find(part + what); f != nullptr) sum += f->value;
    return sum;
  }
  double dug_in_the_largest(double whole) const {
    return whole - std::min(met("dig.trench.1", ".bank_met_volume"), met("dig.trench.2", ".bank_met_volume"));
  }
  // bank, bedding -> the rest, with 30 % swell and 10 % shrinkage; less what is counted with another cut.
  void expect_earth(const std::string& key, double bank, double bedding) const {
    bank -= met(key, ".bank_met_volume");
    bedding -= met(key, ".bedding_met_volume");
    expect(key + ".bank_volume", bank);
    expect(key + ".bedding_volume", bedding);
    expect(key + ".loose_volume", 1.3 * bank);
    expect(key + ".backfill_volume", bank - bedding);
    expect(key + ".surplus_volume", 1.3 * (bank - (bank - bedding) / 0.9));
  }

  void dig_again() {
    outcome.dig = make_dig(outcome.layout, plan.wishes, plan.ground, {}, plan.dig);
    figures = make_figures(plan, outcome);
  }

  Plan plan = small_plan();
  Outcome outcome = small_outcome(plan);
  Figures figures = make_figures(plan, outcome);
};

}  // namespace

TEST_F(GroupsTest, Site) {
  expect("site.lot_corners", 4);
  expect("site.lot_area", 10'000);
  expect("site.lot_perimeter", 400);
  expect("site.edge.3.length", 100);
  expect("site.edge.3.setback", 3);
  expect("site.buildable_area", 94 * 94);
  expect("site.routable_area", 0);
  expect("site.features", 3);
  expect("site.north", kPi / 2);
  expect("site.root_zone_factor", 12);
  expect("site.feature.2.trunk_diameter", 0.4);
  expect("site.feature.2.root_zone", 4.8);
  expect("site.feature.2.trench_clearance", 4.8);
  expect("site.feature.2.run_clearance", 4.8);
  expect("site.feature.3.depth", 0.7);
  expect("site.feature.3.trench_clearance", 3);
  expect("site.feature.1.run_clearance", 1);
}

TEST_F(GroupsTest, Coil) {
  const double loops = (30 - 0.9) / 0.4;
  const double loop = loop_by_chords(0.9, 0.4);
  expect("coil.loop_diameter", 0.9);
  expect("coil.pitch", 0.4);
  expect("coil.trench_length", 30);
  expect("coil.loops", loops);
  EXPECT_NEAR(value("coil.loop_length"), loop, 1e-7);
  expect("coil.loop_length_by_sum", kPi * 0.9 + 0.4);
  EXPECT_NEAR(value("coil.loop_pipe"), loops * loop, 1e-5);
  expect("coil.return_pipe", 30);
  EXPECT_NEAR(value("coil.length"), loops * loop + 30, 1e-5);
  expect("coil.loop_pipe_by_sum", loops * (kPi * 0.9 + 0.4));
  EXPECT_NEAR(value("coil.pipe_per_trench"), (loops * loop + 30) / 30, 1e-7);
}

TEST_F(GroupsTest, Pipe) {
  expect("pipe.coil.outside_diameter", 1.050 * 0.0254);
  expect("pipe.coil.minimum_wall", 0.095 * 0.0254);
  expect("pipe.header.outside_diameter", 1.660 * 0.0254);
  expect("pipe.header.minimum_wall", 0.151 * 0.0254);
}

TEST_F(GroupsTest, Layout) {
  expect("layout.circuits_wanted", 2);
  expect("layout.circuits_placed", 2);
  expect("layout.circuits_fit", 5);
  expect("layout.supply_trenches", 0);
  expect("layout.field_trenches", 2);
  expect("layout.spacing", 4);
  expect("layout.end_gap", 2);
  expect("layout.least_spacing", 4);
  expect("layout.direction", 0);
  expect("layout.bearing", kPi / 2);  // drawn to the right with north up: due east
  expect("layout.cost.edge.3", 3);
  expect("layout.cost.feature.2", 1);
  expect("layout.crossings", 1);
}

TEST_F(GroupsTest, Trenches) {
  expect("trench.2.head_x", 30);
  expect("trench.2.head_y", 44);
  expect("trench.2.end_x", 60);
  expect("trench.2.end_y", 44);
  expect("trench.2.length", 30);
  expect("trench.2.width", 1);
  expect("trench.2.depth", 1.4);
  expect("trench.2.pitch", 0.4);
  expect("trench.2.loops", (30 - 0.9) / 0.4);
  expect("trench.2.return_pipe", 30);
  EXPECT_NEAR(value("trench.2.loop_pipe"), (30 - 0.9) / 0.4 * loop_by_chords(0.9, 0.4), 1e-5);
  EXPECT_NEAR(value("trench.2.coil_length"), (30 - 0.9) / 0.4 * loop_by_chords(0.9, 0.4) + 30, 1e-5);
}

TEST_F(GroupsTest, ATrenchWithACoilOfItsOwnSaysSo) {
  outcome.layout.trenches[1].coil.pitch = 0.5;
  const Figures again = make_figures(plan, outcome);
  EXPECT_EQ(again.at("trench.2.pitch").value, 0.5);
  EXPECT_NE(again.at("trench.2.pitch").method, again.at("trench.1.pitch").method);
}

TEST_F(GroupsTest, HeaderAndRun) {
  expect("header.length", 4);
  expect("header.pipe", 8);
  expect("run.length", std::sqrt(800.0));
  expect("run.shared", 0);
  expect("run.pipe", 2 * std::sqrt(800.0));
}

TEST_F(GroupsTest, Crossings) {
  expect("crossing.1.x", 40);
  expect("crossing.1.y", 30);
  expect("crossing.1.angle", kPi / 4);
  expect("crossing.1.utility_depth", 0.7);
  expect("crossing.1.trench_depth", 1.2);
  expect("crossing.1.hand_dig", 1.0);
}

// Tails of 0.6 m at both ends of a coil; nothing is sold yet, so nothing is rounded up.
TEST_F(GroupsTest, PipeToBuy) {
  const double coil = (30 - 0.9) / 0.4 * loop_by_chords(0.9, 0.4) + 30 + 1.2;
  expect("buy.coils", 2);
  EXPECT_NEAR(value("buy.coil_length"), coil, 1e-5);
  EXPECT_NEAR(value("buy.coil_pipe"), 2 * coil, 1e-5);
  expect("buy.allowance", 0.05);
  expect("buy.header_pipe", 1.05 * (8 + 2 * std::sqrt(800.0)));
  EXPECT_NEAR(value("buy.counted_pipe"), 2 * coil + 1.05 * (8 + 2 * std::sqrt(800.0)), 1e-5);
  EXPECT_EQ(figures.find("buy.pipe"), nullptr);
}

TEST_F(GroupsTest, EarthWithVerticalSides) {
  const double run = std::sqrt(800.0);
  expect("run.dug_length", run);
  expect("dig.length", 2 * 30 + 4 + run);
  expect("dig.coil_slope", 0);
  expect("dig.run_slope", 0);
  expect_earth("dig.trench.1", 30 * 1 * 1.4, 30 * 1 * 0.2);
  expect_earth("dig.header", 4 * 0.6 * 1.2, 4 * 0.6 * 0.2);
  expect_earth("dig.run", run * 0.6 * 1.2, run * 0.6 * 0.2);
  expect_earth("dig.total", 2 * 42 + (4 + run) * 0.72, 2 * 6 + (4 + run) * 0.12);
  // The header's half width by half of the coil trench's, 1.2 m deep, half to each.
  EXPECT_NEAR(value("dig.trench.2.bank_met_volume"), 0.3 * 0.5 * 1.2 / 2, 1e-3);
  // The header's sand lies in the backfill over the coils'.
  EXPECT_EQ(figures.find("dig.trench.2.bedding_met_volume"), nullptr);
  // R = 45 degrees: B = sqrt(4 V/L), H = B/2.
  const double heap = std::sqrt(4 * 1.3 * dug_in_the_largest(42) / 30);
  expect("dig.spoil_width", heap);
  expect("dig.spoil_height", heap / 2);
}

TEST_F(GroupsTest, EarthWithTheSlopeOfTypeB) {
  plan.dig.coil_sides = plan.dig.run_sides = Sides::slope;
  dig_again();
  const double run = std::sqrt(800.0);
  expect("dig.slope", 1);
  expect("dig.top_width", 1 + 2 * 1.4);
  expect_earth("dig.trench.2", 30 * 1.4 * (1 + 1.4), 30 * 0.2 * (1 + 0.2));
  expect_earth("dig.header", 4 * 1.2 * (0.6 + 1.2), 4 * 0.2 * (0.6 + 0.2));
  expect_earth("dig.run", run * 1.2 * (0.6 + 1.2), run * 0.2 * (0.6 + 0.2));
  expect_earth("dig.total", 2 * 100.8 + (4 + run) * 2.16, 2 * 7.2 + (4 + run) * 0.16);
  const double heap = std::sqrt(4 * 1.3 * dug_in_the_largest(100.8) / 30);
  expect("dig.spoil_width", heap);
  expect("dig.spoil_height", heap / 2);
}

// Sides are chosen for each kind of trench, and there is one total.
TEST_F(GroupsTest, EarthWithHeaderAndRunAloneLaidBack) {
  plan.dig.run_sides = Sides::slope;
  dig_again();
  const double run = std::sqrt(800.0);
  expect("dig.coil_slope", 0);
  expect("dig.run_slope", 1);
  expect_earth("dig.trench.2", 30 * 1 * 1.4, 30 * 1 * 0.2);
  expect_earth("dig.run", run * 1.2 * (0.6 + 1.2), run * 0.2 * (0.6 + 0.2));
  expect_earth("dig.total", 2 * 42 + (4 + run) * 2.16, 2 * 6 + (4 + run) * 0.16);
}

TEST_F(GroupsTest, Wishes) {
  expect("dig.trench_width", 1);
  expect("dig.trench_depth", 1.4);
  expect("dig.run_width", 0.6);
  expect("dig.run_depth", 1.2);
  expect("dig.bedding", 0.2);
  expect("ground.swell", 0.3);
  expect("ground.shrinkage", 0.1);
  expect("ground.repose", kPi / 4);
  expect("ground.frost_depth", 0);
}

TEST_F(GroupsTest, StakesAreTapedFromTheTaggedHouseCorners) {
  ASSERT_FALSE(outcome.stake_out.ties.empty());
  for (const Tie& tie : outcome.stake_out.ties) {
    if (tie.point != "2 end") continue;
    for (const HouseCorner& c : outcome.stake_out.corners) {
      const double away = std::hypot(c.at.x - 60, c.at.y - 44);
      if (c.tag == tie.first) expect("stake.2-end.first_distance", away);
      if (c.tag == tie.second) expect("stake.2-end.second_distance", away);
    }
    EXPECT_GT(value("stake.2-end.cut"), 0);
    return;
  }
  FAIL() << "no tie of trench 2's end";
}

}  // namespace underlawn
