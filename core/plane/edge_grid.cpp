// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/edge_grid.h"

#include <algorithm>
#include <cmath>

namespace underlawn {
namespace {

constexpr int kMostCells = 256;  // along a side

// Entries (bucket, edge) in rising order to starts by bucket and edges.
void bucket(std::vector<std::pair<std::uint32_t, std::uint32_t>>& entries, std::size_t buckets,
            std::vector<std::uint32_t>& starts, std::vector<std::uint32_t>& order) {
  std::sort(entries.begin(), entries.end());
  starts.assign(buckets + 1, 0);
  order.clear();
  for (const auto& [b, edge] : entries) {
    ++starts[b + 1];
    order.push_back(edge);
  }
  for (std::size_t b = 0; b < buckets; ++b) starts[b + 1] += starts[b];
}

}  // namespace

EdgeGrid::EdgeGrid(std::vector<Segment> edges, double reach) : edges_(std::move(edges)), reach_(reach) {
  if (edges_.empty()) return;
  lay_out();
  std::vector<std::pair<std::uint32_t, std::uint32_t>> entries;
  for (std::uint32_t i = 0; i < edges_.size(); ++i)
    cells(edges_[i].a, edges_[i].b, [&](std::size_t cell) {
      entries.push_back({static_cast<std::uint32_t>(cell), i});
      return true;
    });
  bucket(entries, static_cast<std::size_t>(wide_) * high_, starts_, order_);
  fill_rows();
}

// About two cells for an edge, square.
void EdgeGrid::lay_out() {
  box_ = {edges_.front().a, edges_.front().a};
  for (const Segment& e : edges_)
    for (Point p : {e.a, e.b}) {
      box_.low = {std::min(box_.low.x, p.x), std::min(box_.low.y, p.y)};
      box_.high = {std::max(box_.high.x, p.x), std::max(box_.high.y, p.y)};
    }
  const double width = box_.high.x - box_.low.x + 2 * reach_, height = box_.high.y - box_.low.y + 2 * reach_;
  const double wanted = std::sqrt(width * height / (2.0 * static_cast<double>(edges_.size())));
  cell_ = std::max({wanted, width / kMostCells, height / kMostCells, 10 * reach_});
  wide_ = std::max(1, static_cast<int>(std::ceil(width / cell_)));
  high_ = std::max(1, static_cast<int>(std::ceil(height / cell_)));
}

void EdgeGrid::fill_rows() {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> entries;
  for (std::uint32_t i = 0; i < edges_.size(); ++i) {
    const auto [low, high] = std::minmax(edges_[i].a.y, edges_[i].b.y);
    for (int row = row_of(low); row <= row_of(high); ++row)
      entries.push_back({static_cast<std::uint32_t>(row), i});
  }
  bucket(entries, static_cast<std::size_t>(high_), row_starts_, row_order_);
}

bool EdgeGrid::comes_near(Point a, Point b) const {
  return !edges_.empty() && std::max(a.x, b.x) >= box_.low.x - reach_ &&
         std::min(a.x, b.x) <= box_.high.x + reach_ && std::max(a.y, b.y) >= box_.low.y - reach_ &&
         std::min(a.y, b.y) <= box_.high.y + reach_;
}

int EdgeGrid::row_of(double y) const {
  return static_cast<int>(std::clamp((y - box_.low.y + reach_) / cell_, 0.0, high_ - 1.0));
}
int EdgeGrid::column_of(double x) const {
  return static_cast<int>(std::clamp((x - box_.low.x + reach_) / cell_, 0.0, wide_ - 1.0));
}

EdgeGrid::Span EdgeGrid::columns(Point a, Point b, int row) const {
  if (a.y > b.y) std::swap(a, b);
  // The part of the leg within reach of the row; the outermost rows also stand for all beyond them.
  const double low = row == 0 ? a.y : box_.low.y - reach_ + row * cell_ - reach_;
  const double high = row == high_ - 1 ? b.y : box_.low.y + (row + 1) * cell_;
  double from = a.x, to = b.x;
  if (const double rise = b.y - a.y; rise > 0) {
    const auto x_at = [&](double y) { return a.x + std::clamp((y - a.y) / rise, 0.0, 1.0) * (b.x - a.x); };
    from = x_at(low);
    to = x_at(high);
  }
  // What is within reach of a point of this row's cells is within reach of the row, and that far aside at
  // most.
  return {column_of(std::min(from, to) - reach_), column_of(std::max(from, to) + reach_)};
}

bool EdgeGrid::odd(Point p) const {
  if (edges_.empty() || !(p.y >= box_.low.y && p.y <= box_.high.y)) return false;
  bool inside = false;
  const auto row = static_cast<std::size_t>(row_of(p.y));
  for (std::uint32_t k = row_starts_[row]; k < row_starts_[row + 1]; ++k) {
    const auto& [a, b] = edges_[row_order_[k]];
    if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

}  // namespace underlawn
