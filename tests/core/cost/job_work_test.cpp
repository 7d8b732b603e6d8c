// SPDX-License-Identifier: GPL-3.0-or-later
// What a job takes, worked by hand, none of it by the program's own functions.
#include "cost/job_work.h"

#include <gtest/gtest.h>

#include "cost/crew_calendar.h"
#include "cost/print_price.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

constexpr double kHour = 3600;
constexpr double kSeconds = 5;  // the clipper's grid over the trenches, 0.02 m3, in digging time
// m3 that two cuts hold together: the header over the head of a coil trench, half its width by half of that
// trench's; the run's end in the header, half by half. Both 1.5 m deep.
constexpr double kHeadShared = 0.3 * 0.5 * 1.5, kRunShared = 0.3 * 0.3 * 1.5;

// Two trenches of 30 m by 1 m by 2 m, 20 m apart, heads on a header of 20 m at x = 0; a run of 10 m from the
// left along y = 0, its trench and the header's 0.6 m by 1.5 m; a drive from x = -8 to -4 over the run; a
// gas line that the run meets.
Site site() {
  Site s;
  for (Point p : {Point{-60, -60}, Point{90, -60}, Point{90, 90}, Point{-60, 90}}) s.lot.push_back({p, 0});
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

struct Job {
  Layout laid = layout();
  Wishes wishes;
  Ground ground;  // swell 25 %, shrinkage 10 %, common earth: Nunnally
  DigWishes how;
  int joints = 12;

  Job() {
    wishes.run_width = 0.6;
    wishes.run_depth = 1.5;
    wishes.bedding = 0.1;
  }
  DigPlan dig() const { return make_dig(laid, wishes, ground, {}, how); }
  JobWork work() const {
    const DigOrder order = make_dig_order(site(), laid, dig(), wishes, ground, how);
    return job_work(site(), laid, dig(), wishes, joints,
                    make_calendar({site(), laid, order, ground, how, {}, joints, 2 * kHour}), {},
                    how.excavator);
  }
};

}  // namespace

// By points of a grid of 0.2 m, each asked by its distances alone.
TEST(JobWork, LawnIsAllThatTheOrderOfDiggingUses) {
  const Job job;
  const DigOrder order = make_dig_order(site(), job.laid, job.dig(), job.wishes, job.ground, job.how);
  ASSERT_FALSE(order.steps.empty());
  const auto near = [](const Polyline& line, Point p, double by) {
    for (std::size_t i = 1; i < line.size(); ++i)
      if (distance(Segment{line[i - 1], line[i]}, p) < by) return true;
    return false;
  };
  const double half = job.how.excavator.width / 2, truck = 2.591 / 2;
  const auto used = [&](Point p) {
    if (p.x > -8 && p.x < -4 && std::abs(p.y) < 50) return false;  // the drive
    for (const DigStep& s : order.steps) {
      // Two feet, a heap of 1 to 1.5 of the trench's earth swollen by a quarter, a metre: square at its ends.
      const double wide = s.width + 0.61 + 2 * std::sqrt(1.5 * 1.25 * s.width * s.depth) + 1;
      const Point a = s.line.front(), u = unit(s.line.back() - a);
      const double along = dot(p - a, u), aside = std::abs(cross(u, p - a));
      if (along > 0 && along < distance(a, s.line.back()) && aside < wide / 2) return true;
      if (near(s.line, p, half) || near(s.way, p, half) || near(s.truck_way, p, truck) ||
          near(s.fill_way, p, truck))
        return true;
      for (const Ring& heap : s.spoil)
        if (contains(heap, p)) return true;
    }
    return near(order.way_out, p, half) ||
           (order.laydown && distance(*order.laydown, p) < order.laydown_radius);
  };
  double sum = 0;
  for (double x = -59.9; x < 90; x += 0.2)
    for (double y = -59.9; y < 90; y += 0.2) sum += used({x, y}) ? 0.04 : 0;
  const JobWork work =
      job_work(site(), job.laid, job.dig(), job.wishes, job.joints,
               make_calendar({site(), job.laid, order, job.ground, job.how, {}, job.joints, 2 * kHour}),
               order, job.how.excavator);
  EXPECT_NEAR(work.torn.lawn / sum, 1, 0.02);
  EXPECT_GT(work.torn.lawn, job.work().torn.lawn);
}

