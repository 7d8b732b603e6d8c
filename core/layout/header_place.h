// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "field/trench.h"

namespace underlawn {

// Where a head is met when the header is followed from the run's end, leg by leg. A head on a branch counts
// where the branch leaves, just behind a head that lies there.
struct HeaderPlace {
  std::size_t leg = 0;  // 0: at the run's end
  double along = 0;     // m
  bool branch = false;
  auto operator<=>(const HeaderPlace&) const = default;
};

HeaderPlace place_on_header(const Header& header, Point run_end, Point head);

}  // namespace underlawn
