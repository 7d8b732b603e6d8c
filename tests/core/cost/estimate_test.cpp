// SPDX-License-Identifier: GPL-3.0-or-later
// An estimate worked by hand, line by line, none of it by the program's own functions.
#include "cost/estimate.h"

#include <gtest/gtest.h>

#include <numbers>

#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

constexpr double kHour = 3600;

// Two trenches of 30 m by 1 m by 2 m, 20 m apart, heads on a header of 20 m at x = 0; a run of 10 m from the
// left along y = 0, its trench and the header's 0.6 m by 1.5 m; a drive from x = -8 to -4 over the run; a
// gas line that the run meets.
Site site() {
  Site s;
  Feature drive;
  drive.id = 1;
  drive.kind = FeatureKind::drive;
  drive.points = {{-8, -50}, {-4, -50}, {-4, 50}, {-8, 50}};
  Feature gas;
  gas.id = 2;
  gas.kind = FeatureKind::utility;
  gas.points = {{-2, -50}, {-2, 50}};
  s.features = {drive, gas};
  return s;
}

Layout layout() {
  Layout l;
  for (int i = 0; i < 2; ++i) {
    Trench t;
    t.number = i + 1;
    t.head = {0, 20.0 * i};
    t.end = {30, 20.0 * i};
    t.width = 1;
    t.depth = 2;
    t.coil.coil_length = 240;
    t.coil.trench_length = 30;
    l.trenches.push_back(t);
  }
  l.header = {{{{0, 0}, {0, 20}}}, 20};
  l.run = {{{-10, 0}, {0, 0}}, 10};
  l.crossings = {{1, Conduit::run, {-8, 0}}, {1, Conduit::run, {-4, 0}}, {2, Conduit::run, {-2, 0}}};
  return l;
}

Wishes wishes() {
  Wishes w;
  w.run_width = 0.6;
  w.run_depth = 1.5;
  w.bedding = 0.1;
  return w;
}

// Swell 25 %, shrinkage 10 %, common earth: Nunnally. Repose 45 degrees makes a heap of volume V a length L
// sqrt(4 V/L) wide and half of that high.
Ground ground() {
  Ground g;
  g.repose = std::numbers::pi / 4;
  return g;
}

Cost cost() {
  return make_cost(site(), layout(), make_dig(layout(), wishes(), ground()), wishes(), ground(), 2 * kHour);
}

double amount(const Estimate& e, const std::string& key) {
  for (const CostLine& l : e.lines)
    if (l.key == key) return l.amount;
  ADD_FAILURE() << key;
  return 0;
}

}  // namespace

TEST(Estimate, WorkedByHandLineByLine) {
  const Estimate e = cost().vertical;
  // Ground: 2 x 30 x 1 x 2 + 30 x 0.6 x 1.5 = 120 + 27.
  EXPECT_NEAR(amount(e, "digging"), 147, 1e-9);
  EXPECT_NEAR(e.sum_of("digging"), 147 * 20, 1e-9);
  // One gas line; the drive is pavement, 4 m x 0.6 m of it.
  EXPECT_EQ(amount(e, "hand_crossing"), 1);
  EXPECT_NEAR(amount(e, "pavement"), 2.4, 1e-3);
  EXPECT_NEAR(e.sum_of("pavement"), 2.4 * 90, 0.1);
  // Sand: 2 x 30 x 1 x 0.1 + 30 x 0.6 x 0.1.
  EXPECT_NEAR(amount(e, "bedding"), 7.8, 1e-9);
  EXPECT_NEAR(amount(e, "coil_pipe"), 480, 1e-9);
  // Two pipes in 30 m, and 5 %.
  EXPECT_NEAR(amount(e, "header_pipe"), 63, 1e-9);
  // Each pipe: one tee of three, one reducer of two, one at the house; there and back.
  EXPECT_EQ(amount(e, "joint"), 12);
  double sum = 0;
  for (const CostLine& l : e.lines) sum += l.amount * l.price;
  EXPECT_NEAR(e.total, sum, 1e-9);
}

TEST(Estimate, LawnIsStripsWithTheirOverlapsOnceAndNoDrive) {
  // Heaps of 1.25 x 2 and 1.25 x 0.9 m2 of section at 1.5 to 1: 2 sqrt(3.75) and 2 sqrt(1.6875) wide; 2 ft to
  // the edge (29 CFR 1926.651(j)(2)) and a metre to work in.
  const double wide = 1 + 0.6096 + 2 * std::sqrt(3.75) + 1, narrow = 0.6 + 0.6096 + 2 * std::sqrt(1.6875) + 1;
  const double corner = narrow / 2 * wide / 2;        // header over half of each trench's head
  const double run_corner = narrow / 2 * narrow / 2;  // header over the run's end
  const double lawn = 2 * 30 * wide + 20 * narrow + (10 - 4) * narrow - 2 * corner - run_corner;
  EXPECT_NEAR(amount(cost().vertical, "lawn"), lawn, 0.02);
}

