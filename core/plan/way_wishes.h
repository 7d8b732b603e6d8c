// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/ways.h"

namespace underlawn {

struct WayWishes {
  WayKind kind = WayKind::as_planned;
  std::string sentence;
  Wishes wishes;
};

// What is tried beside a plan that solves to `own`, in a fixed order; not yet solved. What the designer holds
// is kept where the kind allows it: locked trenches always, header line and places of the run where the field
// stays where it is.
std::vector<WayWishes> other_ways(const Plan& plan, const Outcome& own, const std::stop_token& stop = {});

}  // namespace underlawn
