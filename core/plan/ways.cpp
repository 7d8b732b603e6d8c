// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/ways.h"

#include <algorithm>

#include "base/say.h"
#include "cost/bill.h"
#include "plan/plan_troubles.h"
#include "plan/solve.h"
#include "plan/way_wishes.h"
#include "plan/way_words.h"

namespace underlawn {

namespace {

bool near(const Trench& a, const Trench& b, double within) {
  const auto ends = [&](Point head, Point end) {
    return distance(a.head, head) <= within && distance(a.end, end) <= within;
  };
  const auto like = [](double x, double y) { return std::abs(x - y) < 0.01; };
  return (ends(b.head, b.end) || ends(b.end, b.head)) && like(a.width, b.width) && like(a.depth, b.depth) &&
         like(a.coil.coil_length, b.coil.coil_length) && a.coil.pattern == b.coil.pattern;
}

void set_water(Way& way, const Outcome& outcome, const ThermalWishes& limits) {
  if (outcome.temperatures == nullptr) return;
  const Simulation& s = outcome.temperatures->simulation;
  if (s.years.empty() || s.coldest > 1e8 || s.warmest < -1e8) return;
  way.coldest = s.coldest;
  way.warmest = s.warmest;
  way.short_by = std::max({0.0, limits.coldest_allowed - s.coldest, s.warmest - limits.warmest_allowed});
  way.holds = way.short_by == 0;
}

Way way_of(WayWishes asked, const Outcome& outcome, const Plan& plan) {
  Way way;
  way.kind = asked.kind;
  way.sentence = std::move(asked.sentence);
  way.wishes = std::move(asked.wishes);
  way.layout = outcome.layout;
  way.circuits = static_cast<int>(outcome.layout.trenches.size());
  for (const Trench& t : outcome.layout.trenches) way.trench += length_of(t);
  way.cost = outcome.bill != nullptr ? outcome.bill->price : 0;
  way.bank = outcome.dig.total.bank;
  if (outcome.work) {
    way.days = days_of(outcome.work->time.open, plan.crew.day_length);
    way.lawn = outcome.work->torn.lawn;
  }
  set_water(way, outcome, plan.thermal);
  return way;
}

bool better(const Way& a, const Way& b) {
  const bool a_known = a.coldest.has_value(), b_known = b.coldest.has_value();
  if (a.holds != b.holds) return a.holds;
  if (a_known != b_known) return a_known;
  if (a.short_by != b.short_by) return a.short_by < b.short_by;
  return a.cost < b.cost;
}

bool sound(const Plan& plan) {
  return !plan.site.lot.empty() && site_troubles(plan).empty() && wishes_troubles(plan).empty();
}

constexpr std::ptrdiff_t kFewestWays = 3;  // beside the plan's own, where the lot has as many

// A way of fewer circuits that does not hold is none to the plan's end; kept only where others are too few.
void drop_smaller(std::vector<Way>& ways) {
  const auto smaller = [&](const Way& w) { return w.circuits < ways.front().circuits && !w.holds; };
  const auto first =
      std::stable_partition(ways.begin() + 1, ways.end(), [&](const Way& w) { return !smaller(w); });
  const auto enough = ways.begin() + std::min<std::ptrdiff_t>(std::ssize(ways), 1 + kFewestWays);
  ways.erase(std::max(first, enough), ways.end());
}

bool seen(const std::vector<Way>& ways, const Way& way) {
  return std::any_of(ways.begin(), ways.end(),
                     [&](const Way& w) { return same_trenches(w.layout, way.layout); });
}

}  // namespace

std::string_view way_kind_name(WayKind kind) {
  switch (kind) {
    case WayKind::as_planned:
      return "as_planned";
    case WayKind::other_side:
      return "other_side";
    case WayKind::other_direction:
      return "other_direction";
    case WayKind::groups:
      return "groups";
    case WayKind::run_coil:
      return "run_coil";
    case WayKind::fewer_deeper:
      return "fewer_deeper";
    case WayKind::upright:
      return "upright";
    case WayKind::metres:
      return "metres";
  }
  return "unknown";
}

bool water_holds(const Outcome& outcome, const ThermalWishes& limits) {
  Way way;
  set_water(way, outcome, limits);
  return way.holds;
}

bool same_trenches(const Layout& a, const Layout& b, double within) {
  if (a.trenches.size() != b.trenches.size()) return false;
  std::vector<bool> taken(b.trenches.size());
  for (const Trench& t : a.trenches) {
    std::size_t i = 0;
    while (i < taken.size() && (taken[i] || !near(t, b.trenches[i], within))) ++i;
    if (i == taken.size()) return false;
    taken[i] = true;
  }
  return true;
}

std::vector<Way> ways_of(const Plan& plan, const WaysProgress& progress, std::stop_token stop) {
  if (!sound(plan)) return {};
  const auto tell = [&](double share, const std::string& what) {
    if (progress) progress(share, what);
  };
  Solver solver;
  tell(0, say("The plan as it stands"));
  const Outcome own = solver.solve(plan, stop);
  if (stop.stop_requested()) return {};
  std::vector<Way> ways = {way_of({WayKind::as_planned, say("As planned"), plan.wishes}, own, plan)};
  tell(0.1, say("Other directions"));
  std::vector<WayWishes> asked = other_ways(plan, own, stop);
  const auto all = static_cast<double>(asked.size());
  for (std::size_t i = 0; i < asked.size(); ++i) {
    if (stop.stop_requested()) return {};
    tell(0.2 + 0.8 * static_cast<double>(i) / all, asked[i].sentence);
    Plan other = plan;
    other.wishes = asked[i].wishes;
    if (!wishes_troubles(other).empty()) continue;
    const Outcome outcome = solver.solve(other, stop);
    if (stop.stop_requested()) return {};
    Way way = way_of(std::move(asked[i]), outcome, plan);
    if (way.kind == WayKind::groups && way.wishes.groups > 1)
      way.sentence = told_of_groups(plan.site, way.layout, way.sentence);
    if (way.kind == WayKind::metres && way.trench < ways.front().trench + 1) continue;
    if (way.circuits > 0 && !seen(ways, way)) ways.push_back(std::move(way));
  }
  drop_smaller(ways);
  std::stable_sort(ways.begin() + 1, ways.end(), better);
  if (ways.size() > 1 + kMostWays) ways.resize(1 + kMostWays);
  return ways;
}

}  // namespace underlawn
