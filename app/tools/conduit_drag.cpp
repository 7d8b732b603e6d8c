// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/conduit_drag.h"

#include <QStringList>
#include <algorithm>
#include <cmath>

#include "layout/header_groups.h"
#include "layout/legality.h"
#include "layout/lifted.h"
#include "tools/tool.h"

namespace underlawn {

namespace {

constexpr double kStop = 1e-3;  // m
constexpr double kLook = 0.25;  // m between places that are looked at
constexpr int kMostLooks = 60;
constexpr double kPush = 0.03;   // m beyond a stop, to see what it was
constexpr double kPoint = 0.01;  // m of line that a place of the run is judged by

std::optional<ConduitHold> hold_header(const Plan& plan, const Layout& layout, int group, Point at) {
  ConduitHold hold;
  hold.header = true;
  hold.group = std::max(1, group);
  const auto held = header_line(plan.wishes, hold.group);
  const auto line = held ? held : line_of_header(layout, hold.group);
  if (!line) return std::nullopt;
  hold.line = *line;
  hold.from = at;
  return hold;
}

struct OnRun {
  Point at;
  double along = 0, off = 1e300;  // m
};

OnRun on_run(const Polyline& line, Point p) {
  OnRun best;
  double before = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double long_ = distance(line[i - 1], line[i]);
    const Point u = long_ > 0 ? (1 / long_) * (line[i] - line[i - 1]) : Point{};
    const double along = std::clamp(dot(p - line[i - 1], u), 0.0, long_);
    const Point at = line[i - 1] + along * u;
    if (distance(at, p) < best.off) best = {at, before + along, distance(at, p)};
    before += long_;
  }
  return best;
}

std::optional<ConduitHold> hold_run(const Plan& plan, const Layout& layout, Point at, double reach) {
  const Polyline& line = layout.run.line;
  if (line.size() < 2) return std::nullopt;
  ConduitHold hold;
  hold.places = plan.wishes.run_by;
  for (std::size_t i = 0; i < hold.places.size(); ++i)
    if (distance(hold.places[i], at) <= reach) {
      hold.place = i;
      hold.from = hold.places[i];
      return hold;
    }
  const OnRun here = on_run(line, at);
  hold.from = here.at;
  const auto later = std::find_if(hold.places.begin(), hold.places.end(),
                                  [&](Point p) { return on_run(line, p).along > here.along; });
  hold.place = static_cast<std::size_t>(later - hold.places.begin());
  hold.places.insert(later, here.at);
  return hold;
}

// What is judged of it: the header's line, or the ground about the run's place.
Polyline judged(const ConduitHold& hold, Point by) {
  if (hold.header) return {hold.line.a + by, hold.line.b + by};
  const Point p = hold.places[hold.place] + by;
  return {p - Point{kPoint, 0}, p + Point{kPoint, 0}};
}

bool may_lie(const Site& site, const Wishes& wishes, const ConduitHold& hold, Point by) {
  return conduit_is_legal(site, wishes, judged(hold, by), 0);
}

// The greatest share of the way at which it may lie; all of it where it breaks a rule already.
double furthest(const Plan& plan, const ConduitHold& hold, Point by) {
  const auto legal = [&](double share) { return may_lie(plan.site, plan.wishes, hold, share * by); };
  const double way = norm(by);
  if (way < kStop || !legal(0)) return 1;
  const int looks = std::clamp(static_cast<int>(std::ceil(way / kLook)), 1, kMostLooks);
  double low = 0, high = 1;
  for (int i = looks; i > 0 && low == 0; --i)
    (legal(static_cast<double>(i) / looks) ? low : high) = static_cast<double>(i) / looks;
  while (low < 1 && (high - low) * way > kStop) {
    const double middle = (low + high) / 2;
    (legal(middle) ? low : high) = middle;
  }
  return low;
}

Point moved_by(const Plan& plan, const ConduitHold& hold) {
  if (!hold.header) return plan.wishes.run_by.at(hold.place) - hold.places[hold.place];
  const auto line = header_line(plan.wishes, hold.group);
  return line ? line->a - hold.line.a : Point{};
}

}  // namespace

std::optional<ConduitHold> hold_conduit(const Plan& plan, const Outcome& outcome, const Selected& what,
                                        Point at, double reach) {
  if (!plan.wishes.given.empty()) return std::nullopt;
  if (what.kind == Selected::Kind::header) return hold_header(plan, outcome.layout, what.id, at);
  if (what.kind == Selected::Kind::run) return hold_run(plan, outcome.layout, at, reach);
  return std::nullopt;
}

Plan wished_conduit(Plan plan, const ConduitHold& hold, Point by) {
  if (hold.header) {
    plan.wishes =
        with_header_line(std::move(plan.wishes), hold.group, Segment{hold.line.a + by, hold.line.b + by});
    return plan;
  }
  plan.wishes.run_by = hold.places;
  plan.wishes.run_by[hold.place] = hold.places[hold.place] + by;
  return plan;
}

Plan dragged_conduit(const Plan& plan, const ConduitHold& hold, Point by) {
  return wished_conduit(plan, hold, furthest(plan, hold, by) * by);
}

QString what_stopped_conduit(const Plan& is, const Plan& wish, const ConduitHold& hold) {
  const Point at = moved_by(is, hold), to = moved_by(wish, hold);
  if (distance(at, to) < 2 * kPush) return {};
  const Point on = at + kPush * unit(to - at);
  if (may_lie(is.site, is.wishes, hold, on)) return {};
  QStringList names;
  const auto stops = [&](const Site& without, const Restriction& r, Lifted what) {
    if (!may_lie(without, is.wishes, hold, on)) return;
    names << QString::fromStdString(name_with_width(is.site, r, what, is.units));
  };
  for (std::size_t i = 0; i < is.site.lot.size(); ++i) {
    Site without = is.site;
    without.lot[i].setback = 0;
    stops(without, {Restriction::Kind::setback, static_cast<int>(i), 0}, Lifted::setback);
  }
  for (std::size_t i = 0; i < is.site.features.size(); ++i) {
    Site without = is.site;
    without.features.erase(without.features.begin() + static_cast<std::ptrdiff_t>(i));
    stops(without, {Restriction::Kind::feature, -1, is.site.features[i].id}, Lifted::whole);
  }
  return names.isEmpty() ? QString() : Tool::tr("Stopped by %1.").arg(names.join(QStringLiteral(", ")));
}

}  // namespace underlawn
