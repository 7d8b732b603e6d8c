// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/temperatures.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <map>
#include <numbers>

#include "thermal/bent.h"
#include "thermal/coil_kernel.h"
#include "thermal/exponentials.h"
#include "thermal/simulate_given.h"
#include "thermal/upright_kernel.h"

namespace underlawn {
namespace {

constexpr double kHour = 3600, kYear = 8760 * kHour;
constexpr int kTerms = 16;

std::map<double, double> pipe_by_depth(const PipesInGround& pipes) {
  std::map<double, double> by_depth;
  for (const CoilInGround& c : pipes.coils) by_depth[c.depth] += c.coil.coil_length;
  for (const PipeInGround& p : pipes.pipes) by_depth[p.depth] += p.pipe();
  return by_depth;
}

// The mean over the depths of coils and run, weighted by their pipe: undisturbed_temperature() of each is one
// wave of the year, and their sum is one again.
std::vector<double> ground_by_hour(const std::map<double, double>& by_depth, double pipe,
                                   const Surroundings& s) {
  std::complex<double> wave = 0;
  for (const auto& [depth, metres] : by_depth) {
    const double deep = depth / damping_depth(s.soil.diffusivity());
    wave += metres / pipe * std::polar(s.climate.amplitude * std::exp(-deep), -deep);
  }
  const double high = std::abs(wave), late = std::arg(wave);
  std::vector<double> out(kYearHours);
  for (int h = 0; h < kYearHours; ++h) {
    const double since_coldest = (h + 1) / 24.0 - s.climate.coldest_day;  // days
    out[h] = s.climate.mean - high * std::cos(2 * std::numbers::pi * since_coldest / 365 + late);
  }
  return out;
}

ExponentialSum respond(const StepResponse& r, const SoilThermal& soil, int years, Temperatures& out) {
  const auto response = [&](double t) { return r(soil.conductivity, soil.diffusivity(), t); };
  ExponentialFit fit = fit_exponentials(response, kHour, std::max(years, 10) * kYear, kTerms);
  out.fit_error = fit.worst_relative_error;
  out.response_hour = response(kHour);
  out.response_month = response(730 * kHour);
  out.response_ten_years = response(10 * kYear);
  return std::move(fit.sum);
}

}  // namespace

const KernelTable& KernelShelf::of(const Coil& coil, double return_offset) {
  for (const Kept& k : kept_)
    if (k.coil == coil && k.return_offset == return_offset) return k.table;
  if (kept_.size() >= 8) kept_.erase(kept_.begin());
  kept_.push_back({coil, return_offset, coil_kernel(coil, return_offset)});
  return kept_.back().table;
}

namespace {

constexpr std::size_t kMostBent = 32;

// Where a trench is straight its place does not matter.
template <class InGround>
bool same_bends(const InGround& a, const InGround& b) {
  if (a.bends.empty() && b.bends.empty()) return true;
  return a.bends == b.bends && a.head == b.head && a.end == b.end;
}

}  // namespace

const KernelTable& KernelShelf::of(const CoilInGround& coil) {
  if (coil.bends.empty()) return of(coil.coil, coil.return_offset);
  for (const KeptBent& k : bent_)
    if (k.coil.coil == coil.coil && same_bends(k.coil, coil) && k.coil.return_offset == coil.return_offset)
      return k.table;
  if (bent_.size() >= kMostBent) bent_.erase(bent_.begin());
  KernelTable table = of(coil.coil, coil.return_offset);
  const KernelTable bends = change_by_bends(coil);
  for (int n = 0; n < kKernelNodes; ++n) table[n] += bends[n];
  bent_.push_back({coil, table});
  return bent_.back().table;
}

const KernelTable& KernelShelf::of(const UprightInGround& coil, double image_raise) {
  for (const KeptUpright& k : upright_)
    if (k.coil.coil == coil.coil && same_bends(k.coil, coil) && k.coil.depth == coil.depth &&
        k.coil.pipe_radius == coil.pipe_radius && k.image_raise == image_raise)
      return k.table;
  if (upright_.size() >= kMostBent) upright_.erase(upright_.begin());
  upright_.push_back({coil, image_raise, upright_kernel(coil, image_raise)});
  return upright_.back().table;
}

std::vector<KernelTable> KernelShelf::all_of(const PipesInGround& pipes, double image_raise) {
  std::vector<KernelTable> self;
  for (const CoilInGround& c : pipes.coils) self.push_back(of(c));
  for (const UprightInGround& c : pipes.upright) self.push_back(of(c, image_raise));
  return self;
}

StepResponse step_response_of(const PipesInGround& pipes, double image_raise, KernelShelf& shelf) {
  return make_step_response(pipes, shelf.all_of(pipes, image_raise), image_raise, shelf.pairs);
}

Temperatures solve_temperatures(const PipesInGround& pipes, const Surroundings& s, const ThermalWishes& w,
                                const Circulation& circulation, KernelShelf& shelf, std::stop_token stop) {
  return solve_temperatures(pipes, step_response_of(pipes, s.soil.conductivity * w.surface_resistance, shelf),
                            s, w, circulation, std::move(stop));
}

Temperatures solve_temperatures(const PipesInGround& pipes, const StepResponse& response,
                                const Surroundings& s, const ThermalWishes& w, const Circulation& circulation,
                                std::stop_token stop) {
  Temperatures out;
  out.pipe = total_pipe(pipes);
  out.circulation = circulation;
  if (w.fluid_resistance) out.circulation.fluid_resistance = *w.fluid_resistance;
  out.years = w.years;
  const auto by_depth = pipe_by_depth(pipes);
  for (const auto& [depth, metres] : by_depth) out.depth += depth * metres / out.pipe;
  SimulationInput in;
  in.loop.pipe = out.pipe;
  in.loop.response = respond(response, s.soil, w.years, out);
  in.loop.fluid_resistance = out.circulation.fluid_resistance;
  in.loop.heat_flow_rate = circulation.heat_flow_rate;
  in.loop.ground = ground_by_hour(by_depth, out.pipe, s);
  in.house = s.house;
  in.unit = w.unit;
  in.pump_power = circulation.pump_power;
  in.years = w.years;
  out.ground = in.loop.ground;
  out.simulation = s.ground_hours.empty() ? simulate(in, stop)
                                          : simulate_ground_load(in.loop, s.ground_hours, in.years, stop);
  return out;
}

}  // namespace underlawn
