// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/alternatives.h"

#include <cmath>

namespace underlawn {

namespace {

constexpr double kFoot = 0.3048;

std::vector<double> usual_coils(UnitSystem units) {
  if (units == UnitSystem::us) return {500 * kFoot, 600 * kFoot, 800 * kFoot, 1000 * kFoot};
  return {150, 180, 240, 300};
}

std::vector<double> deeper(UnitSystem units) {
  if (units == UnitSystem::us) return {1 * kFoot, 2 * kFoot};
  return {0.3, 0.6};
}

std::vector<double> wider(UnitSystem units) {
  if (units == UnitSystem::us) return {2 * kFoot, 4 * kFoot};
  return {0.6, 1.2};
}

}  // namespace

std::vector<Alternative> alternatives_to(const Plan& plan, const Coil& drawn) {
  std::vector<Alternative> out;
  for (double length : usual_coils(plan.units)) {
    if (std::abs(length - drawn.coil_length) < 0.01 * length) continue;
    Wishes w = plan.wishes;
    w.unknown = is_straight(w.pattern) ? CoilUnknown::trench_length : CoilUnknown::pitch;
    w.trench_length = drawn.trench_length;
    w.coil_length = length;
    out.push_back({Alternative::Kind::coil_length, length, w, {}, {}});
  }
  for (double more : deeper(plan.units)) {
    Wishes w = plan.wishes;
    w.trench_depth += more;
    out.push_back({Alternative::Kind::deeper, more, w, {}, {}});
  }
  for (double more : wider(plan.units)) {
    Wishes w = plan.wishes;
    w.spacing += more;
    out.push_back({Alternative::Kind::wider, more, w, {}, {}});
  }
  return out;
}

}  // namespace underlawn
