// SPDX-License-Identifier: GPL-3.0-or-later
// Buildable ground of seeded lots (setback, clearances, one difference) by our plane and by GEOS in the same
// run, and the way across such ground. The ratio of the two times of a pair is what to look at.
#include <benchmark/benchmark.h>
#include <geos_c.h>

#include <cmath>
#include <memory>
#include <numbers>
#include <random>

#include "plane/region.h"
#include "plane/route.h"
#include "plane/sight.h"

namespace {

using namespace underlawn;

struct Lot {
  Ring line;
  std::vector<Ring> areas;
  std::vector<Polyline> lines;
  std::vector<Point> trees;
};

constexpr double kSetback = 3.048, kClearance = 1.524, kRootZone = 4;

Lot lot_of(unsigned seed, int things) {
  std::mt19937 random(seed);
  const auto number = [&](double low, double high) {
    return low + (high - low) * std::generate_canonical<double, 53>(random);
  };
  const auto feet = [](double v) { return 0.3048 * std::round(v / 0.3048); };
  Lot lot;
  for (int i = 0; i < 7; ++i) {
    const Point p = Point{40, 40} + number(28, 40) * direction(2 * std::numbers::pi * i / 7);
    lot.line.push_back({feet(p.x), feet(p.y)});
  }
  for (int i = 0; i < things; ++i) {
    const Point c{feet(number(10, 70)), feet(number(10, 70))}, d{feet(number(10, 70)), feet(number(10, 70))};
    if (i % 3 == 0)
      lot.areas.push_back({c, {c.x + 3.048, c.y}, {c.x + 3.048, c.y + 4.572}, {c.x, c.y + 4.572}});
    if (i % 3 == 1) lot.trees.push_back(c);
    if (i % 6 == 2 && !(c == d)) lot.lines.push_back({c, 0.5 * (c + d) + Point{1, 2}, d});
  }
  return lot;
}

Region ours(const Lot& lot) {
  std::vector<Region> taken;
  for (const Ring& r : lot.areas) taken.push_back(grown(region_of(r), kClearance));
  for (const Polyline& l : lot.lines) taken.push_back(buffered(l, kClearance));
  for (Point p : lot.trees) taken.push_back(buffered(p, kRootZone));
  return subtract(grown(region_of(lot.line), -kSetback), unite(taken));
}

class Geos {
 public:
  Geos() : h_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(h_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;
  using Shape = std::shared_ptr<GEOSGeometry>;

  // Its buffer at six sides to a quarter turn, as ours; its fastest union of many.
  double buildable(const Lot& lot) const {
    std::vector<GEOSGeometry*> taken;
    for (const Ring& r : lot.areas) taken.push_back(buffer(polygon(r), kClearance));
    for (const Polyline& l : lot.lines) taken.push_back(buffer(line(l), kClearance));
    for (Point p : lot.trees)
      taken.push_back(buffer(own(GEOSGeom_createPointFromXY_r(h_, p.x, p.y)), kRootZone));
    const Shape all = own(GEOSGeom_createCollection_r(h_, GEOS_GEOMETRYCOLLECTION, taken.data(),
                                                      static_cast<unsigned>(taken.size())));
    const Shape united = own(GEOSUnaryUnion_r(h_, all.get()));
    const Shape inner = own(buffer(polygon(lot.line), -kSetback));
    double area = 0;
    GEOSArea_r(h_, own(GEOSDifference_r(h_, inner.get(), united.get())).get(), &area);
    return area;
  }

 private:
  Shape own(GEOSGeometry* g) const {
    return {g, [h = h_](GEOSGeometry* p) { GEOSGeom_destroy_r(h, p); }};
  }
  GEOSCoordSequence* points(const std::vector<Point>& p, bool close) const {
    const auto n = static_cast<unsigned>(p.size() + (close ? 1 : 0));
    GEOSCoordSequence* s = GEOSCoordSeq_create_r(h_, n, 2);
    for (unsigned i = 0; i < n; ++i) GEOSCoordSeq_setXY_r(h_, s, i, p[i % p.size()].x, p[i % p.size()].y);
    return s;
  }
  Shape polygon(const Ring& r) const {
    return own(GEOSGeom_createPolygon_r(h_, GEOSGeom_createLinearRing_r(h_, points(r, true)), nullptr, 0));
  }
  Shape line(const Polyline& l) const { return own(GEOSGeom_createLineString_r(h_, points(l, false))); }
  GEOSGeometry* buffer(const Shape& s, double by) const { return GEOSBuffer_r(h_, s.get(), by, 6); }

  GEOSContextHandle_t h_;
};

void buildable_ours(benchmark::State& state) {
  unsigned seed = 0;
  for (auto _ : state)
    benchmark::DoNotOptimize(area(ours(lot_of(seed++ % 100, static_cast<int>(state.range(0))))));
}
void buildable_geos(benchmark::State& state) {
  const Geos geos;
  unsigned seed = 0;
  for (auto _ : state)
    benchmark::DoNotOptimize(geos.buildable(lot_of(seed++ % 100, static_cast<int>(state.range(0)))));
}
BENCHMARK(buildable_ours)->Arg(12)->Arg(40)->Arg(150)->Unit(benchmark::kMicrosecond);
BENCHMARK(buildable_geos)->Arg(12)->Arg(40)->Arg(150)->Unit(benchmark::kMicrosecond);

// Across ground with the given number of things on it; counters say how many corners it has.
RouteRequest way_across(int things, double per_bend) {
  RouteRequest q;
  for (unsigned seed = 0;; ++seed) {
    q = {{5, 40}, {75, 40}, ours(lot_of(seed, things)), {}, per_bend};
    if (q.free.empty()) continue;
    const Sight sight(q.free);
    q.from = sight.nearest(q.from);
    q.to = sight.nearest(q.to);
    if (shortest_route(q)) return q;
  }
}
void route_across(benchmark::State& state) {
  const RouteRequest q = way_across(static_cast<int>(state.range(0)), static_cast<double>(state.range(1)));
  for (auto _ : state) benchmark::DoNotOptimize(shortest_route(q));
  std::size_t corners = 0;
  for (const Polygon& p : q.free) {
    corners += p.outer.size();
    for (const Ring& h : p.holes) corners += h.size();
  }
  state.counters["corners"] = static_cast<double>(corners);
}
BENCHMARK(route_across)
    ->Args({12, 0})
    ->Args({12, 1})
    ->Args({30, 0})
    ->Args({30, 1})
    ->Unit(benchmark::kMicrosecond);

void route_on_prepared_ground(benchmark::State& state) {
  const RouteRequest q = way_across(static_cast<int>(state.range(0)), 1);
  Router router(q.free, q.dear, q.per_bend);
  for (auto _ : state) benchmark::DoNotOptimize(router.route(q.from, q.to));
}
BENCHMARK(route_on_prepared_ground)->Arg(12)->Arg(30)->Unit(benchmark::kMicrosecond);

}  // namespace
