// SPDX-License-Identifier: GPL-3.0-or-later
// Where the cells of a raster lie, and which of them are looked at.
#pragma once

#include "exchange/read_drawing.h"

class GDALDataset;
class OGRSpatialReference;

namespace underlawn {

// The cells that are looked at: [left, right) by [top, bottom), every step-th from `first` on.
struct RasterWindow {
  long left = 0, top = 0, right = 0, bottom = 0;
  long step = 1;
  double cells() const { return static_cast<double>(right - left) * static_cast<double>(bottom - top); }
  long first() const { return step / 2; }
  long columns() const { return (right - left - first() + step - 1) / step; }
  long rows() const { return (bottom - top - first() + step - 1) / step; }
};

// The library's own six numbers: x = g0 + g1 column + g2 row, y = g3 + g4 column + g5 row.
struct RasterFrame {
  double g[6] = {0, 1, 0, 0, 0, -1};
  bool told = false;
  Point operator()(double column, double row) const {
    return {g[0] + g[1] * column + g[2] * row, g[3] + g[4] * column + g[5] * row};
  }
};

RasterFrame frame_of(GDALDataset& data);

// The part that was asked for, else the whole, in steps that give at most kMostHeights. `system`: its own,
// may be none. Refuses where the raster lies elsewhere and where there are more than kMostRasterCells.
Result<RasterWindow> window_asked(GDALDataset& data, const DrawingFile& file, const RasterFrame& frame,
                                  const OGRSpatialReference* system, RasterTaken& taken);

Trouble raster_too_large(const std::string& what, const std::string& value, const std::string& bound);

}  // namespace underlawn
