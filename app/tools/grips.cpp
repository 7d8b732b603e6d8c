// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/grips.h"

#include <QCoreApplication>
#include <algorithm>

namespace underlawn {

namespace {

using Kind = Selected::Kind;

QString words(const char* text) {
  return QCoreApplication::translate("Grips", text);
}

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
    default:
      return plan;
  }
}

QString thing_name(const Plan& plan, const Selected& what) {
  if (is_lot(what)) return words("lot line");
  if (what.kind == Kind::entry) return words("entry point");
  const Feature* f = find_feature(plan.site, what.id);
  return f ? QString::fromStdString(display_name(*f)) : QString();
}

}  // namespace

std::optional<edit::Handle> handle_of(const Selected& what) {
  if (what.index < 0) return std::nullopt;
  if (what.kind == Kind::lot) return edit::Handle{edit::Handle::Kind::lot_corner, 0, what.index};
  if (what.kind == Kind::feature) return edit::Handle{edit::Handle::Kind::feature_point, what.id, what.index};
  return std::nullopt;
}

std::vector<Grip> grips(const Plan& plan, const Selected& what) {
  std::vector<Grip> all;
  if (is_lot(what) && !plan.site.lot.empty())
    add_grips(all, lot_ring(plan.site), true, {edit::Handle::Kind::lot_corner});
  if (what.kind == Kind::entry && plan.site.entry)
    all.push_back({{edit::Handle::Kind::entry}, plan.site.entry->at});
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
  return is_lot(what) || what.kind == Kind::feature || what.kind == Kind::entry;
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
    if (is_lot(s) && !std::exchange(lot_moved, true)) plan = edit::moved_lot(std::move(plan), by);
    if (s.kind == Kind::entry && !entry_follows && plan.site.entry)
      plan = edit::with_entry(plan, plan.site.entry->at + by);
  }
  return plan;
}

Plan without_things(Plan plan, const std::vector<Selected>& what) {
  for (const Selected& s : what) plan = without_thing(std::move(plan), s);
  return plan;
}

QString grip_action(const Grip& grip) {
  if (grip.handle.kind == edit::Handle::Kind::entry) return words("Move the entry point");
  if (grip.inserts) return words("Add a corner");
  return grip.handle.kind == edit::Handle::Kind::lot_corner ? words("Move a lot corner")
                                                            : words("Move a corner");
}

QString things_action(const Plan& plan, const QString& verb, const std::vector<Selected>& what) {
  if (what.size() != 1) return words("%1 %2 things").arg(verb).arg(what.size());
  if (handle_of(what.front())) return words("%1 a corner of %2").arg(verb, thing_name(plan, what.front()));
  return words("%1 %2").arg(verb, thing_name(plan, what.front()));
}

}  // namespace underlawn
