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

  // Whatever fits whole goes on the page, in order; only then is one parted, and then the page turned. So a
  // high block leaves no hole that a later, lower one could have filled.
  void set_all(std::vector<Piece> pending) {
    while (!pending.empty()) {
      const bool higher_than_a_page = page_is_empty() && !fits_a_page(pending.front());
      const auto whole = higher_than_a_page ? pending.end()
                                            : std::find_if(pending.begin(), pending.end(),
                                                           [&](const Piece& p) { return set_whole(p); });
      if (whole != pending.end()) {
        pending.erase(whole);
      } else if (BlockPtr rest = set_part(pending.front())) {
        if (rest == pending.front().block) turn_page();
        pending.front().block = rest;
      } else {
        pending.erase(pending.begin());
      }
    }
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
  bool fits_a_page(const Piece& piece) const {
    return piece.block->height(piece.wide ? room_.width() : column_width()) <= room_.height();
  }

  struct Column {
    double x, width;
    double* filled;
  };

  void put(const BlockPtr& block, const Piece& piece, const Column& column) {
    const double height = block->height(column.width);
    pages_.back().push_back({block, QRectF(column.x, *column.filled, column.width, height)});
    *column.filled += height + kBetween;
    if (piece.wide) std::fill(filled_.begin(), filled_.end(), *column.filled);
  }

  // The emptiest, or all together under the fullest.
  Column column_for(const Piece& piece) {
    if (piece.wide) {
      filled_.front() = *std::max_element(filled_.begin(), filled_.end());
      return {room_.left(), room_.width(), &filled_.front()};
    }
    const auto column = std::min_element(filled_.begin(), filled_.end());
    const double step = column_width() + kGutter;
    return {room_.left() + static_cast<double>(column - filled_.begin()) * step, column_width(), &*column};
  }

  bool set_whole(const Piece& piece) {
    const std::vector<double> before = filled_;
    const Column column = column_for(piece);
    if (*column.filled + piece.block->height(column.width) > room_.bottom()) {
      filled_ = before;
      return false;
    }
    put(piece.block, piece, column);
    return true;
  }

  // What comes after is read to the right of it or on the next page, never to its left.
  void close_up_to(const double* filled) {
    for (double& column : filled_) {
      column = room_.bottom();
      if (&column == filled) return;
    }
  }

  // The columns in which a part may stand, as they are read.
  std::vector<Column> columns_for(const Piece& piece) {
    if (piece.wide) return {column_for(piece)};
    std::vector<Column> all;
    const double step = column_width() + kGutter;
    for (std::size_t i = 0; i < filled_.size(); ++i)
      all.push_back({room_.left() + static_cast<double>(i) * step, column_width(), &filled_[i]});
    return all;
  }

  // The rest that did not fit; the block itself where nothing of it did; nothing where all is set.
  BlockPtr set_part(const Piece& piece) {
    const Column column = column_for(piece);
    // What fits a page of its own is not torn, unless it is long and would leave a large hole.
    const bool torn =
        page_is_empty() || (!piece.whole && piece.block->height(column.width) > 0.5 * room_.height());
    for (const Column& at : torn ? columns_for(piece) : std::vector<Column>{}) {
      const auto parts = piece.block->split(at.width, room_.bottom() - *at.filled);
      if (!parts) continue;
      put(parts->first, piece, at);
      close_up_to(at.filled);
      return parts->second;
    }
    if (!page_is_empty()) return piece.block;
    put(piece.block, piece, column);  // higher than a page and in one piece
    return nullptr;
  }

  QRectF room_;
  std::vector<double> filled_;  // y down to which each column is full
  std::vector<FlowPage> pages_;
};

}  // namespace

void add(std::vector<Piece>& pieces, BlockPtr block, bool wide, bool whole) {
  if (block) pieces.push_back({std::move(block), wide, whole});
}

std::vector<FlowPage> flow(const std::vector<Piece>& pieces, const QRectF& room, int columns) {
  std::vector<Piece> made = pieces;
  for (Piece& piece : made)
    if (BlockPtr block = piece.block->for_pages(room.size())) piece.block = block;
  Setter setter(room, columns);
  setter.set_all(std::move(made));
  return setter.take();
}

std::vector<FlowPage> flow_in_order(const std::vector<BlockPtr>& blocks, const QRectF& room, int columns) {
  const double width = (room.width() - (columns - 1) * kGutter) / columns;
  std::vector<FlowPage> pages(1);
  int column = 0;
  double y = room.top();
  std::vector<BlockPtr> left(blocks.rbegin(), blocks.rend());
  while (!left.empty()) {
    BlockPtr block = left.back();
    left.pop_back();
    if (block->height(width) > room.height()) {
      if (const auto parts = block->split(width, room.bottom() - y)) {
        block = parts->first;
        left.push_back(parts->second);
      }
    }
    const double height = block->height(width);
    if (y + height > room.bottom() && y > room.top()) {
      y = room.top();
      if (++column == columns) {
        column = 0;
        pages.emplace_back();
      }
    }
    pages.back().push_back({block, QRectF(room.left() + column * (width + kGutter), y, width, height)});
    y += height;
  }
  return pages;
}

}  // namespace underlawn::sheet
