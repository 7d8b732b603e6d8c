// SPDX-License-Identifier: GPL-3.0-or-later
// Reads the calls of a deed as people write them: one to a line, numbered or not, or in prose with "thence";
// curves; comments behind #. Forgiving in form, exact in meaning: what could mean two things is refused, and
// every number that was read past is listed.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "survey/curve.h"

namespace underlawn {

// One call. Azimuths clockwise from the deed's north, rad; a straight course's way, or a curve's chord.
struct Course {
  int line = 0;       // of the text, from 1, where it begins
  std::string words;  // as typed, shortened
  double azimuth = 0;
  double length = 0;  // m, along the course: a curve's arc
  std::optional<Curve> curve;
  bool tie = false;           // leads from the point of commencement to the point of beginning
  bool to_beginning = false;  // "... to the point of beginning"
  bool worked_out = false;    // the deed gives neither bearing nor distance: straight to the beginning
  bool operator==(const Course&) const = default;
};

// A piece of text and what is to be said of it.
struct DeedNote {
  int line = 0;
  Trouble trouble;
  bool operator==(const DeedNote&) const = default;
};

struct DeedReading {
  std::vector<Course> courses;        // up to the first refusal
  std::vector<DeedNote> refusals;     // by line
  std::vector<DeedNote> passed;       // words with numbers that were read past, and what was assumed
  std::optional<double> stated_area;  // m2, "containing 0.50 acre"
  bool operator==(const DeedReading&) const = default;
};

// A bare number is a length in `units`' own unit, unless a line says "units: chains". Never fails as a whole;
// a text longer than kMostDeedText or of more than kMostCourses calls is a refusal.
DeedReading read_deed(std::string_view text, UnitSystem units);

inline constexpr std::size_t kMostCourses = 2000;
inline constexpr double kLongestCourse = 20'000;  // m

}  // namespace underlawn
