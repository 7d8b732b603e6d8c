// SPDX-License-Identifier: GPL-3.0-or-later
// The calls of a deed: the traverse they run, how it closes, what it encloses.

#include <cmath>
#include <numbers>

#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "files/atomic_file.h"
#include "files/json_points.h"
#include "survey/traverse.h"

namespace underlawn::cli {

namespace {

using Row = std::vector<std::string>;

// The decimals of deeds: hundredths of a foot, millimetres.
std::string surveyed(double metres, UnitSystem units) {
  char text[64];
  if (units == UnitSystem::us)
    std::snprintf(text, sizeof text, "%.2f ft", metres / 0.3048);
  else
    std::snprintf(text, sizeof text, "%.3f m", metres);
  return text;
}

std::string curve_words(const Curve& c, UnitSystem units) {
  const std::string radius = surveyed(c.radius, units), chord = surveyed(c.chord, units);
  return c.left ? say("curve left, radius {}, chord {}", radius, chord)
                : say("curve right, radius {}, chord {}", radius, chord);
}

Row row_of(const Leg& leg, std::size_t number, UnitSystem units) {
  const Course& c = leg.course;
  std::string kind = c.tie ? say_as("a course", "tie") : c.worked_out ? say_as("a course", "worked out") : "";
  if (c.curve)
    kind = kind.empty() ? curve_words(*c.curve, units) : say("{}, {}", kind, curve_words(*c.curve, units));
  return {std::to_string(number),
          std::to_string(c.line),
          quadrant_bearing(c.azimuth),
          surveyed(c.length, units),
          surveyed(leg.latitude + leg.latitude_correction, units),
          surveyed(leg.departure + leg.departure_correction, units),
          kind};
}

std::string closure_words(const Traverse& t, UnitSystem units) {
  const std::string misclosure = surveyed(t.misclosure, units);
  if (t.worked_out) return say("The last course is worked out, so nothing says how the deed closes");
  if (!t.comes_back) return say("The courses do not come back: they end {} from their beginning", misclosure);
  return t.precision ? say("Misclosure {}, one part in {}", misclosure, std::llround(*t.precision))
                     : say("Misclosure {}", misclosure);
}

void tell(const DeedReading& reading, const Traverse& t, UnitSystem units, std::ostream& out) {
  std::vector<Row> rows = {{say("course"), say_as("of a text", "line"), say("bearing"), say("length"),
                            say_as("of a traverse", "latitude"), say_as("of a traverse", "departure"), ""}};
  for (std::size_t i = 0; i < t.legs.size(); ++i) rows.push_back(row_of(t.legs[i], i + 1, units));
  tell_table(rows, out);
  const auto area = [&](double m2) { return print_quantity(Quantity::area, m2, units, Fineness::fine); };
  out << "\n"
      << say("Boundary {} long", surveyed(t.perimeter, units)) << "\n"
      << closure_words(t, units) << "\n";
  if (t.comes_back) out << say("Area {}", area(t.area)) << "\n";
  if (reading.stated_area) out << say("The deed states {}", area(*reading.stated_area)) << "\n";
}

Json leg_json(const Leg& leg) {
  const Course& c = leg.course;
  Json json = {{"line", c.line},
               {"words", c.words},
               {"azimuth_rad", c.azimuth},
               {"bearing", quadrant_bearing(c.azimuth, 2)},
               {"length_m", c.length},
               {"latitude_m", leg.latitude},
               {"departure_m", leg.departure},
               {"latitude_correction_m", leg.latitude_correction},
               {"departure_correction_m", leg.departure_correction},
               {"tie", c.tie},
               {"to_beginning", c.to_beginning},
               {"worked_out", c.worked_out},
               {"points_m", to_json(leg.line)}};
  if (c.curve)
    json["curve"] = {{"radius_m", c.curve->radius},
                     {"delta_rad", c.curve->delta},
                     {"arc_m", c.curve->arc},
                     {"chord_m", c.curve->chord},
                     {"left", c.curve->left}};
  return json;
}

Json notes_json(const std::vector<DeedNote>& notes) {
  Json list = Json::array();
  for (const DeedNote& n : notes)
    list.push_back({{"line", n.line}, {"code", n.trouble.code}, {"message", n.trouble.message()}});
  return list;
}

Json deed_json(const DeedReading& reading, const Traverse& t) {
  Json json = {{"courses", Json::array()},
               {"perimeter_m", t.perimeter},
               {"misclosure_m", t.misclosure},
               {"latitude_m", t.latitude},
               {"departure_m", t.departure},
               {"area_m2", t.area},
               {"comes_back", t.comes_back},
               {"worked_out", t.worked_out},
               {"ring_m", to_json(t.ring)},
               {"refusals", notes_json(reading.refusals)},
               {"passed", notes_json(reading.passed)}};
  for (const Leg& leg : t.legs) json["courses"].push_back(leg_json(leg));
  if (t.precision) json["precision"] = *t.precision;
  if (reading.stated_area) json["stated_area_m2"] = *reading.stated_area;
  return json;
}

std::optional<UnitSystem> units_in(const Arguments& arguments, const Console& console) {
  const std::string text = arguments.value("--units").value_or("us");
  if (text == "us") return UnitSystem::us;
  if (text == "metric") return UnitSystem::metric;
  console.complain("--units", say("“{}” is neither us nor metric.", text));
  return std::nullopt;
}

}  // namespace

Exit run_deed(const Arguments& arguments, const Console& console) {
  const auto units = units_in(arguments, console);
  if (!units) return Exit::usage;
  const std::string& path = arguments.places[0];
  const auto text = read_file(path, kMostDeedText);
  if (!text) {
    console.complain(path, text.error().message());
    return Exit::not_read;
  }
  Deed deed;
  if (arguments.has("--adjust")) deed.closure = ClosureChoice::compass_rule;
  const DeedReading reading = read_deed(*text, *units);
  const Traverse traverse = run_traverse(reading.courses, deed, std::numbers::pi / 2);
  if (arguments.has("--json"))
    console.out << in_english([&] { return json_to_text(deed_json(read_deed(*text, *units), traverse)); });
  else
    tell(reading, traverse, *units, console.out);
  for (const DeedNote& n : reading.passed)
    if (!arguments.has("--json")) console.complain(path, n.trouble.message());
  for (const DeedNote& n : reading.refusals) console.complain(path, n.trouble.message());
  return reading.refusals.empty() && !reading.courses.empty() ? Exit::ok : Exit::errors_remain;
}

}  // namespace underlawn::cli
