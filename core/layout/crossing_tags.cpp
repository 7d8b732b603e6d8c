// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/crossing_tags.h"

namespace underlawn {

namespace {

bool meets_something(const Site& site, const Crossing& x) {
  const Feature* f = find_feature(site, x.feature_id);
  return f == nullptr || f->kind != FeatureKind::easement;
}

}  // namespace

std::string crossing_tag(const Site& site, const Layout& layout, std::size_t index) {
  if (index >= layout.crossings.size() || !meets_something(site, layout.crossings[index])) return "";
  int number = 0;
  for (std::size_t i = 0; i <= index; ++i) number += meets_something(site, layout.crossings[i]) ? 1 : 0;
  return "X" + std::to_string(number);
}

}  // namespace underlawn
