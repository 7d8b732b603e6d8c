// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdint>
#include <cstring>

#include "exchange/read_parts.h"

namespace underlawn {

namespace {

long occurrences(std::string_view text, std::string_view what) {
  long count = 0;
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string_view::npos; at += what.size()) ++count;
  return count;
}

// "type": "Feature", with any blanks between.
long features_in(std::string_view json) {
  long count = 0;
  for (std::size_t at = 0; (at = json.find("\"Feature\"", at)) != std::string_view::npos; ++at) {
    const auto before = json.find_last_not_of(" \t\r\n:", at == 0 ? 0 : at - 1);
    if (before != std::string_view::npos && before >= 5 && json.substr(before - 5, 6) == "\"type\"") ++count;
  }
  return count;
}

std::uint32_t big_endian(std::string_view bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = at; i < at + 4; ++i) value = value << 8 | static_cast<unsigned char>(bytes[i]);
  return value;
}

// Records of a .shp: behind a head of 100 bytes, each with its number and its length in 16-bit words (ESRI
// Shapefile Technical Description, July 1998).
long records_in(std::string_view shp) {
  long count = 0;
  for (std::size_t at = 100; at + 8 <= shp.size(); ++count)
    at += 8 + 2 * std::size_t{big_endian(shp, at + 4)};
  return count;
}

}  // namespace

long counted_in(const DrawingFile& file, DrawingKind kind) {
  if (kind == DrawingKind::kml) return occurrences(file.bytes, "<Placemark");
  if (kind == DrawingKind::geojson) return features_in(file.bytes);
  if (kind == DrawingKind::shapefile) return records_in(file.bytes);
  return -1;
}

}  // namespace underlawn
