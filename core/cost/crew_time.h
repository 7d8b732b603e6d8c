// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cost/estimate.h"

namespace underlawn {

struct CrewWork {
  int met_by_hand = 0;
  int joints = 0;
  double test = 0;  // s that the loop is held under pressure
  bool sloped = false;
};

CrewTime crew_time(const Layout& layout, const DigPlan& dig, const Ground& ground, const CrewWork& work,
                   const CrewWishes& crew, const Machine& excavator);

}  // namespace underlawn
