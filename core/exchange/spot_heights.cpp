// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/spot_heights.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <set>

namespace underlawn {

namespace {

constexpr double kAlongContour = 1;  // m between heights taken from one line

std::optional<double> number_of(std::string_view text) {
  const auto from = text.find_first_not_of(" \t+");
  if (from == std::string_view::npos) return std::nullopt;
  text.remove_prefix(from);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  std::string_view behind(end, static_cast<std::size_t>(text.data() + text.size() - end));
  while (!behind.empty() && (behind.front() == ' ' || behind.front() == '\'')) behind.remove_prefix(1);
  if (error != std::errc() || !std::isfinite(value)) return std::nullopt;
  if (!behind.empty() && behind != "m" && behind != "ft") return std::nullopt;
  return value;
}

std::optional<double> told_height(const Drawing& drawing, const Shape& s) {
  static const std::set<std::string> kLike = {"elev", "elevation", "ele", "height", "contour", "z", "level"};
  const auto& names = drawing.layers[static_cast<std::size_t>(s.layer)].attributes;
  for (std::size_t i = 0; i < std::min(names.size(), s.values.size()); ++i) {
    std::string name = names[i];
    for (char& c : name) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    if (kLike.contains(name))
      if (const auto value = number_of(s.values[i])) return value;
  }
  return number_of(s.text);
}

}  // namespace

std::vector<SpotHeight> spot_heights(const Drawing& drawing, const Shape& s, const Placement& placement,
                                     double height_unit) {
  std::vector<SpotHeight> out;
  const auto told = s.heights.empty() ? told_height(drawing, s) : std::nullopt;
  if (s.heights.empty() && !told) return out;
  if (!(height_unit > 0))
    height_unit =
        drawing.raster && drawing.raster->height_unit > 0 ? drawing.raster->height_unit : placement.unit;
  for (std::size_t i = 0; i < s.points.size(); ++i) {
    const double z = told ? *told : s.heights[std::min(i, s.heights.size() - 1)];
    const SpotHeight h{placement(s.points[i]), z * height_unit};
    const bool last = i + 1 == s.points.size();
    if (!out.empty() && !last && distance(out.back().at, h.at) < kAlongContour) continue;
    if (std::abs(h.height) <= kHighest && std::isfinite(h.at.x) && std::isfinite(h.at.y)) out.push_back(h);
  }
  return out;
}

long add_spot_heights(Site& site, const std::vector<SpotHeight>& heights) {
  constexpr double kCell = 2 * kOneHeight;
  const auto cell = [](Point p) { return std::pair(std::lround(p.x / kCell), std::lround(p.y / kCell)); };
  std::map<std::pair<long, long>, std::vector<Point>> taken;
  for (const SpotHeight& h : site.heights) taken[cell(h.at)].push_back(h.at);
  const auto is_taken = [&](Point p) {
    const auto [x, y] = cell(p);
    for (long i = x - 1; i <= x + 1; ++i)
      for (long j = y - 1; j <= y + 1; ++j)
        for (Point there : taken[{i, j}])
          if (distance(there, p) < kOneHeight) return true;
    return false;
  };
  long lost = 0;
  for (const SpotHeight& h : heights) {
    if (site.heights.size() >= kMostHeights || is_taken(h.at)) {
      ++lost;
      continue;
    }
    taken[cell(h.at)].push_back(h.at);
    site.heights.push_back(h);
  }
  return lost;
}

}  // namespace underlawn
