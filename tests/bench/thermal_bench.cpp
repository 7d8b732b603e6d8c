// SPDX-License-Identifier: GPL-3.0-or-later
// Decades of hours by exponentials beside their convolution by FFTW with the same step response, and what
// moving one trench costs. The ratio of the two times of a run is what to look at.
#include <benchmark/benchmark.h>
#include <fftw3.h>

#include <cmath>
#include <ctime>
#include <memory>

#include "files/plan_file.h"
#include "plan/solve.h"
#include "thermal/coil_kernel.h"
#include "thermal/exponentials.h"
#include "thermal/loop_geometry.h"
#include "thermal/temperatures.h"

namespace {

using namespace underlawn;

constexpr double kHour = 3600;
constexpr int kYears = 25, kHours = kYears * kYearHours, kPadded = 1 << 19;

// Processor time, so that a busy machine does not count.
double seconds(auto&& work) {
  const std::clock_t start = std::clock();
  work();
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

// The sample plan's field, with one trench moved sideways by `aside` m.
struct Field {
  Wishes wishes;
  Layout layout;
  ThermalWishes thermal;
  Surroundings around;
  Circulation circulation;
  Field() {
    const Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/alder-lane.underlawn").value().value;
    wishes = plan.wishes;
    const Outcome outcome = solve(plan);
    layout = outcome.layout;
    thermal = plan.thermal;
    around = *outcome.surroundings;
    circulation = outcome.temperatures->circulation;
  }
  Temperatures temperatures(const Layout& laid, KernelShelf& shelf) const {
    return solve_temperatures(pipes_in_ground(laid, wishes), around, thermal, circulation, shelf);
  }
  Layout moved(double aside) const {
    Layout out = layout;
    Trench& t = out.trenches.back();
    const Point by = aside * left_normal(unit(t.end - t.head));
    t.head = t.head + by;
    t.end = t.end + by;
    return out;
  }
};

const Field& field() {
  static const Field kept;
  return kept;
}

std::vector<KernelTable> kernels(const PipesInGround& pipes, KernelShelf& shelf) {
  std::vector<KernelTable> out;
  for (const CoilInGround& c : pipes.coils) out.push_back(shelf.of(c.coil, c.return_offset));
  return out;
}

// What simulate() is handed for the sample plan, and the exact response beside its exponentials.
struct Decades {
  SimulationInput input;
  std::vector<double> response;  // m K/W at 0, 1, ... kHours h
  Decades() {
    KernelShelf shelf;
    const Field& f = field();
    const PipesInGround pipes = pipes_in_ground(f.layout, f.wishes);
    const SoilThermal& soil = f.around.soil;
    const StepResponse r =
        make_step_response(pipes, kernels(pipes, shelf), soil.conductivity * f.thermal.surface_resistance);
    const auto at = [&](double t) { return r(soil.conductivity, soil.diffusivity(), t); };
    for (int h = 0; h <= kHours; ++h) response.push_back(at(kHour * h));
    const Temperatures solved = f.temperatures(f.layout, shelf);
    input.loop.response = fit_exponentials(at, kHour, kHour * kHours, 16).sum;
    input.loop.pipe = solved.pipe;
    input.loop.fluid_resistance = f.circulation.fluid_resistance;
    input.loop.heat_flow_rate = f.circulation.heat_flow_rate;
    input.loop.ground = solved.ground;
    input.house = f.around.house;
    input.unit = f.thermal.unit;
    input.pump_power = f.circulation.pump_power;
    input.years = kYears;
  }
};

const Decades& decades() {
  static const Decades kept;
  return kept;
}

// Wall and entering temperature of every hour by one convolution of the heat with R's hourly increments. The
// response's own transform is made beforehand, as the exponentials are.
class Convolution {
 public:
  explicit Convolution(const Decades& d) : d_(d) {
    forward_ = fftw_plan_dft_r2c_1d(kPadded, series_.get(), spectrum_.get(), FFTW_ESTIMATE);
    back_ = fftw_plan_dft_c2r_1d(kPadded, spectrum_.get(), series_.get(), FFTW_ESTIMATE);
    std::fill_n(series_.get(), kPadded, 0.0);
    for (int h = 0; h < kHours; ++h) series_[h] = d.response[h + 1] - d.response[h];
    fftw_execute(forward_);
    for (int i = 0; i <= kPadded / 2; ++i)
      response_.push_back({spectrum_[i][0] / kPadded, spectrum_[i][1] / kPadded});
  }
  ~Convolution() {
    fftw_destroy_plan(forward_);
    fftw_destroy_plan(back_);
  }
  Convolution(const Convolution&) = delete;
  Convolution& operator=(const Convolution&) = delete;

  // `mean` and `full`: W from the ground, of the hour and of the running unit. Entering temperature, deg C.
  void entering(const std::vector<double>& mean, const std::vector<double>& full, std::vector<double>& out) {
    const LoopModel& loop = d_.input.loop;
    for (int h = 0; h < kHours; ++h) series_[h] = mean[h] / loop.pipe;
    std::fill(series_.get() + kHours, series_.get() + kPadded, 0.0);
    fftw_execute(forward_);
    for (int i = 0; i <= kPadded / 2; ++i) {
      const double re = spectrum_[i][0], im = spectrum_[i][1];
      spectrum_[i][0] = re * response_[i].re - im * response_[i].im;
      spectrum_[i][1] = re * response_[i].im + im * response_[i].re;
    }
    fftw_execute(back_);
    const double at_full = loop.fluid_resistance / loop.pipe - 1 / (2 * loop.heat_flow_rate);
    for (int h = 0; h < kHours; ++h) out[h] = loop.ground[h % kYearHours] - series_[h] - at_full * full[h];
  }

 private:
  struct Complex {
    double re, im;
  };
  template <class T>
  using Buffer = std::unique_ptr<T[], decltype(&fftw_free)>;
  const Decades& d_;
  Buffer<double> series_{fftw_alloc_real(kPadded), fftw_free};
  Buffer<fftw_complex> spectrum_{fftw_alloc_complex(kPadded / 2 + 1), fftw_free};
  std::vector<Complex> response_;
  fftw_plan forward_, back_;
};

// What the unit takes at these entering temperatures: the other half of the problem that simulate() solves.
void heat_at(const SimulationInput& in, const std::vector<double>& entering, std::vector<double>& mean,
             std::vector<double>& full) {
  for (int h = 0; h < kHours; ++h) {
    const double heating = in.house.heating[h % kYearHours], cooling = in.house.cooling[h % kYearHours];
    mean[h] = full[h] = 0;
    if (heating <= 0 && cooling <= 0) continue;
    const bool warm = heating >= cooling;
    const Performance p = performance_at(warm ? in.unit.heating : in.unit.cooling, entering[h]);
    full[h] = warm ? p.capacity - p.power : -(p.capacity + p.power);
    mean[h] = std::min(1.0, (warm ? heating : cooling) / p.capacity) * full[h];
  }
}

void decades_simulated(benchmark::State& state) {
  const Decades& d = decades();
  Simulation s;
  for (auto _ : state) benchmark::DoNotOptimize(s = simulate(d.input));
  state.counters["coldest"] = s.coldest;
  state.counters["warmest"] = s.warmest;
}
BENCHMARK(decades_simulated)->Unit(benchmark::kMillisecond);

// The same hourly heat convolved once: what is left of the problem when the heat is known beforehand.
void decades_convolved(benchmark::State& state) {
  const Decades& d = decades();
  Convolution convolution(d);
  SimulationInput keeping = d.input;
  keeping.keep_every_hour = true;
  const Simulation every = simulate(keeping);
  std::vector<double> mean(kHours), full(kHours), entering(kHours);
  for (int h = 0; h < kHours; ++h) {
    mean[h] = every.every[h].ground_heat;
    full[h] = (every.every[h].entering - every.every[h].leaving) * d.input.loop.heat_flow_rate;
  }
  double ours = 0, theirs = 0, worst = 0;
  Simulation s;
  for (auto _ : state) {
    ours += seconds([&] { benchmark::DoNotOptimize(s = simulate(d.input)); });
    theirs += seconds([&] { convolution.entering(mean, full, entering); });
  }
  for (int h = 0; h < kHours; ++h)
    if (full[h] != 0) worst = std::max(worst, std::abs(entering[h] - every.every[h].entering));
  const auto runs = static_cast<double>(state.iterations());
  state.counters["simulate_ms"] = 1e3 * ours / runs;
  state.counters["fft_ms"] = 1e3 * theirs / runs;
  state.counters["fft_over_simulate"] = theirs / ours;
  state.counters["worst_K"] = worst;
}
BENCHMARK(decades_convolved)->Unit(benchmark::kMillisecond);

// Heat pump and ground together by convolution: heat from temperatures, temperatures from heat, until no hour
// moves by 0.001 K.
void decades_coupled_by_convolution(benchmark::State& state) {
  const Decades& d = decades();
  Convolution convolution(d);
  std::vector<double> mean(kHours), full(kHours), entering(kHours), next(kHours);
  double ours = 0, theirs = 0;
  int rounds = 0;
  Simulation s;
  for (auto _ : state) {
    ours += seconds([&] { benchmark::DoNotOptimize(s = simulate(d.input)); });
    theirs += seconds([&] {
      for (int h = 0; h < kHours; ++h) entering[h] = d.input.loop.ground[h % kYearHours];
      double moved = 1;
      for (rounds = 0; moved > 1e-3 && rounds < 50; ++rounds) {
        heat_at(d.input, entering, mean, full);
        convolution.entering(mean, full, next);
        moved = 0;
        for (int h = 0; h < kHours; ++h) moved = std::max(moved, std::abs(next[h] - entering[h]));
        std::swap(next, entering);
      }
    });
  }
  state.counters["fft_over_simulate"] = theirs / ours;
  state.counters["rounds"] = rounds;
}
BENCHMARK(decades_coupled_by_convolution)->Unit(benchmark::kMillisecond);

// R(t) after one trench moved, the coil's own kernel kept, beside R(t) from nothing.
void response_after_a_move(benchmark::State& state) {
  const Field& f = field();
  KernelShelf kept;
  const auto respond = [&](double aside, KernelShelf& shelf) {
    const PipesInGround pipes = pipes_in_ground(f.moved(aside), f.wishes);
    return make_step_response(pipes, kernels(pipes, shelf), 0.1, shelf.pairs)(1.4, 6e-7, 86400);
  };
  respond(0, kept);
  double moved = 0, anew = 0;
  int step = 0;
  for (auto _ : state) {
    const double aside = 0.001 * (++step % 300);
    moved += seconds([&] { benchmark::DoNotOptimize(respond(aside, kept)); });
    anew += seconds([&] {
      KernelShelf empty;
      benchmark::DoNotOptimize(respond(aside, empty));
    });
  }
  state.counters["moved_ms"] = 1e3 * moved / static_cast<double>(state.iterations());
  state.counters["anew_over_moved"] = anew / moved;
}
BENCHMARK(response_after_a_move)->Unit(benchmark::kMillisecond);

// The whole stage while a trench is dragged.
void temperatures_after_a_move(benchmark::State& state) {
  const Field& f = field();
  KernelShelf shelf;
  f.temperatures(f.layout, shelf);
  int step = 0;
  for (auto _ : state) benchmark::DoNotOptimize(f.temperatures(f.moved(0.001 * (++step % 300)), shelf));
}
BENCHMARK(temperatures_after_a_move)->Unit(benchmark::kMillisecond);

}  // namespace
