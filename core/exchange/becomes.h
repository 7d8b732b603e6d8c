// SPDX-License-Identifier: GPL-3.0-or-later
// What the things of a drawing become on the lot: guessed from names, decided by the designer.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "exchange/drawing.h"
#include "site/site.h"

namespace underlawn {

enum class Becomes {
  left_out,
  lot_line,
  house,
  drive,
  septic_tank,
  drain_field,
  reserve_field,
  well,
  tree,
  electric,
  gas,
  communication,
  water,
  sewer,
  reclaimed,
  easement,
  no_dig,
  heights,
};
inline constexpr int kBecomes = 18;

std::string_view becomes_word(Becomes b);  // "lot", "septic_tank": as typed on the command line
std::optional<Becomes> becomes_of(std::string_view word);
std::optional<FeatureKind> feature_kind_of(Becomes b);  // none for left_out, lot_line and heights
UtilityKind utility_kind_of(Becomes b);                 // of those that are utilities

// Shapes that are decided about together: a layer, or those of a layer with one value of an attribute.
struct ShapeGroup {
  int layer = 0;
  std::string value;        // of the layer's attribute; empty where the layer is one group
  std::vector<int> shapes;  // indices
  int points = 0, lines = 0, areas = 0, texts = 0;
  Becomes guess = Becomes::left_out;
};

// Which attribute a layer is best split by: one called like a kind ("type", "class", ...) with 2 to 40
// values; -1 for none.
int likely_attribute(const Drawing& drawing, int layer);

// For each layer: the attribute called so, -1 where it has none; of an empty name the likely one.
std::vector<int> attributes_called(const Drawing& drawing, std::string_view name);

// `attributes`: for each layer the attribute it is split by, -1 for none.
std::vector<ShapeGroup> groups_of(const Drawing& drawing, const std::vector<int>& attributes);

std::string group_label(const Drawing& drawing, const ShapeGroup& group);  // "V-BLDG", "parcels: road"

// Guessed from words of a name in any case: plain English, and the US National CAD Standard's layer names
// (major and minor groups such as PROP, BLDG, SSWR; from memory). What only labels or measures is left out.
Becomes guess_of(std::string_view name);

}  // namespace underlawn
