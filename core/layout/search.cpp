// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/mixed.h"
#include "layout/packing.h"

namespace underlawn {

namespace {

constexpr double kCoarse = 1.5;    // m between column positions at a first look
constexpr double kMostLooks = 16;  // positions, on a long lot
constexpr double kFine = 0.75;     // m at a full search, beside the event positions
constexpr double kRowStep = 0.3;   // m between sampled heights of rows
constexpr std::size_t kFromOneBearing = 3;

void add(Searched& s, Arrangement a, const Search& search) {
  const int count = static_cast<int>(a.trenches.size());
  s.fits = std::max(s.fits, std::min(count, search.most));
  if (count > 0) s.found.push_back(std::move(a));
}

// All of them where it is the count that matters.
Columns columns_below(const Strips& strips, const Bearing& bearing, double step, bool every_event,
                      double dearest) {
  if (dearest >= kAnyPrice) return columns_of(strips, step, every_event);
  const Search& s = strips.search();
  const int wanted = s.one_fewer ? s.wanted - 1 : s.wanted;
  return cheap_columns(strips, step, every_event, LeastDigging(strips, bearing, wanted, s.one_sided),
                       dearest);
}

}  // namespace

Searched look(const Search& search, const Bearing& bearing, int at_least, double dearest) {
  const Strips strips(search, bearing);
  const double room = strips.along().high - strips.along().low - search.size.length;
  const Columns columns =
      columns_below(strips, bearing, std::max(kCoarse, room / kMostLooks), false, dearest);
  Searched s;
  s.fits = std::min(search.most, most_in_columns(columns, search.size));
  if (s.fits >= at_least)
    s.found = header_lines(strips, bearing, columns, {search.wanted, search.one_sided, 1, dearest});
  return s;
}

Searched search_fully(const Search& search, const Bearing& bearing, double dearest, int at_least) {
  const Strips strips(search, bearing);
  const Columns columns = columns_below(strips, bearing, kFine, true, dearest);
  Searched s;
  HeaderLineWish wish{search.wanted, search.one_sided, kFromOneBearing, dearest};
  std::vector<std::size_t> chosen;
  const int in_columns = most_in_columns(columns, search.size, &chosen);
  if (in_columns >= at_least)
    for (Arrangement& a : header_lines(strips, bearing, columns, wish)) add(s, std::move(a), search);
  else
    s.fits = in_columns;
  if (search.one_fewer && (s.fits >= search.wanted || dearest < kAnyPrice)) {
    wish.wanted = search.wanted - 1;
    wish.one_sided = true;
    for (Arrangement& a : header_lines(strips, bearing, columns, wish)) s.found.push_back(std::move(a));
  }
  const auto try_packing = [&](Arrangement a, int fits) {
    if (static_cast<int>(a.trenches.size()) > s.fits) add(s, std::move(a), search);
    s.fits = std::max(s.fits, std::min(search.most, fits));
  };
  int fits = 0;
  // Below a price the count is known: what is packed otherwise only matters where too few lie at a header.
  const bool few = s.fits < (dearest < kAnyPrice ? search.wanted : search.most);
  if (few && in_columns > s.fits && in_columns >= at_least) {
    Arrangement a = filled_columns(strips, bearing, columns, chosen, &fits);
    try_packing(std::move(a), fits);
  }
  if (s.fits >= search.most || dearest < kAnyPrice) return s;
  const DenseRows rows = densest_rows(strips, kRowStep, search.mixed);
  const int before = s.fits;
  fits = rows.most;
  if (rows.most >= at_least)
    for (Arrangement& a : filled_rows(strips, bearing, rows.chosen, &fits))
      if (static_cast<int>(a.trenches.size()) > std::min(before, search.wanted - 1))
        add(s, std::move(a), search);
  s.fits = std::max(s.fits, std::min(search.most, fits));
  if (!search.mixed || s.fits >= search.most) return s;
  std::vector<Point> from;
  std::vector<double> x;
  for (const PackedRow& r : rows.chosen) {
    x.clear();
    stack_rows(r.places, search.size.pitch(), r.places.front().low, 1000, x);
    for (double at : x) from.push_back({at, r.y});
  }
  Arrangement m =
      filled_places(strips, bearing, mixed_places(strips, columns, rows.tried, from, search.most), &fits);
  try_packing(std::move(m), fits);
  return s;
}

}  // namespace underlawn
