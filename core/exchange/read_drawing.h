// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a drawing file. What it is, its bytes say; its name only breaks ties.
#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "exchange/drawing.h"
#include "exchange/map_plane.h"

namespace underlawn {

// A place and how far round it.
struct MapCircle {
  LatLon middle;
  double reach = 0;  // m
};

struct DrawingFile {
  std::string name;  // "lot.shp"
  std::string bytes;
  std::map<std::string, std::string>
      beside;  // of a shapefile, by ending: "shx", "dbf", "prj", "cpg"; of a raster "prj", "hdr", "tfw"
  std::optional<MapCircle> about =
      std::nullopt;  // of a raster that knows its place only this part is asked for
};

// Refuses what cannot be read, and more than kMostDrawingBytes.
Result<DrawingFile> load_drawing_file(const std::filesystem::path& path);

// Refuses: none of the six kinds (an archive, a DWG and a picture are named as such), nothing in it that can
// be drawn, or more than can be held. Damage is remarked on; what could be read is there. Takes time and
// memory in proportion to the bytes, and to the shapes once blocks are put in place.
Result<Drawing> read_drawing(const DrawingFile& file);

Result<DrawingKind> kind_of(const DrawingFile& file);

}  // namespace underlawn
