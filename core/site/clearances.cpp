// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/clearances.h"

#include <algorithm>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr double kFoot = 0.3048;  // m, exactly

constexpr std::string_view kHanover = mark("Hanover Township PA ground-source ordinance (ecode360 13776143)");
constexpr std::string_view kMaine = mark("Maine 144 CMR 232 ch. 6 (closed-loop wells)");
constexpr std::string_view kTexas = mark("Texas 16 TAC 6.106 (closed-loop injection wells)");
constexpr std::string_view kCommon = mark("common practice, no source");

// One row a kind, in the order of FeatureKind.
const std::vector<ClearanceDefault>& table() {
  using enum FeatureKind;
  static const std::vector<ClearanceDefault> rows = {
      {house,
       10 * kFoot,
       2 * kFoot,
       kCommon,
       {{25 * kFoot, kHanover}, {15 * kFoot, mark("North Carolina, bored loops, as quoted in a hearing")}}},
      {drive, 3 * kFoot, 0, kCommon, {}},
      {septic_tank,
       25 * kFoot,
       10 * kFoot,
       mark("Hanover Township PA ground-source ordinance and Texas 16 TAC 6.106; run: common practice, no "
            "source"),
       {{30 * kFoot, kMaine}}},
      {drain_field,
       25 * kFoot,
       10 * kFoot,
       mark("Hanover Township PA ground-source ordinance; run: common practice, no source"),
       {{50 * kFoot, mark("Maine 144 CMR 232 ch. 6, under 2000 gallons a day")},
        {100 * kFoot, mark("Maine 144 CMR 232 ch. 6, 2000 gallons a day and more")},
        {50 * kFoot, mark("North Carolina, bored loops, as quoted in a hearing")}}},
      {reserve_field,
       25 * kFoot,
       10 * kFoot,
       mark("Hanover Township PA ground-source ordinance (alternate drain field); run: common practice, no "
            "source"),
       {{50 * kFoot, mark("North Carolina, bored loops, repair area, as quoted in a hearing")}}},
      {well,
       45 * kFoot,
       10 * kFoot,
       mark("Maine 144 CMR 232 ch. 6, private well; run: common practice, no source"),
       {{100 * kFoot, kHanover},
        {100 * kFoot, mark("Washington WAC 173-160-453 (variance to 75 ft for a private well)")},
        {100 * kFoot, mark("Nebraska 178 NAC 12-010, non-community public well")},
        {1000 * kFoot, mark("Nebraska 178 NAC 12-010, community well")}}},
      {tree, 0, 0, mark("the root zone alone"), {{15 * kFoot, mark("Ventura CA, never less than 15 ft")}}},
      {utility,
       10 * kFoot,
       2 * kFoot,
       mark("common practice, no source; run: hand-dig zone of 18 in beyond the line's own width "
            "(laonecall.com)"),
       {{10 * kFoot, mark("Texas 16 TAC 6.106, sewer lines")}}},
      {easement, 0, 0, mark("Upper Dublin PA: no encroachment on an easement"), {{25 * kFoot, kHanover}}},
      {no_dig, 2 * kFoot, 1 * kFoot, kCommon, {}},
  };
  return rows;
}

const ClearanceRule* rule_for(const Site& site, FeatureKind kind) {
  const auto at = std::find_if(site.rules.begin(), site.rules.end(),
                               [&](const ClearanceRule& r) { return r.kind == kind; });
  return at == site.rules.end() ? nullptr : &*at;
}

double at_least_zero(double distance) {
  return distance > 0 ? distance : 0;  // also for what is not a number
}

double in_force(const Site& site, const Feature& f, const std::optional<double>& own, double ruled) {
  const double chosen = at_least_zero(own ? *own : ruled);
  return f.kind == FeatureKind::tree ? std::max(chosen, root_zone_radius(site, f)) : chosen;
}

std::string chosen_reason(const Site& site, const Feature& f) {
  if (f.trench_clearance && f.run_clearance) return say("typed for this one");
  const std::string rest = rule_for(site, f.kind) != nullptr
                               ? say("this plan's rule for the kind {}", kind_name(f.kind))
                               : translated(clearance_default(f.kind).source);
  if (f.trench_clearance) return say("trench: typed for this one; run: {}", rest);
  if (f.run_clearance) return say("run: typed for this one; trench: {}", rest);
  return rest;
}

std::string root_zone_reason(const Site& site) {
  for (const RootZoneRule& rule : root_zone_rules())
    if (rule.factor == site.root_zone_factor) return say("root zone, {}", translated(rule.source));
  return say("root zone, factor typed for this plan");
}

}  // namespace

const ClearanceDefault& clearance_default(FeatureKind kind) {
  return table().at(static_cast<std::size_t>(kind));
}

const std::vector<RootZoneRule>& root_zone_rules() {
  static const std::vector<RootZoneRule> rules = {
      {18, mark("1.5 ft per inch of trunk (Edina MN)")},
      {15, mark("1.25 ft per inch of trunk, more is better (NC State Extension)")},
      {12, mark("1 ft per inch of trunk (Vancouver WA VMC 20.170.100)")},
      {6, mark("six times the trunk, and no more than 30 % of the ground under the crown (Ionia MI)")},
  };
  return rules;
}

double trench_clearance(const Site& site, const Feature& f) {
  const ClearanceRule* rule = rule_for(site, f.kind);
  return in_force(site, f, f.trench_clearance, rule ? rule->trench : clearance_default(f.kind).trench);
}

double run_clearance(const Site& site, const Feature& f) {
  const ClearanceRule* rule = rule_for(site, f.kind);
  return in_force(site, f, f.run_clearance, rule ? rule->run : clearance_default(f.kind).run);
}

std::string clearance_reason(const Site& site, const Feature& f) {
  if (f.kind != FeatureKind::tree) return chosen_reason(site, f);
  const double zone = root_zone_radius(site, f);
  const bool zone_governs = trench_clearance(site, f) <= zone && run_clearance(site, f) <= zone;
  if (zone_governs) return root_zone_reason(site);
  return say("{}, never less than the {}", chosen_reason(site, f), root_zone_reason(site));
}

double root_zone_radius(const Site& site, const Feature& tree) {
  return at_least_zero(tree.trunk_diameter * site.root_zone_factor);
}

}  // namespace underlawn
