// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/read_drawing.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <new>

#include "base/say.h"
#include "exchange/library_session.h"
#include "exchange/read_parts.h"
#include "exchange/read_raster.h"
#include "files/atomic_file.h"

namespace underlawn {

namespace {

constexpr double kChordDegrees = 1;  // of curves in map files: 0.04 mm of a metre's radius, 4 mm of 100 m

constexpr std::array kBesideShapes = {"shx", "dbf", "prj", "cpg"};
constexpr std::array kBesideRaster = {"prj", "hdr", "tfw", "wld"};

std::string ending_of(const std::string& name) {
  const auto dot = name.rfind('.');
  std::string ending = dot == std::string::npos ? "" : name.substr(dot + 1);
  for (char& c : ending) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return ending;
}

// Without its ending; only what no path or driver takes for something else.
std::string stem_of(const std::string& name) {
  std::string stem;
  for (char c : name.substr(0, std::min<std::size_t>(name.rfind('.'), 60)))
    if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '-' || c == ' ') stem += c;
  return stem.empty() ? "drawing" : stem;
}

std::string upper(std::string text) {
  for (char& c : text) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return text;
}

Trouble not_this(const std::string& thing, const std::string& advice) {
  return {"drawing_kind", thing, "", "",
          say("{} Underlawn reads DXF, GeoJSON, GeoPackage, Shapefile, KML, and GeoTIFF and other rasters of "
              "heights.",
              advice)};
}

bool starts(std::string_view bytes, std::string_view with) {
  return bytes.substr(0, with.size()) == with;
}

const char* driver_of(DrawingKind kind) {
  static constexpr const char* kDrivers[] = {"DXF", "GeoJSON", "GPKG", "ESRI Shapefile", "KML"};
  return kDrivers[static_cast<int>(kind)];
}

const char* ending_for(DrawingKind kind) {
  static constexpr const char* kEndings[] = {"dxf", "geojson", "gpkg", "shp", "kml"};
  return kEndings[static_cast<int>(kind)];
}

std::string joined(const std::vector<std::string>& messages) {
  std::string all;
  for (const std::string& m : messages) all += (all.empty() ? "" : "; ") + m;
  return all;
}

// The reader looks for <kml> near the beginning only; a long comment before it is taken out.
std::string kml_without_preamble(const std::string& bytes) {
  const auto root = bytes.find("<kml"), declared = bytes.find("?>");
  if (root == std::string::npos || root < 500) return bytes;
  const bool has = declared != std::string::npos && declared < root;
  return (has ? bytes.substr(0, declared + 2) : "") + bytes.substr(root);
}

Result<Drawing> read_map_file(const DrawingFile& file, DrawingKind kind) {
  const std::string whole = kind == DrawingKind::kml ? kml_without_preamble(file.bytes) : std::string();
  LibrarySession session;
  session.set("SHAPE_RESTORE_SHX", "YES");
  Drawing out;
  out.kind = kind;
  const std::string stem = stem_of(file.name);  // shapefiles and GeoJSON call their layer so
  for (const auto& [ending, bytes] : file.beside) session.lend(stem + "." + ending, bytes);
  const std::string path = session.lend(stem + "." + ending_for(kind), whole.empty() ? file.bytes : whole);
  if (!read_by_library(session, path, driver_of(kind), kChordDegrees, out))
    return refuse(nothing_in_it(kind, session));
  out.expected = std::max(out.expected, counted_in(file, kind));
  take_messages(session, out);
  return out;
}

void tell_what_is_missing(Drawing& out) {
  if (out.arrived < out.expected)
    out.left_out.push_back({say("shape"), out.expected - out.arrived,
                            say("has no place, is damaged, or lies where no lot does")});
  if (static_cast<long>(out.shapes.size()) >= kMostShapes)
    out.remarks.push_back({"drawing_too_large", say("Number of shapes in the drawing"),
                           say("over {}", std::to_string(kMostShapes)),
                           say("at most {}", std::to_string(kMostShapes)),
                           say("The rest was left out; save only the part that holds the lot.")});
}

Result<Drawing> read_kind(const DrawingFile& file, DrawingKind kind) {
  auto out = kind == DrawingKind::dxf ? read_dxf(file.bytes)
             : kind == DrawingKind::raster
                 ? read_raster(file, *raster_form(file, ending_of(file.name)), stem_of(file.name))
                 : read_map_file(file, kind);
  if (!out) return out;
  tell_what_is_missing(*out);
  if (out->shapes.empty())
    return refuse(
        {"drawing_empty", say("the drawing holds nothing that can be drawn"), "", "",
         say("Its {} shapes have no usable coordinates, or there are none.", std::to_string(out->expected))});
  return out;
}

}  // namespace

