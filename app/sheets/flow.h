// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks set into columns, pages as many as they need.
#pragma once

#include <QRectF>
#include <vector>

#include "sheets/block.h"

namespace underlawn::sheet {

struct Piece {
  BlockPtr block;
  bool wide = false;   // over all columns
  bool whole = false;  // parted only where a page of its own is too small
};

struct Placed {
  BlockPtr block;
  QRectF room;
};

// Lets a list be filled with blocks that may be null.
void add(std::vector<Piece>& pieces, BlockPtr block, bool wide = false, bool whole = false);

using FlowPage = std::vector<Placed>;

// Into `room` of every page, `columns` side by side. A block higher than a page is parted where it can be,
// else it stands on a page of its own.
std::vector<FlowPage> flow(const std::vector<Piece>& pieces, const QRectF& room, int columns);

// The same in strict order, column after column, each block whole.
std::vector<FlowPage> flow_in_order(const std::vector<BlockPtr>& blocks, const QRectF& room, int columns);

}  // namespace underlawn::sheet
