// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/raster_window.h"

#include <gdal_priv.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>

#include "base/say.h"
#include "exchange/plane_system.h"
#include "exchange/read_raster.h"
#include "site/site.h"

namespace underlawn {

namespace {

// Columns and rows, with parts of them, of the middle that is asked for and of points round it.
std::vector<Point> cells_round(const MapCircle& about, const OGRSpatialReference& system,
                               const RasterFrame& frame) {
  const OGRSpatialReference plane = plane_system(about.middle);
  const std::unique_ptr<OGRCoordinateTransformation> change(
      OGRCreateCoordinateTransformation(&plane, &system));
  double back[6];
  std::vector<Point> cells;
  if (!change || GDALInvGeoTransform(const_cast<double*>(frame.g), back) == 0) return cells;
  constexpr int kRound = 16;
  const double reach = about.reach / std::cos(std::numbers::pi / kRound);  // the circle lies within
  for (int i = 0; i < kRound; ++i) {
    Point p = reach * direction(2 * std::numbers::pi * i / kRound);
    if (!change->Transform(1, &p.x, &p.y)) return {};
    cells.push_back({back[0] + back[1] * p.x + back[2] * p.y, back[3] + back[4] * p.x + back[5] * p.y});
  }
  return cells;
}

RasterWindow whole(GDALDataset& data) {
  return {0, 0, data.GetRasterXSize(), data.GetRasterYSize()};
}

// Empty where the raster lies elsewhere.
RasterWindow part_of(GDALDataset& data, const std::vector<Point>& cells) {
  RasterWindow w = whole(data);
  const auto [left, right] = std::ranges::minmax(cells, {}, &Point::x);
  const auto [top, bottom] = std::ranges::minmax(cells, {}, &Point::y);
  const auto within = [](double v, long most) {
    return std::isfinite(v) ? static_cast<long>(std::clamp(v, 0.0, static_cast<double>(most))) : 0;
  };
  return {within(std::floor(left.x), w.right), within(std::floor(top.y), w.bottom),
          within(std::ceil(right.x), w.right), within(std::ceil(bottom.y), w.bottom)};
}

}  // namespace

Trouble raster_too_large(const std::string& what, const std::string& value, const std::string& bound) {
  return {"raster_too_large", what, value, bound,
          say("Cut out the part around the lot in the program it came from, and save that.")};
}

RasterFrame frame_of(GDALDataset& data) {
  RasterFrame frame;
  double g[6];
  if (data.GetGeoTransform(g) != CE_None) return frame;
  if (!std::ranges::all_of(g, [](double v) { return std::isfinite(v); }) || g[1] * g[5] == g[2] * g[4])
    return frame;
  std::ranges::copy(g, frame.g);
  frame.told = true;
  return frame;
}

Result<RasterWindow> window_asked(GDALDataset& data, const DrawingFile& file, const RasterFrame& frame,
                                  const OGRSpatialReference* system, RasterTaken& taken) {
  RasterWindow w = whole(data);
  if (file.about && frame.told && system != nullptr)
    if (const auto cells = cells_round(*file.about, *system, frame); !cells.empty()) {
      w = part_of(data, cells);
      taken.reach = file.about->reach;
    }
  if (!(w.cells() > 0))
    return refuse({"raster_elsewhere", say("the raster does not cover the lot of this plan"), "", "",
                   say("Fetch the part of the terrain that the lot lies in.")});
  if (w.cells() > kMostRasterCells)
    return refuse(raster_too_large(say("Cells in the raster"), std::to_string(std::lround(w.cells())),
                                   say("at most {}", std::to_string(std::lround(kMostRasterCells)))));
  while (static_cast<double>(w.columns()) * static_cast<double>(w.rows()) > static_cast<double>(kMostHeights))
    ++w.step;
  return w;
}

}  // namespace underlawn
