// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "dig/dig.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr const char* kRule = "sloped_top_overlap";
constexpr const char* kSource = mark("29 CFR 1926 Subpart P, Table B-1");
constexpr const char* kAdvice =
    mark("Use a shield or shoring instead of slopes here, or ask for a wider spacing.");

Finding found(const std::string& part, std::string title, double measured, double required) {
  Finding f = make_finding(kRule, part, Severity::warning, std::move(title));
  set_measure(f, measured, required);
  f.advice = translated(kAdvice);
  f.source = translated(kSource);
  return f;
}

// One finding for all pairs: they are met by one way of digging. Its numbers are those of the worst pair.
void check_pairs(std::vector<Finding>& findings, const Layout& layout, double slope) {
  const auto& all = layout.trenches;
  Finding f = found("trenches", say("Sloped sides of neighbouring trenches run into each other"), 0, 0);
  std::vector<bool> met(all.size());
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = i + 1; j < all.size(); ++j) {
      const auto beside = gaps_between(all[i], all[j]).beside;
      if (!beside) continue;
      const double apart = *beside;
      const double needed = (all[i].width + all[j].width) / 2 + slope * (all[i].depth + all[j].depth);
      if (!falls_short(apart, needed)) continue;
      if (needed - apart > f.required - f.measured) set_measure(f, apart, needed);
      met[i] = met[j] = true;
    }
  for (std::size_t i = 0; i < all.size(); ++i)
    if (met[i]) f.places.push_back(axis(all[i]));
  if (!f.places.empty()) findings.push_back(std::move(f));
}

// The long sides only: ends are cut steep or ramped along the trench.
double side_distance(const Trench& t, const Polyline& line) {
  double least = std::numeric_limits<double>::infinity();
  for (const Segment& leg : legs_of(axis(t))) {
    const Point off = t.width / 2 * left_normal(unit(leg.b - leg.a));
    least = std::min({least, line_distance(Polyline{leg.a + off, leg.b + off}, line),
                      line_distance(Polyline{leg.a - off, leg.b - off}, line)});
  }
  return least;
}

void check_lot_line(std::vector<Finding>& findings, const Site& site, const Layout& layout, double slope) {
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    Finding f = found(edge_part(i), say("Sloped sides cross lot edge {}", std::to_string(i + 1)), 0, 0);
    for (const Trench& t : layout.trenches) {
      const double away = side_distance(t, lot_edge(site, i));
      const double reach = slope * t.depth;
      if (!falls_short(away, reach)) continue;
      if (reach - away > f.required - f.measured) set_measure(f, away, reach);
      f.places.push_back(axis(t));
    }
    if (f.places.empty()) continue;
    f.places.push_back(lot_edge(site, i));
    findings.push_back(std::move(f));
  }
}

void check_houses(std::vector<Finding>& findings, const Site& site, const Trench& t, double reach) {
  for (const Feature& house : site.features) {
    if (house.kind != FeatureKind::house) continue;
    const double away = area_to_feature(outline(t), house);
    if (!falls_short(away, reach)) continue;
    Finding f =
        found(trench_part(t) + "/" + feature_part(house),
              say("The sloped side of trench {} reaches {}", std::to_string(t.number), display_name(house)),
              away, reach);
    f.places = {axis(t), drawn(house)};
    findings.push_back(std::move(f));
  }
}

}  // namespace

// Only where sides are to be laid back and a protective system is due: shallower trenches stay vertical.
std::vector<Finding> sloped_top_overlap(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (plan.dig.coil_sides != Sides::slope) return findings;
  const double slope = plan.dig.slope.value_or(slope_for(plan.ground.soil));
  if (slope <= 0 || falls_short(plan.wishes.trench_depth, kProtectFrom)) return findings;
  check_pairs(findings, outcome.layout, slope);
  check_lot_line(findings, plan.site, outcome.layout, slope);
  for (const Trench& t : outcome.layout.trenches) check_houses(findings, plan.site, t, slope * t.depth);
  return findings;
}

}  // namespace underlawn::checks
