// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ctime>

#include "layout/layout.h"
#include "layout/setting.h"
#include "support/exact_lots.h"
#include "support/layout_parts.h"

namespace underlawn {
namespace {

using sample::box;
using sample::feature;

// A lot of 40 corners with a house and as many trees, utilities and small areas as asked for.
Site busy_lot(int features) {
  Site s;
  for (int i = 0; i < 40; ++i) {
    const double at = 2 * 3.141592653589793 * i / 40;
    s.lot.push_back({{45 + 44 * std::cos(at) + (i % 3), 35 + 34 * std::sin(at)}, 2.0 + (i % 4) * 0.5});
  }
  s.features.push_back(feature(1, FeatureKind::house, box(35, 8, 52, 18)));
  s.entry = EntryPoint{1, {43, 18}};
  for (int i = 2; i <= features; ++i) {
    const double x = 8 + (i * 37) % 74, y = 6 + (i * 23) % 58;
    if (i % 3 == 0) {
      s.features.push_back(feature(i, FeatureKind::tree, {{x, y}}));
      s.features.back().trunk_diameter = 0.1;
    } else if (i % 3 == 1) {
      s.features.push_back(feature(i, FeatureKind::utility, {{x, 0}, {x + 3, 8}}));
    } else {
      s.features.push_back(feature(i, FeatureKind::no_dig, box(x, y, x + 1.5, y + 1)));
    }
  }
  return s;
}

void whole_layout(benchmark::State& state) {
  const Site site = busy_lot(static_cast<int>(state.range(0)));
  Wishes wishes;
  wishes.circuits = 4;
  Coil coil;
  coil.trench_length = 22;
  Layout l;
  for (auto _ : state) benchmark::DoNotOptimize(l = make_layout(site, wishes, coil));
  state.counters["placed"] = static_cast<double>(l.trenches.size());
  state.counters["fits"] = l.fits;
}
BENCHMARK(whole_layout)->Arg(1)->Arg(12)->Arg(120)->Unit(benchmark::kMillisecond);

// Placing alone, the problem that tests/bench/exact_layouts.py solves, on its 40 lots. `ratio`: the seconds
// that it and Cbc took by ours, processor time of one core each; `median`, `least`: of the lots one by one.
// UNDERLAWN_EXACT_LOTS names what the script wrote on this machine: that in tests/files was timed on another.
std::vector<sample::ExactLot> timed_lots() {
  const char* here = std::getenv("UNDERLAWN_EXACT_LOTS");
  return sample::exact_lots(here != nullptr
                                ? std::string(here)
                                : std::string(UNDERLAWN_SOURCE_DIR) + "/tests/files/exact_lots.txt");
}

int placed_on(const sample::ExactLot& lot) {
  const Setting setting(lot.site, lot.wishes, lot.coil, *routable_region(lot.site));
  const FieldSearch search(setting.keeping(), lot.coil, setting.wishes.circuits, false);
  return search.candidates({}).fits;
}

void placing_on_exact_lots(benchmark::State& state) {
  const auto lots = timed_lots();
  std::vector<double> ours(lots.size(), 0);
  int fits = 0, most = 0;
  double exact = 0;
  for (const sample::ExactLot& lot : lots) {
    most += lot.most;
    exact += lot.seconds;
  }
  for (auto _ : state) {
    fits = 0;
    for (std::size_t i = 0; i < lots.size(); ++i) {
      const std::clock_t from = std::clock();
      fits += placed_on(lots[i]);
      ours[i] += static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC;
    }
  }
  std::vector<double> ratios;
  for (std::size_t i = 0; i < lots.size(); ++i)
    ratios.push_back(lots[i].seconds * static_cast<double>(state.iterations()) / ours[i]);
  std::sort(ratios.begin(), ratios.end());
  state.counters["fits"] = fits;
  state.counters["most"] = most;
  state.counters["ratio"] = benchmark::Counter(exact, benchmark::Counter::kIsIterationInvariantRate);
  state.counters["median"] = ratios[ratios.size() / 2];
  state.counters["least"] = ratios.front();
}
BENCHMARK(placing_on_exact_lots)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace underlawn
