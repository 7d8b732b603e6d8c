// SPDX-License-Identifier: GPL-3.0-or-later
// Drawing files as other programs write them, made here byte by byte.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "exchange/read_drawing.h"

namespace underlawn::sample {

using DxfValue = std::pair<int, std::string>;
using DxfValues = std::vector<DxfValue>;

struct DxfParts {
  DxfValues header, tables, blocks, entities;
};

// A lot of 200 by 150 ft with one corner rounded by an arc of 20 ft, drawn as loose lines; a house with a
// bulged wall, two trees as blocks, a gas line, a text, a dimension, a spot height, and a layer called
// "Straße".
DxfParts surveyed_lot();
DxfValues in_order(const DxfParts& parts);      // HEADER, TABLES, BLOCKS, ENTITIES
DxfValues blocks_first(const DxfParts& parts);  // BLOCKS before anything else
std::string dxf_text(const DxfValues& values, const std::string& line_end = "\n");
std::string dxf_binary(const DxfValues& values);

DxfValues dxf_line(const std::string& layer, Point a, Point b);
DxfValues dxf_drawing(const DxfValues& entities, int units = 6);  // a whole file around them

// Two parcels, a building, a tree and a gas main near 43.07 N, 89.40 W, in degrees.
std::string parcels_geojson();
std::string parcels_kml();
// Two square parcels of 40 m in metres, side by side, as .shp with its .dbf; no .prj.
DrawingFile square_parcels_shp();

}  // namespace underlawn::sample
