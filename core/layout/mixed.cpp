// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/mixed.h"

#include "layout/independent_set.h"

namespace underlawn {

namespace {

constexpr std::size_t kMostPlaces = 700;
constexpr double kSamePlaceHere = 0.01;  // m

// From both ends of every interval inward by whole pitches.
void add_justified(FreeView free, double pitch, std::vector<double>& out) {
  for (const Interval& i : free)
    for (int k = 0; i.low + k * pitch <= i.high + 1e-9; ++k) {
      out.push_back(i.low + k * pitch);
      out.push_back(std::max(i.low, i.high - k * pitch));
    }
}

void sort_by_height(std::vector<Point>& places) {
  std::sort(places.begin(), places.end(),
            [](Point a, Point b) { return a.y != b.y ? a.y < b.y : a.x < b.x; });
}

// The places of `from`, then the others by their height, each once.
std::vector<Point> without_doubles(const std::vector<Point>& from, const std::vector<Point>& by_height) {
  const auto apart = [](double a, double b) { return a - b >= kSamePlaceHere; };
  std::vector<Point> places = from, first = from;
  sort_by_height(first);
  std::size_t low = 0;
  for (Point p : by_height) {
    const auto same_x = [p](Point q) { return std::abs(p.x - q.x) < kSamePlaceHere; };
    while (low < first.size() && apart(p.y, first[low].y)) ++low;
    bool known = false;
    for (std::size_t i = low; !known && i < first.size() && !apart(first[i].y, p.y); ++i)
      known = same_x(first[i]);
    for (std::size_t i = places.size(); !known && i > from.size() && !apart(p.y, places[i - 1].y); --i)
      known = same_x(places[i - 1]);
    if (!known) places.push_back(p);
  }
  return places;
}

std::vector<Point> thinned(const std::vector<Point>& places, std::size_t all_of) {
  std::vector<Point> out(places.begin(), places.begin() + static_cast<std::ptrdiff_t>(all_of));
  const std::size_t step = places.size() / kMostPlaces + 1;
  for (std::size_t i = all_of; i < places.size(); i += step) out.push_back(places[i]);
  return out;
}

}  // namespace

std::vector<Point> mixed_places(const Strips& strips, const Columns& columns,
                                const std::vector<PackedRow>& rows, const std::vector<Point>& from,
                                int enough) {
  const TrenchSize& size = strips.size();
  std::vector<Point> all;
  std::vector<double> at;
  for (const PackedRow& r : rows) {
    at.clear();
    add_justified(r.places, size.pitch(), at);
    for (double x : at) all.push_back({x, r.y});
  }
  for (const Column& c : columns.all()) {
    at.clear();
    add_justified(c.free, size.spacing, at);
    for (double y : at) all.push_back({c.x, y});
  }
  sort_by_height(all);
  std::vector<Point> places = without_doubles(from, all);
  if (places.size() > kMostPlaces) places = thinned(places, from.size());
  return IndependentSet(std::move(places), from.size(), size).grown(from.size(), enough);
}

}  // namespace underlawn
