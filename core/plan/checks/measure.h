// SPDX-License-Identifier: GPL-3.0-or-later
// What the checks share: distances measured on the drawing itself (never the placer's own regions), and how
// findings name things.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "field/trench.h"
#include "layout/layout.h"
#include "plan/finding.h"
#include "plan/plan.h"
#include "plan/stake_out.h"
#include "plane/region.h"

namespace underlawn {

// A distance counts as kept when it is short by less than this, so that 0.3 m is never called less than 0.3
// m.
inline constexpr double kCheckTolerance = 1e-3;  // m
inline bool falls_short(double measured, double required) {
  return measured < required - kCheckTolerance;
}

// ---- naming ----

std::string trench_name(const Trench& t);    // "Trench 2"
std::string trench_part(const Trench& t);    // "trench-2", in keys
std::string feature_part(const Feature& f);  // "feature-7"
std::string edge_part(std::size_t edge);     // "edge-3" for the third: people count from one
std::string conduit_name(Conduit c);         // "Supply run"
std::string conduit_part(Conduit c);         // "run"
std::string tie_part(const Tie& tie);        // "1-end+3-end" of "1 end, 3 end"

// "trench 2", "trenches 2, 3", or, when there are more than fit a line, "38 trenches".
inline constexpr std::size_t kMostListed = 6;
std::string trenches_listed(const std::vector<std::string>& numbers);
std::string stakes_listed(const std::vector<std::string>& names);

// A finding of `rule` about `subject` (parts joined by "/"; may be empty); key = rule/subject.
Finding make_finding(const char* rule, const std::string& subject, Severity severity, std::string title);
void set_measure(Finding& f, double measured, double required, Quantity quantity = Quantity::length);

// ---- geometry ----

Ring outline(const Trench& t);   // its floor
Polyline axis(const Trench& t);  // head to end, with its bends
// The floor less the tolerance all round: what meets this overlaps the trench for good.
Ring core_of(const Trench& t);
Polyline drawn(const Feature& f);  // an area closed, for places
Polyline lot_edge(const Site& site, std::size_t edge);

double area_to_feature(const Ring& area, const Feature& f);      // m, 0 where they meet
double line_to_feature(const Polyline& line, const Feature& f);  // m, 0 where they meet

// Everything dug for header and run, as lines; stretches shorter than kSamePlace dropped.
struct ConduitLine {
  Conduit conduit;
  Polyline line;
};
std::vector<ConduitLine> conduit_lines(const Layout& layout);
// All of them as places of a finding: coil trenches, head to end; header and run.
std::vector<Polyline> trench_places(const Layout& layout);
std::vector<Polyline> conduit_places(const Layout& layout);

// Where two lines meet, each place once.
std::vector<Point> meetings(const Polyline& a, const Polyline& b);

// How far the line runs inside the area, deeper than the tolerance. m.
double length_inside(const Polyline& line, const Ring& area);

// The same for all of header or run together, inside a feature that is an area. m.
double conduit_inside(const Layout& layout, Conduit conduit, const Feature& area);

// Two legs of trenches lie side by side when they run within 30 degrees of one another and part of one is
// beside the other; else one lies at the other's end. Least distances, m, over the legs of two trenches that
// lie so: of middle lines beside each other, of floors otherwise.
struct Gaps {
  std::optional<double> beside, at_ends;
};
Gaps gaps_between(const Trench& a, const Trench& b);

std::vector<Segment> legs_of(const Polyline& line);

}  // namespace underlawn
