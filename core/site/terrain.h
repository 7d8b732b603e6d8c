// SPDX-License-Identifier: GPL-3.0-or-later
// The surface of the ground: flat triangles between spot heights (Delaunay). Beyond them the ground is as
// high as at the nearest place that is known.
#pragma once

#include <cstdint>
#include <vector>

#include "plane/triangles.h"
#include "site/site.h"

namespace underlawn {

// Where a line over the ground is and how high.
struct Station {
  double along = 0;   // m from the line's start, level
  double height = 0;  // m
  bool operator==(const Station&) const = default;
};

// A line over the ground, straight between its stations.
struct GroundLine {
  std::vector<Station> stations;             // at least two; first and last are the line's ends
  double lowest = 0, highest = 0, mean = 0;  // m; mean over the length
  double length = 0;                         // m, level
  double along_slope = 0;                    // m, measured on the ground
  bool operator==(const GroundLine&) const = default;
};

class Terrain {
 public:
  Terrain() = default;
  explicit Terrain(std::vector<SpotHeight> heights);

  bool is_known() const { return !heights_.empty(); }
  double height(Point p) const;                  // m; 0 where nothing is known
  Point steepest(Point p) const;                 // m per m, uphill; zero beyond the triangles
  GroundLine along(const Polyline& line) const;  // at least two points

  const std::vector<SpotHeight>& heights() const { return heights_; }
  const std::vector<Triangle>& triangles() const { return triangles_; }
  double lowest() const { return lowest_; }    // m, of the spot heights
  double highest() const { return highest_; }  // m

  bool operator==(const Terrain& other) const { return heights_ == other.heights_; }

 private:
  struct Edge {
    int a, b;
    bool outer;
  };
  void find_edges();
  void sort_into_cells();
  const Triangle* triangle_at(Point p) const;
  double beyond(Point p) const;
  Point at(int corner) const { return heights_[static_cast<std::size_t>(corner)].at; }
  double level(int corner) const { return heights_[static_cast<std::size_t>(corner)].height; }

  std::vector<SpotHeight> heights_;
  std::vector<Triangle> triangles_;
  std::vector<Edge> edges_;
  double lowest_ = 0, highest_ = 0;
  Point low_;        // corner of the cells
  double cell_ = 1;  // m
  int columns_ = 0, rows_ = 0;
  std::vector<std::vector<std::uint32_t>> cells_;  // triangles whose extent meets the cell
};

struct Contour {
  double height = 0;  // m
  Polyline line;      // closed where its ends are one place
  bool operator==(const Contour&) const = default;
};

// At whole multiples of `interval` (m, > 0), lowest first. At most kMostContourLevels levels: none where the
// interval is too small for that.
std::vector<Contour> contours(const Terrain& terrain, double interval);
inline constexpr int kMostContourLevels = 400;

}  // namespace underlawn
