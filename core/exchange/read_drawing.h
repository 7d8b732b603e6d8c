// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a drawing file. What it is, its bytes say; its name only breaks ties.
#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "exchange/drawing.h"

namespace underlawn {

struct DrawingFile {
  std::string name;  // "lot.shp"
  std::string bytes;
  std::map<std::string, std::string> beside;  // of a shapefile, by ending: "shx", "dbf", "prj", "cpg"
};

// Refuses what cannot be read, and more than kMostDrawingBytes.
Result<DrawingFile> load_drawing_file(const std::filesystem::path& path);

// Refuses: none of the five kinds (an archive, a DWG and a picture are named as such), nothing in it that can
// be drawn, or more than can be held. Damage is remarked on; what could be read is there. Takes time and
// memory in proportion to the bytes, and to the shapes once blocks are put in place.
Result<Drawing> read_drawing(const DrawingFile& file);

Result<DrawingKind> kind_of(const DrawingFile& file);

}  // namespace underlawn
