// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold of every field, whatever its numbers. Fields are seeded; the seed is in the message.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "ground/undisturbed.h"
#include "thermal/coil_kernel.h"
#include "thermal/simulate.h"
#include "thermal/step_response.h"

using namespace underlawn;
using std::numbers::pi;

namespace {

Coil coil_of(double pitch, double loops) {
  Coil coil;
  coil.loop_diameter = 0.9144;
  coil.pitch = pitch;
  coil.loops = loops;
  coil.trench_length = coil.return_pipe = loops * pitch + coil.loop_diameter;
  coil.loop_pipe = loops * loop_length(coil.loop_diameter, pitch);
  coil.coil_length = coil.loop_pipe + coil.return_pipe;
  return coil;
}

// Two or three coils side by side, not quite parallel, and a pair of pipes past their heads.
PipesInGround field_of(unsigned seed) {
  std::mt19937 random(seed);
  const auto number = [&](double low, double high) {
    return low + (high - low) * std::generate_canonical<double, 53>(random);
  };
  PipesInGround out;
  const Coil coil = coil_of(number(0.3, 0.8), number(8, 20));
  const int coils = 2 + static_cast<int>(seed % 2);
  const double apart = number(2.5, 5), depth = number(1.2, 2.2), offset = number(-0.45, 0.45);
  for (int i = 0; i < coils; ++i)
    out.coils.push_back(
        {{number(0, 1), i * apart}, {20, i * apart + number(0, 0.5)}, coil, offset, depth, 0.0134});
  for (double x : {-1.0, -1.3})
    out.pipes.push_back({{{x, -1}, {x + number(0, 0.2), coils * apart}}, 1.4, 0.021});
  return out;
}

StepResponse response_of(const PipesInGround& pipes) {
  std::vector<KernelTable> self;
  for (const CoilInGround& c : pipes.coils) self.push_back(coil_kernel(c.coil, c.return_offset));
  return make_step_response(pipes, self, 0.1);
}

PipesInGround changed(PipesInGround pipes, auto&& point) {
  for (CoilInGround& c : pipes.coils) {
    c.head = point(c.head);
    c.end = point(c.end);
  }
  for (PipeInGround& p : pipes.pipes) p.line = {point(p.line.a), point(p.line.b)};
  return pipes;
}

void expect_same(const PipesInGround& a, const PipesInGround& b, double within, unsigned seed) {
  const StepResponse r = response_of(a), s = response_of(b);
  for (double t = 3600; t < 1e9; t *= 10)
    EXPECT_NEAR(s(1.4, 6e-7, t) / r(1.4, 6e-7, t), 1, within) << "seed " << seed << ", " << t << " s";
}

constexpr unsigned kSeeds = 6;

// A simple year on this field.
SimulationInput year_on(const PipesInGround& pipes, double k, double a) {
  SimulationInput in;
  const StepResponse r = response_of(pipes);
  const double years = 4;
  in.loop.response =
      fit_exponentials([&](double t) { return r(k, a, t); }, 3600, years * kYearHours * 3600, 16).sum;
  in.loop.pipe = total_pipe(pipes);
  in.loop.fluid_resistance = 0.12;
  in.loop.heat_flow_rate = 2200;
  in.unit = scaled(generic_heat_pump(), 0.4);
  in.pump_power = 90;
  in.years = static_cast<int>(years);
  for (int h = 0; h < kYearHours; ++h) {
    const double outside =
        9 - 13 * std::cos(2 * pi * (h / 24.0 - 20) / 365) + 4 * std::cos(2 * pi * (h - 15) / 24.0);
    in.loop.ground.push_back(undisturbed_temperature({}, a, pipes.coils[0].depth, (h + 1) / 24.0));
    in.house.heating.push_back(std::max(0.0, 190 * (16 - outside)));
    in.house.cooling.push_back(std::max(0.0, 140 * (outside - 20)));
  }
  return in;
}

PipesInGround coils_of(double length, double depth, double apart) {
  PipesInGround out;
  for (int i = 0; i < 3; ++i)
    out.coils.push_back(
        {{0, i * apart}, {length, i * apart}, coil_of(0.4, length / 0.4), 0.4, depth, 0.0134});
  return out;
}

void expect_rising(const std::vector<double>& coldest) {
  for (std::size_t i = 1; i < coldest.size(); ++i) EXPECT_GE(coldest[i], coldest[i - 1]) << i;
}

}  // namespace

TEST(ThermalProperties, ResponseScalesWithConductivityAndWithDiffusivityTimesTime) {
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    const StepResponse r = response_of(field_of(seed));
    for (double t = 3600; t < 1e9; t *= 10) {
      EXPECT_NEAR(3 * r(4.2, 6e-7, t) / r(1.4, 6e-7, t), 1, 1e-12) << "seed " << seed;
      EXPECT_NEAR(r(1.4, 6e-7, t) / r(1.4, 3e-7, 2 * t), 1, 1e-12) << "seed " << seed;
    }
  }
}

TEST(ThermalProperties, MovedAndTurnedFieldAnswersTheSame) {
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    const PipesInGround field = field_of(seed);
    const double turn = 0.3 + seed;
    expect_same(field,
                changed(field,
                        [&](Point p) {
                          return Point{40 + p.x * std::cos(turn) - p.y * std::sin(turn),
                                       -70 + p.x * std::sin(turn) + p.y * std::cos(turn)};
                        }),
                1e-6, seed);
  }
}

