// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/grips.h"

#include <QCoreApplication>
#include <algorithm>

#include "layout/given.h"
#include "plan/dimensions.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

void add_grips(std::vector<Grip>& all, const std::vector<Point>& points, bool closed, edit::Handle handle) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    handle.index = static_cast<int>(i);
    all.push_back({handle, points[i]});
  }
  const std::size_t edges = closed ? points.size() : points.size() - 1;
  if (points.size() < 2) return;
  for (std::size_t i = 0; i < edges; ++i) {
    handle.index = static_cast<int>(i);
    all.push_back({handle, 0.5 * (points[i] + points[(i + 1) % points.size()]), true});
  }
}

bool is_lot(const Selected& what) {
  return what.kind == Kind::lot || what.kind == Kind::lot_edge;
}

bool takes_house(const Plan& plan, const std::vector<Selected>& what) {
  return plan.site.entry && std::any_of(what.begin(), what.end(), [&](const Selected& s) {
           return s.kind == Kind::feature && s.id == plan.site.entry->house_id;
         });
}

Plan without_thing(Plan plan, const Selected& what) {
  if (const auto corner = handle_of(what)) return edit::removed_point(std::move(plan), *corner);
  switch (what.kind) {
    case Kind::feature:
      return edit::without_feature(std::move(plan), what.id);
    case Kind::entry:
      return edit::without_entry(std::move(plan));
    case Kind::lot:
      return edit::without_lot(std::move(plan));
    case Kind::locked:
      return edit::without_locked(std::move(plan), what.id);
    case Kind::height:
      return edit::without_height(std::move(plan), what.id);
    case Kind::dimension:
      return edit::without_dimension(std::move(plan), what.id);
    default:
      return plan;
  }
}

QString thing_name(const Plan& plan, const Selected& what) {
  if (is_lot(what)) return QObject::tr("lot line");
  if (what.kind == Kind::entry) return QObject::tr("entry point");
  if (what.kind == Kind::height) return QObject::tr("spot height %1").arg(what.id + 1);
  if (what.kind == Kind::locked) return QObject::tr("drawn trench %1").arg(what.id + 1);
  if (what.kind == Kind::dimension) return QObject::tr("dimension %1").arg(what.id + 1);
  const Feature* f = find_feature(plan.site, what.id);
  return f ? QString::fromStdString(display_name(*f)) : QString();
}

}  // namespace

Selected owner_of(const edit::Handle& handle) {
  switch (handle.kind) {
    case edit::Handle::Kind::lot_corner:
      return {Kind::lot, 0, handle.index};
    case edit::Handle::Kind::feature_point:
      return {Kind::feature, handle.feature_id, handle.index};
    case edit::Handle::Kind::locked_point:
      return {Kind::locked, handle.feature_id, handle.index};
    case edit::Handle::Kind::height:
      return {Kind::height, handle.index};
    case edit::Handle::Kind::dimension:
      return {Kind::dimension, handle.feature_id};  // its ends are not removed one by one
    case edit::Handle::Kind::entry:
      break;
  }
  return {Kind::entry};
}

std::optional<edit::Handle> handle_of(const Selected& what) {
  if (what.index < 0) return std::nullopt;
  if (what.kind == Kind::lot) return edit::Handle{edit::Handle::Kind::lot_corner, 0, what.index};
  if (what.kind == Kind::feature) return edit::Handle{edit::Handle::Kind::feature_point, what.id, what.index};
  if (what.kind == Kind::locked) return edit::Handle{edit::Handle::Kind::locked_point, what.id, what.index};
  return std::nullopt;
}

std::vector<Grip> grips(const Plan& plan, const Selected& what) {
  std::vector<Grip> all;
  if (is_lot(what) && !plan.site.lot.empty())
    add_grips(all, lot_ring(plan.site), true, {edit::Handle::Kind::lot_corner});
  if (what.kind == Kind::entry && plan.site.entry)
    all.push_back({{edit::Handle::Kind::entry}, plan.site.entry->at});
  if (what.kind == Kind::height && is_there(plan, what))
    all.push_back(
        {{edit::Handle::Kind::height, 0, what.id}, plan.site.heights[static_cast<std::size_t>(what.id)].at});
  if (what.kind == Kind::locked && is_there(plan, what))
    add_grips(all, line_of(plan.wishes.locked[static_cast<std::size_t>(what.id)]), false,
              {edit::Handle::Kind::locked_point, what.id});
  if (what.kind == Kind::dimension)
    for (int part = 0; part < 3; ++part) {
      const edit::Handle handle{edit::Handle::Kind::dimension, what.id, part};
      if (const auto at = edit::handle_position(plan, handle)) all.push_back({handle, *at});
    }
  if (what.kind != Kind::feature) return all;
  if (const Feature* f = find_feature(plan.site, what.id); f && !f->points.empty())
    add_grips(all, f->points, shape_of(f->kind) == FeatureShape::area,
              {edit::Handle::Kind::feature_point, f->id});
  return all;
}

