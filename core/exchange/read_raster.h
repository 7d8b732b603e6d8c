// SPDX-License-Identifier: GPL-3.0-or-later
// Heights of the ground from a raster: a cell's middle becomes a point with a height.
#pragma once

#include <string_view>

#include "exchange/read_drawing.h"

namespace underlawn {

// One kind of raster file.
struct RasterForm {
  const char* driver;  // of the library
  const char* ending;  // the file is lent to it under this one
};

// Told by its bytes, else by its ending; nullptr for what is no raster.
const RasterForm* raster_form(const DrawingFile& file, std::string_view ending);

// Rows and columns are taken in equal steps, so that at most kMostHeights come of it: values are those of the
// file, none is made up between them. Cells without a height are counted. Refuses a picture, a raster of more
// than kMostRasterCells in the part asked for, and one that would have to be unpacked in pieces of more than
// kLargestPiece.
Result<Drawing> read_raster(const DrawingFile& file, const RasterForm& form, const std::string& stem);

inline constexpr double kMostRasterCells = 250e6;
inline constexpr long kMostRasterSide = 200'000;      // columns or rows
inline constexpr double kLargestPiece = 256'000'000;  // bytes

}  // namespace underlawn
