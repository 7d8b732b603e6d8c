// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/shifted_run.h"

#include "layout/quick_distance.h"

namespace underlawn {

Arrangement all_trenches(const Whole& w) {
  Arrangement all{{}, w.field, w.bends};
  all.bends.resize(w.field.size());
  for (const Polyline& line : w.locked) {
    all.trenches.push_back({line.front(), line.back()});
    all.bends.emplace_back(line.begin() + 1, line.end() - 1);
  }
  return all;
}

namespace {

int crossings_with(const Polyline& run, const std::vector<Polyline>& legs) {
  int sum = 0;
  for (const Polyline& leg : legs)
    for (std::size_t i = 1; i < leg.size(); ++i)
      for (std::size_t j = 1; j < run.size(); ++j)
        sum += quick_cross({leg[i - 1], leg[i]}, {run[j - 1], run[j]});
  return sum;
}

}  // namespace

std::optional<Whole> by_another_run(const Site& site, const Wishes& wishes, const Whole& w, Polyline run,
                                    bool square) {
  const auto& legs = w.connection.header.legs;
  if (crossings_with(run, legs) > crossings_with(w.connection.run.line, legs)) return std::nullopt;
  Whole other = w;
  other.connection.run.length = length(run);
  other.connection.run.line = std::move(run);
  if (square) square_up_crossings(site, wishes, other);
  drop_illegal_lines(site, wishes, other);
  if (other.connection.run.line.empty() || other.unjoined() > w.unjoined() ||
      tight_turns(wishes, other.connection) > tight_turns(wishes, w.connection))
    return std::nullopt;
  return other;
}

void shift_run(const Site& site, const Wishes& wishes, const Conduits& conduits, Whole& w) {
  const Polyline& run = w.connection.run.line;
  if (run.size() < 3 || w.in_run || !wishes.run_by.empty()) return;
  const Arrangement all = all_trenches(w);
  auto shifted = by_another_run(site, wishes, w, Joiner(conduits, all).with_run_shifted(run), true);
  if (shifted) w = std::move(*shifted);
}

}  // namespace underlawn