Plan moved_grip(const Plan& plan, const Grip& grip, Point to) {
  if (!grip.inserts) return edit::moved_handle(plan, grip.handle, to);
  return edit::inserted_point(plan, grip.handle, to);
}

bool can_move(const Selected& what) {
  return is_lot(what) || what.kind == Kind::feature || what.kind == Kind::entry ||
         what.kind == Kind::locked || what.kind == Kind::height || what.kind == Kind::dimension;
}

Plan moved_things(Plan plan, const std::vector<Selected>& what, Point by) {
  if (what.size() == 1)
    if (const auto corner = handle_of(what.front()))
      if (const auto at = edit::handle_position(plan, *corner))
        return edit::moved_handle(plan, *corner, *at + by);
  const bool entry_follows = takes_house(plan, what);
  bool lot_moved = false;
  for (const Selected& s : what) {
    if (s.kind == Kind::feature) plan = edit::moved_feature(std::move(plan), s.id, by);
    if (s.kind == Kind::locked) plan = edit::moved_locked(std::move(plan), s.id, by);
    if (s.kind == Kind::height && is_there(plan, s))
      plan = edit::moved_handle(plan, {edit::Handle::Kind::height, 0, s.id},
                                plan.site.heights[static_cast<std::size_t>(s.id)].at + by);
    if (s.kind == Kind::dimension) plan = edit::moved_dimension(std::move(plan), s.id, by);
    if (is_lot(s) && !std::exchange(lot_moved, true)) plan = edit::moved_lot(std::move(plan), by);
    if (s.kind == Kind::entry && !entry_follows && plan.site.entry)
      plan = edit::with_entry(plan, plan.site.entry->at + by);
  }
  return plan;
}

Plan without_things(Plan plan, const std::vector<Selected>& what) {
  // Locked trenches, heights and dimensions go by their place, so the last first.
  std::vector<Selected> ordered = what;
  std::stable_sort(ordered.begin(), ordered.end(), [](const Selected& a, const Selected& b) {
    const auto place = [](const Selected& s) {
      const bool by_place = s.kind == Kind::locked || s.kind == Kind::height || s.kind == Kind::dimension;
      return by_place ? -s.id : 1;
    };
    return place(a) < place(b);
  });
  for (const Selected& s : ordered) plan = without_thing(std::move(plan), s);
  return plan;
}

QString grip_action(const Grip& grip) {
  if (grip.handle.kind == edit::Handle::Kind::entry) return QObject::tr("Move the entry point");
  if (grip.handle.kind == edit::Handle::Kind::height) return QObject::tr("Move a spot height");
  if (grip.handle.kind == edit::Handle::Kind::dimension) return QObject::tr("Change a dimension");
  const bool trench = grip.handle.kind == edit::Handle::Kind::locked_point;
  if (grip.inserts) return trench ? QObject::tr("Add a bend") : QObject::tr("Add a corner");
  if (trench) return QObject::tr("Move a point of a trench");
  return grip.handle.kind == edit::Handle::Kind::lot_corner ? QObject::tr("Move a lot corner")
                                                            : QObject::tr("Move a corner");
}

QString things_action(const Plan& plan, const QString& verb, const std::vector<Selected>& what) {
  if (what.size() != 1)
    return QObject::tr("%1 %2 things", "what is done, to how many").arg(verb).arg(what.size());
  if (handle_of(what.front()))
    return QObject::tr("%1 a corner of %2").arg(verb, thing_name(plan, what.front()));
  return QObject::tr("%1 %2", "what is done, to what").arg(verb, thing_name(plan, what.front()));
}

}  // namespace underlawn
