// SPDX-License-Identifier: GPL-3.0-or-later
// The step response of long straight pipes against closed forms of the literature. k = 1 W/(m K).
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "thermal/step_response.h"

using namespace underlawn;
using std::numbers::pi;

namespace {

// k R of an endless pipe among others: what each further metre of all adds, a pipe. a = 1e-6 m2/s.
double endless(const std::vector<double>& aside, double depth, double radius, double t) {
  const auto total = [&](double length) {
    PipesInGround pipes;
    for (double y : aside) pipes.pipes.push_back({{{0, y}, {length, y}}, depth, radius});
    const StepResponse r = make_step_response(pipes, {}, 0);
    return total_pipe(pipes) * (t > 0 ? r(1, 1e-6, t) : r.steady(1));
  };
  return (total(2000) - total(1000)) / (1000.0 * static_cast<double>(aside.size()));
}
constexpr double kSteady = -1;

}  // namespace

// E1(x), Abramowitz & Stegun, Handbook of Mathematical Functions, table 5.1; k R = E1(r^2/(4 a t))/(4 pi)
// (Carslaw & Jaeger 10.4). Beyond x = 1, minutes, it is asked to 2 %.
TEST(LineAndCylinder, TableOfTheExponentialIntegral) {
  const double radius = 0.05;
  for (const auto& [x, e1] : {std::pair{1e-5, 10.935719800043696},
                              {0.1, 1.8229239584193906},
                              {0.5, 0.5597735947761607},
                              {1.0, 0.21938393439552027},
                              {2.0, 0.04890051070806112},
                              {4.0, 0.0037793524098489}}) {
    const double t = radius * radius / (4e-6 * x);
    EXPECT_NEAR(endless({0}, 60, radius, t) * 4 * pi / e1, 1, x > 1 ? 0.02 : 1e-3) << x;
  }
}

// Cylinder that gives its heat at its surface, G(Fo) of Ingersoll, Zobel & Ingersoll, Heat Conduction, 1954:
// the integral's values to 7 digits, by Laplace inversion of K0/(s^1.5 K1)/(2 pi). The line source differs
// from it by 0.6 % at Fo = 100 and less later; the pipe in the ground holds water and is neither.
TEST(LineAndCylinder, CylinderSourceFromFourierNumberAHundred) {
  const double radius = 0.05;
  for (const auto& [fo, g] : {std::pair{100.0, 0.4333621}, {1000.0, 0.6144321}})
    EXPECT_NEAR(endless({0}, 60, radius, fo * radius * radius / 1e-6) / g, 1, 0.006) << fo;
}

// Shape factor of each cylinder of a row at equal spacing below an isothermal plane, per metre,
// 2 pi/ln[2 w/(pi D) sinh(2 pi z/w)] (Incropera & DeWitt, table of shape factors; from memory).
TEST(LineAndCylinder, RowOfCylindersBelowAnIsothermalPlane) {
  struct Case {
    double diameter, depth, apart;
  };
  for (const Case& c : {Case{0.0334, 1.5, 0.5}, {0.0267, 1.8, 0.3}, {0.042164, 1.5, 1.0}}) {
    const auto row = [&](int count) {
      std::vector<double> aside;
      for (int i = 0; i < count; ++i) aside.push_back(i * c.apart);
      return endless(aside, c.depth, c.diameter / 2, kSteady) * count;
    };
    const double shape =
        2 * pi / std::log(2 * c.apart / (pi * c.diameter) * std::sinh(2 * pi * c.depth / c.apart));
    // What one more pipe adds to a row of n falls short of an endless row by what is inverse to n.
    const double fifty = (row(60) - row(40)) / 20, hundred = (row(110) - row(90)) / 20;
    EXPECT_NEAR((2 * hundred - fifty) * shape, 1, 0.005) << c.apart;
  }
}

// Two buried pipes side by side that give the same heat: R_s + R_m with R_s = ln(4 z/D)/(2 pi k) and
// R_m = ln(1 + (2 z/c)^2)/(4 pi k) (EN 13941, annex; Claesson & Dunand 1983; from memory). k = 1.5, z = 1.5,
// D = 0.04, c = 0.3: 0.531645 and 0.244840 m K/W.
TEST(LineAndCylinder, TwoBuriedPipes) {
  EXPECT_NEAR(endless({0}, 1.5, 0.02, kSteady) / 1.5 / 0.531645, 1, 0.002);
  EXPECT_NEAR(endless({0, 0.3}, 1.5, 0.02, kSteady) / 1.5 / (0.531645 + 0.244840), 1, 0.002);
}
