// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/site.h"

#include <algorithm>

#include "base/say.h"
#include "base/wording.h"
#include "site/names.h"

namespace underlawn {

bool can_be_crossed(FeatureKind kind) {
  return kind == FeatureKind::utility || kind == FeatureKind::drive || kind == FeatureKind::easement;
}

bool crossable(const Feature& f) {
  return can_be_crossed(f.kind) && f.may_cross;
}

FeatureShape shape_of(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::well:
    case FeatureKind::tree:
      return FeatureShape::point;
    case FeatureKind::utility:
      return FeatureShape::line;
    default:
      return FeatureShape::area;
  }
}

const Feature* find_feature(const Site& site, int id) {
  const auto at =
      std::find_if(site.features.begin(), site.features.end(), [&](const Feature& f) { return f.id == id; });
  return at == site.features.end() ? nullptr : &*at;
}

Ring lot_ring(const Site& site) {
  Ring ring;
  ring.reserve(site.lot.size());
  for (const LotCorner& corner : site.lot) ring.push_back(corner.at);
  return ring;
}

std::string_view kind_key(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::house:
      return mark("house");
    case FeatureKind::drive:
      return mark("drive");
    case FeatureKind::septic_tank:
      return mark("septic tank");
    case FeatureKind::drain_field:
      return mark("drain field");
    case FeatureKind::reserve_field:
      return mark("reserve field");
    case FeatureKind::well:
      return mark("well");
    case FeatureKind::tree:
      return mark("tree");
    case FeatureKind::utility:
      return mark("utility");
    case FeatureKind::easement:
      return mark("easement");
    case FeatureKind::no_dig:
      return mark("no-dig area");
  }
  return mark("thing");
}

std::string_view utility_key(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::electric:
      return mark("electric");
    case UtilityKind::gas:
      return mark("gas");
    case UtilityKind::communication:
      return mark("communication");
    case UtilityKind::water:
      return mark("water");
    case UtilityKind::sewer:
      return mark("sewer");
    case UtilityKind::reclaimed:
      return mark("reclaimed");
  }
  return mark("unknown");
}

std::string kind_name(FeatureKind kind) {
  return translated(kind_key(kind));
}

std::string utility_name(UtilityKind kind) {
  return translated(utility_key(kind));
}

namespace {

std::string_view line_key(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::electric:
      return mark("electric line");
    case UtilityKind::gas:
      return mark("gas line");
    case UtilityKind::communication:
      return mark("communication line");
    case UtilityKind::water:
      return mark("water line");
    case UtilityKind::sewer:
      return mark("sewer line");
    case UtilityKind::reclaimed:
      return mark("reclaimed line");
  }
  return mark("unknown line");
}

// What a thing is, in English: "septic tank", "gas line".
std::string_view plain_word(const Feature& f) {
  return f.kind == FeatureKind::utility ? line_key(f.utility) : kind_key(f.kind);
}

std::string said_word(const Feature& f) {
  return capitalised(translated(plain_word(f)));
}

}  // namespace

std::string display_name(const Feature& f) {
  if (f.name.empty()) return said_word(f) + " " + std::to_string(f.id);
  return f.name == capitalised(std::string(plain_word(f))) ? said_word(f) : f.name;
}

std::string kept_name(const Feature& f, const std::string& typed) {
  return typed == said_word(f) ? capitalised(std::string(plain_word(f))) : typed;
}

}  // namespace underlawn