TEST(JobWork, CountedByHand) {
  const JobWork w = Job().work();
  EXPECT_EQ(w.met_by_hand, 1);  // the gas line; a drive is pavement, 4 m x 0.6 m of it
  EXPECT_NEAR(w.torn.pavement, 2.4, 1e-3);
  EXPECT_EQ(w.joints, 12);
}

TEST(JobWork, LawnIsStripsWithTheirOverlapsOnceAndNoDrive) {
  // Heaps of 1.25 x the section at 1.5 to 1; 2 ft to the edge (29 CFR 1926.651(j)(2)) and a metre to work in.
  // The section is what is dug a metre: half of what two cuts share goes to each.
  const auto strip = [](double top, double section) {
    return top + 0.6096 + 2 * std::sqrt(1.5 * 1.25 * section) + 1;
  };
  const double wide = strip(1, 2 - kHeadShared / 2 / 30);
  const double header = strip(0.6, 0.9 - (2 * kHeadShared + kRunShared) / 2 / 20);
  const double run = strip(0.6, 0.9 - kRunShared / 2 / 10);
  const double corner = header / 2 * wide / 2;     // header over half of each trench's head
  const double run_corner = header / 2 * run / 2;  // header over the run's end
  const double lawn = 2 * 30 * wide + 20 * header + (10 - 4) * run - 2 * corner - run_corner;
  EXPECT_NEAR(Job().work().torn.lawn, lawn, 0.02);
}

TEST(JobWork, HoursWorkedByHand) {
  const CrewTime t = Job().work().time;
  // toolgrit.com: bucket x fill x efficiency / cycle, over 1 + swell for what lies in place. Ground:
  // 2 x 30 x 1 x 2 + 30 x 0.6 x 1.5 = 120 + 27, less what two cuts share.
  const double dug_per_hour = 0.1911 * 0.90 * 0.60 * 3600 / 20 / 1.25;  // 14.86 m3
  const double dug = 147 - 2 * kHeadShared - kRunShared;                // 146.415
  EXPECT_NEAR(t.trench, (60 - kHeadShared / 2) / dug_per_hour * kHour, kSeconds);
  EXPECT_NEAR(t.digging, dug / dug_per_hour * kHour + 1.5 * kHour, kSeconds);
  EXPECT_NEAR(t.coil, 240 * 50, 1e-9);  // 3 h 20 min
  EXPECT_NEAR(t.making, 2 * 240 * 50, 1e-9);
  EXPECT_NEAR(t.laying, 2 * 30 * 60, 1e-9);
  EXPECT_NEAR(t.joining, 30 * 30 + 12 * 480, 1e-9);
  EXPECT_NEAR(t.testing, 3 * kHour, 1e-9);
  // Loose: (dug - sand)/0.9 x 1.25; and the sand: 2 x 30 x 1 x 0.1 + 30 x 0.6 x 0.1, less what the run's has
  // in the header's. The header's lies half a metre over the coils'.
  const double filled_per_hour = 0.3823 * 0.60 * 3600 / 25, sand = 7.8 - 0.3 * 0.3 * 0.1;
  EXPECT_NEAR(t.filling, ((dug - sand) / 0.9 * 1.25 + sand) / filled_per_hour * kHour, kSeconds);
  EXPECT_EQ(t.hauling, 0);
  // Everything is dug at 11.40 h, the last coil no later; joints, test and filling in follow: 22.3 h, and a
  // night where the test would not end before evening.
  EXPECT_GE(t.open, t.digging + t.joining + t.testing + t.filling - 1e-6);
  EXPECT_EQ(t.days, static_cast<int>(std::ceil(t.open / (8 * kHour))));
}