void take_messages(const LibrarySession& session, Drawing& out) {
  if (session.messages().empty()) return;
  out.remarks.push_back({"library_says", say("the reader of the file said: {}", joined(session.messages())),
                         "", "", say("Compare what arrived with the drawing.")});
}

Trouble nothing_in_it(DrawingKind kind, const LibrarySession& session) {
  const std::string advice =
      session.messages().empty()
          ? say("It may be damaged or cut short; save it again from the program that made it.")
          : say("It may be damaged or cut short; save it again from the program that made it. The reader "
                "said: {}.",
                joined(session.messages()));
  return {"drawing_not_read", say("the file cannot be read as {}", kind_name(kind)), "", "", advice};
}

Result<DrawingFile> load_drawing_file(const std::filesystem::path& path) {
  auto bytes = read_file(path, kMostDrawingBytes);
  if (!bytes) return refuse(bytes.error());
  DrawingFile file{path.filename().string(), std::move(*bytes), {}};
  const bool shapes = ending_of(file.name) == "shp";
  if (!shapes && raster_form(file, ending_of(file.name)) == nullptr) return file;
  for (const char* ending : shapes ? kBesideShapes : kBesideRaster)
    for (const std::string& written : {std::string(ending), upper(ending)}) {
      auto beside = path;
      beside.replace_extension(written);
      if (auto there = read_file(beside, kMostDrawingBytes)) file.beside[ending] = std::move(*there);
    }
  return file;
}

Result<DrawingKind> kind_of(const DrawingFile& file) {
  const std::string_view bytes = file.bytes;
  const std::string ending = ending_of(file.name);
  if (bytes.empty())
    return refuse(not_this(say("the file is empty"), say("Save it again from the program that made it.")));
  if (starts(bytes, "PK\x03\x04"))
    return refuse(not_this(say("the file is an archive (KMZ or ZIP)"),
                           say("Unpack it first and open the file inside.")));
  if (starts(bytes, "AC10") && ending != "dxf")
    return refuse(
        not_this(say("the file is a DWG drawing"), say("Save it as DXF from the program that drew it.")));
  if (starts(bytes, "\x89PNG") || starts(bytes, "\xff\xd8\xff") || starts(bytes, "%PDF"))
    return refuse(
        not_this(say("the file is a picture"), say("Put it under the drawing as a picture instead.")));
  if (starts(bytes, std::string_view("SQLite format 3\0", 16))) return DrawingKind::geopackage;
  if (starts(bytes, std::string_view("\0\0\x27\x0a", 4))) return DrawingKind::shapefile;
  if (raster_form(file, ending) != nullptr) return DrawingKind::raster;
  const auto from = bytes.find_first_not_of(" \t\r\n\xef\xbb\xbf");
  const char first = from == std::string_view::npos ? ' ' : bytes[from];
  if (first == '{' || first == '[') return DrawingKind::geojson;
  if (first == '<') return DrawingKind::kml;
  if (ending == "shp") return DrawingKind::shapefile;
  if (ending == "gpkg") return DrawingKind::geopackage;
  if (ending == "json" || ending == "geojson") return DrawingKind::geojson;
  if (ending == "kml") return DrawingKind::kml;
  return DrawingKind::dxf;
}

Result<Drawing> read_drawing(const DrawingFile& file) {
  const auto kind = kind_of(file);
  if (!kind) return refuse(kind.error());
  try {
    return read_kind(file, *kind);
  } catch (const std::bad_alloc&) {
    return refuse({"drawing_too_large", say("the drawing"), "", say("small enough for this machine's memory"),
                   say("Save only the part that holds the lot.")});
  }
}

}  // namespace underlawn
