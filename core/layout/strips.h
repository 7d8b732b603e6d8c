// SPDX-License-Identifier: GPL-3.0-or-later
// The two grounds of a search in one bearing, turned so that trenches lie along x, cut into rows and columns.
// A head of a trench needs room for the middle line of a header.
#pragma once

#include <optional>

#include "layout/arrangement.h"
#include "layout/cuts.h"

namespace underlawn {

class Strips {
 public:
  Strips(const Search& search, const Bearing& bearing);

  const Search& search() const { return search_; }
  const TrenchSize& size() const { return search_.size; }
  const Turn& turn() const { return turn_; }
  Interval along() const { return along_; }    // x that the lot covers
  Interval across() const { return across_; }  // y that it covers

  // Stretches of x in which a trench with its middle line at y is free, each at least `shortest` long. Exact.
  Free stretches(double y, double shortest) const;
  // x at which a trench with its middle line at y may begin, so that a header reaches one of its ends. Exact.
  void places(double y, Free& out) const;
  // y of the middle line of a trench from x on; with a header's room at x, or at x + length. Exact.
  void rows(double x, Free& out) const;
  void heads(double x, Free& out) const;
  void row_heads(double y, Free& out) const;  // x where a header has room at that height
  bool head_is_free(Point turned) const;

  // x where an obstacle just stops being in a trench's way, or a header's; those of sides square to the
  // trenches alone where not `all`.
  std::vector<double> column_events(bool all) const;
  // y of the middle line where a trench just touches what it keeps off, at either end of each thing.
  void add_row_events(std::vector<double>& y) const;

 private:
  void stretches(double y, double shortest, Free& out) const;
  const Cuts& made(std::optional<Cuts>& cuts, Axis axis, bool for_header) const;
  const Cuts& rows_cut() const { return made(rows_, Axis::x, false); }
  const Cuts& head_rows_cut() const { return made(head_rows_, Axis::x, true); }
  const Cuts& columns_cut() const { return made(columns_, Axis::y, false); }
  const Cuts& head_columns_cut() const { return made(head_columns_, Axis::y, true); }

  const Search& search_;
  Turn turn_;
  mutable std::optional<Cuts> rows_, head_rows_, columns_, head_columns_;  // made when first asked for
  Interval along_, across_;
};

}  // namespace underlawn
