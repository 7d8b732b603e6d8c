// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/pieces.h"

#include <algorithm>

#include "dig/crew_wishes.h"
#include "dig/shared_stretch.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kShortest = 0.3;  // m, that is worth a step of its own
constexpr double kSameEnd = 1e-3;  // m

EarthWork share_of(const EarthWork& all, double share) {
  EarthWork w = all;
  for (double* value : {&w.length, &w.bank, &w.bedding, &w.loose, &w.backfill, &w.surplus_loose, &w.bank_met,
                        &w.bedding_met, &w.run_bedding, &w.under_run})
    *value *= share;
  return w;
}

DigStep piece(DigKind kind, Polyline line, double width, double depth, Sides sides, double slope) {
  DigStep p;
  p.kind = kind;
  p.line = std::move(line);
  p.width = width;
  p.depth = depth;
  p.sides = sides;
  p.slope = sides == Sides::slope ? slope : 0;
  p.top = width + 2 * p.slope * depth;
  p.trencher = width < kNarrowestBucket;
  return p;
}

struct Conduits {
  DigKind kind = DigKind::run;
  double depth = 0;  // m, where it is deepest
};

// One line in parts of one section, sharing its earth by length.
void add_parts(std::vector<DigStep>& pieces, const Conduits& which, const std::vector<Polyline>& lines,
               const EarthWork& all, const Wishes& wishes, const DigWishes& how, double slope) {
  double sum = 0;
  for (const Polyline& line : lines) sum += length(line);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    DigStep p = piece(which.kind, lines[i], wishes.run_width, which.depth, how.run_sides, slope);
    p.part = lines.size() > 1 ? static_cast<int>(i) + 1 : 0;
    p.work = share_of(all, length(lines[i]) / sum);
    pieces.push_back(std::move(p));
  }
}

double deepest_leg(const Header& header, double wished) {
  double deepest = header.depths.empty() ? wished : 0;
  for (double depth : header.depths) deepest = std::max(deepest, depth);
  return deepest;
}

std::vector<Polyline> long_enough(const std::vector<Polyline>& lines) {
  std::vector<Polyline> kept;
  for (const Polyline& line : lines)
    if (line.size() > 1 && length(line) > kShortest) kept.push_back(line);
  return kept;
}

// Lines that go on where another ends, as one.
std::vector<Polyline> chained(std::vector<Polyline> lines) {
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (std::size_t j = 0; j < lines.size(); ++j) {
      if (j == i || distance(lines[i].back(), lines[j].front()) > kSameEnd) continue;
      lines[i].insert(lines[i].end(), lines[j].begin() + 1, lines[j].end());
      lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(j));
      return chained(std::move(lines));
    }
  return lines;
}

}  // namespace

Ring footprint(const DigStep& piece) {
  return strip_along(piece.line, piece.top);
}

std::vector<DigStep> pieces_of(const Layout& layout, const DigPlan& dig, const Wishes& wishes,
                               const DigWishes& how) {
  std::vector<DigStep> pieces;
  for (std::size_t i = 0; i < layout.trenches.size(); ++i) {
    const Trench& t = layout.trenches[i];
    const double deepest = i < dig.floors.size() ? dig.floors[i].deepest : t.depth;
    DigStep p = piece(DigKind::trench, middle_line(t), t.width, deepest, how.coil_sides, dig.slope);
    p.trench = t.number;
    p.work = dig.trenches[i];
    pieces.push_back(std::move(p));
  }
  const auto runs = long_enough(parts_shared(layout.run.line, layout.trenches).own);
  add_parts(pieces, {DigKind::run, layout.run.depth.value_or(wishes.run_depth)}, runs, dig.run, wishes, how,
            dig.slope);
  add_parts(pieces, {DigKind::header, deepest_leg(layout.header, wishes.run_depth)},
            chained(long_enough(layout.header.legs)), dig.header, wishes, how, dig.slope);
  return pieces;
}

}  // namespace underlawn
