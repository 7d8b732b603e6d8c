// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/read_raster.h"

#include <gdal_priv.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "base/say.h"
#include "exchange/library_session.h"
#include "exchange/place_on_earth.h"
#include "exchange/raster_window.h"
#include "exchange/read_parts.h"
#include "site/site.h"

namespace underlawn {

namespace {

struct CloseDataset {
  void operator()(GDALDataset* d) const { GDALClose(d); }
};
using Dataset = std::unique_ptr<GDALDataset, CloseDataset>;

// ---- what it is ----

bool is_picture(GDALDataset& data) {
  GDALRasterBand& band = *data.GetRasterBand(1);
  const GDALColorInterp colour = band.GetColorInterpretation();
  return colour == GCI_PaletteIndex || colour == GCI_RedBand || band.GetColorTable() != nullptr ||
         (data.GetRasterCount() >= 3 && band.GetRasterDataType() == GDT_Byte);
}

Result<void> usable(GDALDataset& data) {
  if (data.GetRasterCount() < 1)
    return refuse({"raster_empty", say("the raster holds no heights"), "", "",
                   say("Export its heights as a GeoTIFF of one band.")});
  if (is_picture(data))
    return refuse({"drawing_kind", say("the file is {}", say("a picture, no raster of heights")), "", "",
                   say("Save it as PNG or JPEG and put it under the drawing as a picture instead.")});
  GDALRasterBand& band = *data.GetRasterBand(1);
  if (GDALDataTypeIsComplex(band.GetRasterDataType()) != 0)
    return refuse({"raster_complex", say("the raster holds complex numbers, no heights"), "", "",
                   say("Export its heights as a GeoTIFF of one band.")});
  const long side = std::max(data.GetRasterXSize(), data.GetRasterYSize());
  if (side > kMostRasterSide)
    return refuse(raster_too_large(say("Cells along a side of the raster"), std::to_string(side),
                                   say("at most {}", std::to_string(kMostRasterSide))));
  int across = 0, down = 0;
  band.GetBlockSize(&across, &down);
  if (1.0 * across * down * GDALGetDataTypeSizeBytes(band.GetRasterDataType()) > kLargestPiece)
    return refuse(raster_too_large(say("The piece in which the raster has to be unpacked"),
                                   say("{} by {} cells", std::to_string(across), std::to_string(down)),
                                   say("at most 256 MB")));
  return {};
}

// ---- its heights ----

// Numbers that programs write where there is no height without saying so (common practice, no source).
bool stands_for_nothing(double v) {
  constexpr double kBeyond = kHighest / 0.3048;  // feet
  return !std::isfinite(v) || std::abs(v) > kBeyond || v == -9999 || v == -32768 || v == -32767;
}

// Rows that cannot be read, behind which the rest is given up. Text is given up at once: the library begins
// anew for each row before the one that failed, and again for each of these.
constexpr int kMostFailures = 20, kMostFailuresOfText = 1;

bool is_text(GDALDataset& data) {
  const std::string_view driver = data.GetDriverName();
  return driver == "AAIGrid" || driver == "GRASSASCIIGrid";
}

class HeightReader {
 public:
  HeightReader(GDALRasterBand& band, const RasterFrame& frame, const RasterWindow& window)
      : band_(band), frame_(frame), window_(window) {
    int has = 0;
    const double scale = band.GetScale(&has), offset = band.GetOffset(&has);
    if (std::isfinite(scale) && scale != 0) scale_ = scale;
    if (std::isfinite(offset)) offset_ = offset;
    masked_ = band.GetMaskFlags() != GMF_ALL_VALID;
    // Text is found row by row: the library, asked for a later one, would call itself for each before it.
    in_order_ = band.GetDataset() != nullptr && is_text(*band.GetDataset());
    from_ = in_order_ ? 0 : window.top;
    row_.resize(static_cast<std::size_t>(window.right - window.left));
    mask_.resize(row_.size(), 255);
  }

  void read(Drawing& out) {
    const int most = in_order_ ? kMostFailuresOfText : kMostFailures;
    int failures = 0;
    for (long row = from_; row < window_.bottom; ++row) {
      const long on = row - window_.top - window_.first();
      const bool wanted = on >= 0 && on % window_.step == 0;
      if (!wanted && !in_order_) continue;
      const bool good = failures < most && read_row(row);
      failures += good ? 0 : 1;
      if (wanted && good) take_row(row, out);
      if (wanted && !good) broken += window_.columns();
    }
  }

  long without = 0, broken = 0;  // cells

 private:
  bool read_row(long row) {
    const int left = static_cast<int>(window_.left), at = static_cast<int>(row);
    const int wide = static_cast<int>(row_.size());
    if (band_.RasterIO(GF_Read, left, at, wide, 1, row_.data(), wide, 1, GDT_Float64, 0, 0, nullptr) !=
        CE_None)
      return false;
    return !masked_ || band_.GetMaskBand()->RasterIO(GF_Read, left, at, wide, 1, mask_.data(), wide, 1,
                                                     GDT_Byte, 0, 0, nullptr) == CE_None;
  }

  void take_row(long row, Drawing& out) {
    for (long c = window_.first(); c < static_cast<long>(row_.size()); c += window_.step) {
      const auto i = static_cast<std::size_t>(c);
      const double height = offset_ + scale_ * row_[i];
      if (mask_[i] == 0 || stands_for_nothing(row_[i]) || stands_for_nothing(height)) {
        ++without;
        continue;
      }
      Shape s;
      s.kind = ShapeKind::point;
      s.points = {frame_(static_cast<double>(window_.left + c) + 0.5, static_cast<double>(row) + 0.5)};
      s.heights = {height};
      out.shapes.push_back(std::move(s));
    }
  }

