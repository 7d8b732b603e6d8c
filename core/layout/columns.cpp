// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/columns.h"

namespace underlawn {

namespace {

constexpr int kMostRows = 1000;

std::vector<double> positions(const Ground& g, const Ground& for_header, const Search& search, double step,
                              bool events) {
  const Box box = bounds(g.lot);
  const double length = search.size.length, header = search.run_width / 2;
  const double last = box.high.x - length;
  std::vector<double> x;
  for (int i = 0; box.low.x + i * step <= last && i < 20000; ++i) x.push_back(box.low.x + i * step);
  if (last >= box.low.x) x.push_back(last);
  const auto add_events = [&](const Ground& ground, double room) {
    for (const Capsule& c : ground.capsules) {
      const double low = std::min(c.a.x, c.b.x) - c.reach, high = std::max(c.a.x, c.b.x) + c.reach;
      const bool upright = std::abs(c.a.x - c.b.x) < 0.01;
      if (!events && !upright) continue;
      for (double at : {high + room, low - length - room})
        if (at >= box.low.x && at <= last) x.push_back(at);
    }
  };
  add_events(g, 0);
  add_events(for_header, header);
  std::sort(x.begin(), x.end());
  x.erase(std::unique(x.begin(), x.end(), [](double a, double b) { return b - a < 1e-6; }), x.end());
  return x;
}

std::vector<Interval> both(const std::vector<Interval>& a, const std::vector<Interval>& b) {
  std::vector<Interval> out;
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const Interval shared{std::max(a[i].low, b[j].low), std::min(a[i].high, b[j].high)};
    if (shared.low <= shared.high) out.push_back(shared);
    a[i].high < b[j].high ? ++i : ++j;
  }
  return out;
}

std::vector<Interval> with_heads_at(const Column& c, double x, const Ground& for_header,
                                    const Search& search) {
  const TrenchSize across{search.run_width, search.run_width, 0, 0};
  return both(c.free, free_rows(for_header, x - search.run_width / 2, across));
}

int count(const std::vector<Interval>& free, double spacing) {
  if (free.empty()) return 0;
  return static_cast<int>(stacked_rows(free, spacing, free.front().low, kMostRows).size());
}

}  // namespace

std::vector<Column> columns_of(const Ground& ground, const Ground& for_header, const Search& search,
                               double step, bool events) {
  std::vector<Column> columns;
  for (double x : positions(ground, for_header, search, step, events)) {
    Column c;
    c.x = x;
    c.free = free_rows(ground, x, search.size);
    if (c.free.empty()) continue;
    c.heads_low = with_heads_at(c, x, for_header, search);
    c.heads_high = with_heads_at(c, x + search.size.length, for_header, search);
    c.fits = std::max(count(c.heads_low, search.size.spacing), count(c.heads_high, search.size.spacing));
    if (c.fits > 0) columns.push_back(std::move(c));
  }
  return columns;
}

int most_in_columns(const std::vector<Column>& columns, const TrenchSize& size,
                    std::vector<std::size_t>* chosen) {
  const double pitch = size.length + size.end_gap;
  std::vector<int> best(columns.size() + 1, 0);
  std::vector<std::size_t> before(columns.size() + 1, 0);
  std::vector<bool> taken(columns.size() + 1, false);
  std::size_t below = 0;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    while (columns[below].x <= columns[i].x - pitch + kFitSlack) ++below;
    const int with = best[below] + columns[i].fits;
    taken[i + 1] = with > best[i];
    best[i + 1] = std::max(with, best[i]);
    before[i + 1] = taken[i + 1] ? below : i;
  }
  if (chosen != nullptr) {
    chosen->clear();
    for (std::size_t i = columns.size(); i > 0; i = before[i])
      if (taken[i]) chosen->push_back(i - 1);
    std::reverse(chosen->begin(), chosen->end());
  }
  return best.back();
}

}  // namespace underlawn
