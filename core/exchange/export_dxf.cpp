// SPDX-License-Identifier: GPL-3.0-or-later
// DXF by the library that reads it as a second opinion (dxflib): AC1015, as most programs take.
#include <dxflib/dl_dxf.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <memory>

#include "base/say.h"
#include "base/utf8.h"
#include "exchange/export_plan.h"
#include "files/atomic_file.h"

namespace underlawn {

namespace {

constexpr double kTextHeight = 0.25;  // m

// The library writes to files only; this one is gone when the text has been read.
class PassingFile {
 public:
  PassingFile() {
    std::string name = (std::filesystem::temp_directory_path() / "underlawn-dxf-XXXXXX").string();
    const int made = mkstemp(name.data());
    if (made < 0) return;
    ::close(made);
    path_ = name;
  }
  ~PassingFile() {
    std::error_code ignored;
    if (!path_.empty()) std::filesystem::remove(path_, ignored);
  }
  PassingFile(const PassingFile&) = delete;
  PassingFile& operator=(const PassingFile&) = delete;
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

// A text of AC1015 is in a code page; "\U+00DF" is its way to write what that lacks.
std::string escaped(const std::string& utf8) {
  std::string out;
  for (std::size_t i = 0; i < utf8.size();) {
    const std::size_t n = std::max<std::size_t>(1, utf8_size(std::string_view(utf8).substr(i)));
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(utf8[i + k]); };
    if (n == 1) {
      out += byte(0) < ' ' ? ' ' : utf8[i];
    } else if (n <= 3) {
      const unsigned code = n == 2 ? (byte(0) & 31U) << 6 | (byte(1) & 63U)
                                   : (byte(0) & 15U) << 12 | (byte(1) & 63U) << 6 | (byte(2) & 63U);
      char text[16];
      std::snprintf(text, sizeof text, "\\U+%04X", code);
      out += text;
    } else {
      out += '?';  // beyond what that way can write
    }
    i += n;
  }
  return out;
}

// Colours of the AutoCAD index: 1 red, 2 yellow, 3 green, 4 cyan, 5 blue, 6 magenta, 7 black or white.
// Utilities in those of the APWA code, as near as the index has them (30 orange).
int colour_of(const std::string& layer) {
  static const std::map<std::string, int> kColours = {
      {"V-PROP-LINE", 7}, {"V-BLDG-OTLN", 7}, {"V-POWR-UNDR", 1}, {"V-NGAS-UNDR", 2}, {"V-COMM-UNDR", 30},
      {"V-WATR-UNDR", 5}, {"V-WATR-WELL", 5}, {"V-SSWR-UNDR", 3}, {"V-SSWR-SEPT", 3}, {"V-SSWR-LEAC", 3},
      {"V-SSWR-RESV", 3}, {"V-RECL-UNDR", 6}, {"V-SITE-VEGE", 3}, {"M-LOOP-COIL", 5}, {"M-LOOP-STAK", 1}};
  const auto at = kColours.find(layer);
  return at == kColours.end() ? 8 : at->second;
}

class DxfOut {
 public:
  DxfOut(DL_Dxf& dxf, DL_WriterA& to, double scale) : dxf_(dxf), to_(to), scale_(scale) {}

