// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/packing.h"

namespace underlawn {

namespace {

constexpr int kMostRows = 1000;

// Keeps the wanted number: those whose heads are nearest the house, then in reading order.
void keep_nearest(std::vector<Segment>& trenches, const Search& search) {
  std::vector<std::pair<double, Segment>> by_way;
  for (const Segment& t : trenches) by_way.push_back({search.approach.distance_to({t.a, t.a}), t});
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
void turn_to_header(std::vector<Segment>& flat, const Ground& for_header, double width) {
  const double slim = width - 2 * kFitSlack;
  for (Segment& t : flat)
    if (!square_is_free(for_header, t.a, slim) && square_is_free(for_header, t.b, slim)) std::swap(t.a, t.b);
  std::erase_if(flat, [&](const Segment& t) { return !square_is_free(for_header, t.a, slim); });
}

int finish(Arrangement& a, const Search& search, const Bearing& bearing, std::vector<Segment> flat,
           const Ground& for_header) {
  turn_to_header(flat, for_header, search.run_width);
  a.bearing = bearing;
  for (const Segment& t : flat)
    a.trenches.push_back({rotated(t.a, bearing.angle), rotated(t.b, bearing.angle)});
  keep_nearest(a.trenches, search);
  if (a.trenches.empty()) return 0;
  a.estimate = spread(a.trenches) + (bearing.drawn ? 0 : kOddBearing) +
               search.approach.distance_to({a.trenches.front().a, a.trenches.front().a});
  return static_cast<int>(flat.size());
}

// The line x that most rows can have their heads on, or the middle one of those their stretches suggest.
double common_line(const std::vector<PackedRow>& rows, double length, bool heads_left) {
  double best_x = 0;
  std::size_t most = 0;
  for (const PackedRow& r : rows) {
    const double x = heads_left ? r.stretches.front().low : r.stretches.front().high;
    std::size_t in_line = 0;
    for (const PackedRow& other : rows) {
      const Interval& s = other.stretches.front();
      const double from = heads_left ? x : x - length;
      in_line += from >= s.low - 1e-6 && from + length <= s.high + 1e-6;
    }
    if (in_line > most) {
      most = in_line;
      best_x = x;
    }
  }
  return best_x;
}

std::vector<Segment> one_a_row(const std::vector<PackedRow>& rows, const Search& search, bool heads_left) {
  const double length = search.size.length, header = search.run_width / 2;
  const double line = common_line(rows, length, heads_left);
  std::vector<Segment> flat;
  for (const PackedRow& r : rows) {
    const Interval& s = r.stretches.front();
    const double wish = heads_left ? line : line - length;
    // Half a header trench beyond the heads, where the stretch is long enough for it.
    const double low = heads_left ? s.low + header : s.low;
    const double high = (heads_left ? s.high : s.high - header) - length;
    const double x = low <= high ? std::clamp(wish, low, high) : (s.low + s.high - length) / 2;
    const Segment t{{x, r.y}, {x + length, r.y}};
    flat.push_back(heads_left ? t : Segment{t.b, t.a});
  }
  return flat;
}

// Every trench of every row; heads of each first and second, third and fourth face each other.
std::vector<Segment> all_in_rows(const std::vector<PackedRow>& rows, const TrenchSize& size) {
  std::vector<Segment> flat;
  for (const PackedRow& r : rows) {
    bool heads_right = trenches_in(r.stretches, size) > 1;
    for (const Interval& s : r.stretches) {
      const int here = trenches_in({s}, size);
      for (int i = 0; i < here; ++i) {
        const double x = s.low + i * (size.length + size.end_gap);
        const Segment t{{x, r.y}, {x + size.length, r.y}};
        flat.push_back(heads_right ? Segment{t.b, t.a} : t);
        heads_right = !heads_right;
      }
    }
  }
  return flat;
}

}  // namespace

Arrangement filled_columns(const Search& search, const Bearing& bearing, const std::vector<Column>& columns,
                           const std::vector<std::size_t>& chosen, const Ground& for_header, int* fits) {
  std::vector<Segment> flat;
  bool heads_right = chosen.size() > 1;
  for (std::size_t i : chosen) {
    const Column& c = columns[i];
    const double length = search.size.length;
    for (double y : stacked_rows(c.free, search.size.spacing, c.free.front().low, kMostRows)) {
      const Segment t{{c.x, y}, {c.x + length, y}};
      flat.push_back(heads_right ? Segment{t.b, t.a} : t);
    }
    heads_right = !heads_right;
  }
  Arrangement a;
  *fits = finish(a, search, bearing, std::move(flat), for_header);
  return a;
}

Arrangement filled_rows(const Search& search, const Bearing& bearing, const std::vector<PackedRow>& rows,
                        const Ground& for_header, int* fits) {
  Arrangement best;
  *fits = 0;
  if (rows.empty()) return best;
  const bool single = std::all_of(rows.begin(), rows.end(), [&](const PackedRow& r) {
    return trenches_in(r.stretches, search.size) == 1;
  });
  if (!single) {
    *fits = finish(best, search, bearing, all_in_rows(rows, search.size), for_header);
    return best;
  }
  for (bool heads_left : {true, false}) {
    Arrangement a;
    const int here = finish(a, search, bearing, one_a_row(rows, search, heads_left), for_header);
    if (here < *fits || (here == *fits && a.estimate >= best.estimate)) continue;
    *fits = here;
    best = std::move(a);
  }
  return best;
}

}  // namespace underlawn
