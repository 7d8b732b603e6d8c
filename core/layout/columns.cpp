// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/columns.h"

namespace underlawn {

namespace {

std::vector<double> positions(const Strips& strips, double step, bool every_event) {
  const double first = strips.along().low, last = strips.along().high - strips.size().length;
  std::vector<double> x;
  for (int i = 0; first + i * step <= last && i < 20000; ++i) x.push_back(first + i * step);
  if (last >= first) x.push_back(last);
  for (double at : strips.column_events(every_event))
    if (at >= first && at <= last) x.push_back(at);
  std::sort(x.begin(), x.end());
  x.erase(std::unique(x.begin(), x.end(), [](double a, double b) { return b - a < 1e-6; }), x.end());
  return x;
}

// `wanted`: whether a header may lie at x, beside trenches in some of those rows.
template <class Wanted>
Columns columns_where(const Strips& strips, double step, bool every_event, Wanted wanted) {
  const double spacing = strips.size().spacing, length = strips.size().length;
  const Free whole_lot = {strips.across()};
  Columns columns;
  Free rows, low, high, heads_low, heads_high;  // used again and again
  for (double x : positions(strips, step, every_event)) {
    if (!wanted(x, whole_lot) && !wanted(x + length, whole_lot)) continue;
    strips.rows(x, rows);
    if (rows.empty()) continue;
    heads_low.clear();
    heads_high.clear();
    if (wanted(x, rows)) {
      strips.heads(x, low);
      met(rows, low, heads_low);
    }
    if (wanted(x + length, rows)) {
      strips.heads(x + length, high);
      met(rows, high, heads_high);
    }
    if (heads_low.empty() && heads_high.empty()) continue;
    columns.add(x, heads_low, heads_high, spacing);
  }
  return columns;
}

constexpr std::size_t kStored = 512;  // intervals

}  // namespace

void Columns::add(double x, const Free& heads_low, const Free& heads_high, double spacing) {
  either_ = heads_low;
  if (!heads_high.empty()) join(either_, heads_high, 0);
  const int fits = packed(either_, spacing, kFitSlack);
  if (fits == 0) return;
  all_.push_back({x, kept(either_), kept(heads_low), kept(heads_high), fits,
                  packed(heads_low, spacing, kFitSlack), packed(heads_high, spacing, kFitSlack)});
}

FreeView Columns::kept(const Free& stretches) {
  const std::size_t n = stretches.size();
  if (store_.empty() || store_.back().size() + n > store_.back().capacity()) {
    store_.emplace_back();
    store_.back().reserve(std::max(kStored, n));
  }
  Free& in = store_.back();
  in.insert(in.end(), stretches.begin(), stretches.end());
  return {in.data() + in.size() - n, n};
}

Columns columns_of(const Strips& strips, double step, bool every_event) {
  return columns_where(strips, step, every_event, [](double, const Free&) { return true; });
}

// Two columns that face each other share the rows between them, and their header may lie at either's heads.
LeastDigging::LeastDigging(const Strips& strips, const Bearing& bearing, int wanted, bool one_sided)
    : across_(one_sided ? 0 : strips.size().end_gap + kFaceAcross),
      beside_(((one_sided ? wanted : (wanted + 1) / 2) - 1) * strips.size().spacing +
              (bearing.drawn ? 0 : kOddBearing)),
      approach_(strips.search().approach.turned(bearing.angle)) {}

double LeastDigging::of_header(double x, const Free& rows) const {
  return beside_ + approach_.at_least_to(x, rows.front().low, rows.back().high) - across_;
}

Columns cheap_columns(const Strips& strips, double step, bool every_event, const LeastDigging& least,
                      double dearest) {
  return columns_where(strips, step, every_event,
                       [&](double x, const Free& rows) { return least.of_header(x, rows) < dearest; });
}

int most_in_columns(const Columns& in, const TrenchSize& size, std::vector<std::size_t>* chosen) {
  const std::vector<Column>& columns = in.all();
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
