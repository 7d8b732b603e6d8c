// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/flow.h"

#include <algorithm>

namespace underlawn::sheet {

namespace {

const double kGutter = pt(20);
const double kBetween = pt(11);

class Setter {
 public:
  Setter(const QRectF& room, int columns)
      : room_(room), filled_(static_cast<std::size_t>(columns), room.top()) {
    pages_.emplace_back();
  }

  void set(BlockPtr block, bool wide) {
    while (block) block = wide ? set_wide(block) : set_narrow(block);
  }

  std::vector<FlowPage> take() { return std::move(pages_); }

 private:
  double column_width() const {
    const auto n = static_cast<double>(filled_.size());
    return (room_.width() - (n - 1) * kGutter) / n;
  }

  void turn_page() {
    pages_.emplace_back();
    std::fill(filled_.begin(), filled_.end(), room_.top());
  }

  bool page_is_empty() const { return pages_.back().empty(); }

  // What is left to be set, if anything.
  BlockPtr set_at(const BlockPtr& block, double x, double width, double& y) {
    const double height = block->height(width), left = room_.bottom() - y;
    BlockPtr now = block, rest;
    if (height > left) {
      const auto parts = block->split(width, left);
      if (!parts && !page_is_empty()) return block;
      if (parts) std::tie(now, rest) = *parts;
    }
    const double used = now->height(width);
    pages_.back().push_back({now, QRectF(x, y, width, used)});
    y += used + kBetween;
    return rest;
  }

  BlockPtr set_wide(const BlockPtr& block) {
    double y = *std::max_element(filled_.begin(), filled_.end());
    BlockPtr rest = set_at(block, room_.left(), room_.width(), y);
    std::fill(filled_.begin(), filled_.end(), y);
    if (rest) turn_page();
    return rest;
  }

  BlockPtr set_narrow(const BlockPtr& block) {
    // Whole into the emptiest column; else parted; else on the next page.
    const auto column = std::min_element(filled_.begin(), filled_.end());
    const double x =
        room_.left() + static_cast<double>(column - filled_.begin()) * (column_width() + kGutter);
    const BlockPtr rest = set_at(block, x, column_width(), *column);
    if (rest == block)
      turn_page();
    else if (rest)
      *column = room_.bottom();
    return rest;
  }

  QRectF room_;
  std::vector<double> filled_;  // y down to which each column is full
  std::vector<FlowPage> pages_;
};

}  // namespace

std::vector<FlowPage> flow(const std::vector<Piece>& pieces, const QRectF& room, int columns) {
  Setter setter(room, columns);
  for (const Piece& piece : pieces) setter.set(piece.block, piece.wide);
  return setter.take();
}

}  // namespace underlawn::sheet
