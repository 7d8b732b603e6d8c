// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/header_place.h"

#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kOn = 2e-3;  // m

std::optional<HeaderPlace> first_place(const Header& header, Point p, std::size_t legs) {
  for (std::size_t i = 0; i < legs; ++i) {
    const Polyline& leg = header.legs[i];
    double along = 0;
    for (std::size_t j = 1; j < leg.size(); ++j) {
      const Segment s{leg[j - 1], leg[j]};
      if (distance(s, p) < kOn) return HeaderPlace{i + 1, along + distance(s.a, p), false};
      along += distance(s.a, s.b);
    }
  }
  return std::nullopt;
}

}  // namespace

HeaderPlace place_on_header(const Header& header, Point run_end, Point head) {
  if (distance(run_end, head) < kOn) return {};
  auto place = first_place(header, head, header.legs.size());
  if (!place) return {header.legs.size() + 1, distance(run_end, head), false};
  const Polyline& leg = header.legs[place->leg - 1];
  const bool branch = distance(leg.front(), run_end) > kOn && leg.size() == 2;
  if (!branch) return *place;
  if (auto start = first_place(header, leg.front(), place->leg - 1)) {
    start->branch = true;
    return *start;
  }
  return *place;
}

}  // namespace underlawn
