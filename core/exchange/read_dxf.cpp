// SPDX-License-Identifier: GPL-3.0-or-later
// A DXF file: counted by us, read by the first reader, and by the second where the first brings less.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/say.h"
#include "exchange/chords.h"
#include "exchange/library_session.h"
#include "exchange/read_parts.h"

namespace underlawn {

namespace {

constexpr double kFinestDegrees = 0.1, kCoarsestDegrees = 4;

void remark(Drawing& out, const char* code, std::string thing, std::string advice) {
  out.remarks.push_back({code, std::move(thing), "", "", std::move(advice)});
}

void remark_on_damage(const DxfTags& tags, Drawing& out) {
  if (tags.damages > 0)
    remark(out, "dxf_damaged",
           tags.binary ? say("the file is damaged from byte {} on", tags.first_damage)
                       : say("the file is damaged from line {} on", tags.first_damage),
           say("What could be read around it is here; compare it with the drawing."));
  if (!tags.ended)
    remark(out, "dxf_cut_short", say("the file ends before its end mark"),
           say("It was cut short on its way: what came behind is missing. Copy or save it again."));
}

void remark_on_contents(const DxfContents& contents, Drawing& out) {
  if (contents.lies_about_code_page)
    remark(out, "dxf_code_page", say("names are UTF-8, though the file says {}", contents.code_page),
           say("They were read as UTF-8."));
  if (contents.blocks_in_themselves)
    remark(out, "dxf_blocks", say("a block of the drawing holds itself"), say("It was not put into itself."));
}

// Where the drawing's unit is not told, as if it were the one that makes its size most like a lot's.
double likely_unit(const Drawing& out) {
  if (out.unit > 0) return out.unit;
  return 0.3048;
}

// The library chords all arcs by one angle: the one that the largest needs. Smaller ones are thinned after.
double library_degrees(double radius, double tolerance) {
  return std::clamp(chord_angle(radius, tolerance) * 180 / std::numbers::pi, kFinestDegrees,
                    kCoarsestDegrees);
}

void thin_arcs(Drawing& out) {
  for (Shape& s : out.shapes)
    if (s.kind != ShapeKind::point && s.heights.empty())
      s.points = with_fewer_chords(s.points, out.tolerance);
}

void add_hidden(const DxfContents& contents, Drawing& out) {
  for (DrawingLayer& layer : out.layers) layer.hidden = contents.hidden.contains(layer.name);
}

// What both readers start from.
Drawing begun(const DxfTags& tags, const DxfContents& contents) {
  Drawing out;
  out.kind = DrawingKind::dxf;
  out.held = contents.held;
  out.expected = static_cast<long>(contents.expected);
  out.left_out = contents.left_out;
  out.unit = dxf_unit(contents.units, out.unit_name);
  out.tolerance = kArcTolerance / likely_unit(out);
  remark_on_damage(tags, out);
  remark_on_contents(contents, out);
  return out;
}

Drawing by_first_reader(const std::string& plain, const DxfContents& contents, Drawing out) {
  LibrarySession session;
  session.set("DXF_ENCODING", "UTF-8");
  session.set("DXF_MERGE_BLOCK_GEOMETRIES", "FALSE");
  session.set("DXF_FEATURE_LIMIT_PER_BLOCK", "-1");
  const std::string path = session.lend("drawing.dxf", plain);
  read_by_library(session, path, "DXF", library_degrees(contents.largest_radius, out.tolerance), out);
  thin_arcs(out);
  return out;
}

Drawing by_second_reader(const std::string& plain, Drawing out) {
  read_by_dxflib(plain, out.tolerance, out);
  return out;
}

// What the library says of texts in unknown code pages is nobody's concern: they come out readable.
std::string quietly_plain(const DxfTags& tags, const DxfContents& contents) {
  const LibrarySession session;
  return plain_dxf(tags, contents, recoded);
}

Trouble too_many_shapes(double count) {
  char text[32];
  std::snprintf(text, sizeof text, count < 1e9 ? "%.0f" : "%.3g", count);
  return {"drawing_too_large", say("Number of shapes in the drawing, its blocks put in place"), text,
          say("at most {}", std::to_string(kMostShapes)),
          say("Save only the part of the drawing that holds the lot.")};
}

}  // namespace

Result<Drawing> read_dxf(std::string_view bytes) {
  const auto tags = dxf_tags(bytes);
  if (!tags) return refuse(tags.error());
  const DxfContents contents = dxf_contents(*tags);
  if (contents.expected > static_cast<double>(kMostShapes)) return refuse(too_many_shapes(contents.expected));
  const std::string plain = quietly_plain(*tags, contents);
  const Drawing start = begun(*tags, contents);
  // A block that holds itself would send a reader in circles.
  Drawing best = contents.blocks_in_themselves ? start : by_first_reader(plain, contents, start);
  if (best.arrived < best.expected || best.shapes.empty()) {
    Drawing second = by_second_reader(plain, start);
    if (second.arrived > best.arrived || (best.shapes.empty() && !second.shapes.empty()))
      best = std::move(second);
  }
  add_hidden(contents, best);
  bring_near(best);
  return best;
}

}  // namespace underlawn
