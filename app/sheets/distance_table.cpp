// SPDX-License-Identifier: GPL-3.0-or-later
// What header, run and coil trenches pass, and how near: from the edge of what is dug.
#include <cmath>
#include <limits>

#include "plan/checks/measure.h"
#include "sheets/contents.h"
#include "site/clearances.h"

namespace underlawn::sheet {

namespace {

constexpr double kNear = 15;  // m: what is farther off is not named

double conduit_away(const Plan& plan, const Outcome& outcome, const Feature& f, Conduit which) {
  double least = std::numeric_limits<double>::infinity();
  for (const ConduitLine& c : conduit_lines(outcome.layout))
    if (c.conduit == which)
      least = std::min(least, std::max(0.0, line_to_feature(c.line, f) - plan.wishes.run_width / 2));
  return least;
}

double trench_away(const Outcome& outcome, const Feature& f) {
  double least = std::numeric_limits<double>::infinity();
  for (const Trench& t : outcome.layout.trenches) least = std::min(least, area_to_feature(outline(t), f));
  return least;
}

// The house that the run enters is met by it.
QString away_words(const Plan& plan, double metres) {
  if (!std::isfinite(metres)) return "–";
  return metres < 0.005 ? QObject::tr("meets it") : shown_length(plan, metres);
}

// An edge of the lot as a line that anything can be measured from.
Feature edge(const Site& site, std::size_t i) {
  Feature f;
  f.kind = FeatureKind::utility;
  f.points = {site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at};
  return f;
}

struct NearestEdge {
  double away = std::numeric_limits<double>::infinity(), setback = 0;  // m
};

// The edge that leaves least over its setback.
template <typename Away>
NearestEdge nearest_edge(const Site& site, const Away& away) {
  NearestEdge least;
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    const NearestEdge here{away(edge(site, i)), site.lot[i].setback};
    if (here.away - here.setback < least.away - least.setback) least = here;
  }
  return least;
}

std::vector<Cell> lot_row(const Plan& plan, const Outcome& outcome) {
  const auto of = [&](Conduit which) {
    return nearest_edge(plan.site, [&](const Feature& f) { return conduit_away(plan, outcome, f, which); });
  };
  const NearestEdge run = of(Conduit::run), header = of(Conduit::header),
                    coil = nearest_edge(plan.site, [&](const Feature&f) { return trench_away(outcome, f); });
  return {{QObject::tr("Lot line"), std::nullopt, true},
          {away_words(plan, run.away)},
          {away_words(plan, header.away)},
          {shown_length(plan, std::max(run.setback, std::isfinite(header.away) ? header.setback : 0))},
          {away_words(plan, coil.away)},
          {shown_length(plan, coil.setback)}};
}

}  // namespace

BlockPtr distance_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.run.line.size() < 2) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (const Feature& f : plan.site.features) {
    if (f.kind == FeatureKind::utility || f.kind == FeatureKind::easement) continue;
    const double run = conduit_away(plan, outcome, f, Conduit::run),
                 header = conduit_away(plan, outcome, f, Conduit::header);
    const double coil = trench_away(outcome, f);
    const bool always = f.kind == FeatureKind::well || f.kind == FeatureKind::tree;
    if (!always && std::min({run, header, coil}) > kNear) continue;
    rows.push_back({{text_of(display_name(f)), std::nullopt, true},
                    {away_words(plan, run)},
                    {away_words(plan, header)},
                    {shown_length(plan, run_clearance(plan.site, f))},
                    {away_words(plan, coil)},
                    {shown_length(plan, trench_clearance(plan.site, f))}});
  }
  if (rows.empty()) return nullptr;
  if (plan.site.lot.size() > 2) rows.push_back(lot_row(plan, outcome));
  const Align right = Align::right;
  return std::make_shared<Table>(
      QObject::tr("DISTANCES KEPT"),
      std::vector<Column>{{QObject::tr("From"), Align::left, true},
                          {QObject::tr("Run"), right},
                          {QObject::tr("Header"), right},
                          {QObject::tr("asked of both"), right},
                          {QObject::tr("Coil trench"), right},
                          {QObject::tr("asked of it"), right}},
      std::move(rows), 10,
      QObject::tr("From the edge of what is dug, vertical sides, to the thing itself; of a "
                  "tree to its trunk's middle."));
}

}  // namespace underlawn::sheet
