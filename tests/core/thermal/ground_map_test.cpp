// SPDX-License-Identifier: GPL-3.0-or-later
// The map of the ground against the continuous point source of Carslaw & Jaeger, Conduction of Heat in
// Solids, 2nd ed., 10.2, summed over the pipe and over every day's heat.
#include "thermal/ground_map.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "field/coil.h"
#include "thermal/simulate_given.h"

using namespace underlawn;
using std::numbers::pi;

namespace {

constexpr double kDay = 86400;
constexpr GroundSoil kSoil{1.3, 6.2e-7, 0.1};

Coil a_coil() {
  CoilRequest request;
  request.coil_length = 150;
  request.trench_length = 18;
  return solve_coil(request).value();
}

// Two coils side by side, and a run away from them.
PipesInGround a_field() {
  PipesInGround pipes;
  for (int i = 0; i < 2; ++i) pipes.coils.push_back({{0, 3.5 * i}, {18, 3.5 * i}, a_coil(), 0.4572, 1.75});
  pipes.pipes.push_back({{{0, 0}, {-9, -4}}, 1.5});
  return pipes;
}

struct Dot {
  Point at;
  double depth, ds;
};

std::vector<Dot> dots_of(const PipesInGround& pipes, double step) {
  std::vector<Dot> dots;
  const auto line = [&](Point a, Point b, double depth) {
    const int n = static_cast<int>(std::ceil(distance(a, b) / step));
    for (int i = 0; i < n; ++i) dots.push_back({a + (i + 0.5) / n * (b - a), depth, distance(a, b) / n});
  };
  for (const CoilInGround& c : pipes.coils) {  // the axes of these coils lie along x
    const double r = c.coil.loop_diameter / 2, a = c.coil.pitch / (2 * pi),
                 turn = std::ceil(2 * pi * r / step), dth = 2 * pi / turn;
    for (int i = 0; i < static_cast<int>(c.coil.loops * turn); ++i) {
      const double th = (i + 0.5) * dth;
      dots.push_back({c.head + Point{r + a * th - r * std::cos(th), -r * std::sin(th)}, c.depth,
                      std::hypot(a + r * std::sin(th), r * std::cos(th)) * dth});
    }
    line(c.head + Point{0, c.return_offset}, c.end + Point{0, c.return_offset}, c.depth);
  }
  for (const PipeInGround& p : pipes.pipes) line(p.line.a, p.line.b, p.depth);
  return dots;
}

// Winter out, summer in, more out than in, with cold spells.
std::vector<double> some_years(int years) {
  std::vector<double> heat;
  for (int d = 0; d < 365 * years; ++d)
    heat.push_back(1500 + 4000 * std::cos(2 * pi * (d - 20) / 365) + 1500 * std::sin(2 * pi * d / 9.0));
  return heat;
}

// Point sources along the pipe, `step` m apart: what 1 W/m from every metre has done to a place after each
// day.
class ByPoints {
 public:
  ByPoints(const PipesInGround& pipes, Point p, double depth, int days, double step)
      : pipe_(total_pipe(pipes)) {
    const auto dots = dots_of(pipes, step);
    for (int age = 1; age <= days; ++age) {
      const double reach = std::sqrt(4 * kSoil.diffusivity * age * kDay);
      double sum = 0;
      for (const Dot& d : dots) {
        const double rho = distance(p, d.at), r = std::hypot(rho, depth - d.depth);
        const double image = std::hypot(rho, depth + d.depth + 2 * kSoil.image_raise);
        sum += d.ds * (std::erfc(r / reach) / r - std::erfc(image / reach) / image);
      }
      after_.push_back(sum / (4 * pi * kSoil.conductivity));
    }
  }
  double fall(const std::vector<double>& heat, int day) const {
    double sum = 0;
    for (int ago = 0; ago <= day; ++ago)
      sum += heat[static_cast<std::size_t>(day - ago)] / pipe_ * (after_[ago + 1] - after_[ago]);
    return sum;
  }

 private:
  double pipe_;
  std::vector<double> after_{0};  // K, by days
};

double fall_by_map(const PipesInGround& pipes, const std::vector<double>& heat, Point p, double depth,
                   int day) {
  return ground_fall(GroundReach(pipes, kSoil).at(p, depth),
                     heat_by_node(heat, total_pipe(pipes), kSoil.diffusivity, day));
}

}  // namespace

TEST(GroundMap, AgreesWithPointSourcesSummedOverPipeAndDays) {
  const PipesInGround pipes = a_field();
  const std::vector<double> heat = some_years(3);
  const std::pair<Point, double> places[] = {{{9, 1.75}, 1.75}, {{9, 5.5}, 1.75}, {{20, 0}, 1.75},
                                             {{-4, -0.6}, 1.5}, {{9, 1.75}, 0.6}, {{9, 1.75}, 4},
                                             {{9, 0}, 2.6},     {{14, 9}, 1.75}};
  for (const auto& [p, depth] : places) {
    const ByPoints truth(pipes, p, depth, 731 + 200, 0.15);
    const std::vector<int> days = {40, 250, 364 + 20, 730 + 30, 730 + 200};
    double most = 0;  // so that a day on which the place passes through nothing asks no more than others
    for (int day : days) most = std::max(most, std::abs(truth.fall(heat, day)));
    for (int day : days)
      EXPECT_NEAR(fall_by_map(pipes, heat, p, depth, day), truth.fall(heat, day),
                  (p.x > 18 ? 0.03 : 0.02) * std::max(std::abs(truth.fall(heat, day)), 0.2 * most))
          << p.x << ' ' << p.y << ' ' << depth << " day " << day;
  }
}

