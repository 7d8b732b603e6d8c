// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/packing.h"

#include "layout/in_steps.h"

namespace underlawn {

namespace {

constexpr int kMostInARow = 1000;

// Keeps the wanted number: those whose heads are nearest the house, then in reading order.
void keep_nearest(std::vector<Segment>& trenches, const Search& search) {
  std::vector<std::pair<double, Segment>> by_way;
  by_way.reserve(trenches.size());
  for (const Segment& t : trenches) by_way.push_back({in_steps(search.approach.distance_to({t.a, t.a})), t});
  std::stable_sort(by_way.begin(), by_way.end(),
                   [](const auto& l, const auto& r) { return l.first < r.first; });
  if (static_cast<int>(by_way.size()) > search.wanted) by_way.resize(static_cast<std::size_t>(search.wanted));
  trenches.clear();
  for (const auto& [way, t] : by_way) trenches.push_back(t);
}

double spread(const std::vector<Segment>& trenches) {
  double sum = 0;
  for (std::size_t i = 1; i < trenches.size(); ++i) {
    double nearest = 1e9;
    for (std::size_t j = 0; j < i; ++j) nearest = std::min(nearest, distance(trenches[i].a, trenches[j].a));
    sum += nearest;
  }
  return sum;
}

// Turns round a trench whose head no header reaches; drops it where neither end will do.
void turn_to_header(std::vector<Segment>& flat, const Strips& strips) {
  for (Segment& t : flat)
    if (!strips.head_is_free(t.a) && strips.head_is_free(t.b)) std::swap(t.a, t.b);
  std::erase_if(flat, [&](const Segment& t) { return !strips.head_is_free(t.a); });
}

int finish(Arrangement& a, const Strips& strips, const Bearing& bearing, std::vector<Segment> flat) {
  const Search& search = strips.search();
  turn_to_header(flat, strips);
  a.bearing = bearing;
  for (const Segment& t : flat) a.trenches.push_back({strips.turn().back(t.a), strips.turn().back(t.b)});
  keep_nearest(a.trenches, search);
  if (a.trenches.empty()) return 0;
  a.estimate = in_steps(spread(a.trenches) + (bearing.drawn ? 0 : kOddBearing) +
                        search.approach.distance_to({a.trenches.front().a, a.trenches.front().a}));
  return static_cast<int>(flat.size());
}

// The line x that most rows can have their heads on, or the middle one of those their places suggest.
double common_line(const std::vector<PackedRow>& rows, double length, bool heads_left) {
  double best_x = 0;
  std::size_t most = 0;
  for (const PackedRow& r : rows) {
    const double x = heads_left ? r.places.front().low : r.places.front().high + length;
    const double from = heads_left ? x : x - length;
    std::size_t in_line = 0;
    for (const PackedRow& other : rows) {
      const Interval& s = other.places.front();
      in_line += from >= s.low - 1e-6 && from <= s.high + 1e-6;
    }
    if (in_line > most) {
      most = in_line;
      best_x = x;
    }
  }
  return best_x;
}

std::vector<Segment> one_a_row(const std::vector<PackedRow>& rows, const Strips& strips, bool heads_left) {
  const double length = strips.size().length;
  const double line = common_line(rows, length, heads_left);
  std::vector<Segment> flat;
  for (const PackedRow& r : rows) {
    const Interval& s = r.places.front();
    const double x = std::clamp(heads_left ? line : line - length, s.low, std::max(s.low, s.high));
    const Segment t{{x, r.y}, {x + length, r.y}};
    flat.push_back(heads_left ? t : Segment{t.b, t.a});
  }
  return flat;
}

// Every trench of every row; heads of each first and second, third and fourth face each other.
std::vector<Segment> all_in_rows(const std::vector<PackedRow>& rows, const TrenchSize& size) {
  std::vector<Segment> flat;
  std::vector<double> starts;
  for (const PackedRow& r : rows) {
    starts.clear();
    stack_rows(r.places, size.pitch(), r.places.front().low, kMostInARow, starts);
    bool heads_right = starts.size() > 1;
    for (double x : starts) {
      const Segment t{{x, r.y}, {x + size.length, r.y}};
      flat.push_back(heads_right ? Segment{t.b, t.a} : t);
      heads_right = !heads_right;
    }
  }
  return flat;
}

}  // namespace

Arrangement filled_columns(const Strips& strips, const Bearing& bearing, const Columns& columns,
                           const std::vector<std::size_t>& chosen, int* fits) {
  const TrenchSize& size = strips.size();
  std::vector<Segment> flat;
  std::vector<double> rows;
  bool heads_right = chosen.size() > 1;
  for (std::size_t i : chosen) {
    const Column& c = columns.all()[i];
    rows.clear();
    stack_rows(c.free, size.spacing, c.free.front().low, kMostInARow, rows);
    for (double y : rows) {
      const Segment t{{c.x, y}, {c.x + size.length, y}};
      flat.push_back(heads_right ? Segment{t.b, t.a} : t);
    }
    heads_right = !heads_right;
  }
  Arrangement a;
  *fits = finish(a, strips, bearing, std::move(flat));
  return a;
}

std::vector<Arrangement> filled_rows(const Strips& strips, const Bearing& bearing,
                                     const std::vector<PackedRow>& rows, int* fits) {
  *fits = 0;
  if (rows.empty()) return {};
  const bool single = std::all_of(rows.begin(), rows.end(), [&](const PackedRow& r) {
    return packed(r.places, strips.size().pitch(), 2 * kFitSlack) == 1;
  });
  std::vector<Arrangement> all(single ? 2 : 1);
  if (!single) {
    *fits = finish(all[0], strips, bearing, all_in_rows(rows, strips.size()));
    return all;
  }
  for (bool heads_left : {true, false})
    *fits = std::max(*fits,
                     finish(all[heads_left ? 0 : 1], strips, bearing, one_a_row(rows, strips, heads_left)));
  return all;
}

Arrangement filled_places(const Strips& strips, const Bearing& bearing, const std::vector<Point>& places,
                          int* fits) {
  std::vector<Segment> flat;
  flat.reserve(places.size());
  for (Point p : places) flat.push_back({p, {p.x + strips.size().length, p.y}});
  Arrangement a;
  *fits = finish(a, strips, bearing, std::move(flat));
  return a;
}

}  // namespace underlawn