  GDALRasterBand& band_;
  const RasterFrame& frame_;
  const RasterWindow& window_;
  double scale_ = 1, offset_ = 0;
  bool masked_ = false, in_order_ = false;
  long from_ = 0;  // row
  std::vector<double> row_;
  std::vector<GByte> mask_;
};

struct HeightUnit {
  const char* name;
  double metres;
};
constexpr HeightUnit kHeightUnits[] = {{"m", 1},
                                       {"metre", 1},
                                       {"meter", 1},
                                       {"metres", 1},
                                       {"meters", 1},
                                       {"ft", 0.3048},
                                       {"foot", 0.3048},
                                       {"feet", 0.3048},
                                       {"us survey foot", 1200.0 / 3937},
                                       {"ftus", 1200.0 / 3937},
                                       {"us-ft", 1200.0 / 3937},
                                       {"cm", 0.01}};

void tell_height_unit(GDALRasterBand& band, RasterTaken& taken) {
  taken.height_unit_name = short_text(band.GetUnitType());
  std::string name = taken.height_unit_name;
  for (char& c : name) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const HeightUnit& unit : kHeightUnits)
    if (name == unit.name) taken.height_unit = unit.metres;
}

// ---- together ----

void tell_left_out(const RasterWindow& w, const HeightReader& reader, Drawing& out) {
  const long looked_at = w.columns() * w.rows();
  const auto leave = [&](long count, const std::string& why) {
    if (count > 0) out.left_out.push_back({say("cells of the raster"), count, why});
  };
  leave(reader.without, say("have no height (no data there)"));
  leave(reader.broken, say("cannot be read: the file is damaged or cut short"));
  leave(std::lround(w.cells()) - looked_at,
        say("lie between those taken: a plan holds {} heights", std::to_string(kMostHeights)));
  if (reader.broken > 0)
    out.remarks.push_back(
        {"raster_damaged", say("the file is damaged or cut short"), "", "",
         say("{} of {} cells could not be read.", std::to_string(reader.broken), std::to_string(looked_at))});
}

// The wider of the steps along a row and along a column, in the middle of the window, as they lie in the end.
double spacing_of(const Drawing& out, const RasterFrame& frame, const RasterWindow& w,
                  CoordinateSystems& systems) {
  const double column = 0.5 * static_cast<double>(w.left + w.right);
  const double row = 0.5 * static_cast<double>(w.top + w.bottom);
  const auto step = static_cast<double>(w.step);
  Drawing three;
  three.layers = out.layers;
  three.shapes.resize(1);
  three.shapes[0].points = {frame(column, row), frame(column + step, row), frame(column, row + step)};
  if (out.place) place_on_earth(three, systems);
  if (three.shapes.empty()) return 0;
  const auto& p = three.shapes[0].points;
  return std::max(distance(p[0], p[1]), distance(p[0], p[2]));
}

Result<Drawing> heights_of(GDALDataset& data, const DrawingFile& file, const std::string& stem) {
  Drawing out;
  out.kind = DrawingKind::raster;
  out.reader = library_version() + ", " + data.GetDriverName();
  out.layers.push_back({stem, {}, false});
  RasterTaken taken;
  taken.columns = data.GetRasterXSize();
  taken.rows = data.GetRasterYSize();
  const RasterFrame frame = frame_of(data);
  const OGRSpatialReference* system = data.GetSpatialRef();
  CoordinateSystems systems;
  systems.emplace_back(system == nullptr ? nullptr : system->Clone());
  if (systems.back()) systems.back()->SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  const auto window = window_asked(data, file, frame, systems.back().get(), taken);
  if (!window) return refuse(window.error());
  GDALRasterBand& band = *data.GetRasterBand(1);
  HeightReader reader(band, frame, *window);
  reader.read(out);
  out.held["cells"] = taken.columns * taken.rows;
  out.expected = out.arrived = static_cast<long>(out.shapes.size());
  place_on_earth(out, systems);
  out.expected = static_cast<long>(out.shapes.size());
  taken.step = window->step;
  taken.spacing = spacing_of(out, frame, *window, systems);
  tell_height_unit(band, taken);
  tell_left_out(*window, reader, out);
  if (!frame.told)
    out.remarks.push_back({"raster_nowhere", say("the raster does not say where it lies"), "", "",
                           say("A cell was taken as one unit; set the scale.")});
  if (data.GetRasterCount() > 1)
    out.remarks.push_back({"raster_bands",
                           say("the raster has {} bands", std::to_string(data.GetRasterCount())), "", "",
                           say("Heights were taken from the first.")});
  out.raster = taken;
  return out;
}

}  // namespace

Result<Drawing> read_raster(const DrawingFile& file, const RasterForm& form, const std::string& stem) {
  LibrarySession session;
  for (const auto& [ending, bytes] : file.beside) session.lend(stem + "." + ending, bytes);
  const std::string path = session.lend(stem + "." + form.ending, file.bytes);
  const char* drivers[] = {form.driver, nullptr};
  const Dataset data(
      GDALDataset::Open(path.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers, nullptr, nullptr));
  if (!data) return refuse(nothing_in_it(DrawingKind::raster, session));
  if (const auto fit = usable(*data); !fit) return refuse(fit.error());
  auto out = heights_of(*data, file, stem);
  if (out) take_messages(session, *out);
  return out;
}

}  // namespace underlawn
