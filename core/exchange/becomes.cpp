// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/becomes.h"

#include <algorithm>
#include <cctype>
#include <set>

namespace underlawn {

namespace {

constexpr std::array<std::string_view, kBecomes> kWords = {
    "out",           "lot",   "house",     "drive",    "septic_tank", "drain_field",
    "reserve_field", "well",  "tree",      "electric", "gas",         "communication",
    "water",         "sewer", "reclaimed", "easement", "no_dig",      "heights"};

struct Clue {
  std::string_view word;
  Becomes becomes;
};

// The first row whose word is in the name decides; so what is narrower stands above.
constexpr Clue kClues[] = {{"TEXT", Becomes::left_out},
                           {"ANNO", Becomes::left_out},
                           {"IDEN", Becomes::left_out},
                           {"DIMS", Becomes::left_out},
                           {"DIM", Becomes::left_out},
                           {"LABEL", Becomes::left_out},
                           {"LABELS", Becomes::left_out},
                           {"BRNG", Becomes::left_out},
                           {"TTLB", Becomes::left_out},
                           {"DEFPOINTS", Becomes::left_out},
                           {"SBCK", Becomes::left_out},
                           {"SETBACK", Becomes::left_out},
                           {"SETBACKS", Becomes::left_out},
                           {"BRLN", Becomes::left_out},
                           {"OVHD", Becomes::left_out},
                           {"OVERHEAD", Becomes::left_out},
                           {"ROOF", Becomes::left_out},
                           {"ROAD", Becomes::left_out},
                           {"STREET", Becomes::left_out},
                           {"ESMT", Becomes::easement},
                           {"EASE", Becomes::easement},
                           {"EASEMENT", Becomes::easement},
                           {"EASEMENTS", Becomes::easement},
                           {"TOPO", Becomes::heights},
                           {"CONTOUR", Becomes::heights},
                           {"CONTOURS", Becomes::heights},
                           {"SPOT", Becomes::heights},
                           {"ELEVATION", Becomes::heights},
                           {"ELEVATIONS", Becomes::heights},
                           {"SPOTS", Becomes::heights},
                           {"RESERVE", Becomes::reserve_field},
                           {"REPLACEMENT", Becomes::reserve_field},
                           {"RESV", Becomes::reserve_field},
                           {"LEAC", Becomes::drain_field},
                           {"LEACH", Becomes::drain_field},
                           {"LEACHFIELD", Becomes::drain_field},
                           {"DRAINFIELD", Becomes::drain_field},
                           {"DRAIN", Becomes::drain_field},
                           {"ABSORPTION", Becomes::drain_field},
                           {"SEPT", Becomes::septic_tank},
                           {"SEPTIC", Becomes::septic_tank},
                           {"WELL", Becomes::well},
                           {"WELLS", Becomes::well},
                           {"NGAS", Becomes::gas},
                           {"GAS", Becomes::gas},
                           {"PROPANE", Becomes::gas},
                           {"FUEL", Becomes::gas},
                           {"OIL", Becomes::gas},
                           {"RECL", Becomes::reclaimed},
                           {"RECLAIMED", Becomes::reclaimed},
                           {"IRRI", Becomes::reclaimed},
                           {"IRRIGATION", Becomes::reclaimed},
                           {"SSWR", Becomes::sewer},
                           {"SEWR", Becomes::sewer},
                           {"SEWER", Becomes::sewer},
                           {"SANR", Becomes::sewer},
                           {"SANITARY", Becomes::sewer},
                           {"STRM", Becomes::sewer},
                           {"STORM", Becomes::sewer},
                           {"WATR", Becomes::water},
                           {"WATER", Becomes::water},
                           {"WTR", Becomes::water},
                           {"DOMW", Becomes::water},
                           {"ELEC", Becomes::electric},
                           {"ELECTRIC", Becomes::electric},
                           {"ELECTRICAL", Becomes::electric},
                           {"POWR", Becomes::electric},
                           {"POWER", Becomes::electric},
                           {"COMM", Becomes::communication},
                           {"TELE", Becomes::communication},
                           {"TELEPHONE", Becomes::communication},
                           {"TELECOM", Becomes::communication},
                           {"PHONE", Becomes::communication},
                           {"CATV", Becomes::communication},
                           {"CABLE", Becomes::communication},
                           {"FIBR", Becomes::communication},
                           {"FIBER", Becomes::communication},
                           {"COMMUNICATION", Becomes::communication},
                           {"BLDG", Becomes::house},
                           {"BLDGS", Becomes::house},
                           {"BUILDING", Becomes::house},
                           {"BUILDINGS", Becomes::house},
                           {"HOUSE", Becomes::house},
                           {"HOUSES", Becomes::house},
                           {"DWELLING", Becomes::house},
                           {"RESIDENCE", Becomes::house},
                           {"FOOTPRINT", Becomes::house},
                           {"FOOTPRINTS", Becomes::house},
                           {"FOUNDATION", Becomes::house},
                           {"FNDN", Becomes::house},
                           {"DRIV", Becomes::drive},
                           {"DRIVE", Becomes::drive},
                           {"DRIVEWAY", Becomes::drive},
                           {"DRIVEWAYS", Becomes::drive},
                           {"PVMT", Becomes::drive},
                           {"PAVEMENT", Becomes::drive},
                           {"PAVING", Becomes::drive},
                           {"ASPH", Becomes::drive},
                           {"ASPHALT", Becomes::drive},
                           {"PARKING", Becomes::drive},
                           {"PRKG", Becomes::drive},
                           {"TREE", Becomes::tree},
                           {"TREES", Becomes::tree},
                           {"VEGE", Becomes::tree},
                           {"PATIO", Becomes::no_dig},
                           {"DECK", Becomes::no_dig},
                           {"POOL", Becomes::no_dig},
                           {"POND", Becomes::no_dig},
                           {"GARDEN", Becomes::no_dig},
                           {"GARDENS", Becomes::no_dig},
                           {"NODIG", Becomes::no_dig},
                           {"NDIG", Becomes::no_dig},
                           {"WETLAND", Becomes::no_dig},
                           {"WETLANDS", Becomes::no_dig},
                           {"PROP", Becomes::lot_line},
                           {"PROPERTY", Becomes::lot_line},
                           {"LOT", Becomes::lot_line},
                           {"LOTS", Becomes::lot_line},
                           {"LOTLINE", Becomes::lot_line},
                           {"PARCEL", Becomes::lot_line},
                           {"PARCELS", Becomes::lot_line},
                           {"BOUNDARY", Becomes::lot_line},
                           {"BNDY", Becomes::lot_line},
                           {"CADASTRE", Becomes::lot_line}};

// "V-PROP-LINE", "Property line", "propertyLine" in words, upper case.
std::set<std::string> words_of(std::string_view name) {
  std::set<std::string> words;
  std::string word;
  char before = ' ';
  for (char c : std::string(name) + " ") {
    const auto u = static_cast<unsigned char>(c);
    const bool hump = std::isupper(u) != 0 && std::islower(static_cast<unsigned char>(before)) != 0;
    if ((std::isalpha(u) == 0 || hump) && !word.empty()) {
      words.insert(word);
      word.clear();
    }
    if (std::isalpha(u) != 0) word += static_cast<char>(std::toupper(u));
    before = c;
  }
  return words;
}

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

void count(ShapeGroup& g, const Shape& s) {
  if (!s.text.empty())
    ++g.texts;
  else if (s.kind == ShapeKind::point)
    ++g.points;
  else if (s.kind == ShapeKind::line)
    ++g.lines;
  else
    ++g.areas;
}

Becomes guess_for(const Drawing& drawing, const ShapeGroup& g) {
  const DrawingLayer& layer = drawing.layers[static_cast<std::size_t>(g.layer)];
  if (layer.hidden) return Becomes::left_out;
  if (drawing.kind == DrawingKind::raster) return Becomes::heights;
  Becomes b = guess_of(g.value);
  if (b == Becomes::left_out && g.value.empty()) b = guess_of(layer.name);
  const bool only_points = g.lines == 0 && g.areas == 0;
  const auto kind = feature_kind_of(b);
  const bool needs_line = b == Becomes::lot_line || (kind && shape_of(*kind) != FeatureShape::point);
  if (needs_line && only_points) return Becomes::left_out;
  return b;
}

}  // namespace

std::string_view becomes_word(Becomes b) {
  return kWords[static_cast<std::size_t>(b)];
}

std::optional<Becomes> becomes_of(std::string_view word) {
  const auto at = std::ranges::find(kWords, word);
  if (at == kWords.end()) return std::nullopt;
  return static_cast<Becomes>(at - kWords.begin());
}

std::optional<FeatureKind> feature_kind_of(Becomes b) {
  switch (b) {
    case Becomes::left_out:
    case Becomes::lot_line:
    case Becomes::heights:
      return std::nullopt;
    case Becomes::house:
      return FeatureKind::house;
    case Becomes::drive:
      return FeatureKind::drive;
    case Becomes::septic_tank:
      return FeatureKind::septic_tank;
    case Becomes::drain_field:
      return FeatureKind::drain_field;
    case Becomes::reserve_field:
      return FeatureKind::reserve_field;
    case Becomes::well:
      return FeatureKind::well;
    case Becomes::tree:
      return FeatureKind::tree;
    case Becomes::easement:
      return FeatureKind::easement;
    case Becomes::no_dig:
      return FeatureKind::no_dig;
    default:
      return FeatureKind::utility;
  }
}

UtilityKind utility_kind_of(Becomes b) {
  return static_cast<UtilityKind>(
      std::clamp(static_cast<int>(b) - static_cast<int>(Becomes::electric), 0, 5));
}

Becomes guess_of(std::string_view name) {
  const auto words = words_of(name);
  for (const Clue& clue : kClues)
    if (words.contains(std::string(clue.word))) return clue.becomes;
  return Becomes::left_out;
}

std::string group_label(const Drawing& drawing, const ShapeGroup& group) {
  const std::string& layer = drawing.layers[static_cast<std::size_t>(group.layer)].name;
  return group.value.empty() ? layer : layer + ": " + group.value;
}

int likely_attribute(const Drawing& drawing, int layer) {
  static const std::set<std::string> kLike = {"type",  "kind",    "class",       "layer", "category",
                                              "ftype", "feature", "featuretype", "code",  "fclass"};
  const bool kml = drawing.kind == DrawingKind::kml;  // it has names only
  const auto& names = drawing.layers[static_cast<std::size_t>(layer)].attributes;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const std::string name = lower(names[i]);
    if (!kLike.contains(name) && !(kml && name == "name")) continue;
    std::set<std::string> values;
    for (const Shape& s : drawing.shapes)
      if (s.layer == layer && i < s.values.size() && values.size() <= 40) values.insert(s.values[i]);
    if (values.size() >= 2 && values.size() <= 40) return static_cast<int>(i);
  }
  return -1;
}

