// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "survey/traverse.h"

namespace underlawn {

void add_traverse_figures(Figures& all, const Traverse& t, const DeedReading& reading) {
  if (t.legs.size() == t.ties) return;
  const std::string mahun = say("J. Mahun, Open Access Surveying Library, Traverse computations, chapter D");
  all.add({"survey.courses",
           say("Courses of the deed's boundary"),
           static_cast<double>(t.legs.size() - t.ties),
           Quantity::count,
           say("counted in the deed's text"),
           "",
           {}});
  all.add({"survey.perimeter",
           say("Length of the deed's boundary"),
           t.perimeter,
           Quantity::length,
           say("sum of the courses as written, curves by their arcs"),
           "",
           {"survey.courses"}});
  all.add({"survey.run",
           say("Length of the traverse"),
           t.run,
           Quantity::length,
           say("sum of the courses as written, curves by their chords"),
           "",
           {"survey.courses"}});
  all.add({"survey.latitudes",
           say("Sum of latitudes"),
           t.latitude,
           Quantity::length,
           say("Σ d cos(azimuth)"),
           mahun,
           {"survey.courses"}});
  all.add({"survey.departures",
           say("Sum of departures"),
           t.departure,
           Quantity::length,
           say("Σ d sin(azimuth)"),
           mahun,
           {"survey.courses"}});
  all.add({"survey.misclosure",
           say("Misclosure of the deed"),
           t.misclosure,
           Quantity::length,
           say("√((Σ latitude)² + (Σ departure)²)"),
           mahun,
           {"survey.latitudes", "survey.departures"}});
  if (t.precision)
    all.add({"survey.precision",
             say("Precision of the deed, one part in"),
             *t.precision,
             Quantity::count,
             say("length of the traverse ÷ misclosure"),
             mahun,
             {"survey.run", "survey.misclosure"}});
  if (t.comes_back)
    all.add(
        {"survey.area",
         say("Area by the deed"),
         t.area,
         Quantity::area,
         say("half the sum of cross products of the corners, and R² (Δ − sin Δ) / 2 for each curve, added or "
             "taken off"),
         say("J. Mahun, Open Access Surveying Library, COGO, chapter H"),
         {"survey.courses"}});
  if (reading.stated_area)
    all.add({"survey.stated_area",
             say("Area that the deed states"),
             *reading.stated_area,
             Quantity::area,
             say("typed"),
             "",
             {}});
}

}  // namespace underlawn
