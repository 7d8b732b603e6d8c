// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/crew_wishes.h"

namespace underlawn {

double truck_rate(const CrewWishes& crew) {
  return crew.trucks * crew.truck_load / crew.truck_trip;
}

}  // namespace underlawn