// A coil is wound one way round: its loops have more pipe on the side that goes forward, so a return on that
// side is warmer than one on the other, and only a field of coils with the return in the middle is its own
// mirror image, but for neighbours, whose strands keep their heavier side: within 2 in 1000.
TEST(ThermalProperties, MirroredFieldAnswersTheSame) {
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    PipesInGround field = field_of(seed);
    for (CoilInGround& c : field.coils) c.return_offset = 0;
    const auto mirror = [](Point p) { return Point{p.x, -p.y}; };
    expect_same(field, changed(field, mirror), 2e-3, seed);
    field.coils.clear();
    field.pipes.push_back({{{2, 0.4}, {9, 3}}, 1.4, 0.021});
    expect_same(field, changed(field, mirror), 1e-9, seed);
  }
}

TEST(ThermalProperties, OrderOfThingsDoesNotMatter) {
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    PipesInGround turned = field_of(seed);
    std::reverse(turned.coils.begin(), turned.coils.end());
    std::reverse(turned.pipes.begin(), turned.pipes.end());
    expect_same(field_of(seed), turned, 1e-9, seed);
  }
}

TEST(ThermalProperties, LongerWetterAndFurtherApartNeverEnterColder) {
  const double k = 1.4, a = 6e-7;
  std::vector<double> longer, wetter, further;
  for (double length : {12.0, 18.0, 27.0, 40.0})
    longer.push_back(simulate(year_on(coils_of(length, 1.8, 3), k, a)).coldest);
  for (double wet : {0.7, 1.0, 1.4, 2.2})  // heat capacity kept
    wetter.push_back(simulate(year_on(coils_of(20, 1.8, 3), wet, wet / (k / a))).coldest);
  for (double apart : {2.0, 3.0, 4.5, 9.0})
    further.push_back(simulate(year_on(coils_of(20, 1.8, apart), k, a)).coldest);
  expect_rising(longer);
  expect_rising(wetter);
  expect_rising(further);
}

// The surface gives heat back, so a deeper pipe's own response is the larger, while the ground itself is
// milder in winter there: the entering temperature of a heavily used loop may fall with depth before it
// rises.
TEST(ThermalProperties, DeeperFieldRespondsMoreInMilderGround) {
  const StepResponse shallow = response_of(coils_of(20, 1.2, 3)), deep = response_of(coils_of(20, 2.4, 3));
  for (double t = 86400; t < 1e9; t *= 10) EXPECT_GE(deep(1.4, 6e-7, t), shallow(1.4, 6e-7, t)) << t;
  const auto coldest = [](double depth) {
    double low = 1e9;
    for (int d = 0; d < 365; ++d) low = std::min(low, undisturbed_temperature({}, 6e-7, depth, d));
    return low;
  };
  EXPECT_GT(coldest(2.4), coldest(1.2));
}

TEST(ThermalProperties, EnergyClosesToRoundingInEveryHourAndYear) {
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    SimulationInput in = year_on(field_of(seed), 1.4, 6e-7);
    in.keep_every_hour = true;
    const Simulation s = simulate(in);
    for (const YearSum& y : s.years) {
      EXPECT_NEAR((y.from_ground + y.heating_power + y.backup) / y.heating, 1, 1e-10) << "seed " << seed;
      EXPECT_NEAR((y.to_ground - y.cooling_power + y.unmet_cooling) / y.cooling, 1, 1e-10) << "seed " << seed;
    }
    double taken = 0, given = 0;
    for (const HourState& h : s.every) (h.ground_heat > 0 ? taken : given) += 3600 * h.ground_heat;
    double from = 0, to = 0;
    for (const YearSum& y : s.years) {
      from += y.from_ground;
      to += y.to_ground;
    }
    EXPECT_NEAR(taken / from, 1, 1e-12) << "seed " << seed;
    EXPECT_NEAR(-given / to, 1, 1e-12) << "seed " << seed;
  }
}

// The closed form against the equation it solves, on every piece of the table and beyond both ends.
TEST(ThermalProperties, EnteringTemperatureSolvesTheHourOnEveryPieceOfTheTable) {
  for (double pipe : {60.0, 150.0, 400.0, 3000.0}) {
    SimulationInput in = year_on(field_of(3), 1.4, 6e-7);
    in.loop.pipe = pipe;
    in.years = 1;
    const Simulation s = simulate(in);
    for (int h = 0; h < kYearHours; h += 7) {
      const HourState& hour = s.first[h];
      const double heating = in.house.heating[h], cooling = in.house.cooling[h];
      if (heating <= 0 && cooling <= 0) continue;
      const bool warm = heating >= cooling;
      const Performance p = performance_at(warm ? in.unit.heating : in.unit.cooling, hour.entering);
      const double full = warm ? p.capacity - p.power : -(p.capacity + p.power);
      const double run = std::min(1.0, (warm ? heating : cooling) / p.capacity);
      EXPECT_NEAR((hour.entering - hour.leaving) * in.loop.heat_flow_rate, full, 1e-6 * std::abs(full)) << h;
      EXPECT_NEAR(hour.ground_heat, run * full, 1e-6 * std::abs(full)) << pipe << " m, hour " << h;
    }
  }
}
