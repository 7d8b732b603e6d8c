// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/while_dug.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/machine_ways.h"
#include "plan/clearings.h"
#include "sheets/family_facts.h"
#include "sheets/works_at.h"

namespace underlawn {

namespace {

constexpr double kBeside = 0.9144;  // m: 3 ft, where a wheel or a sliding heap is soon over the edge

struct Outline {
  Polyline line;
  bool closed = false;
};

Outline outline_of(const Plan& plan, const Loved& thing) {
  const Feature* f = find_feature(plan.site, thing.feature_id);
  if (f != nullptr) return {f->points, shape_of(f->kind) == FeatureShape::area};
  // Of the lot only the line counts, not what is inside of it.
  Polyline line = lot_ring(plan.site);
  if (!line.empty()) line.push_back(line.front());
  return {line, false};
}

double apart(const Polyline& a, bool a_closed, const Outline& b) {
  const Segment s = shortest_between(a, a_closed, b.line, b.closed);
  return distance(s.a, s.b);
}

void take(std::optional<double>& least, double metres) {
  least = std::min(least.value_or(metres), std::max(0.0, metres));
}

void add_earth(WhileDug& all, const Outcome& outcome, const Outline& thing, double roots) {
  const auto& steps = outcome.order->steps;
  for (std::size_t i = 0; i < steps.size(); ++i)
    for (const Ring& heap : steps[i].spoil) {
      if (heap.size() < 3) continue;
      const double metres = apart(heap, true, thing);
      take(all.earth, metres);
      if (metres >= roots) continue;
      all.earth_on_roots = true;
      const auto lies = earth_lies(outcome, static_cast<int>(i));
      if (!lies) continue;
      const auto day = [&](double at) { return static_cast<int>(at / outcome.calendar->day_length) + 1; };
      all.first_day = all.first_day == 0 ? day(lies->from) : std::min(all.first_day, day(lies->from));
      all.last_day = std::max(all.last_day, day(lies->to - 1));
    }
}

// Tracks and wheels on their ways, the machine's along what it digs, and pipe laid ready.
void add_machine(WhileDug& all, const Plan& plan, const DigOrder& order, const Outline& thing) {
  const Machine& excavator = plan.dig.excavator;
  const auto drives = [&](const Polyline& line, double width) {
    take(all.machine, apart(line, false, thing) - width / 2);
  };
  for (const Drive& drive : drives_of(order, excavator)) drives(*drive.way, drive.width);
  for (const DigStep& step : order.steps)
    if (!step.line.empty()) drives(step.line, excavator.width);
  if (order.laydown) take(all.machine, apart({*order.laydown}, false, thing) - order.laydown_radius);
}

QString days_of(const WhileDug& w) {
  if (w.first_day == 0) return QObject::tr("while its trench is open");
  return w.first_day == w.last_day ? QObject::tr("on day %1").arg(w.first_day)
                                   : QObject::tr("from day %1 to day %2").arg(w.first_day).arg(w.last_day);
}

QString words_of(const Plan& plan, const Loved& tree, const WhileDug& w) {
  const QString name = QString::fromStdString(tree.name),
                machine = w.machine ? family_length(plan, *w.machine) : QString(),
                earth = w.earth ? family_length(plan, *w.earth) : QString();
  if (!w.earth_on_roots)
    return QObject::tr("%1: the machine drives over its roots or pipe lies ready there, %2 from its trunk.")
        .arg(name, machine);
  if (!w.machine_on_roots)
    return QObject::tr("%1: earth lies on its roots %2, %3 from its trunk.").arg(name, days_of(w), earth);
  return QObject::tr("%1: earth lies on its roots %2, %3 from its trunk, and the machine comes to %4.")
      .arg(name, days_of(w), earth, machine);
}

}  // namespace

WhileDug while_dug(const Plan& plan, const Outcome& outcome, const Loved& thing) {
  WhileDug all;
  const Outline outline = outline_of(plan, thing);
  if (outcome.order == nullptr || outline.line.empty()) return all;
  add_earth(all, outcome, outline, thing.roots);
  if (thing.feature_id != 0) add_machine(all, plan, *outcome.order, outline);
  all.machine_on_roots = all.machine.value_or(thing.roots) < thing.roots;
  return all;
}

namespace {

struct Near {
  Loved thing;
  WhileDug then;
};

// Beds, orchards and patios that earth or machine comes up to.
QString edge_words(const Plan& plan, const std::vector<Near>& all) {
  QStringList names;
  for (const auto& [l, w] : all) {
    const Feature* f = find_feature(plan.site, l.feature_id);
    if (f == nullptr || f->kind != FeatureKind::no_dig) continue;
    if (std::min(w.earth.value_or(kBeside), w.machine.value_or(kBeside)) < kBeside)
      names << QString::fromStdString(l.name);
  }
  return names.isEmpty()
             ? QString()
             : QObject::tr(
                   "Earth or machine comes nearer than %1 to: %2. What stands at the edge may be broken or "
                   "buried.")
                   .arg(family_length(plan, kBeside), names.join(", "));
}

// No mats, boards or fences: the plan has none.
QString harm_words(const Plan& plan, bool roots) {
  const QString who = answered_for(plan)
                          ? QObject::tr("Who answers for that: “What we answer for”.")
                          : QObject::tr("Who answers for that is agreed in writing before you sign.");
  // Common knowledge of arborists, no source.
  return roots ? QObject::tr(
                     "Nothing is laid over roots: those pressed or covered may die, and a tree may show it "
                     "only "
                     "years later.") +
                     " " + who
               : who;
}

}  // namespace

QStringList root_words(const Plan& plan, const Outcome& outcome) {
  std::vector<Near> all;
  for (Loved& l : loved(plan, outcome)) {
    WhileDug then = while_dug(plan, outcome, l);
    all.push_back({std::move(l), std::move(then)});
  }
  QStringList words;
  for (const auto& [l, w] : all)
    if (w.earth_on_roots || w.machine_on_roots) words << words_of(plan, l, w);
  const bool roots = !words.isEmpty();
  if (const QString edges = edge_words(plan, all); !edges.isEmpty()) words << edges;
  if (!words.isEmpty()) words << harm_words(plan, roots);
  return words;
}

}  // namespace underlawn
