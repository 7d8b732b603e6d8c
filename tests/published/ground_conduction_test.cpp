// SPDX-License-Identifier: GPL-3.0-or-later
// The step response against conduction solved by finite volumes (Patankar, Numerical Heat Transfer and Fluid
// Flow, 1980; the problem: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959), which shares
// nothing with it: no sources in closed form, no images, the surface a true resistance.
#include <gtest/gtest.h>

#include <boost/math/special_functions/expint.hpp>
#include <cmath>
#include <functional>
#include <numbers>

#include "support/finite_volumes.h"
#include "thermal/coil_kernel.h"
#include "thermal/step_response.h"

using namespace underlawn;
namespace fv = underlawn::finite_volumes;
using std::numbers::pi;

namespace {

constexpr double kDay = 86400, kYear = 365.25 * kDay;
constexpr double kK = 1.5, kHeatCapacity = 2.5e6, kA = kK / kHeatCapacity, kSurface = 0.07;

// ---- straight pipes in a section

struct Section {
  double y = 0;       // m from the mirror on the left to the pipe's axis
  double right = 60;  // m, where the ground ends or the next mirror stands
  double depth = 1.5, radius = 0.0167;
  int cells_in_radius = 4;
  double growth = 1.12;
  int steps = 16;
};

// The pipe is a disc of cells that gives its heat evenly, its wall the rim of the disc; what is inside the
// wall matters only while it warms, minutes.
std::vector<fv::Rise> warm(const Section& s) {
  const double fine = s.radius / s.cells_in_radius, zone = 2 * s.radius;
  fv::Ground g;
  g.x = fv::equal(1, 1);
  g.y = fv::graded(0, std::max(0.0, s.y - zone), s.y + zone, s.right, fine, s.growth);
  g.z = fv::graded(0, s.depth - zone, s.depth + zone, 60, fine, s.growth);
  g.conductivity = kK;
  g.heat_capacity = kHeatCapacity;
  g.surface_resistance = kSurface;
  const double half = s.y == 0 ? 0.5 : 1;  // the mirror takes the other half of the pipe
  return fv::warm(g, half, fv::disc(g, s.y, s.depth, s.radius), fv::rim(g, s.y, s.depth, s.radius), 200,
                  10 * kYear, s.steps);
}

// m K/W of an endless pipe: what each further metre adds. `aside`: where the pipes lie.
double endless(const std::vector<double>& aside, double depth, double radius, double t) {
  const auto total = [&](double length) {
    PipesInGround pipes;
    for (double y : aside) pipes.pipes.push_back({{{0, y}, {length, y}}, depth, radius});
    return make_step_response(pipes, {}, kK * kSurface)(kK, kA, t) * total_pipe(pipes);
  };
  return (total(600) - total(300)) / 300;
}

std::vector<double> row(int count, double apart) {
  std::vector<double> out;
  for (int i = 0; i < count; ++i) out.push_back(i * apart);
  return out;
}

void expect_agree(const Section& s, const std::function<double(double)>& ours, double within) {
  const auto theirs = warm(s);
  for (double t : {kDay, 30 * kDay, kYear, 10 * kYear}) {
    EXPECT_NEAR(ours(t) / fv::at(theirs, t), 1, within) << t / kDay << " d, " << fv::at(theirs, t);
  }
}

// ---- the flat coil, endless: a cell one pitch long

struct Cell {
  double diameter = 0.9144, pitch = 0.4, depth = 1.8, radius = 0.01335, return_offset = 0.4572;
  int along = 12;  // cells in a pitch
  double growth = 1.4;
  int steps = 6;
};

struct Curve {
  std::vector<std::array<double, 3>> points;
  std::vector<double> shares;
  double length = 0;  // m of pipe in a pitch
};

Curve curve_of(const Cell& c) {
  Curve out;
  const auto put = [&](double x, double y, double ds) {
    out.points.push_back({std::fmod(std::fmod(x, c.pitch) + c.pitch, c.pitch), y, c.depth});
    out.shares.push_back(ds);
    out.length += ds;
  };
  constexpr int kLoop = 720, kReturn = 100;
  const double r = c.diameter / 2, a = c.pitch / (2 * pi), step = 2 * pi / kLoop;
  for (int i = 0; i < kLoop; ++i) {
    const double th = (i + 0.5) * step;
    put(a * th - r * std::cos(th), -r * std::sin(th),
        std::hypot(a + r * std::sin(th), r * std::cos(th)) * step);
  }
  for (int i = 0; i < kReturn; ++i) put((i + 0.5) * c.pitch / kReturn, c.return_offset, c.pitch / kReturn);
  for (double& s : out.shares) s /= out.length;
  return out;
}

// The cells are wider than the pipe, so heat is given and read as a Gaussian about the axis (as a well in a
// coarse reservoir block: Peaceman, SPE Journal 1978, 183-194), and what that changes is put right. Given and
// read with deviations s1 across and s2 down, a straight line at unit heat stands in all at variance 2 s^2,
// and
//     k R = 1/(2 pi) ln[(w1 + w2)/(sqrt 2 (s1 + s2))],  w^2 = 2 s^2 + 2 a t,
// the integral over ages t' of 2 a/sqrt((2 s1^2 + 2 a t')(2 s2^2 + 2 a t'))/(4 pi), where on the wall of a
// pipe it is E1(ro^2/(4 a t))/(4 pi). Where two pipes cross, the integral over both of 1/r falls short of
// that of lines in one plane by 2 pi times their mean distance in height: 2 s2/sqrt(pi) for the Gaussians, ro
// for a target on the wall. So s2 = ro sqrt(pi)/2 leaves crossings right and only the first needs mending.
double near_field(const Cell& c, fv::Spread s, double t) {
  const double w1 = std::sqrt(2 * (s.along * s.along + kA * t)),
               w2 = std::sqrt(2 * (s.down * s.down + kA * t));
  const double smeared = std::log((w1 + w2) / (std::numbers::sqrt2 * (s.along + s.down))) / (2 * pi * kK);
  return boost::math::expint(1, c.radius * c.radius / (4 * kA * t)) / (4 * pi * kK) - smeared;
}

std::function<double(double)> warm(const Cell& c) {
  const double fine = c.pitch / c.along, reach = c.diameter / 2 + 3 * fine;
  const fv::Spread spread{fine, c.radius * std::sqrt(pi) / 2};
  fv::Ground g;
  g.x = fv::equal(c.pitch, c.along);
  g.y = fv::graded(-10, -reach, reach, 10, fine, c.growth);
  const double thin = std::min(fine / 2, spread.down);
  g.z = fv::graded(0, c.depth - 2.5 * thin, c.depth + 2.5 * thin, 11, thin, c.growth);
  g.periodic_x = true;
  g.conductivity = kK;
  g.heat_capacity = kHeatCapacity;
  g.surface_resistance = kSurface;
  const Curve curve = curve_of(c);
  const fv::Weights weights = fv::smeared(g, curve.points, curve.shares, spread);
  const auto rises = fv::warm(g, curve.length, weights, weights, 2000, 100 * kDay, c.steps);
  return [=](double t) { return fv::at(rises, t) + near_field(c, spread, t); };
}

double endless_coil(const Cell& c, double t) {
  const auto total = [&](int loops, double& pipe) {
    Coil coil;
    coil.loop_diameter = c.diameter;
    coil.pitch = c.pitch;
    coil.loops = loops;
    coil.trench_length = coil.return_pipe = loops * c.pitch + c.diameter;
    coil.loop_pipe = loops * curve_of(c).length - loops * c.pitch;
    coil.coil_length = coil.loop_pipe + coil.return_pipe;
    PipesInGround pipes;
    pipes.coils.push_back({{0, 0}, {1, 0}, coil, c.return_offset, c.depth, c.radius});
    pipe = total_pipe(pipes);
    return make_step_response(pipes, {coil_kernel(coil, c.return_offset)}, kK * kSurface)(kK, kA, t) * pipe;
  };
  double p1 = 0, p2 = 0;
  const double r1 = total(60, p1), r2 = total(90, p2);
  return (r2 - r1) / (p2 - p1);
}

void expect_agree(const Cell& c, double within) {
  const auto theirs = warm(c);
  for (double t : {kDay, 10 * kDay, 100 * kDay}) {
    EXPECT_NEAR(endless_coil(c, t) / theirs(t), 1, within) << t / kDay << " d, " << theirs(t);
  }
}

}  // namespace