  void head(bool us, Box box) {
    dxf_.writeHeader(to_);
    variable("$INSUNITS", 70, us ? 2 : 6);
    variable("$MEASUREMENT", 70, us ? 0 : 1);
    corner("$EXTMIN", box.low);
    corner("$EXTMAX", box.high);
    to_.sectionEnd();
  }
  void tables(const std::map<std::string, int>& layers) {
    to_.sectionTables();
    dxf_.writeVPort(to_);
    to_.tableLinetypes(3);
    for (const char* name : {"BYBLOCK", "BYLAYER", "CONTINUOUS"})
      dxf_.writeLinetype(to_, {name, name, 0, 0, 0.0});
    to_.tableEnd();
    to_.tableLayers(static_cast<int>(layers.size()) + 1);
    dxf_.writeLayer(to_, {"0", 0}, {"", 7, 25, "CONTINUOUS", 1.0});
    for (const auto& [name, colour] : layers)
      dxf_.writeLayer(to_, {name, 0}, {"", colour, 25, "CONTINUOUS", 1.0});
    to_.tableEnd();
    to_.tableStyle(1);
    dxf_.writeStyle(to_, {"STANDARD", 0, 0, 1, 0, 0, 2.5, "txt", ""});
    to_.tableEnd();
    dxf_.writeView(to_);
    dxf_.writeUcs(to_);
    to_.tableAppid(1);
    dxf_.writeAppid(to_, "ACAD");
    to_.tableEnd();
    dxf_.writeDimStyle(to_, 1, 1, 1, 1, 1);
    dxf_.writeBlockRecord(to_);
    to_.tableEnd();
    to_.sectionEnd();
    to_.sectionBlocks();
    for (const char* name : {"*Model_Space", "*Paper_Space", "*Paper_Space0"}) {
      dxf_.writeBlock(to_, {name, 0, 0, 0, 0});
      dxf_.writeEndBlock(to_, name);
    }
    to_.sectionEnd();
  }
  void write(const ExportPart& p) {
    const DL_Attributes on(p.layer, 256, -1, "BYLAYER", 1.0);
    if (p.kind == ShapeKind::point)
      dxf_.writePoint(to_, {x(p.points[0]), y(p.points[0]), scale_ * p.height}, on);
    else
      line(p, on);
    if (!p.label.empty()) label(p);
  }
  void foot() {
    to_.sectionEnd();
    dxf_.writeObjects(to_);
    dxf_.writeObjectsEnd(to_);
    to_.dxfEOF();
  }

 private:
  double x(Point p) const { return scale_ * p.x; }
  double y(Point p) const { return scale_ * p.y; }
  void variable(const char* name, int code, int value) {
    to_.dxfString(9, name);
    to_.dxfInt(code, value);
  }
  void corner(const char* name, Point p) {
    to_.dxfString(9, name);
    to_.coord(10, x(p), y(p), 0);
  }
  void line(const ExportPart& p, const DL_Attributes& on) {
    const bool closed = p.kind == ShapeKind::area;
    dxf_.writePolyline(to_, {static_cast<int>(p.points.size()), 0, 0, closed ? 1 : 0}, on);
    for (Point q : p.points) dxf_.writeVertex(to_, {x(q), y(q), 0, 0});
    dxf_.writePolylineEnd(to_);
  }
  void label(const ExportPart& p) {
    const Point at = p.points[0];
    const DL_Attributes on(p.layer + "-TEXT", 256, -1, "BYLAYER", 1.0);
    dxf_.writeText(
        to_,
        {x(at), y(at), 0, x(at), y(at), 0, scale_ * kTextHeight, 1, 0, 0, 0, escaped(p.label), "STANDARD", 0},
        on);
  }

  DL_Dxf& dxf_;
  DL_WriterA& to_;
  double scale_;
};

void write_all(DL_WriterA& to, DL_Dxf& dxf, const std::vector<ExportPart>& parts, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  DxfOut out(dxf, to, us ? 1 / 0.3048 : 1);
  std::map<std::string, int> layers;
  std::vector<Shape> shapes;
  for (const ExportPart& p : parts) {
    layers[p.layer] = colour_of(p.layer);
    if (!p.label.empty()) layers[p.layer + "-TEXT"] = 7;
    shapes.push_back({p.kind, p.points, {}, {}, 0, "", {}});
  }
  out.head(us, extent(shapes));
  out.tables(layers);
  to.sectionEntities();
  for (const ExportPart& p : parts)
    if (!p.points.empty()) out.write(p);
  out.foot();
}

}  // namespace

Result<std::string> to_dxf(const std::vector<ExportPart>& parts, UnitSystem units) {
  const Trouble failed{"export_failed", say("the DXF file cannot be made"), "", "",
                       say("There may be no room for it: free some and try again.")};
  const PassingFile file;
  if (file.path().empty()) return refuse(failed);
  DL_Dxf dxf;
  const std::unique_ptr<DL_WriterA> to(dxf.out(file.path().c_str(), DL_VERSION_2000));
  if (!to || to->openFailed()) return refuse(failed);
  write_all(*to, dxf, parts, units);
  to->close();
  return read_file(file.path(), kMostDrawingBytes);
}

}  // namespace underlawn
