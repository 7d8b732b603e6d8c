// SPDX-License-Identifier: GPL-3.0-or-later
// Edges sorted into square cells, so that a straight leg is compared with the few edges near it.
#pragma once

#include <cstdint>
#include <vector>

#include "plane/point.h"

namespace underlawn {

class EdgeGrid {
 public:
  // An edge is found from every cell within `reach` of it (m).
  EdgeGrid(std::vector<Segment> edges, double reach);

  const std::vector<Segment>& edges() const { return edges_; }
  bool comes_near(Point a, Point b) const;  // whether the leg's extent meets that of the edges

  // Calls visit(edge) for every edge within reach of the leg; may name an edge twice and some a little
  // farther off. Stops when visit returns false and then returns false.
  template <class Visit>
  bool along(Point a, Point b, Visit visit) const {
    return cells(a, b, [&](std::size_t cell) {
      for (std::uint32_t k = starts_[cell]; k < starts_[cell + 1]; ++k)
        if (!visit(edges_[order_[k]])) return false;
      return true;
    });
  }

  // Whether a ray from p crosses an odd number of edges: inside, where the edges bound a region.
  bool odd(Point p) const;

 private:
  struct Span {
    int first, last;  // none where last < first
  };
  int row_of(double y) const;
  int column_of(double x) const;
  Span columns(Point a, Point b, int row) const;  // of the row's cells within reach of the leg
  void lay_out();
  void fill_rows();

  template <class Visit>
  bool cells(Point a, Point b, Visit visit) const {
    if (edges_.empty()) return true;
    const int last = row_of((a.y > b.y ? a.y : b.y) + reach_);
    for (int row = row_of((a.y < b.y ? a.y : b.y) - reach_); row <= last; ++row) {
      const Span span = columns(a, b, row);
      for (int column = span.first; column <= span.last; ++column)
        if (!visit(static_cast<std::size_t>(row) * wide_ + column)) return false;
    }
    return true;
  }

  std::vector<Segment> edges_;
  double reach_;
  Box box_{};
  double cell_ = 1;                                    // m
  int wide_ = 0, high_ = 0;                            // cells
  std::vector<std::uint32_t> starts_, order_;          // by cell
  std::vector<std::uint32_t> row_starts_, row_order_;  // by row, each edge once in a row
};

}  // namespace underlawn
