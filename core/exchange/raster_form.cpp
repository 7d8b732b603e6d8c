// SPDX-License-Identifier: GPL-3.0-or-later
#include <cctype>

#include "exchange/read_raster.h"

namespace underlawn {

namespace {

struct Mark {
  std::string_view bytes;  // at the beginning; letters in either case
  RasterForm form;
};

constexpr RasterForm kTiff{"GTiff", "tif"}, kAsciiGrid{"AAIGrid", "asc"}, kGrass{"GRASSASCIIGrid", "asc"};

// As the formats themselves begin: TIFF 6.0 and BigTIFF; the others from the library's own descriptions.
constexpr Mark kMarks[] = {{std::string_view("II*\0", 4), kTiff},
                           {std::string_view("MM\0*", 4), kTiff},
                           {std::string_view("II+\0", 4), kTiff},
                           {std::string_view("MM\0+", 4), kTiff},
                           {"ncols", kAsciiGrid},
                           {"nrows", kAsciiGrid},
                           {"xllc", kAsciiGrid},
                           {"dsaa", {"GSAG", "grd"}},
                           {"dsbb", {"GSBG", "grd"}},
                           {"dsrb", {"GS7BG", "grd"}},
                           {"ehfa_header_tag", {"HFA", "img"}},
                           {"uhl1", {"DTED", "dt2"}},
                           {"binterr", {"BT", "bt"}},
                           {"north:", kGrass}};

// Those whose bytes say nothing.
constexpr RasterForm kByEnding[] = {
    {"SRTMHGT", "hgt"}, {"USGSDEM", "dem"}, {"EHdr", "bil"}, {"EHdr", "flt"}, {"XYZ", "xyz"}};

bool begins(std::string_view bytes, std::string_view with) {
  if (bytes.size() < with.size()) return false;
  for (std::size_t i = 0; i < with.size(); ++i)
    if (bytes[i] != with[i] && std::tolower(static_cast<unsigned char>(bytes[i])) != with[i]) return false;
  return true;
}

}  // namespace

const RasterForm* raster_form(const DrawingFile& file, std::string_view ending) {
  std::string_view bytes = file.bytes;
  const auto from = bytes.find_first_not_of(" \t\r\n");
  if (from != std::string_view::npos) bytes.remove_prefix(from);
  for (const Mark& mark : kMarks)
    if (begins(bytes, mark.bytes)) return &mark.form;
  for (const RasterForm& form : kByEnding)
    if (ending == form.ending) return &form;
  return nullptr;
}

}  // namespace underlawn
