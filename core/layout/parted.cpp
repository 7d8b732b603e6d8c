// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/parted.h"

#include <functional>
#include <numeric>

#include "layout/legality.h"

namespace underlawn {

namespace {

constexpr double kHair = 0.004;  // m
constexpr double kStays[] = {0, 0.5,
                             1};  // which of the row of groups stays in its place: first, middle, last

double at_least_wide(const Wishes& w) {
  return std::max(w.spacing, w.trench_width);
}

// m more between neighbours of two groups than of one.
double more_beside(const Wishes& w) {
  return apart_rule(w).spacing - at_least_wide(w) + kHair;
}
double more_behind(const Wishes& w) {
  return apart_rule(w).end_gap - w.end_gap + kHair;
}

std::vector<Segment> in_order_of(std::vector<Segment> trenches, Point u) {
  std::stable_sort(trenches.begin(), trenches.end(),
                   [u](const Segment& l, const Segment& r) { return dot(l.a + l.b, u) < dot(r.a + r.b, u); });
  return trenches;
}

// How far trenches in their order along a line are moved along it: a trench in its order, and its group.
using Moves = std::function<double(std::size_t, std::size_t)>;

Parted cut(const Arrangement& field, const std::vector<std::size_t>& sizes, Point u, const Moves& moves) {
  const std::vector<Segment> trenches = in_order_of(field.trenches, u);
  Parted groups;
  std::size_t next = 0;
  for (std::size_t size : sizes) {
    Arrangement a{field.bearing, {}, {}, false, field.estimate};
    a.in_line = field.in_line && std::abs(dot(u, direction(field.bearing.angle))) < 0.5;
    for (std::size_t i = 0; i < size; ++i, ++next) {
      const Point by = moves(next, groups.size()) * u;
      a.trenches.push_back({trenches[next].a + by, trenches[next].b + by});
    }
    groups.push_back(std::move(a));
  }
  return groups;
}

std::vector<Moves> moves_of(const Wishes& w, std::size_t trenches, std::size_t groups, bool beside,
                            bool apart) {
  if (!apart) return {[](std::size_t, std::size_t) { return 0.0; }};
  if (beside)  // each group drawn together, and all of them towards the first
    return {[less = spacing_to_part(w, trenches, groups) - at_least_wide(w), more = more_beside(w)](
                std::size_t i, std::size_t group) {
      return static_cast<double>(group) * more - static_cast<double>(i) * less;
    }};
  std::vector<Moves> all;
  for (double stays : kStays)
    all.push_back([more = more_behind(w), from = stays * static_cast<double>(groups - 1)](
                      std::size_t, std::size_t group) { return (static_cast<double>(group) - from) * more; });
  return all;
}

bool keep_apart(const Parted& groups, const Wishes& rule) {
  for (const Arrangement& one : groups)
    for (const Arrangement& other : groups)
      for (const Segment& t : one.trenches)
        for (const Segment& o : other.trenches)
          if (&one != &other && !pair_is_legal(t, o, rule)) return false;
  return true;
}

bool are_legal(const Keeping& k, Parted groups) {
  return std::none_of(groups.begin(), groups.end(), [&k](Arrangement& a) { return drop_illegal(k, a); });
}

}  // namespace

std::vector<Parted> parted(const Keeping& k, const Arrangement& field, const std::vector<std::size_t>& sizes,
                           bool apart) {
  const Point along = direction(field.bearing.angle), across = left_normal(along);
  std::vector<Parted> all;
  for (Point u : {across, -1.0 * across, along, -1.0 * along})
    for (const Moves& moves :
         moves_of(k.wishes, field.trenches.size(), sizes.size(), std::abs(dot(u, along)) < 0.5, apart)) {
      Parted groups = cut(field, sizes, u, moves);
      if (keep_apart(groups, apart ? apart_rule(k.wishes) : k.wishes) && are_legal(k, groups))
        all.push_back(std::move(groups));
    }
  return all;
}

double spacing_to_part(const Wishes& w, std::size_t trenches, std::size_t groups) {
  if (trenches < 2) return at_least_wide(w);
  return at_least_wide(w) +
         more_beside(w) * static_cast<double>(groups - 1) / static_cast<double>(trenches - 1);
}

std::vector<std::vector<std::size_t>> shares(std::size_t all, std::size_t groups, std::size_t most) {
  std::vector<std::vector<std::size_t>> found = {{}};
  if (groups < 2 || all < groups) return {};
  for (std::size_t i = 0; i < groups; ++i) {
    std::vector<std::vector<std::size_t>> longer;
    for (const auto& sizes : found) {
      const std::size_t left = all - std::accumulate(sizes.begin(), sizes.end(), std::size_t{0});
      const std::size_t after = groups - 1 - i;
      for (std::size_t size = after == 0 ? left : 1; size + after <= left; ++size) {
        longer.push_back(sizes);
        longer.back().push_back(size);
      }
    }
    found = std::move(longer);
  }
  const auto uneven = [](const std::vector<std::size_t>& sizes) {
    const auto [low, high] = std::minmax_element(sizes.begin(), sizes.end());
    return *high - *low;
  };
  std::stable_sort(found.begin(), found.end(),
                   [&](const auto& l, const auto& r) { return uneven(l) < uneven(r); });
  if (found.size() > most) found.resize(most);
  return found;
}

}  // namespace underlawn