TEST(GroundConduction, SinglePipe) {
  expect_agree(
      Section{}, [](double t) { return endless({0}, 1.5, 0.0167, t); }, 0.02);
}

TEST(GroundConduction, TwoPipesSideBySide) {
  Section s;
  s.y = 0.3;
  expect_agree(
      s,
      [](double t) {
        return endless({0, 0.6}, 1.5, 0.0167, t) / 2;
      },
      0.02);
}

// Between the middle of one pipe and half way to the next, in a row without end.
TEST(GroundConduction, RowOfParallelPipes) {
  Section s;
  s.right = 0.5;
  expect_agree(
      s,
      [](double t) {
        return (endless(row(70, 1), 1.5, 0.0167, t) - endless(row(60, 1), 1.5, 0.0167, t)) / 10;
      },
      0.02);
}

// The check itself has settled: half the cells and half the steps move it by less than half a per cent.
TEST(GroundConduction, SectionsDoNotHangOnTheirMesh) {
  Section coarse;
  coarse.cells_in_radius = 2;
  coarse.growth = 1.24;
  coarse.steps = 8;
  const auto rough = warm(coarse), fine = warm(Section{});
  for (double t : {kDay, 30 * kDay, kYear, 10 * kYear})
    EXPECT_NEAR(fv::at(rough, t) / fv::at(fine, t), 1, 0.005) << t / kDay << " d";
}

TEST(GroundConduction, FlatCoilWithItsReturn) {
  expect_agree(Cell{}, 0.05);
}
