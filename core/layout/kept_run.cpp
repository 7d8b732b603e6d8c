// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/kept_run.h"

#include "layout/shifted_run.h"

namespace underlawn {

namespace {

constexpr double kSameEnd = 1;      // m
constexpr double kSameRun = 0.5;    // m
constexpr double kSameStub = 1e-3;  // m

bool begins_with(const Polyline& run, const Polyline& stub) {
  if (run.size() <= stub.size()) return false;
  return std::equal(stub.begin(), stub.end(), run.begin(),
                    [](Point s, Point r) { return distance(s, r) < kSameStub; });
}

// The farthest of the corners of a line from another.
double farthest(const Polyline& corners, const Polyline& line) {
  double most = 0;
  for (Point p : corners) most = std::max(most, line_distance({p, p}, line));
  return most;
}

}  // namespace

std::optional<Polyline> run_as_kept(const Polyline& kept, const std::vector<Polyline>& stubs,
                                    const std::vector<Point>& ends) {
  const auto stub =
      std::find_if(stubs.begin(), stubs.end(), [&](const Polyline& s) { return begins_with(kept, s); });
  if (stub == stubs.end() || ends.empty()) return std::nullopt;
  const Point end = *std::min_element(ends.begin(), ends.end(), [&](Point l, Point r) {
    return distance(kept.back(), l) < distance(kept.back(), r);
  });
  if (distance(kept.back(), end) > kSameEnd) return std::nullopt;
  Polyline run = kept;
  std::copy(stub->begin(), stub->end(), run.begin());
  if (run.size() > stub->size() + 1 && distance(run[run.size() - 2], end) < kSamePlace) run.pop_back();
  run.back() = end;
  return run;
}

bool lies_as_kept(const Polyline& run, const Polyline& kept) {
  if (run.size() < 2 || kept.size() < 2) return false;
  return farthest(run, kept) <= kSameRun && farthest(kept, run) <= kSameRun;
}

void keep_run(const Site& site, const Wishes& wishes, const Conduits& conduits, Whole& w) {
  const Polyline run = w.connection.run.line;
  if (run.size() < 2 || w.in_run || !wishes.run_by.empty() || lies_as_kept(run, wishes.kept_run)) return;
  const auto as_kept = run_as_kept(wishes.kept_run, conduits.stubs, {run.back()});
  if (!as_kept) return;
  auto other = by_another_run(site, wishes, w, *as_kept, false);
  if (!other) return;
  const Arrangement all = all_trenches(w);
  const Joiner joiner(conduits, all);
  if (joiner.cost(*as_kept) > joiner.cost(run) + kKeptRunWorth) return;
  w = std::move(*other);
}

}  // namespace underlawn
