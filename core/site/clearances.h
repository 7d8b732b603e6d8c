// SPDX-License-Identifier: GPL-3.0-or-later
// How far digging stays from what is on the lot, and where each distance was published. Most published rules
// are written for bored loops; local codes govern everywhere.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "site/site.h"

namespace underlawn {

// A distance that some rule book gives, shown beside the default so that the designer can choose.
struct PublishedClearance {
  double distance;          // m
  std::string_view source;  // "Hanover Township PA ordinance (ecode360 13776143)"
};

struct ClearanceDefault {
  FeatureKind kind;
  double trench;            // m, coil trench
  double run;               // m, header and supply run
  std::string_view source;  // of the defaults; "common practice, no source" where that is the truth
  std::vector<PublishedClearance> others;
};

const ClearanceDefault& clearance_default(FeatureKind kind);
inline constexpr double kDefaultSetback = 3.048;  // m: 10 ft, Texas 16 TAC 6.106 and Maine 144 CMR 232 ch. 6
inline constexpr double kToleranceZone = 0.4572;  // m: 18 in each side of a utility, hand dig inside

// Root zones by trunk diameter: radius = factor x diameter, both in the same unit.
struct RootZoneRule {
  double factor;  // 18 is 1.5 ft of radius per inch of trunk
  std::string_view source;
};
const std::vector<RootZoneRule>& root_zone_rules();  // the default first

// In force for this feature: its own value, or the site's rule for the kind, or the table. For a tree the
// root zone radius (trunk diameter x factor) is the least. m from the feature's outline; never negative, 0
// for what is not a number.
double trench_clearance(const Site& site, const Feature& f);
double run_clearance(const Site& site, const Feature& f);
// Which of those it was, in words with its source, for figures and reports.
std::string clearance_reason(const Site& site, const Feature& f);

double root_zone_radius(const Site& site, const Feature& tree);  // m from the trunk's centre

}  // namespace underlawn