// 1.5 to 1 on each side: 29 CFR 1926 Subpart P, Table B-1, type C. 30 x 2 x (1 + 1.5 x 2) each, and
// 30 x 1.5 x (0.6 + 1.5 x 1.5).
TEST(JobWork, FollowsTheSidesChosenForEachKindOfTrench) {
  Job job;
  const double dug_per_hour = 0.1911 * 0.90 * 0.60 * 3600 / 20 / 1.25;
  job.how.coil_sides = Sides::slope;
  // By the prismoid, at 0, 0.75 and 1.5 m: half the header's width by half the coil trench's.
  const auto prismoid = [](double top, double middle, double bottom) {
    return 1.5 / 6 * (top + 4 * middle + bottom);
  };
  double shared = 2 * prismoid(0.3 * 3.5, 0.3 * 2.375, 0.3 * 1.25) + kRunShared;
  EXPECT_NEAR(job.work().time.digging, (2 * 240 + 27 - shared) / dug_per_hour * kHour + 1.5 * kHour,
              kSeconds);
  EXPECT_NEAR(job.work().torn.pavement, 2.4, 1e-3);
  job.how.run_sides = Sides::slope;
  shared = 2 * prismoid(2.55 * 3.5, 1.425 * 2.375, 0.3 * 1.25) + prismoid(2.55 * 2.55, 1.425 * 1.425, 0.09);
  EXPECT_NEAR(job.work().time.digging, (2 * 240 + 128.25 - shared) / dug_per_hour * kHour + 1.5 * kHour,
              kSeconds);
  // The top of the run's trench is 0.6 + 2 x 1.5 x 1.5 m wide over the drive's 4 m.
  EXPECT_NEAR(job.work().torn.pavement, 4 * 5.1, 1e-3);
  EXPECT_GT(job.work().torn.lawn, Job().work().torn.lawn);
}

// A trench of 6 in is a chain trencher's, 40 m an hour.
TEST(JobWork, NarrowTrenchesAreNotDugByBucket) {
  Job job;
  for (Trench& t : job.laid.trenches) t.width = 0.1524;
  const double dug_per_hour = 0.1911 * 0.90 * 0.60 * 3600 / 20 / 1.25;
  const double header_and_run = 27 - 2 * 0.3 * 0.0762 * 1.5 / 2 - kRunShared;
  EXPECT_NEAR(job.work().time.digging, (2 * 30.0 / 40 + header_and_run / dug_per_hour + 1.5) * kHour,
              kSeconds);
}

// 20 a cubic metre are 20 x 0.9144^3 = 15.29 a cubic yard; 2.20 a metre 0.67 a foot; 1 a watt 3516.85 a ton
// of 12,000 Btu/h (NIST SP 811).
TEST(PrintPrice, IsForTheReadersUnits) {
  EXPECT_EQ(print_price(20, Quantity::volume, UnitSystem::metric), "20.00 per m³");
  EXPECT_EQ(print_price(20, Quantity::volume, UnitSystem::us), "15.29 per cu yd");
  EXPECT_EQ(print_price(2.2, Quantity::length, UnitSystem::us), "0.67 per ft");
  EXPECT_EQ(print_price(2.2, Quantity::length, UnitSystem::metric), "2.20 per m");
  EXPECT_EQ(print_price(1, Quantity::power, UnitSystem::us), "3516.85 per ton");
  EXPECT_EQ(print_price(30, Quantity::count, UnitSystem::us), "30.00");
}

TEST(JobWork, OfNothingThereIsNone) {
  Plan plan;
  EXPECT_FALSE(solve(plan).work.has_value());
  EXPECT_EQ(solve(plan).bill, nullptr);
}

TEST(JobWork, StandsAmongTheFiguresOfAPlan) {
  const Outcome o = solve(sample::half_acre());
  ASSERT_TRUE(o.work.has_value());
  EXPECT_NEAR(o.figures.at("cost.by_capacity").value, o.figures.at("cost.total").value / 10.551, 1e-6);
  EXPECT_EQ(o.figures.at("layout.lawn").value, o.work->torn.lawn);
  EXPECT_EQ(o.figures.at("layout.joints").value, o.work->joints);
  EXPECT_NEAR(o.figures.at("days.open").value * 8 * kHour, o.work->time.open, 1e-6);
  EXPECT_EQ(o.figures.at("days.paid").value, o.calendar->days_worked);
}

}  // namespace underlawn
