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

int crossings_with(const Polyline& run, const std::vector<Polyline>& legs) {
  int sum = 0;
  for (const Polyline& leg : legs)
    for (std::size_t i = 1; i < leg.size(); ++i)
      for (std::size_t j = 1; j < run.size(); ++j)
        sum += quick_cross({leg[i - 1], leg[i]}, {run[j - 1], run[j]});
  return sum;
}

void shift_run(const Site& site, const Wishes& wishes, const Conduits& conduits, Whole& w) {
  const Polyline& run = w.connection.run.line;
  if (run.size() < 3 || w.in_run || !wishes.run_by.empty()) return;
  const Arrangement all = all_trenches(w);
  Whole shifted = w;
  shifted.connection.run.line = Joiner(conduits, all).with_run_shifted(run);
  shifted.connection.run.length = length(shifted.connection.run.line);
  const auto& legs = w.connection.header.legs;
  if (crossings_with(shifted.connection.run.line, legs) > crossings_with(run, legs)) return;
  square_up_crossings(site, wishes, shifted);
  drop_illegal_lines(site, wishes, shifted);
  if (shifted.connection.run.line.empty() || shifted.unjoined() > w.unjoined() ||
      tight_turns(wishes, shifted.connection) > tight_turns(wishes, w.connection))
    return;
  w = std::move(shifted);
}

}  // namespace underlawn
