// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/strips.h"

namespace underlawn {

Strips::Strips(const Search& search, const Bearing& bearing) : search_(search), turn_(bearing.angle) {
  along_ = across_ = {1e9, -1e9};
  for (Point p : search.ground.lot) {
    const Point t = turn_.there(p);
    along_ = {std::min(along_.low, t.x), std::max(along_.high, t.x)};
    across_ = {std::min(across_.low, t.y), std::max(across_.high, t.y)};
  }
}

const Cuts& Strips::made(std::optional<Cuts>& cuts, Axis axis, bool for_header) const {
  if (!cuts && for_header) cuts.emplace(search_.for_header, turn_, axis, search_.run_width / 2);
  if (!cuts) cuts.emplace(search_.ground, turn_, axis, 0);
  return *cuts;
}

void Strips::stretches(double y, double shortest, Free& out) const {
  const double half = size().width / 2 - kFitSlack;
  rows_cut().free(y - half, y + half, 0, out);
  std::erase_if(out, [&](const Interval& i) { return i.high - i.low < shortest - 2 * kFitSlack; });
}

Free Strips::stretches(double y, double shortest) const {
  Free out;
  stretches(y, shortest, out);
  return out;
}

void Strips::places(double y, Free& out) const {
  const double length = size().length;
  thread_local Free starts, heads, either;  // used again and again
  out.clear();
  stretches(y, length, starts);
  if (starts.empty()) return;
  for (Interval& i : starts) i.high = std::max(i.low, i.high - length);
  head_rows_cut().free(y, y, 0, heads);
  either = heads;
  join(either, heads, -length);
  met(starts, either, out);
}

void Strips::rows(double x, Free& out) const {
  columns_cut().free(x + kFitSlack, x + size().length - kFitSlack, size().width / 2 - kFitSlack, out);
}

void Strips::heads(double x, Free& out) const {
  head_columns_cut().free(x, x, 0, out);
}

void Strips::row_heads(double y, Free& out) const {
  head_rows_cut().free(y, y, 0, out);
}

void Strips::add_row_events(std::vector<double>& y) const {
  rows_cut().add_ends(size().width / 2, y);
}

bool Strips::head_is_free(Point turned) const {
  return head_rows_cut().is_free(turned);
}

std::vector<double> Strips::column_events(bool all) const {
  std::vector<double> x;
  const auto add = [&](const Cuts& cuts) {
    for (std::size_t i = 0; i < cuts.spans().size(); ++i) {
      if (!all && !cuts.square(i)) continue;
      x.push_back(cuts.spans()[i].high);
      x.push_back(cuts.spans()[i].low - size().length);
    }
  };
  add(columns_cut());
  add(head_columns_cut());
  return x;
}

}  // namespace underlawn
