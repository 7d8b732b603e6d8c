// SPDX-License-Identifier: GPL-3.0-or-later
// The step response against closed forms and against the point-source integral summed directly along the
// pipe.
#include "thermal/step_response.h"

#include <gtest/gtest.h>

#include <boost/math/special_functions/expint.hpp>
#include <cmath>
#include <numbers>

#include "thermal/coil_kernel.h"

using namespace underlawn;
using std::numbers::pi;

namespace {

constexpr double kHour = 3600, kDay = 86400, kYear = 365.25 * kDay;

Coil coil_of(double diameter, double pitch, double loops, bool with_return) {
  Coil coil;
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

struct Dot {
  double x, y, z, ds;
};

std::vector<Dot> dots_along(const CoilInGround& c, double step) {
  std::vector<Dot> dots;
  const Point ex = unit(c.end - c.head), ey = left_normal(ex);
  const auto put = [&](double x, double y, double ds) {
    const Point p = c.head + x * ex + y * ey;
    dots.push_back({p.x, p.y, c.depth, ds});
  };
  const double r = c.coil.loop_diameter / 2, a = c.coil.pitch / (2 * pi);
  const int n = static_cast<int>(c.coil.loop_pipe / step);
  const double dth = 2 * pi * c.coil.loops / n;
  for (int i = 0; i < n; ++i) {
    const double th = (i + 0.5) * dth;
    put(r + a * th - r * std::cos(th), -r * std::sin(th),
        std::hypot(a + r * std::sin(th), r * std::cos(th)) * dth);
  }
  const int m = static_cast<int>(c.coil.return_pipe / step);
  for (int i = 0; i < m; ++i)
    put((i + 0.5) * c.coil.return_pipe / m, c.return_offset, c.coil.return_pipe / m);
  return dots;
}

// Carslaw & Jaeger 10.2, source less image, target on the wall.
double direct_response(const std::vector<Dot>& dots, double radius, double k, double a, double t) {
  double sum = 0, pipe = 0;
  const double reach = std::sqrt(4 * a * t);
  for (const Dot& p : dots) pipe += p.ds;
  for (const Dot& p : dots)
    for (const Dot& q : dots) {
      const double flat = (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y);
      const double s = std::sqrt(flat + (p.z - q.z) * (p.z - q.z) + radius * radius);
      const double s2 = std::sqrt(flat + (p.z + q.z) * (p.z + q.z));
      sum += p.ds * q.ds * (std::erfc(s / reach) / s - std::erfc(s2 / reach) / s2);
    }
  return sum / (4 * pi * k * pipe);
}

StepResponse response_of(const PipesInGround& pipes) {
  std::vector<KernelTable> self;
  for (const CoilInGround& c : pipes.coils) self.push_back(coil_kernel(c.coil, c.return_offset));
  return make_step_response(pipes, self, 0);
}

}  // namespace

// Infinite line source, dT = q/(4 pi k) E1(r^2/(4 a t)): Ingersoll, Zobel & Ingersoll; E1 by Boost.Math.
TEST(StepResponse, LongDeepPipeFollowsTheInfiniteLineSource) {
  PipesInGround pipes;
  pipes.pipes.push_back({{{0, 0}, {4000, 0}}, 60, 0.0167});
  const StepResponse r = response_of(pipes);
  const double k = 1.5, a = 6e-7;
  for (double t : {kHour, 6 * kHour, kDay, 30 * kDay, 365 * kDay}) {
    const double e1 = boost::math::expint(1, 0.0167 * 0.0167 / (4 * a * t)) / (4 * pi * k);
    EXPECT_NEAR(r(k, a, t) / e1, 1, 5e-4) << t / kHour << " h";
  }
}

// Shape factor of a cylinder below an isothermal plane, S = 2 pi L / acosh(2 z/D): Incropera & DeWitt,
// table 4.1.
TEST(StepResponse, LongPipeSettlesAtTheShapeFactor) {
  for (const double z : {0.9, 1.8}) {
    PipesInGround pipes;
    pipes.pipes.push_back({{{0, 0}, {3000, 0}}, z, 0.0167});
    const double exact = std::acosh(z / 0.0167) / (2 * pi * 1.5);
    EXPECT_NEAR(response_of(pipes).steady(1.5) / exact, 1, 2e-3);
    EXPECT_NEAR(response_of(pipes)(1.5, 6e-7, 100 * kYear) / exact, 1, 3e-3);
  }
}

TEST(StepResponse, CoilAgreesWithTheDirectIntegralFromOneHourToThirtyYears) {
  PipesInGround pipes;
  pipes.coils.push_back({{0, 0}, {1, 0}, coil_of(0.9144, 0.45, 7.4, true), 0.3, 1.8, 0.01335});
  const StepResponse r = response_of(pipes);
  const auto dots = dots_along(pipes.coils[0], 0.005);
  const double k = 1.4, a = 6e-7;
  for (double t : {kHour, 6 * kHour, kDay, 10 * kDay, 180 * kDay, 30 * kYear}) {
    const double direct = direct_response(dots, 0.01335, k, a, t);
    EXPECT_NEAR(r(k, a, t) / direct, 1, t < kDay ? 0.02 : 0.01) << t / kHour << " h, R = " << direct;
  }
}

TEST(StepResponse, NeighbouringCoilsAgreeWithTheDirectIntegral) {
  PipesInGround pipes;
  const Coil coil = coil_of(0.9144, 0.5, 5, true);
  pipes.coils.push_back({{0, 0}, {1, 0}, coil, 0.0, 1.8, 0.01335});
  pipes.coils.push_back({{0.4, 3.0}, {1.4, 3.1}, coil, 0.0, 1.8, 0.01335});
  const StepResponse r = response_of(pipes);
  auto dots = dots_along(pipes.coils[0], 0.006);
  for (const Dot& d : dots_along(pipes.coils[1], 0.006)) dots.push_back(d);
  for (double t : {kDay, 30 * kDay, 10 * kYear})
    EXPECT_NEAR(r(1.4, 6e-7, t) / direct_response(dots, 0.01335, 1.4, 6e-7, t), 1, 0.01) << t / kDay << " d";
}

TEST(StepResponse, ScalesWithConductivityAndWithDiffusivityTimesTime) {
  PipesInGround pipes;
  pipes.coils.push_back({{0, 0}, {1, 0}, coil_of(0.9144, 0.45, 20, true), 0, 1.8, 0.01335});
  const StepResponse r = response_of(pipes);
  EXPECT_NEAR(2 * r(2.8, 6e-7, 20 * kDay), r(1.4, 6e-7, 20 * kDay), 1e-12);
  EXPECT_NEAR(r(1.4, 1.2e-6, 20 * kDay), r(1.4, 6e-7, 40 * kDay), 1e-12);
}

TEST(StepResponse, RisesWithTimeAndFallsWhenTrenchesMoveApart) {
  double before = 1e9;
  for (double spacing : {2.5, 3.0, 4.0, 6.0, 12.0}) {
    PipesInGround pipes;
    for (int i = 0; i < 4; ++i)
      pipes.coils.push_back(
          {{0, i * spacing}, {1, i * spacing}, coil_of(0.9144, 0.4, 30, true), 0, 1.8, 0.01335});
    const StepResponse r = response_of(pipes);
    double last = 0;
    for (double t = 600; t < 50 * kYear; t *= 1.7) {
      EXPECT_GE(r(1.4, 6e-7, t), last);
      last = r(1.4, 6e-7, t);
    }
    EXPECT_LT(last, before);
    before = last;
  }
}
