// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/calm.h"

namespace underlawn {

namespace {

constexpr double kFar = 3;                  // m
constexpr double kSameLength = 1e-3;        // m
constexpr double kParallel = 1e-6;          // sine of the angle between
constexpr double kBeforeAllGuesses = -1e6;  // m
constexpr double kDrawn = 1e-3;             // rad

bool lies_held(const Segment& t, const Held& held) {
  return std::any_of(held.trenches.begin(), held.trenches.end(), [&t](const Polyline& line) {
    return distance(line.front(), t.a) < kSameLength && distance(line.back(), t.b) < kSameLength;
  });
}

// Without what is locked, and without a coil in the run, which lies as the run does.
std::vector<Segment> field_of(const std::vector<Segment>& kept, const Held& held) {
  std::vector<Segment> field;
  for (const Segment& t : kept) {
    if (distance(t.a, t.b) < kSamePlace) return {};
    if (!lies_held(t, held) && std::abs(cross(unit(kept[0].b - kept[0].a), unit(t.b - t.a))) < kParallel)
      field.push_back(t);
  }
  return field;
}

// Heads of the trenches that point the way most do, on one line across.
bool heads_in_line(const std::vector<Segment>& field) {
  const Point u = unit(field[0].b - field[0].a);
  std::size_t ahead = 0;
  for (const Segment& t : field) ahead += dot(t.b - t.a, u) > 0;
  const bool main = 2 * ahead >= field.size();
  std::optional<double> line;
  for (const Segment& t : field) {
    if ((dot(t.b - t.a, u) > 0) != main) continue;
    if (line && std::abs(dot(t.a, u) - *line) > kSameLength) return false;
    line = dot(t.a, u);
  }
  return true;
}

bool is_legal(const Keeping& keeping, const Arrangement& a) {
  Arrangement copy = a;
  return !drop_illegal(keeping, copy);
}

// Heads that were each drawn back for itself lie off the straight line that their header is held to.
bool heads_near(const std::vector<Segment>& field, const Segment& line, const Wishes& w) {
  return std::all_of(field.begin(), field.end(),
                     [&](const Segment& t) { return distance(line, t.a) <= w.run_width + w.trench_width; });
}

// The least of the shifts that makes it legal, of those along and across the trenches.
std::optional<Arrangement> shifted_legal(const Keeping& keeping, const Arrangement& a) {
  const Point u = direction(a.bearing.angle), across = left_normal(u);
  for (double by : {0.0, 0.02, 0.05, 0.1, 0.2, 0.35, 0.6, 1.0})
    for (Point way : {u, -1.0 * u, across, -1.0 * across}) {
      Arrangement moved = a;
      for (Segment& t : moved.trenches) t = {t.a + by * way, t.b + by * way};
      if (is_legal(keeping, moved)) return moved;
      if (by == 0) break;
    }
  return std::nullopt;
}

}  // namespace

std::vector<Arrangement> as_kept(const Keeping& keeping, double length) {
  if (keeping.wishes.kept.empty()) return {};
  Arrangement a;
  a.trenches = field_of(keeping.wishes.kept, keeping.held);
  const auto another = [length](const Segment& t) {
    return std::abs(distance(t.a, t.b) - length) > kSameLength;
  };
  if (a.trenches.empty() || static_cast<int>(a.trenches.size()) > keeping.wishes.circuits ||
      std::any_of(a.trenches.begin(), a.trenches.end(), another))
    return {};
  const Point along = a.trenches[0].b - a.trenches[0].a;
  a.bearing.angle = std::fmod(std::atan2(along.y, along.x) + 2 * std::numbers::pi, std::numbers::pi);
  // The order that a search finds them in: numbers and direction stay too.
  std::stable_partition(a.trenches.begin(), a.trenches.end(),
                        [u = direction(a.bearing.angle)](const Segment& t) { return dot(t.b - t.a, u) > 0; });
  if (keeping.wishes.direction && std::abs(std::sin(a.bearing.angle - *keeping.wishes.direction)) > kParallel)
    return {};
  for (const Bearing& b : bearings_to_try(keeping.site))
    if (b.drawn && std::abs(std::sin(b.angle - a.bearing.angle)) < kDrawn) a.bearing.drawn = true;
  a.in_line = heads_in_line(a.trenches);
  a.estimate = kBeforeAllGuesses;
  a.shown = true;
  std::optional<Arrangement> kept = shifted_legal(keeping, a);
  const auto& line = keeping.wishes.header_on;
  if (!kept || (line && !heads_near(kept->trenches, *line, keeping.wishes))) return {};
  std::vector<Arrangement> all = {*kept};
  if (kept->in_line) all.push_back(std::move(*kept)), all.back().in_line = false;
  return all;
}

double likeness(const std::vector<Segment>& field, const std::vector<Segment>& kept) {
  if (field.empty() || kept.empty()) return 0;
  double sum = 0;
  for (const Segment& t : field) {
    double least = 2 * kFar;
    for (const Segment& k : kept) least = std::min(least, (distance(t.a, k.a) + distance(t.b, k.b)) / 2);
    sum += least;
  }
  return std::max(0.0, 1 - std::sqrt(sum / static_cast<double>(field.size()) / kFar));
}

double calm_worth(const Wishes& wishes, const Whole& w) {
  const double most = counts_digging(wishes.aim) ? kLikenessWorth : kLikenessShare * std::abs(w.measure);
  return most * likeness(w.field, wishes.kept);
}

}  // namespace underlawn