TEST(GroundMap, InACoilItIsTheMeanAlongAPitch) {
  const PipesInGround pipes = a_field();
  const std::vector<double> heat = some_years(1);
  const double pitch = pipes.coils[0].coil.pitch;
  for (double across : {0.0, 0.25, -0.35}) {
    double truth = 0, mapped = 0;
    for (int i = 0; i < 8; ++i) {
      const Point p{8 + pitch * (i + 0.5) / 8, across};
      truth += ByPoints(pipes, p, 1.75, 41, 0.03).fall(heat, 40) / 8;
      mapped += fall_by_map(pipes, heat, p, 1.75, 40) / 8;
    }
    EXPECT_NEAR(mapped, truth, 0.08 * truth) << across;
  }
}

TEST(GroundMap, FarFromTheLoopTheGroundIsUndisturbed) {
  const std::vector<double> heat = some_years(25);
  for (int day : {0, 400, 25 * 365 - 1}) {
    EXPECT_NEAR(fall_by_map(a_field(), heat, {500, 300}, 1.75, day), 0, 1e-3) << day;
    EXPECT_NEAR(fall_by_map(a_field(), heat, {9, 0}, 100, day), 0, 0.05) << day;
  }
}

TEST(GroundMap, AtTheGroundItselfTheImageTakesAllAwayWithoutARaise) {
  const GroundReach reach(a_field(), {1.3, 6.2e-7, 0});
  const KernelTable heat = heat_by_node(some_years(2), total_pipe(a_field()), 6.2e-7, 500);
  EXPECT_NEAR(ground_fall(reach.at({9, 1.75}, 0), heat), 0, 1e-9);
}

TEST(GroundMap, OnThePipeItIsFinite) {
  const PipesInGround pipes = a_field();
  EXPECT_TRUE(std::isfinite(fall_by_map(pipes, some_years(1), pipes.pipes[0].line.a, 1.5, 100)));
  EXPECT_EQ(ground_fall(GroundReach({}, kSoil).at({0, 0}, 1), heat_by_node({100.0}, 1, 6e-7, 0)), 0);
}

TEST(GroundMap, AGridHoldsThePlacesItSays) {
  const GroundReach reach(a_field(), kSoil);
  const GroundGrid grid = make_ground_grid(reach, {{-2, -3}, {20, 8}}, 1.75, 2, 1000);
  ASSERT_EQ(grid.reach.size(), static_cast<std::size_t>(grid.columns * grid.rows));
  EXPECT_EQ(grid.columns, 12);
  EXPECT_EQ(grid.reach[static_cast<std::size_t>(2 * grid.columns + 3)], reach.at({4, 1}, 1.75));
  EXPECT_LE(make_ground_grid(reach, {{0, 0}, {1000, 1000}}, 1.75, 0.5, 100).reach.size(), 150u);
  EXPECT_TRUE(make_ground_grid(reach, {{0, 0}, {0, 0}}, 1.75, 0.5, 100).reach.empty());
  std::stop_source stop;
  stop.request_stop();
  EXPECT_EQ(make_ground_grid(reach, {{-2, -3}, {20, 8}}, 1.75, 2, 1000, stop.get_token()).columns, 0);
}

TEST(GroundMap, DaysHeatAddsUpToTheYears) {
  LoopModel loop;
  loop.response = {{0.1, 0.2}, {1e5, 1e7}};
  loop.pipe = 100;
  loop.fluid_resistance = 0.1;
  loop.heat_flow_rate = 1000;
  loop.ground.assign(kYearHours, 10.0);
  std::vector<double> load(kYearHours);
  for (int h = 0; h < kYearHours; ++h) load[h] = h % 24 < 6 ? 2400.0 + h : 0;
  const Simulation given = simulate_ground_load(loop, load, 2);
  ASSERT_EQ(given.daily_heat.size(), 730u);
  EXPECT_NEAR(given.daily_heat[366], (6 * 2400.0 + 6 * 24 + 15) / 24, 1e-9);

  SimulationInput in{
      loop, {std::vector<double>(kYearHours, 3000.0), std::vector<double>(kYearHours)}, generic_heat_pump()};
  in.years = 2;
  const Simulation run = simulate(in);
  ASSERT_EQ(run.daily_heat.size(), 730u);
  double sum = 0;
  for (int d = 365; d < 730; ++d) sum += run.daily_heat[static_cast<std::size_t>(d)] * kDay;
  EXPECT_NEAR(sum, run.years[1].from_ground, 1e-6 * sum);
  double day = 0;
  for (int h = 48; h < 72; ++h) day += run.first[static_cast<std::size_t>(h)].ground_heat / 24;
  EXPECT_NEAR(run.daily_heat[2], day, 1e-9 * day);
}
