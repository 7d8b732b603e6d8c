// SPDX-License-Identifier: GPL-3.0-or-later
// The courses of a deed run one after another on the plan: where they lead, how they close, what they
// enclose.
#pragma once

#include <optional>
#include <vector>

#include "base/figure.h"
#include "survey/deed_calls.h"
#include "survey/survey.h"

namespace underlawn {

// One course on the plan. Latitude (north) and departure (east) are of the course, or a curve's chord, by the
// deed's own north, as written; the corrections come on top where the compass rule is chosen.
struct Leg {
  Course course;
  double latitude = 0, departure = 0;                        // m
  double latitude_correction = 0, departure_correction = 0;  // m
  Polyline line;  // on the plan, corrected; a curve as chords, none farther from it than the tolerance
  bool operator==(const Leg&) const = default;
};

struct Traverse {
  std::vector<Leg> legs;               // ties first
  std::size_t ties = 0;                // how many of them
  Point begin, end;                    // of the boundary, as written
  double perimeter = 0;                // m, curves by their arcs, as written
  double run = 0;                      // m, curves by their chords: what the compass rule shares out by
  double latitude = 0, departure = 0;  // sums over the boundary as written; 0 when it closes
  double misclosure = 0;               // m, linear
  std::optional<double> precision;     // run / misclosure; nothing where it closes to kSamePlace or is open
  double closing_azimuth = 0;          // from the end to the beginning, by the deed's north
  double area = 0;          // m2, curves as curves; closed by a straight line where it does not close
  bool comes_back = false;  // else it is open, and its misclosure says nothing
  bool worked_out = false;  // the last course is not in the deed: there is no misclosure to judge by
  Ring ring;                // the lot line, corrected; a small misclosure is left to the last course
  bool operator==(const Traverse&) const = default;
};

// Runs the courses from Deed::start. latitude = d cos(azimuth), departure = d sin(azimuth); misclosure is the
// length of their sums; the compass rule (Bowditch) corrects each by -sum x d / run: J. Mahun, Open Access
// Surveying Library, Traverse computations, chapters D and E. Area by coordinates, with the segment
// R^2 (delta - sin delta) / 2 of each curve: the same, COGO, chapter H. `north`: Site::north.
Traverse run_traverse(const std::vector<Course>& courses, const Deed& deed, double north);

// survey.* figures of it: perimeter, misclosure, precision, area.
void add_traverse_figures(Figures& all, const Traverse& traverse, const DeedReading& reading);

// How the misclosure is judged: common practice, no source, asks at least this of a lot.
inline constexpr double kGoodPrecision = 5000;

// A bearing as a deed writes it: N 45°30'15" E. `seconds`: decimals of the seconds.
std::string quadrant_bearing(double azimuth, int decimals = 0);

}  // namespace underlawn
