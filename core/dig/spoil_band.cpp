// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/spoil_band.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/say.h"
#include "dig/pieces.h"

namespace underlawn {

namespace {

constexpr double kStation = 0.5;    // m
constexpr double kSpeck = 0.1;      // m2
constexpr double kMuchWider = 1.3;  // by keeping off roots and walls; our own choice
constexpr int kTries = 6;           // a heap that gives way gets wider and may give way again

struct Bench {
  const DigStep& piece;
  int sign;
  const std::vector<Ring>& heads;
  const Sight& sight;
  double off;
  std::vector<Ring> footprints;  // of what touches
  std::vector<double> kept_off;  // m that the heap keeps off each
};

// A straight leg of the trench and the stretches of it, in m from its start, beside which there is room.
struct Leg {
  Segment axis;
  Point out;  // unit, toward the heap
  std::vector<std::pair<double, double>> free;
};

Segment across(const Bench& b, const Leg& leg, double at, double width) {
  const Point on = leg.axis.a + at * unit(leg.axis.b - leg.axis.a);
  const double near = b.piece.top / 2 + b.off;
  return {on + near * leg.out, on + (near + width) * leg.out};
}

bool has_room(const Bench& b, const Segment& across) {
  if (!b.sight.sees(across.a, across.b)) return false;
  for (const Ring& head : b.heads)
    if (line_area_distance({across.a, across.b}, head) < kSamePlace) return false;
  for (std::size_t i = 0; i < b.footprints.size(); ++i)
    if (line_area_distance({across.a, across.b}, b.footprints[i]) < b.kept_off[i] - kSamePlace) return false;
  return true;
}

Leg free_along(const Bench& b, Point from, Point to, double width) {
  Leg leg{{from, to}, b.sign * left_normal(unit(to - from)), {}};
  const double long_ = distance(from, to);
  const int n = std::max(1, static_cast<int>(std::ceil(long_ / kStation)));
  bool before = has_room(b, across(b, leg, 0, width));
  for (int i = 1; i <= n; ++i) {
    const bool now = has_room(b, across(b, leg, long_ * i / n, width));
    if (before && now) {
      if (!leg.free.empty() && leg.free.back().second == long_ * (i - 1) / n)
        leg.free.back().second = long_ * i / n;
      else
        leg.free.push_back({long_ * (i - 1) / n, long_ * i / n});
    }
    before = now;
  }
  return leg;
}

std::vector<Leg> legs_with_room(const Bench& b, double width) {
  std::vector<Leg> legs;
  for (std::size_t i = 1; i < b.piece.line.size(); ++i)
    if (distance(b.piece.line[i - 1], b.piece.line[i]) > kSamePlace)
      legs.push_back(free_along(b, b.piece.line[i - 1], b.piece.line[i], width));
  return legs;
}

double free_length(const std::vector<Leg>& legs) {
  double sum = 0;
  for (const Leg& leg : legs)
    for (const auto& [from, to] : leg.free) sum += to - from;
  return sum;
}

std::vector<Ring> rings_of(const Bench& b, const std::vector<Leg>& legs, double width) {
  std::vector<Ring> rings;
  for (const Leg& leg : legs)
    for (const auto& [from, to] : leg.free) {
      const Segment first = across(b, leg, from, width), last = across(b, leg, to, width);
      Ring ring = {first.a, last.a, last.b, first.b};
      if (b.sign > 0) std::reverse(ring.begin(), ring.end());
      rings.push_back(std::move(ring));
    }
  return rings;
}

// What is met most often beside the trench.
std::string main_blocker(const Bench& b, const Site& site, double width) {
  std::map<std::string, int> met;
  for (std::size_t i = 1; i < b.piece.line.size(); ++i) {
    const Point from = b.piece.line[i - 1], to = b.piece.line[i];
    if (distance(from, to) < kSamePlace) continue;
    const Leg leg{{from, to}, b.sign * left_normal(unit(to - from)), {}};
    const int n = std::max(1, static_cast<int>(distance(from, to) / (4 * kStation)));
    for (int k = 0; k <= n; ++k)
      if (const std::string name = blocker_of(site, across(b, leg, distance(from, to) * k / n, width));
          !name.empty())
        ++met[name];
  }
  const auto most = std::max_element(met.begin(), met.end(),
                                     [](const auto& a, const auto& c) { return a.second < c.second; });
  return most == met.end() ? say("header or run") : most->first;
}

// The heap on this side as it comes out; `fits` not set where it has no room.
SpoilBand laid(const Bench& bench, double repose) {
  SpoilBand band;
  double long_ = length(bench.piece.line);
  const double least = kLeastHeapLength * long_;
  for (int i = 0; i < kTries; ++i) {
    band.heap = spoil_heap(bench.piece.work.loose, long_, repose);
    if (!(band.heap.width > 0)) break;
    const auto legs = legs_with_room(bench, band.heap.width);
    const double now = free_length(legs);
    if (now < least) break;
    if (now >= long_ - kSamePlace) {
      band.fits = true;
      band.rings = rings_of(bench, legs, band.heap.width);
      break;
    }
    long_ = now;
  }
  return band;
}

// The run gives way to the header's heap where it can: both stand until the test.
std::vector<double> kept_off(const DigStep& piece, const std::vector<const DigStep*>& touching, double repose,
                             double off, bool gives_way) {
  std::vector<double> kept;
  for (const DigStep* other : touching) {
    const bool heap = gives_way && piece.kind == DigKind::run && other->kind == DigKind::header;
    kept.push_back(off + (heap ? spoil_heap(other->work.loose, 0.8 * other->work.length, repose).width : 0));
  }
  return kept;
}

double covered(const SpoilBand& band, const Region& ground) {
  double sum = 0;
  if (ground.empty()) return sum;
  for (const Ring& ring : band.rings) sum += area(intersect(ground, {{ring, {}}}));
  return sum;
}

// Off that ground where the rest of the side has room for not much wider a heap.
bool give_way(SpoilBand& band, const Bench& bench, const Region& shunned, const Sight& rest, double repose) {
  if (!band.fits || covered(band, shunned) < kSpeck) return false;
  SpoilBand other =
      laid({bench.piece, bench.sign, bench.heads, rest, bench.off, bench.footprints, bench.kept_off}, repose);
  if (!other.fits || other.heap.width > kMuchWider * band.heap.width) return false;
  band = std::move(other);
  return true;
}

// Off roots, house walls and buried lines; where that is too much, off the lines, or else off the others.
SpoilBand careful(SpoilBand plain, const Bench& bench, const DigGround& ground, double repose) {
  if (give_way(plain, bench, ground.shunned, ground.careful, repose)) return plain;
  if (give_way(plain, bench, ground.lines, ground.off_lines, repose)) return plain;
  give_way(plain, bench, ground.roots_and_walls, ground.off_roots_and_walls, repose);
  return plain;
}

}  // namespace

SpoilBand spoil_band(const DigStep& piece, int sign, const std::vector<const DigStep*>& touching,
                     const std::vector<Ring>& heads, const DigGround& ground, const Site& site, double repose,
                     double off) {
  Bench bench{piece, sign, heads, ground.sight, off, {}, kept_off(piece, touching, repose, off, true)};
  for (const DigStep* other : touching) bench.footprints.push_back(footprint(*other));
  SpoilBand band = laid(bench, repose);
  if (!band.fits) {
    bench.kept_off = kept_off(piece, touching, repose, off, false);
    band = laid(bench, repose);
  }
  band = careful(std::move(band), bench, ground, repose);
  if (!band.fits) band.blocked_by = main_blocker(bench, site, band.heap.width);
  band.dear = covered(band, ground.dear);
  band.over_lines = covered(band, ground.lines);
  return band;
}

}  // namespace underlawn
