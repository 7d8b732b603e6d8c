// SPDX-License-Identifier: GPL-3.0-or-later
// The cheapest supply run by a visibility graph of its own: ground by GEOS, every pair of corners in sight of
// each other, Dijkstra. Only the prices of the cost model and the clearances in force are the program's.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "layout/layout.h"

namespace underlawn::sample {

struct ReferenceWay {
  Polyline line;
  double cost = 0;  // m of plain digging
};

// For a layout aimed at least digging, with nothing locked and no bends. Its ground is never smaller than
// what is allowed: curves are sixteen chords to a quarter, inside the curve. A way bends at the corners of
// that and at those of six tangents to a quarter, outside it: where bends cost, one beyond a curve beats many
// along it. A crossing of a utility at a slant is charged what it is worth to avoid.
class RunReference {
 public:
  RunReference(const Site& site, const Wishes& wishes, const Layout& layout);
  ~RunReference();

  // Between two places, or from a place to the nearest or cheapest of a header that is one straight line.
  // Nothing where every way costs more than `at_most`.
  std::optional<ReferenceWay> best(Point from, Point to, double at_most) const;
  std::optional<ReferenceWay> best(Point from, const Segment& header, double at_most) const;
  double cost(const Polyline& line) const;               // of any line, by the same prices
  bool free(const Polyline& line, double beyond) const;  // inside the ground, but for so many metres

 private:
  class Ground;
  std::unique_ptr<Ground> ground_;
};

}  // namespace underlawn::sample
