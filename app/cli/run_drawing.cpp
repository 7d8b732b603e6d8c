// SPDX-License-Identifier: GPL-3.0-or-later
// What a drawing file holds, and a plan out of it.
#include <charconv>
#include <cmath>
#include <numbers>

#include "base/say.h"
#include "cli/own_bounds.h"
#include "cli/plan_in.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "exchange/bring_in.h"
#include "exchange/drawing_json.h"
#include "exchange/read_drawing.h"
#include "files/plan_file.h"
#include "language/language.h"
#include "plane/region.h"

namespace underlawn::cli {

namespace {

Result<Drawing> drawing_in(const std::string& path, const std::optional<MapCircle>& about) {
  bound_this_process();
  auto file = load_drawing_file(path);
  if (!file) return refuse(file.error());
  file->about = about;
  return read_drawing(*file);
}

// "43.07,-89.4,60"
Result<std::optional<MapCircle>> about_asked(const Arguments& arguments) {
  const auto text = arguments.value("--about");
  if (!text) return std::optional<MapCircle>();
  double v[3] = {0, 0, 0};
  const char* at = text->data();
  const char* const end = at + text->size();
  bool good = true;
  for (int i = 0; i < 3 && good; ++i) {
    const auto [behind, error] = std::from_chars(at, end, v[i]);
    good = error == std::errc() && (i == 2 ? behind == end : behind != end && *behind == ',');
    at = behind + (i < 2 ? 1 : 0);
  }
  if (good && std::abs(v[0]) <= 90 && std::abs(v[1]) <= 360 && v[2] > 0 && v[2] <= kLargestPlan)
    return std::optional(MapCircle{{v[0], v[1]}, v[2]});
  return refuse(
      {"about_not_understood", "--about", "“" + *text + "”", "LAT,LON,METRES", say("As 43.07,-89.4,60.")});
}

constexpr double kRoundLot = 60;  // m: twice what is kept round a lot, so that its edge has neighbours

std::vector<ShapeGroup> groups_asked(const Drawing& drawing, const Arguments& arguments) {
  return groups_of(drawing, attributes_called(drawing, arguments.value("--by").value_or("")));
}

std::string printed(double value, int digits = 6) {
  char text[48];
  std::snprintf(text, sizeof text, "%.*g", digits, value);
  return text;
}

std::string extent_words(const Drawing& drawing) {
  const Box box = extent(drawing.shapes);
  return say("extent: {} by {}", printed(box.high.x - box.low.x, 10), printed(box.high.y - box.low.y, 10));
}

void tell_left_out(const std::vector<LeftOut>& all, std::ostream& out) {
  for (const LeftOut& l : all) out << say("left out: {} {}: {}", l.count, l.what, l.why) << "\n";
}

std::string unit_words(const Drawing& d) {
  if (!(d.unit > 0)) return say("unit: not told");
  const std::string unit = translated(d.unit_name);
  return d.place ? say("unit: {}", unit) : say("unit: {}, as the file says", unit);
}

std::string short_number(double v) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4g", v);
  return text;
}

void tell_raster(const Drawing& d, const RasterTaken& r, std::ostream& out) {
  out << say("raster: {} by {} cells", std::to_string(r.columns), std::to_string(r.rows)) << "\n";
  if (r.reach > 0) out << say("looked at: {} m round the place asked for", short_number(r.reach)) << "\n";
  const std::string apart = short_number(r.spacing) + (d.unit == 1 ? " m" : "");
  out << (r.step == 1 ? say("taken: every cell, a height every {}", apart)
                      : say("taken: one cell in {} along rows and columns, a height every {}",
                            std::to_string(r.step), apart))
      << "\n";
  out << (r.height_unit > 0 ? say("heights: in {}, as the file says", r.height_unit_name)
                            : say("heights: in a unit that the file does not say"))
      << "\n";
}

void tell_kinds(const Drawing& d, std::ostream& out) {
  out << say("{}, read by {}", kind_name(d.kind), d.reader) << "\n";
  for (const auto& [what, count] : d.held) out << say("holds: {} {}", count, what) << "\n";
  out << say("arrived: {} of {} shapes, blocks put in place", d.arrived, d.expected) << "\n";
  out << unit_words(d) << "\n";
  if (!d.system.empty()) out << say("coordinate system: {}", translated(d.system)) << "\n";
  if (d.place)
    out << say("place: {}, {} (WGS 84)", printed(d.place->latitude), printed(d.place->longitude)) << "\n";
  out << extent_words(d) << "\n";
  if (d.raster) tell_raster(d, *d.raster, out);
  if (d.tolerance > 0) out << say("arcs: chords within {} of them", printed(d.tolerance)) << "\n";
}

void tell(const Drawing& d, const Arguments& arguments, std::ostream& out) {
  tell_kinds(d, out);
  std::vector<std::vector<std::string>> rows = {
      {say("layer"), say("points"), say("lines"), say("areas"), say("texts"), say("becomes")}};
  for (const ShapeGroup& g : groups_asked(d, arguments))
    rows.push_back({group_label(d, g), std::to_string(g.points), std::to_string(g.lines),
                    std::to_string(g.areas), std::to_string(g.texts), std::string(becomes_word(g.guess))});
  out << "\n";
  tell_table(rows, out);
  tell_left_out(d.left_out, out);
}

// ---- import ----

Result<double> unit_asked(const Arguments& arguments, const Drawing& drawing) {
  static const std::map<std::string, double> kUnits = {
      {"m", 1},       {"mm", 0.001},           {"cm", 0.01}, {"ft", 0.3048}, {"in", 0.0254},
      {"yd", 0.9144}, {"us-ft", 1200.0 / 3937}};
  const auto word = arguments.value("--unit");
  if (!word && drawing.unit > 0) return drawing.unit;
  if (!word)
    return refuse({"unit_not_told", say("the drawing's unit"), say("not told by the file"), say("given"),
                   say("Say it: --unit ft, or m, mm, cm, in, yd, us-ft.")});
  const auto at = kUnits.find(*word);
  if (at == kUnits.end())
    return refuse({"unit_unknown", "--unit", "“" + *word + "”", say("m, mm, cm, ft, in, yd or us-ft"), ""});
  return at->second;
}

// "LAYER=lot;OTHER LAYER=house": what differs from the guess.
Result<std::vector<Becomes>> decided(const Arguments& arguments, const Drawing& d,
                                     const std::vector<ShapeGroup>& groups) {
  std::vector<Becomes> all;
  for (const ShapeGroup& g : groups) all.push_back(g.guess);
  std::string rest = arguments.value("--map").value_or("");
  while (!rest.empty()) {
    const std::string one = rest.substr(0, rest.find(';'));
    rest = one.size() < rest.size() ? rest.substr(one.size() + 1) : "";
    const auto cut = one.rfind('=');
    const auto becomes = cut == std::string::npos ? std::nullopt : becomes_of(one.substr(cut + 1));
    if (!becomes)
      return refuse({"map_not_understood", "--map", "“" + one + "”", say("LAYER=WORD"),
                     say("Words: lot, house, drive, septic_tank, drain_field, reserve_field, well, tree, "
                         "electric, gas, "
                         "communication, water, sewer, reclaimed, easement, no_dig, heights, out.")});
    bool found = false;
    for (std::size_t i = 0; i < groups.size(); ++i)
      if (group_label(d, groups[i]) == one.substr(0, cut)) {
        all[i] = *becomes;
        found = true;
      }
    if (!found)
      return refuse({"map_no_layer", "--map", "“" + one.substr(0, cut) + "”", say("a layer of the drawing"),
                     say("“underlawn drawing FILE” lists them.")});
  }
  return all;
}

void tell_brought(const Brought& b, const Plan& plan, const Drawing& d, std::ostream& out) {
  for (const auto& [becomes, count] : b.counts) out << becomes_word(becomes) << ": " << count << "\n";
  tell_left_out(b.left_out, out);
  if (plan.site.lot.size() < 3) return;
  const Box box = bounds(lot_ring(plan.site));
  const auto shown = [&](double v) { return print_quantity(Quantity::length, v, plan.units); };
  const std::string wide = shown(box.high.x - box.low.x), high = shown(box.high.y - box.low.y);
  out << (d.place
              ? say("The lot is {} by {} over all.", wide, high)
              : say("The lot is {} by {} over all; check a length, for drawings often state a wrong unit.",
                    wide, high))
      << "\n";
}

std::optional<Plan> plan_to_fill(const Arguments& arguments, const Console& console) {
  const auto into = arguments.value("--into");
  return into ? plan_in(*into, console) : std::optional(Plan());
}

Result<Brought> brought(const Arguments& arguments, const Plan& plan, const Drawing& d) {
  const auto unit = unit_asked(arguments, d);
  if (!unit) return refuse(unit.error());
  const auto groups = groups_asked(d, arguments);
  const auto becomes = decided(arguments, d, groups);
  if (!becomes) return refuse(becomes.error());
  std::vector<int> wanted;
  for (std::size_t i = 0; i < groups.size(); ++i)
    if ((*becomes)[i] != Becomes::left_out)
      wanted.insert(wanted.end(), groups[i].shapes.begin(), groups[i].shapes.end());
  Bringing how;
  how.placement = usual_placement(d, plan, *unit, wanted);
  if (arguments.has("--heights-in-feet")) how.height_unit = 0.3048;
  Brought b = bring_in(plan, d, groups, *becomes, how);
  if (b.anything()) return b;
  return refuse({"nothing_brought_in", say("nothing of the drawing was brought in"), "", "",
                 say("Say what its layers are: --map \"LAYER=lot;OTHER=house\". “underlawn drawing FILE” "
                     "lists them.")});
}

// For programs, and for the window, which reads drawings in a process of its own and asks for its own
// language.
Exit write_drawing(const std::string& path, const Arguments& arguments, const std::optional<MapCircle>& about,
                   const Console& console) {
  const std::string code = arguments.value("--language").value_or("en");
  if (find_language(code) == nullptr) {
    console.complain("--language", say("The language must be en or es."));
    return Exit::usage;
  }
  const SpeakHere here(catalogue_of(code));
  const auto drawing = drawing_in(path, about);
  console.out << (drawing ? drawing_to_json(*drawing) : trouble_to_json(drawing.error())) << "\n";
  return drawing ? Exit::ok : Exit::not_read;
}

}  // namespace

