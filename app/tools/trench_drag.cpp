// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/trench_drag.h"

#include <algorithm>

#include "layout/header_groups.h"
#include "layout/slide.h"
#include "layout/stopped_by.h"
#include "tools/tool.h"

namespace underlawn {

namespace {

constexpr double kSameTrench = 1e-6;  // m

GivenTrench as_given(const Plan& plan, const Trench& t) {
  GivenTrench g{t.head, t.end, 0, 0, t.bends};
  // What follows from the wishes is left to follow from them.
  if (t.depth != plan.wishes.trench_depth) g.depth = t.depth;
  return g;
}

// The others that are locked: what is not will make room.
std::vector<Trench> others(const Plan& plan, std::optional<std::size_t> but) {
  std::vector<Trench> all;
  for (std::size_t i = 0; i < plan.wishes.locked.size(); ++i) {
    if (i == but) continue;
    const GivenTrench& g = plan.wishes.locked[i];
    Trench t;
    t.head = g.head;
    t.end = g.end;
    t.bends = g.bends;
    t.width = plan.wishes.trench_width;
    t.locked = true;
    all.push_back(std::move(t));
  }
  return all;
}

}  // namespace

const Trench* trench_numbered(const Layout& layout, int number) {
  const auto at = std::find_if(layout.trenches.begin(), layout.trenches.end(),
                               [number](const Trench& t) { return t.number == number; });
  return at == layout.trenches.end() ? nullptr : &*at;
}

std::optional<std::size_t> locked_index(const Plan& plan, const Trench& trench) {
  const auto& all = plan.wishes.locked;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (distance(all[i].head, trench.head) < kSameTrench && distance(all[i].end, trench.end) < kSameTrench)
      return i;
  return std::nullopt;
}

std::optional<TrenchHold> hold_trench(const Plan& plan, const Outcome& outcome, int number, Point at,
                                      double reach) {
  const Trench* t = trench_numbered(outcome.layout, number);
  if (t == nullptr || t->role == TrenchRole::supply || !plan.wishes.given.empty()) return std::nullopt;
  TrenchHold hold;
  hold.locked = locked_index(plan, *t);
  hold.trench = hold.locked ? plan.wishes.locked[*hold.locked] : as_given(plan, *t);
  const double to_head = distance(at, t->head), to_end = distance(at, t->end);
  if (std::min(to_head, to_end) <= reach)
    hold.part = to_head <= to_end ? TrenchHold::Part::head : TrenchHold::Part::end;
  return hold;
}

std::optional<TrenchHold> hold_locked(const Plan& plan, int index) {
  const auto i = static_cast<std::size_t>(index);
  if (index < 0 || i >= plan.wishes.locked.size()) return std::nullopt;
  return TrenchHold{TrenchHold::Part::whole, plan.wishes.locked[i], i};
}

Plan stopped(const Plan& before, Plan after) {
  const auto &was = before.wishes.locked, &is = after.wishes.locked;
  for (std::size_t i = 0; i < was.size() && was.size() == is.size(); ++i) {
    if (was[i] == is[i] || was[i].bends.size() != is[i].bends.size()) continue;
    after.wishes.locked[i] = slid(after.site, after.wishes, others(after, i), was[i], is[i]);
    break;
  }
  return after;
}

namespace {

GivenTrench& in_hand(Plan& plan, const TrenchHold& hold) {
  auto& all = plan.wishes.locked;
  if (hold.locked && *hold.locked < all.size()) return all[*hold.locked];
  return all.back();
}

}  // namespace

Plan wished_trench(Plan plan, const TrenchHold& hold, Point by) {
  GivenTrench to = hold.trench;
  if (hold.part != TrenchHold::Part::end) to.head = to.head + by;
  if (hold.part != TrenchHold::Part::head) to.end = to.end + by;
  if (hold.part == TrenchHold::Part::whole)
    for (Point& bend : to.bends) bend = bend + by;
  auto& all = plan.wishes.locked;
  if (!hold.locked || *hold.locked >= all.size()) all.emplace_back();
  in_hand(plan, hold) = std::move(to);
  return plan;
}

Plan dragged_trench(Plan plan, const TrenchHold& hold, Point by) {
  const std::vector<Trench> round = others(plan, hold.locked);
  plan = wished_trench(std::move(plan), hold, by);
  GivenTrench& there = in_hand(plan, hold);
  there = slid(plan.site, plan.wishes, round, hold.trench, there);
  return plan;
}

QString what_stopped(const Plan& is, const Plan& wish) {
  const auto &at = is.wishes.locked, &to = wish.wishes.locked;
  QStringList names;
  for (std::size_t i = 0; i < at.size() && at.size() == to.size(); ++i) {
    if (at[i] == to[i]) continue;
    for (const Reason& r : stopped_by(is.site, is.wishes, others(is, i), at[i], to[i]))
      names << (r.kind == Reason::Kind::too_near
                    ? Tool::tr("another trench that is locked")
                    : QString::fromStdString(name_with_width(is.site, is.wishes, r, is.units)));
    break;
  }
  names.removeDuplicates();
  return names.isEmpty() ? QString() : Tool::tr("Stopped by %1.").arg(names.join(QStringLiteral(", ")));
}

Plan with_lock_turned(Plan plan, const Trench& trench) {
  if (const auto at = locked_index(plan, trench))
    plan.wishes.locked.erase(plan.wishes.locked.begin() + static_cast<std::ptrdiff_t>(*at));
  else
    plan.wishes.locked.push_back(as_given(plan, trench));
  return plan;
}

Plan with_locks(Plan plan, const std::vector<Trench>& trenches, bool locked) {
  for (const Trench& t : trenches)
    if (t.role != TrenchRole::supply && locked_index(plan, t).has_value() != locked)
      plan = with_lock_turned(std::move(plan), t);
  return plan;
}

Plan with_header_lock_turned(Plan plan, const Layout& layout, int group) {
  Wishes& w = plan.wishes;
  const bool held = header_is_held(w, group);
  const int most = std::max(1, static_cast<int>(layout.groups.size()));
  for (int g = group > 0 ? group : 1; g <= (group > 0 ? group : kMostGroups); ++g) {
    if (held)
      w = with_header_line(w, g, std::nullopt);
    else if (const auto line = g <= most ? line_of_header(layout, g) : std::nullopt)
      w = with_header_line(w, g, line);
  }
  return plan;
}

Plan with_run_lock_turned(Plan plan, const Layout& layout) {
  if (!plan.wishes.run_by.empty()) {
    plan.wishes.run_by.clear();
    return plan;
  }
  const Polyline& line = layout.run.line;
  if (line.size() > 1) plan.wishes.run_by.assign(line.begin() + 1, line.end());
  return plan;
}

}  // namespace underlawn
