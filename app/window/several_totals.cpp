// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/several_totals.h"

#include <QObject>
#include <algorithm>

#include "base/quantity.h"
#include "field/trench.h"
#include "layout/given.h"
#include "plan/checks/measure.h"
#include "plan/dimensions.h"
#include "plane/region.h"
#include "tools/trench_drag.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

QString name_of(const Plan& plan, const Selected& s) {
  switch (s.kind) {
    case Kind::feature: {
      const Feature* f = find_feature(plan.site, s.id);
      return f == nullptr ? QString() : QString::fromStdString(kind_name(f->kind));
    }
    case Kind::lot:
      return QObject::tr("lot line");
    case Kind::lot_edge:
      return QObject::tr("lot edge");
    case Kind::entry:
      return QObject::tr("entry point");
    case Kind::locked:
      return QObject::tr("drawn trench");
    case Kind::height:
      return QObject::tr("spot height");
    case Kind::dimension:
      return QObject::tr("dimension");
    case Kind::trench:
      return QObject::tr("trench");
    case Kind::header:
      return QObject::tr("header");
    case Kind::run:
      return QObject::tr("supply run");
    case Kind::nothing:
      break;
  }
  return {};
}

void add_feature(KindTotal& total, const Feature& f) {
  if (shape_of(f.kind) == FeatureShape::line) total.length += length(f.points);
  if (shape_of(f.kind) == FeatureShape::area) total.area += area(f.points);
}

void add(KindTotal& total, const Plan& plan, const Outcome* outcome, const Selected& s) {
  total.what.push_back(s);
  if (s.kind == Kind::feature) add_feature(total, *find_feature(plan.site, s.id));
  if (s.kind == Kind::lot) total.area += area(lot_ring(plan.site));
  if (s.kind == Kind::lot_edge)
    total.length += length(lot_edge(plan.site, static_cast<std::size_t>(s.index)));
  if (s.kind == Kind::locked)
    total.length += length(line_of(plan.wishes.locked[static_cast<std::size_t>(s.id)]));
  if (s.kind == Kind::dimension) total.length += measured(plan.dimensions[static_cast<std::size_t>(s.id)]);
  if (s.kind != Kind::trench || outcome == nullptr) return;
  if (const Trench* t = trench_numbered(outcome->layout, s.id)) {
    total.length += length_of(*t);
    total.pipe += t->coil.coil_length;
  }
}

}  // namespace

std::vector<KindTotal> totals_of(const Plan& plan, const Outcome* outcome,
                                 const std::vector<Selected>& picked) {
  std::vector<KindTotal> all;
  for (const Selected& s : picked) {
    const QString name = name_of(plan, s);
    if (name.isEmpty() || !is_there(plan, s)) continue;
    auto at = std::find_if(all.begin(), all.end(), [&](const KindTotal& t) { return t.name == name; });
    if (at == all.end()) at = all.insert(all.end(), {name, {}});
    add(*at, plan, outcome, s);
  }
  return all;
}

QString total_words(const KindTotal& total, UnitSystem units) {
  const auto shown = [&](Quantity quantity, double v) {
    return QString::fromStdString(print_quantity(quantity, v, units));
  };
  const QString count = QString::number(total.what.size());
  if (total.pipe > 0)
    return QObject::tr("%1, %2 in all, %3 of pipe")
        .arg(count, shown(Quantity::length, total.length), shown(Quantity::length, total.pipe));
  if (total.length <= 0 && total.area <= 0) return count;
  return QObject::tr("%1, %2 in all")
      .arg(count, total.area > 0 ? shown(Quantity::area, total.area) : shown(Quantity::length, total.length));
}

}  // namespace underlawn
