// SPDX-License-Identifier: GPL-3.0-or-later
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

}  // namespace

Searched look(const Search& search, const Bearing& bearing, int at_least) {
  const Ground g = turned(search.ground, bearing.angle), h = turned(search.for_header, bearing.angle);
  const Box box = bounds(g.lot);
  const double step = std::max(kCoarse, (box.high.x - box.low.x - search.size.length) / kMostLooks);
  const std::vector<Column> columns = columns_of(g, h, search, step, false);
  Searched s;
  s.fits = std::min(search.most, most_in_columns(columns, search.size));
  if (s.fits >= at_least) s.found = header_lines(search, bearing, columns, 1);
  return s;
}

Searched search_fully(const Search& search, const Bearing& bearing) {
  const Ground g = turned(search.ground, bearing.angle), h = turned(search.for_header, bearing.angle);
  const std::vector<Column> columns = columns_of(g, h, search, kFine, true);
  Searched s;
  for (Arrangement& a : header_lines(search, bearing, columns, kFromOneBearing)) add(s, std::move(a), search);
  if (search.one_fewer && s.fits >= search.wanted) {
    Search fewer = search;
    fewer.wanted = search.wanted - 1;
    fewer.one_sided = true;
    for (Arrangement& a : header_lines(fewer, bearing, columns, kFromOneBearing))
      s.found.push_back(std::move(a));
  }
  const auto try_packing = [&](Arrangement a, int fits) {
    if (static_cast<int>(a.trenches.size()) > s.fits) add(s, std::move(a), search);
    s.fits = std::max(s.fits, std::min(search.most, fits));
  };
  std::vector<std::size_t> chosen;
  int fits = 0;
  if (most_in_columns(columns, search.size, &chosen) > s.fits && s.fits < search.most) {
    Arrangement a = filled_columns(search, bearing, columns, chosen, h, &fits);
    try_packing(std::move(a), fits);
  }
  if (s.fits >= search.most) return s;
  const std::vector<PackedRow> rows = densest_rows(g, search.size, kRowStep);
  Arrangement a = filled_rows(search, bearing, rows, h, &fits);
  try_packing(std::move(a), fits);
  return s;
}

}  // namespace underlawn
