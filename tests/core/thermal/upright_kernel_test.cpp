// SPDX-License-Identifier: GPL-3.0-or-later
// Upright coils against the point-source integral summed directly along the pipe, and against flat ones.
#include "thermal/upright_kernel.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "field/straight.h"
#include "thermal/coil_kernel.h"
#include "thermal/loop_geometry.h"

namespace underlawn {
namespace {

using std::numbers::pi;

constexpr double kHour = 3600, kDay = 86400, kYear = 365.25 * kDay;

Coil coil_of(double diameter, double pitch, double loops, bool with_return) {
  Coil coil;
  coil.pattern = CoilPattern::upright_coil;
  coil.return_on_top = true;
  coil.loop_diameter = diameter;
  coil.pitch = pitch;
  coil.loops = loops;
  coil.trench_length = loops * pitch + diameter;
  double sum = 0;  // length by brute force, so that this test leans on nothing
  const int n = 20000;
  for (int i = 0; i < n; ++i) {
    const double th = (i + 0.5) * 2 * pi / n, c = pitch / (2 * pi), r = diameter / 2;
    sum += std::hypot(c + r * std::sin(th), r * std::cos(th)) * 2 * pi / n;
  }
  coil.loop_pipe = sum * loops;
  coil.return_pipe = with_return ? coil.trench_length : 0;
  coil.coil_length = coil.loop_pipe + coil.return_pipe;
  return coil;
}

UprightInGround standing(const Coil& coil, double y = 0) {
  return {{0, y}, {1, y}, coil, 1.8, 0.01335};
}

struct Dot {
  double x, y, z, ds;
};

std::vector<Dot> dots_along(const UprightInGround& c, double step) {
  std::vector<Dot> dots;
  const double r = c.coil.loop_diameter / 2, a = c.coil.pitch / (2 * pi);
  const int n = static_cast<int>(c.coil.loop_pipe / step);
  const double dth = 2 * pi * c.coil.loops / n;
  double laid = 0;
  for (int i = 0; laid < c.coil.loop_pipe; ++i) {
    const double th = (i + 0.5) * dth;
    laid += std::hypot(a + r * std::sin(th), r * std::cos(th)) * dth;
    dots.push_back({r + a * th - r * std::cos(th), c.head.y, c.depth - r + r * std::sin(th),
                    std::hypot(a + r * std::sin(th), r * std::cos(th)) * dth});
  }
  const int m = static_cast<int>(c.coil.return_pipe / step);
  const double back = c.coil.return_on_top ? c.depth - c.coil.loop_diameter : c.depth;
  for (int i = 0; i < m; ++i)
    dots.push_back(
        {(i + 0.5) * c.coil.return_pipe / m, c.head.y + 2 * c.pipe_radius, back, c.coil.return_pipe / m});
  return dots;
}

// Carslaw & Jaeger 10.2, source less image, target on the wall.
double direct_response(const std::vector<Dot>& dots, double radius, double k, double a, double t,
                       double raise) {
  double sum = 0, pipe = 0;
  const double reach = std::sqrt(4 * a * t);
  for (const Dot& p : dots) pipe += p.ds;
  for (const Dot& p : dots)
    for (const Dot& q : dots) {
      const double flat = (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y), up = p.z + q.z + 2 * raise;
      const double s = std::sqrt(flat + (p.z - q.z) * (p.z - q.z) + radius * radius);
      const double s2 = std::sqrt(flat + up * up);
      sum += p.ds * q.ds * (std::erfc(s / reach) / s - std::erfc(s2 / reach) / s2);
    }
  return sum / (4 * pi * k * pipe);
}

StepResponse response_of(const std::vector<UprightInGround>& coils, double raise) {
  PipesInGround pipes;
  std::vector<KernelTable> self;
  for (const UprightInGround& c : coils) {
    lay_upright(c, pipes);
    self.push_back(upright_kernel(c, raise));
  }
  return make_step_response(pipes, self, raise);
}

}  // namespace

TEST(UprightKernel, AgreesWithTheDirectIntegralFromOneHourToThirtyYears) {
  for (bool on_top : {true, false}) {
    Coil coil = coil_of(0.9144, 0.45, 2.4, true);
    coil.return_on_top = on_top;
    const auto dots = dots_along(standing(coil), 0.005);
    const double raise = on_top ? 0.1 : 0;
    const StepResponse r = response_of({standing(coil)}, raise);
    for (double t : {kHour, kDay, 180 * kDay, 30 * kYear}) {
      const double direct = direct_response(dots, 0.01335, 1.4, 6e-7, t, raise);
      EXPECT_NEAR(r(1.4, 6e-7, t) / direct, 1, 0.003) << t / kHour << " h, R = " << direct;
    }
  }
}

// Deep in the ground no one can tell which way is up.
TEST(UprightKernel, DeepDownOneLoopStandingIsOneLoopLying) {
  const Coil coil = coil_of(0.9144, 0.3, 1, false);
  const double depth = 2000;
  UprightInGround stands = standing(coil);
  stands.depth = depth;
  PipesInGround lying;
  lying.coils.push_back({{0, 0}, {1, 0}, coil, 0, depth, 0.01335});
  const StepResponse flat = make_step_response(lying, {coil_kernel(coil, 0)}, 0);
  const StepResponse upright = response_of({stands}, 0);
  for (double t : {kHour, kDay, 30 * kDay, kYear, 30 * kYear})
    EXPECT_NEAR(upright(1.4, 6e-7, t) / flat(1.4, 6e-7, t), 1, 1e-5) << t / kHour << " h";
}

TEST(UprightKernel, NeighboursAgreeWithTheDirectIntegral) {
  const Coil coil = coil_of(0.9144, 0.5, 3, true);
  const std::vector<UprightInGround> coils = {standing(coil), standing(coil, 2)};
  const StepResponse r = response_of(coils, 0);
  auto dots = dots_along(coils[0], 0.008);
  for (const Dot& d : dots_along(coils[1], 0.008)) dots.push_back(d);
  for (double t : {kDay, 30 * kDay, 10 * kYear})
    EXPECT_NEAR(r(1.4, 6e-7, t) / direct_response(dots, 0.01335, 1.4, 6e-7, t, 0), 1, 0.01)
        << t / kDay << " d";
}

TEST(UprightKernel, StrandsHoldAllOfThePipe) {
  PipesInGround pipes;
  const Coil coil = coil_of(0.9144, 0.45, 30.3, true);
  lay_upright(standing(coil), pipes);
  EXPECT_NEAR(total_pipe(pipes), coil.coil_length, 1e-9);
  double depth = 0;
  for (const PipeInGround& p : pipes.pipes) {
    EXPECT_GE(p.depth, 1.8 - 0.9144 - 1e-9);
    EXPECT_LE(p.depth, 1.8 + 1e-9);
    depth += p.depth * p.pipe();
  }
  EXPECT_LT(depth / coil.coil_length, 1.8 - 0.9144 / 2);  // the return lies on top
}

// Every pattern is found in the ground with all of its pipe, but for the turns of straight pipe.
TEST(LoopGeometry, EveryPatternLiesInTheGroundWithItsPipe) {
  for (int p = 0; p < kCoilPatterns; ++p) {
    CoilRequest r;
    r.pattern = static_cast<CoilPattern>(p);
    r.coil_length = 243.84;
    r.trench_length = 30.48;
    Trench t;
    t.coil = solve_coil(r).value();
    t.head = {3, 4};
    t.end = {3, 4 + t.coil.trench_length};
    t.depth = 1.8;
    Layout layout;
    layout.trenches = {t};
    const PipesInGround pipes = pipes_in_ground(layout, Wishes{});
    EXPECT_NEAR(total_pipe(pipes), t.coil.coil_length - pipe_in_turns(t.coil), 1e-9)
        << pattern_name(r.pattern);
    for (const PipeInGround& pipe : pipes.pipes) EXPECT_GT(pipe.depth, 0.5);
  }
}

}  // namespace underlawn
