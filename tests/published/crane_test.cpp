// SPDX-License-Identifier: GPL-3.0-or-later
// Worked examples of Crane Technical Paper 410, Flow of Fluids Through Valves, Fittings and Pipe, as the
// documentation of the open library "fluids" prints them, book's answer and its own.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "flow/network_solver.h"

using namespace underlawn;

namespace {

constexpr double kInch = 0.0254, kGallonPerMinute = 3.785411784e-3 / 60;

// Water at 30 C: density and viscosity of IAPWS R12-08 (0.7972 mPa s by its equation, worked
// with the coefficients as the open OpenGeoSys codes them).
const FluidProperties kWarmWater{995.65, 4180, 0.615, 7.972e-4};

NetPipe pipe_of(double length, double bore, double k) {
  NetPipe p;
  p.name = "pipe";
  p.to = 1;
  p.length = length;
  p.bore = bore;
  p.fittings = k;
  return p;
}

}  // namespace

// Example 7.1: 200 L/min of water at 30 C through 20 m of smooth plastic pipe of 50 mm: Re 100 600 and
// f 0.0179 in the book; 101 022.6 and 0.018108 by the library, with its own water and the bore of
// schedule 40. Bore from the book's Re: 4 Q rho / (pi mu Re).
TEST(PublishedCrane, SmoothPlasticPipe) {
  const double flow = 0.2 / 60;
  const double bore = 4 * flow * kWarmWater.density / (std::numbers::pi * kWarmWater.viscosity * 100600);
  EXPECT_NEAR(bore, 0.0525, 0.0005) << "2 in schedule 40 has 52.5 mm";
  const Network net{2, {pipe_of(20, bore, 0)}, 0, 1};
  const NetworkFlow solved = solve_network(net, kWarmWater, flow).value();
  EXPECT_NEAR(solved.pipes[0].reynolds / 100600, 1, 1e-6);
  const double velocity = solved.pipes[0].velocity;
  const double f = solved.head_loss / (20 / bore * velocity * velocity / (2 * kGravity));
  EXPECT_NEAR(f / 0.0179, 1, 0.01) << "the book's, read off a chart";
  EXPECT_NEAR(friction_factor(101022.6) / 0.018108, 1, 0.015) << "the library's, by Colebrook";
}

// Example 7.35: a converging tee of equal 4 in legs, 300 gpm along the run and 100 gpm in from the branch,
// 10.081 ft/s where they have met: K 0.325 along the run, 0.513285 ft.
TEST(PublishedCrane, HeadLostAlongTheRunOfATee) {
  const double feet = 0.3048, flow = 400 * kGallonPerMinute;
  const double bore = std::sqrt(4 * flow / (std::numbers::pi * 10.081 * feet));
  EXPECT_NEAR(bore / kInch, 4.026, 0.001) << "4 in schedule 40";
  NetPipe tee = pipe_of(1e-6, bore, 0.325);
  const Network net{2, {tee}, 0, 1};
  const NetworkFlow solved = solve_network(net, {998, 4185, 0.598, 1.1e-3}, flow).value();
  EXPECT_NEAR(solved.pipes[0].velocity / feet, 10.081, 1e-6);
  EXPECT_NEAR(solved.head_loss / feet, 0.513285, 1e-4 * 0.513285) << "K v^2/2g, g = 32.174 ft/s2";
}
