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
#include "plane/region.h"

namespace underlawn::cli {

namespace {

Result<Drawing> drawing_in(const std::string& path) {
  bound_this_process();
  const auto file = load_drawing_file(path);
  if (!file) return refuse(file.error());
  return read_drawing(*file);
}

std::vector<ShapeGroup> groups_asked(const Drawing& drawing, const Arguments& arguments) {
  return groups_of(drawing, attributes_called(drawing, arguments.value("--by").value_or("")));
}

std::string size_of(const Drawing& drawing) {
  const Box box = extent(drawing.shapes);
  const auto plain = [](double length) {
    char text[32];
    std::snprintf(text, sizeof text, "%.10g", length);
    return std::string(text);
  };
  return say("{} by {}", plain(box.high.x - box.low.x), plain(box.high.y - box.low.y));
}

void tell_left_out(const std::vector<LeftOut>& all, std::ostream& out) {
  for (const LeftOut& l : all) out << say("left out: ") << l.count << " " << l.what << ": " << l.why << "\n";
}

void tell_kinds(const Drawing& d, std::ostream& out) {
  out << kind_name(d.kind) << say(", read by ") << d.reader << "\n";
  for (const auto& [what, count] : d.held) out << "holds: " << count << " " << what << "\n";
  out << "arrived: " << d.arrived << say(" of ") << d.expected << say(" shapes, blocks put in place\n");
  out << "unit: " << (d.unit > 0 ? d.unit_name + (d.place ? "" : say(", as the file says")) : say("not told"))
      << "\n";
  if (!d.system.empty()) out << say("coordinate system: ") << d.system << "\n";
  if (d.place) out << "place: " << d.place->latitude << ", " << d.place->longitude << " (WGS 84)\n";
  out << "extent: " << size_of(d) << "\n";
  if (d.tolerance > 0) out << say("arcs: chords within ") << d.tolerance << say(" of them\n");
}

void tell(const Drawing& d, const Arguments& arguments, std::ostream& out) {
  tell_kinds(d, out);
  std::vector<std::vector<std::string>> rows = {{"layer", "points", "lines", "areas", "texts", "becomes"}};
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
    return refuse({"unit_not_told", say("the drawing's unit"), say("not told by the file"), "given",
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
      return refuse({"map_not_understood", "--map", "“" + one + "”", "LAYER=WORD",
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
  out << say("The lot is ") << shown(box.high.x - box.low.x) << say(" by ") << shown(box.high.y - box.low.y)
      << say(" over all") << (d.place ? "" : say("; check a length, for drawings often state a wrong unit"))
      << ".\n";
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

}  // namespace

Exit run_drawing(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto drawing = drawing_in(path);
  if (arguments.has("--json")) {
    console.out << (drawing ? drawing_to_json(*drawing) : trouble_to_json(drawing.error())) << "\n";
    return drawing ? Exit::ok : Exit::not_read;
  }
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
  const auto drawing = drawing_in(path);
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