Exit run_drawing(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto about = about_asked(arguments);
  if (about && arguments.has("--json")) return write_drawing(path, arguments, *about, console);
  const auto drawing = about ? drawing_in(path, *about) : Result<Drawing>(refuse(about.error()));
  if (!drawing) {
    console.complain(path, drawing.error().message());
    return Exit::not_read;
  }
  tell(*drawing, arguments, console.out);
  console.complain(path, drawing->remarks);
  return Exit::ok;
}

Exit run_import(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto out = arguments.value("--out");
  if (!out) {
    console.complain("", say("import needs --out PLAN, the plan file to write."));
    return Exit::usage;
  }
  const auto plan = plan_to_fill(arguments, console);
  if (!plan) return Exit::not_read;
  const auto drawing = drawing_in(path, circle_round_lot(*plan, kRoundLot));
  if (!drawing) {
    console.complain(path, drawing.error().message());
    return Exit::not_read;
  }
  console.complain(path, drawing->remarks);
  const auto done = brought(arguments, *plan, *drawing);
  if (!done) {
    console.complain(path, done.error().message());
    return Exit::errors_remain;
  }
  tell_left_out(drawing->left_out, console.out);
  tell_brought(*done, done->plan, *drawing, console.out);
  const auto saved = save_plan(done->plan, *out);
  if (!saved) console.complain(*out, saved.error().message());
  if (saved) console.out << *out << "\n";
  return saved ? Exit::ok : Exit::not_written;
}

}  // namespace underlawn::cli
