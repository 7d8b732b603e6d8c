// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/tool.h"

#include "canvas/hit.h"

namespace underlawn {

std::vector<Selected> Tool::under(Point at, double pixels, bool derived) const {
  auto all = hits(context_.plan(), derived ? context_.outcome() : nullptr, at, context_.reach(pixels));
  std::erase_if(all, [this](const Selected& s) { return !is_shown(context_.plan(), s, context_.layers()); });
  return all;
}

}  // namespace underlawn