TEST(Estimate, DaysWorkedByHand) {
  const CrewTime t = cost().vertical.time;
  // toolgrit.com: bucket x fill x efficiency / cycle, over 1 + swell for what lies in place.
  const double dug_per_hour = 0.1911 * 0.90 * 0.60 * 3600 / 20 / 1.25;  // 14.86 m3
  EXPECT_NEAR(t.trench, 60 / dug_per_hour * kHour, 1e-6);
  EXPECT_NEAR(t.digging, 147 / dug_per_hour * kHour + 1.5 * kHour, 1e-6);
  EXPECT_NEAR(t.coil, 240 * 50, 1e-9);  // 3 h 20 min
  EXPECT_NEAR(t.laying, 2 * 30 * 60, 1e-9);
  // Trenches are dug at 4.04 and 8.08 h. The first coil waits for its trench from 3.33 h on and lies at 4.54;
  // the second is made at 7.87 h, its trench dug at 8.08.
  EXPECT_NEAR(t.laid, 2 * 60 / dug_per_hour * kHour + 0.5 * kHour, 1e-6);
  EXPECT_NEAR(
      t.waiting,
      (60 / dug_per_hour - 12000 / 3600.0) * kHour + (60 / dug_per_hour - 0.5 - 12000 / 3600.0) * kHour,
      1e-6);
  EXPECT_NEAR(t.joining, 30 * 30 + 12 * 480, 1e-9);
  EXPECT_NEAR(t.testing, 3 * kHour, 1e-9);
  // Loose: (147 - 7.8)/0.9 x 1.25; and the sand.
  const double filled_per_hour = 0.3823 * 0.60 * 3600 / 25;
  EXPECT_NEAR(t.filling, (139.2 / 0.9 * 1.25 + 7.8) / filled_per_hour * kHour, 1e-6);
  // Everything is dug at 11.40 h, after the last coil lies; joints, test and filling in follow: 22.3 h.
  EXPECT_NEAR(t.open, t.digging + t.joining + t.testing + t.filling, 1e-6);
  EXPECT_NEAR(t.open / kHour, 22.3, 0.1);
  EXPECT_EQ(amount(cost().vertical, "crew_day"), 3);
}

// 1.5 to 1 on each side: 29 CFR 1926 Subpart P, Table B-1, type C. 30 x 2 x (1 + 1.5 x 2) each, and
// 30 x 1.5 x (0.6 + 1.5 x 1.5).
TEST(Estimate, OfSlopedSidesCountsTheSlopes) {
  const Cost c = cost();
  EXPECT_NEAR(amount(c.sloped, "digging"), 2 * 240 + 128.25, 1e-9);
  EXPECT_GT(c.sloped.total, c.vertical.total);
  EXPECT_GT(c.sloped.time.open, c.vertical.time.open);
  // The top of the run's trench is 0.6 + 2 x 1.5 x 1.5 m wide over the drive's 4 m.
  EXPECT_NEAR(amount(c.sloped, "pavement"), 4 * 5.1, 1e-3);
}

// A trench of 6 in is a chain trencher's, 40 m an hour.
TEST(Estimate, NarrowTrenchesAreNotDugByBucket) {
  Layout l = layout();
  for (Trench& t : l.trenches) t.width = 0.1524;
  const CrewTime t =
      make_cost(site(), l, make_dig(l, wishes(), ground()), wishes(), ground(), 0).vertical.time;
  EXPECT_NEAR(t.trench, 30.0 / 40 * kHour, 1e-9);
}

// 20 a cubic metre are 20 x 0.9144^3 = 15.29 a cubic yard; 2.20 a metre 0.67 a foot; 1 a watt 3516.85 a ton
// of 12,000 Btu/h (NIST SP 811).
TEST(Estimate, PricesAreForTheReadersUnits) {
  EXPECT_EQ(print_price(20, Quantity::volume, UnitSystem::metric), "20.00 per m³");
  EXPECT_EQ(print_price(20, Quantity::volume, UnitSystem::us), "15.29 per cu yd");
  EXPECT_EQ(print_price(2.2, Quantity::length, UnitSystem::us), "0.67 per ft");
  EXPECT_EQ(print_price(2.2, Quantity::length, UnitSystem::metric), "2.20 per m");
  EXPECT_EQ(print_price(1, Quantity::power, UnitSystem::us), "3516.85 per ton");
  EXPECT_EQ(print_price(30, Quantity::count, UnitSystem::us), "30.00");
}

TEST(Estimate, OfNothingIsNothing) {
  const Cost c = make_cost({}, {}, {}, {}, {}, 0);
  EXPECT_TRUE(c.vertical.lines.empty());
  EXPECT_EQ(c.vertical.total, 0);
  EXPECT_EQ(joints_of({}), 0);
}

TEST(Estimate, StandsAmongTheFiguresOfAPlan) {
  const Outcome o = solve(sample::half_acre());
  ASSERT_FALSE(o.cost.vertical.lines.empty());
  // Of the lines whose amounts are not rounded to what is sold.
  for (const char* key : {"digging", "hand_crossing", "lawn", "joint", "crew_day"})
    EXPECT_NEAR(o.figures.at(std::string("cost.") + key).value, o.cost.vertical.sum_of(key), 1e-6) << key;
  const double sum = o.figures.at("cost.total").value;
  EXPECT_GT(sum, o.cost.vertical.total);
  EXPECT_NEAR(o.figures.at("cost.by_capacity").value, sum / 10.551, 1e-6);
  EXPECT_NEAR(o.figures.at("layout.lawn").value, o.cost.vertical.torn.lawn, 1e-3);
  EXPECT_EQ(o.figures.at("layout.joints").value, o.cost.vertical.joints);
  EXPECT_NEAR(o.figures.at("days.open").value * 8 * kHour, o.cost.vertical.time.open, 1e-6);
  EXPECT_GT(o.figures.at("cost.sloped.total").value, sum);
}

}  // namespace underlawn