std::vector<int> attributes_called(const Drawing& drawing, std::string_view name) {
  std::vector<int> all;
  for (std::size_t i = 0; i < drawing.layers.size(); ++i) {
    const auto& names = drawing.layers[i].attributes;
    const auto at = std::ranges::find(names, name);
    all.push_back(name.empty()        ? likely_attribute(drawing, static_cast<int>(i))
                  : at == names.end() ? -1
                                      : static_cast<int>(at - names.begin()));
  }
  return all;
}

std::vector<ShapeGroup> groups_of(const Drawing& drawing, const std::vector<int>& attributes) {
  std::map<std::pair<int, std::string>, ShapeGroup> groups;
  for (std::size_t i = 0; i < drawing.shapes.size(); ++i) {
    const Shape& s = drawing.shapes[i];
    const int by = static_cast<std::size_t>(s.layer) < attributes.size()
                       ? attributes[static_cast<std::size_t>(s.layer)]
                       : -1;
    const bool split = by >= 0 && static_cast<std::size_t>(by) < s.values.size();
    const std::string value = split ? s.values[static_cast<std::size_t>(by)] : "";
    ShapeGroup& g = groups[{s.layer, value}];
    g.layer = s.layer;
    g.value = value;
    g.shapes.push_back(static_cast<int>(i));
    count(g, s);
  }
  std::vector<ShapeGroup> all;
  for (auto& [key, g] : groups) {
    g.guess = guess_for(drawing, g);
    all.push_back(std::move(g));
  }
  return all;
}

}  // namespace underlawn
