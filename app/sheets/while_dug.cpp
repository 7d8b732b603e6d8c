// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/while_dug.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/machine_ways.h"
#include "plan/clearings.h"
#include "plan/roots_driven.h"
#include "plane/region.h"
#include "sheets/family_facts.h"
#include "sheets/works_at.h"

namespace underlawn {

namespace {

constexpr double kGate = 2.5;  // widths of a truck, from the middle of where machines come in

// Where a wheel or a sliding heap is soon over the edge: 3 ft, in metric sheets a round 0.9 m.
double beside(const Plan& plan) {
  return plan.units == UnitSystem::metric ? 0.9 : 0.9144;
}

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

enum class OnRoots { driven, ready, touched };

OnRoots on_roots(const Plan& plan, const Outcome& outcome, const Loved& tree, bool driven) {
  if (driven) return OnRoots::driven;
  const Feature* f = find_feature(plan.site, tree.feature_id);
  const DigOrder& order = *outcome.order;
  const bool ready = f != nullptr && !f->points.empty() && order.laydown &&
                     distance(*order.laydown, f->points[0]) - order.laydown_radius < tree.roots;
  return ready ? OnRoots::ready : OnRoots::touched;
}

QString machine_alone(OnRoots how) {
  switch (how) {
    case OnRoots::driven:
      return QObject::tr("%1: its roots are driven over, %2 from the trunk.");
    case OnRoots::ready:
      return QObject::tr("%1: pipe lies ready on its roots, %2 from the trunk.");
    case OnRoots::touched:
      break;
  }
  return QObject::tr("%1: the work touches the edge of its roots, %2 from the trunk.");
}

QString earth_and_machine(OnRoots how) {
  switch (how) {
    case OnRoots::driven:
      return QObject::tr(
          "%1: earth lies on its roots %2, %3 from the trunk, and they are driven over, %4 from it.");
    case OnRoots::ready:
      return QObject::tr(
          "%1: earth lies on its roots %2, %3 from the trunk, and pipe lies ready on them, %4 from it.");
    case OnRoots::touched:
      break;
  }
  return QObject::tr(
      "%1: earth lies on its roots %2, %3 from the trunk, and the work touches their edge, %4 from it.");
}

// `driven`: as the crew's sheet has it, which asks for mats there.
QString words_of(const Plan& plan, const Outcome& outcome, const Near& near, bool driven) {
  const auto& [tree, w] = near;
  const QString name = QString::fromStdString(tree.name),
                machine = w.machine ? family_length(plan, *w.machine) : QString(),
                earth = w.earth ? family_length(plan, *w.earth) : QString();
  const OnRoots how = on_roots(plan, outcome, tree, driven);
  if (!w.earth_on_roots) return machine_alone(how).arg(name, machine);
  if (w.machine_on_roots) return earth_and_machine(how).arg(name, days_of(w), earth, machine);
  return QObject::tr("%1: earth lies on its roots %2, %3 from the trunk.").arg(name, days_of(w), earth);
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

bool crosses_line_only_at_entry(const Plan& plan, const Outcome& outcome) {
  if (outcome.order == nullptr) return true;
  const DigOrder& order = *outcome.order;
  const Region lot = grown(region_of(lot_ring(plan.site)), 0.05);
  // As wide as what comes in there, at a slant too.
  const double gate = kGate * kTruckWidth;
  std::vector<Drive> drives = drives_of(order, plan.dig.excavator);
  for (const DigStep& step : order.steps)
    if (!step.line.empty()) drives.push_back({&step.line, plan.dig.excavator.width});
  for (const Drive& drive : drives)
    for (const Polygon& part : subtract(buffered(*drive.way, drive.width / 2), lot))
      for (const Point p : part.outer)
        if (!order.access || distance(p, *order.access) > gate) return false;
  return true;
}

std::vector<Near> near_things(const Plan& plan, const Outcome& outcome) {
  std::vector<Near> all;
  for (Loved& l : loved(plan, outcome)) {
    WhileDug then = while_dug(plan, outcome, l);
    all.push_back({std::move(l), std::move(then)});
  }
  return all;
}

bool comes_near(const Plan& plan, const Near& near) {
  const double far = beside(plan);
  return std::min(near.then.earth.value_or(far), near.then.machine.value_or(far)) < far;
}

namespace {

bool is_septic(FeatureKind kind) {
  return kind == FeatureKind::septic_tank || kind == FeatureKind::drain_field;
}

// Tank and field that are come near to and not driven on; how near stands in the table.
QString septic_words(const Plan& plan, const std::vector<Near>& all) {
  QStringList names;
  for (const Near& near : all) {
    const Feature* f = find_feature(plan.site, near.thing.feature_id);
    if (f == nullptr || !is_septic(f->kind) || !comes_near(plan, near)) continue;
    if (near.then.machine.value_or(1) <= 0) return "";
    names << QString::fromStdString(near.thing.name);
  }
  return names.isEmpty() ? QString()
                         : QObject::tr("The ways lead past %1, never over; nothing else guards their edges.")
                               .arg(names.join(QObject::tr(" and ")));
}

// All that earth or machine comes up to: what the table has below 3 ft.
QStringList edge_words(const Plan& plan, const std::vector<Near>& all) {
  QStringList names;
  for (const Near& near : all)
    if (comes_near(plan, near)) names << QString::fromStdString(near.thing.name);
  if (names.isEmpty()) return {};
  return {
      QObject::tr("Earth or machine comes nearer than %1 to: %2. What stands at the edge may be broken or "
                  "buried.")
          .arg(family_length(plan, beside(plan)), names.join(", ")),
      septic_words(plan, all)};
}

QString who_answers(const Plan& plan, bool roots) {
  if (!answered_for(plan)) return QObject::tr("Who answers for that is agreed in writing before you sign.");
  const QString who = QObject::tr("Who answers for that: “What we answer for”.");
  return roots && !trees_answered_for(plan)
             ? who + " " + QObject::tr("Trees are not named there: agree on them in writing before you sign.")
             : who;
}

// As the crew's sheet asks for; nothing is laid under heaps.
QString mats_words(bool driven) {
  return driven ? QObject::tr(
                      "Before anything drives over roots, mats or planks are laid; it drives there on "
                      "dry ground only.")
                : QString();
}

// Common knowledge of arborists, no source.
QString harm_words(bool roots) {
  return roots
             ? QObject::tr("Roots pressed or covered may still die, and a tree may show it only years later.")
             : QString();
}

}  // namespace

QStringList root_words(const Plan& plan, const Outcome& outcome) {
  const std::vector<Near> all = near_things(plan, outcome);
  const std::vector<RootsDriven> roots = roots_driven(plan, outcome);
  QStringList words;
  bool driven = false;
  for (const Near& near : all) {
    const bool over =
        std::ranges::any_of(roots, [&](const RootsDriven& r) { return r.tree == near.thing.feature_id; });
    driven |= over;
    if (near.then.earth_on_roots || near.then.machine_on_roots) words << words_of(plan, outcome, near, over);
  }
  const bool any = !words.isEmpty();
  words << mats_words(driven) << harm_words(any) << edge_words(plan, all);
  words.removeAll("");
  if (!words.isEmpty()) words << who_answers(plan, any);
  return words;
}

}  // namespace underlawn
