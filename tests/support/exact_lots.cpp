// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/exact_lots.h"

#include <fstream>
#include <sstream>

namespace underlawn::sample {

namespace {

FeatureKind kind_of(const std::string& name) {
  if (name == "house") return FeatureKind::house;
  if (name == "drain_field") return FeatureKind::drain_field;
  if (name == "well") return FeatureKind::well;
  if (name == "tree") return FeatureKind::tree;
  return FeatureKind::utility;
}

Feature feature_of(std::istream& in, int id) {
  Feature f;
  f.id = id;
  std::string kind;
  double trench = 0, run = 0;
  in >> kind >> trench >> run >> f.may_cross;
  f.kind = kind_of(kind);
  f.trench_clearance = trench;
  f.run_clearance = run;
  f.trunk_diameter = 0.01;  // the clearance governs
  for (Point p; in >> p.x >> p.y;) f.points.push_back(p);
  return f;
}

void wish(std::istream& in, ExactLot& lot) {
  Wishes& w = lot.wishes;
  in >> w.trench_length >> w.trench_width >> w.spacing >> w.end_gap >> w.run_width;
  w.circuits = 500;
  w.coil_in_run = false;
  lot.coil.trench_length = w.trench_length;
}

void optimum(std::istream& in, ExactLot& lot) {
  std::string proof;
  in >> lot.most >> lot.angle >> proof >> lot.bound >> lot.seconds;
  lot.proved = proof == "proved";
}

}  // namespace

std::vector<ExactLot> exact_lots(const std::string& path) {
  std::vector<ExactLot> lots;
  std::ifstream file(path);
  for (std::string line; std::getline(file, line);) {
    std::istringstream in(line);
    std::string key;
    in >> key;
    if (key == "lot") in >> lots.emplace_back().seed >> lots.back().shape;
    if (lots.empty()) continue;
    ExactLot& lot = lots.back();
    if (key == "trench") wish(in, lot);
    if (key == "most") optimum(in, lot);
    if (key == "feature")
      lot.site.features.push_back(feature_of(in, static_cast<int>(lot.site.features.size()) + 1));
    if (key != "corner") continue;
    LotCorner& c = lot.site.lot.emplace_back();
    in >> c.at.x >> c.at.y >> c.setback;
  }
  // The run leaves the house in the middle of its first wall.
  for (ExactLot& lot : lots)
    if (const auto& house = lot.site.features.front(); house.kind == FeatureKind::house)
      lot.site.entry = EntryPoint{house.id, 0.5 * (house.points[2] + house.points[3])};
  return lots;
}

std::map<int, ExactMetres> exact_metres(const std::string& path) {
  std::map<int, ExactMetres> all;
  std::ifstream file(path);
  std::string key;
  int seed = 0;
  double seconds = 0;
  while (file >> key >> seed) {
    ExactMetres& m = all[seed];
    file >> m.most >> m.angle >> m.in_one_column >> m.bound >> seconds;
  }
  return all;
}

Wishes wishes_for_metres(const ExactLot& lot) {
  Wishes w = lot.wishes;
  w.aim = Aim::metres;
  w.least_length = 0.6 * lot.coil.trench_length;
  w.most_length = 1.5 * lot.coil.trench_length;
  return w;
}

}  // namespace underlawn::sample
