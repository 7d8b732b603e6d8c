// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/traverse.h"

namespace underlawn {

void add_traverse_figures(Figures& all, const Traverse& t, const DeedReading& reading) {
  if (t.legs.size() == t.ties) return;
  const char* mahun = "J. Mahun, Open Access Surveying Library, Traverse computations, chapter D";
  all.add({"survey.courses",
           "Courses of the deed's boundary",
           static_cast<double>(t.legs.size() - t.ties),
           Quantity::count,
           "counted in the deed's text",
           "",
           {}});
  all.add({"survey.perimeter",
           "Length of the deed's boundary",
           t.perimeter,
           Quantity::length,
           "sum of the courses as written, curves by their arcs",
           "",
           {"survey.courses"}});
  all.add({"survey.run",
           "Length of the traverse",
           t.run,
           Quantity::length,
           "sum of the courses as written, curves by their chords",
           "",
           {"survey.courses"}});
  all.add({"survey.latitudes",
           "Sum of latitudes",
           t.latitude,
           Quantity::length,
           "Σ d cos(azimuth)",
           mahun,
           {"survey.courses"}});
  all.add({"survey.departures",
           "Sum of departures",
           t.departure,
           Quantity::length,
           "Σ d sin(azimuth)",
           mahun,
           {"survey.courses"}});
  all.add({"survey.misclosure",
           "Misclosure of the deed",
           t.misclosure,
           Quantity::length,
           "√((Σ latitude)² + (Σ departure)²)",
           mahun,
           {"survey.latitudes", "survey.departures"}});
  if (t.precision)
    all.add({"survey.precision",
             "Precision of the deed, one part in",
             *t.precision,
             Quantity::count,
             "length of the traverse ÷ misclosure",
             mahun,
             {"survey.run", "survey.misclosure"}});
  if (t.comes_back)
    all.add({"survey.area",
             "Area by the deed",
             t.area,
             Quantity::area,
             "half the sum of cross products of the corners, and R² (Δ − sin Δ) / 2 for each curve, added or "
             "taken off",
             "J. Mahun, Open Access Surveying Library, COGO, chapter H",
             {"survey.courses"}});
  if (reading.stated_area)
    all.add({"survey.stated_area",
             "Area that the deed states",
             *reading.stated_area,
             Quantity::area,
             "typed",
             "",
             {}});
}

}  // namespace underlawn
