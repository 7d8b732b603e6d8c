// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/temperatures.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "pipe/friction.h"
#include "pipe/pipe_size.h"
#include "thermal/coil_kernel.h"
#include "thermal/exponentials.h"
#include "thermal/loop_geometry.h"

namespace underlawn {
namespace {

constexpr double kHour = 3600, kYear = 8760 * kHour;
constexpr int kTerms = 16;

std::string shown(Quantity q, double v) {
  return print_quantity(q, v, UnitSystem::metric);
}

void bounded(std::vector<Trouble>& out, const char* thing, Quantity q, double v, double low, double high,
             const char* advice) {
  if (v >= low && v <= high) return;
  out.push_back(
      {"thermal_out_of_bounds", thing, shown(q, v), shown(q, low) + " to " + shown(q, high), advice});
}

// The mean over the depths of coils and run, weighted by their pipe.
std::vector<double> ground_by_hour(const PipesInGround& pipes, const ThermalWishes& w) {
  std::map<double, double> by_depth;
  for (const CoilInGround& c : pipes.coils) by_depth[c.depth] += c.coil.coil_length;
  for (const PipeInGround& p : pipes.pipes) by_depth[p.depth] += distance(p.line.a, p.line.b);
  const double pipe = total_pipe(pipes);
  std::vector<double> out(kYearHours, 0.0);
  for (const auto& [depth, metres] : by_depth)
    for (int h = 0; h < kYearHours; ++h)
      out[h] +=
          metres / pipe * undisturbed_temperature(w.climate, w.soil.diffusivity(), depth, (h + 1) / 24.0);
  return out;
}

struct Film {
  double resistance = 0, reynolds = 0;
};

// Film and wall in the coils, with the flow shared equally. (The network's own flows come with the
// hydraulics.)
Film film_in_coils(const PipesInGround& pipes, const Wishes& wishes, const ThermalWishes& w,
                   const FluidProperties& fluid) {
  const PipeSize size = find_pipe(wishes.pipe).value();
  const double bore = size.average_bore(), circuits = std::max<std::size_t>(pipes.coils.size(), 1);
  const double velocity = w.flow / circuits / (std::numbers::pi * bore * bore / 4);
  Film film;
  film.reynolds = velocity * bore * fluid.density / fluid.viscosity;
  const double nu = nusselt(film.reynolds, fluid.prandtl(), friction_factor(film.reynolds));
  film.resistance = fluid_resistance(size.outside_diameter, bore, kPolyethyleneConductivity,
                                     nu * fluid.conductivity / bore);
  return film;
}

void respond(const PipesInGround& pipes, const ThermalWishes& w, KernelShelf& shelf, Temperatures& out,
             LoopModel& loop) {
  std::vector<KernelTable> self;
  for (const CoilInGround& c : pipes.coils) self.push_back(shelf.of(c.coil, c.return_offset));
  const StepResponse r =
      make_step_response(pipes, self, w.soil.conductivity * w.surface_resistance, shelf.pairs);
  const auto response = [&](double t) { return r(w.soil.conductivity, w.soil.diffusivity(), t); };
  const ExponentialFit fit = fit_exponentials(response, kHour, std::max(w.years, 10) * kYear, kTerms);
  loop.response = fit.sum;
  out.fit_error = fit.worst_relative_error;
  out.response_hour = response(kHour);
  out.response_month = response(730 * kHour);
  out.response_ten_years = response(10 * kYear);
}

}  // namespace

const KernelTable& KernelShelf::of(const Coil& coil, double return_offset) {
  for (const Kept& k : kept_)
    if (k.coil == coil && k.return_offset == return_offset) return k.table;
  if (kept_.size() >= 8) kept_.erase(kept_.begin());
  kept_.push_back({coil, return_offset, coil_kernel(coil, return_offset)});
  return kept_.back().table;
}

std::vector<Trouble> thermal_troubles(const ThermalWishes& w) {
  std::vector<Trouble> out;
  bounded(out, "soil conductivity", Quantity::conductivity, w.soil.conductivity, 0.05, 10,
          "Enter the soil's k.");
  bounded(out, "soil heat capacity", Quantity::count, w.soil.heat_capacity, 5e5, 6e6, "Enter J/(m3 K).");
  bounded(out, "mean ground temperature", Quantity::temperature, w.climate.mean, -10, 40,
          "Enter the yearly mean.");
  bounded(out, "ground temperature swing", Quantity::temperature_difference, w.climate.amplitude, 0, 40,
          "Enter half of the yearly swing at the surface.");
  bounded(out, "coldest day", Quantity::count, w.climate.coldest_day, 0, 366, "Enter a day of the year.");
  bounded(out, "surface resistance", Quantity::count, w.surface_resistance, 0, 1,
          "0.04 bare to 0.12 long grass.");
  bounded(out, "flow", Quantity::flow, w.flow, 1e-6, 0.1, "Enter the heat pump's flow.");
  bounded(out, "circulator power", Quantity::power, w.pump_power, 0, 1e5, "Enter its electric power.");
  bounded(out, "design life", Quantity::count, w.years, 1, 100, "Enter years.");
  if (auto ok = check_load(w.load); !ok) out.push_back(ok.error());
  if (auto ok = check_heat_pump(w.unit); !ok) out.push_back(ok.error());
  if (auto year = year_from_normals(w.normals); !year) out.push_back(year.error());
  const auto fluid = fluid_properties(w.fluid, w.mass_fraction, std::max(w.coldest_allowed - 3, -40.0));
  if (!fluid) out.push_back(fluid.error());
  return out;
}

Temperatures solve_temperatures(const Layout& layout, const Wishes& wishes, const ThermalWishes& w,
                                KernelShelf& shelf, std::stop_token stop) {
  Temperatures out;
  out.troubles = thermal_troubles(w);
  if (!find_pipe(wishes.pipe)) out.troubles.push_back(find_pipe(wishes.pipe).error());
  if (layout.trenches.empty())
    out.troubles.push_back({"no_field", "field", "0 trenches", "at least one", "Place a trench first."});
  if (!out.troubles.empty() || stop.stop_requested()) return out;
  const PipesInGround pipes = pipes_in_ground(layout, wishes);
  const FluidProperties fluid =
      fluid_properties(w.fluid, w.mass_fraction, std::max(w.coldest_allowed - 3, -40.0)).value();
  SimulationInput in;
  out.pipe = in.loop.pipe = total_pipe(pipes);
  respond(pipes, w, shelf, out, in.loop);
  const Film film = film_in_coils(pipes, wishes, w, fluid);
  out.fluid_resistance = in.loop.fluid_resistance = film.resistance;
  out.reynolds = film.reynolds;
  in.loop.heat_flow_rate = w.flow * fluid.density * fluid.specific_heat;
  in.loop.ground = ground_by_hour(pipes, w);
  const WeatherYear weather = year_from_normals(w.normals).value();
  const HourlyLoad load = hourly_load(w.load, weather);
  in.house = {load.heating, load.cooling};
  in.unit = w.unit;
  in.pump_power = w.pump_power;
  in.years = w.years;
  out.ground = in.loop.ground;
  out.outdoor = weather.outdoor;
  out.house = in.house;
  out.simulation = simulate(in, stop);
  return out;
}

}  // namespace underlawn
