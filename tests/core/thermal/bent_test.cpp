// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/bent.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "field/coil.h"
#include "layout/layout.h"
#include "thermal/loop_geometry.h"
#include "thermal/temperatures.h"

namespace underlawn {
namespace {

using std::numbers::pi;
constexpr double kHour = 3600, kDay = 24 * kHour, kYear = 365 * kDay;

Coil coil_for(double trench_length, CoilPattern pattern) {
  CoilRequest r;
  r.unknown = CoilUnknown::coil_length;
  r.loop_diameter = 0.9;
  r.pitch = 0.45;
  r.trench_length = trench_length;
  r.pattern = pattern;
  return solve_coil(r).value();
}

Trench trench(Polyline line, CoilPattern pattern) {
  Trench t;
  t.number = 1;
  t.head = line.front();
  t.end = line.back();
  t.bends.assign(line.begin() + 1, line.end() - 1);
  t.width = 0.9;
  t.depth = 1.8;
  t.coil = coil_for(length(line), pattern);
  return t;
}

PipesInGround in_ground(const std::vector<Trench>& trenches) {
  Layout layout;
  layout.trenches = trenches;
  return pipes_in_ground(layout, {});
}

StepResponse response(const PipesInGround& pipes) {
  KernelShelf shelf;
  return step_response_of(pipes, 0.05, shelf);
}

constexpr CoilPattern kAll[] = {CoilPattern::flat_coil, CoilPattern::upright_coil, CoilPattern::two_pipes,
                                CoilPattern::six_pipes};

struct Dot {
  Point at;
  double z, ds;
};

// The pipe of a coil laid leg by leg, written down anew: the loop's centre says which leg.
std::vector<Dot> dots_of(const Trench& t, double step) {
  const Polyline line = middle_line(t);
  const auto laid = [&](double x, double y, double centre) {
    double from = 0;
    std::size_t leg = 1;
    while (leg + 1 < line.size() && centre > from + distance(line[leg - 1], line[leg])) {
      from += distance(line[leg - 1], line[leg]);
      ++leg;
    }
    const Point u = unit(line[leg] - line[leg - 1]);
    return line[leg - 1] + (x - from) * u + y * left_normal(u);
  };
  const PipesInGround pipes = in_ground({t});
  const bool flat = !pipes.coils.empty();
  const Coil& coil = t.coil;
  const double r = coil.loop_diameter / 2, a = coil.pitch / (2 * pi);
  const double lowest = flat ? pipes.coils[0].depth : pipes.upright[0].depth;
  const double stop = flat ? 2 * pi * coil.loops : angle_at_stop(coil);
  const int n = static_cast<int>(coil.loop_pipe / step);
  std::vector<Dot> dots;
  for (int i = 0; i < n; ++i) {
    const double th = (i + 0.5) * stop / n, side = r * std::sin(th);
    dots.push_back({laid(r + a * th - r * std::cos(th), flat ? -side : 0, r + a * th),
                    flat ? lowest : lowest - r + side, std::hypot(a + side, r * std::cos(th)) * stop / n});
  }
  const double aside = flat ? pipes.coils[0].return_offset : pipes.upright[0].return_offset();
  const double back = flat ? lowest : pipes.upright[0].return_depth();
  const int m = static_cast<int>(coil.return_pipe / step);
  for (int i = 0; i < m; ++i) {
    const double x = (i + 0.5) * coil.return_pipe / m;
    dots.push_back({laid(x, aside, x), back, coil.return_pipe / m});
  }
  return dots;
}

// Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 10.2: source less image, target on the wall.
double direct_response(const std::vector<Dot>& dots, double radius, double raise, double k, double a,
                       double t) {
  double sum = 0, pipe = 0;
  const double reach = std::sqrt(4 * a * t);
  for (const Dot& p : dots) pipe += p.ds;
  for (std::size_t i = 0; i < dots.size(); ++i)
    for (std::size_t j = 0; j <= i; ++j) {
      const Dot &p = dots[i], &q = dots[j];
      const double flat = dot(p.at - q.at, p.at - q.at), up = p.z + q.z + 2 * raise;
      const double s = std::sqrt(flat + (p.z - q.z) * (p.z - q.z) + radius * radius);
      const double s2 = std::sqrt(flat + up * up);
      sum += (i == j ? 1 : 2) * p.ds * q.ds * (std::erfc(s / reach) / s - std::erfc(s2 / reach) / s2);
    }
  return sum / (4 * pi * k * pipe);
}

}  // namespace

TEST(Bent, NoPipeIsLostOrLaidTwice) {
  for (CoilPattern pattern : {CoilPattern::flat_coil, CoilPattern::upright_coil}) {
    const Trench t = trench({{0, 0}, {8.3, 0}, {14, 9}, {14, 20}}, pattern);
    const PipesInGround pipes = in_ground({t});
    double strands = 0;
    for (const CoilInGround& c : pipes.coils)
      for (const LaidStrand& s : laid_strands(c, 6)) strands += s.weight * distance(s.line.a, s.line.b);
    if (pipes.coils.empty()) strands = total_pipe(pipes);
    EXPECT_NEAR(strands, t.coil.loop_pipe + t.coil.return_pipe, 1e-6);
  }
}

TEST(Bent, StraightPipesAreAsLongAsTheLegs) {
  const Trench t = trench({{0, 0}, {8, 0}, {8, 12}}, CoilPattern::four_pipes);
  EXPECT_NEAR(total_pipe(in_ground({t})), 4 * 20, 1e-9);
}

// One trench, drawn with points that it does not need, or with ones that hardly turn it.
TEST(Bent, ABendOfNoAngleChangesLessThanAThousandth) {
  for (CoilPattern pattern : kAll) {
    const StepResponse whole = response(in_ground({trench({{0, 0}, {20, 0}}, pattern)}));
    const StepResponse cut = response(in_ground({trench({{0, 0}, {7.1, 0}, {13, 0}, {20, 0}}, pattern)}));
    const StepResponse hardly = response(in_ground({trench({{0, 0}, {9, 0}, {20, 0.05}}, pattern)}));
    for (double t : {kHour, kDay, 30 * kDay, kYear, 20 * kYear}) {
      EXPECT_NEAR(cut(1.4, 6e-7, t) / whole(1.4, 6e-7, t), 1, 1e-3) << t / kHour << " h";
      EXPECT_NEAR(hardly(1.4, 6e-7, t) / whole(1.4, 6e-7, t), 1, 1e-3) << t / kHour << " h";
    }
  }
}

TEST(Bent, NeighboursOfABendOfNoAngleAreWarmedTheSame) {
  for (CoilPattern pattern : kAll) {
    const Trench other = trench({{0, 3}, {20, 3}}, pattern);
    const StepResponse whole = response(in_ground({trench({{0, 0}, {20, 0}}, pattern), other}));
    const StepResponse cut = response(in_ground({trench({{0, 0}, {7.1, 0}, {20, 0}}, pattern), other}));
    for (double t : {kDay, kYear, 20 * kYear})
      EXPECT_NEAR(cut(1.4, 6e-7, t) / whole(1.4, 6e-7, t), 1, 1e-3) << t / kHour << " h";
  }
}

TEST(Bent, ASharpBendAgreesWithTheDirectIntegral) {
  for (CoilPattern pattern : {CoilPattern::flat_coil, CoilPattern::upright_coil}) {
    // Ten whole loops, turned by 101 degrees.
    const Trench t = trench({{0, 0}, {2.6, 0}, Point{2.6, 0} + 2.8 * direction(1.77)}, pattern);
    const auto dots = dots_of(t, 0.008);
    const StepResponse r = response(in_ground({t}));
    const double radius = pattern == CoilPattern::flat_coil ? in_ground({t}).coils[0].pipe_radius
                                                            : in_ground({t}).upright[0].pipe_radius;
    for (double at : {kHour, kDay, 180 * kDay, 30 * kYear}) {
      const double direct = direct_response(dots, radius, 0.05, 1.4, 6e-7, at);
      EXPECT_NEAR(r(1.4, 6e-7, at) / direct, 1, 0.001) << at / kHour << " h, R = " << direct;
    }
  }
}

// Folded back beside itself a coil feels itself as it would feel a neighbour: nearly as two trenches of half
// the length, whose far ends no third piece joins.
TEST(Bent, FoldedBackItIsNearlyTwoTrenches) {
  const StepResponse folded =
      response(in_ground({trench({{0, 0}, {20, 0}, {20, 3}, {0, 3}}, CoilPattern::flat_coil)}));
  const StepResponse straight = response(in_ground({trench({{0, 0}, {43, 0}}, CoilPattern::flat_coil)}));
  const StepResponse two = response(in_ground({trench({{0, 0}, {21.5, 0}}, CoilPattern::flat_coil),
                                               trench({{0, 3}, {21.5, 3}}, CoilPattern::flat_coil)}));
  const double t = 2 * kYear;
  EXPECT_GT(folded(1.4, 6e-7, t), 1.05 * straight(1.4, 6e-7, t));
  EXPECT_NEAR(folded(1.4, 6e-7, t) / two(1.4, 6e-7, t), 1, 0.05);
  EXPECT_NEAR(folded(1.4, 6e-7, kHour) / straight(1.4, 6e-7, kHour), 1, 0.01);
}

}  // namespace underlawn
