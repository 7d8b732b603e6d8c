// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/site.h"

#include "base/say.h"

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

std::string kind_name(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::house:
      return say("house");
    case FeatureKind::drive:
      return say("drive");
    case FeatureKind::septic_tank:
      return say("septic tank");
    case FeatureKind::drain_field:
      return say("drain field");
    case FeatureKind::reserve_field:
      return say("reserve field");
    case FeatureKind::well:
      return say("well");
    case FeatureKind::tree:
      return say("tree");
    case FeatureKind::utility:
      return say("utility");
    case FeatureKind::easement:
      return say("easement");
    case FeatureKind::no_dig:
      return say("no-dig area");
  }
  return say("thing");
}

std::string_view utility_name(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::electric:
      return "electric";
    case UtilityKind::gas:
      return "gas";
    case UtilityKind::communication:
      return "communication";
    case UtilityKind::water:
      return "water";
    case UtilityKind::sewer:
      return "sewer";
    case UtilityKind::reclaimed:
      return "reclaimed";
  }
  return "unknown";
}

namespace {

std::string nameless(const Feature& f) {
  if (f.kind == FeatureKind::utility) return say("{} line", std::string(utility_name(f.utility)));
  return std::string(kind_name(f.kind));
}

}  // namespace

std::string display_name(const Feature& f) {
  if (!f.name.empty()) return f.name;
  std::string name = nameless(f);
  if (name.front() >= 'a' && name.front() <= 'z') name.front() = static_cast<char>(name.front() - 'a' + 'A');
  return name + " " + std::to_string(f.id);
}

}  // namespace underlawn
