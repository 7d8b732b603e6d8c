// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/limits.h"

#include <algorithm>

#include "base/say.h"
#include "house/calendar.h"

namespace underlawn {

namespace {

struct Extreme {
  double value;
  int hour = -1;
};

bool asks(const Surroundings& s, int h, bool heating) {
  if (!s.ground_hours.empty()) return heating ? s.ground_hours[h] > 0 : s.ground_hours[h] < 0;
  return (heating ? s.house.heating : s.house.cooling)[h] > 0;
}

Extreme extreme_ground(const Plan& plan, const Surroundings& s, bool heating) {
  Extreme out{heating ? 1e9 : -1e9};
  for (int h = 0; h < kYearHours; ++h) {
    if (!asks(s, h, heating)) continue;
    const double t =
        undisturbed_temperature(s.climate, s.soil.diffusivity(), plan.wishes.trench_depth, (h + 1) / 24.0);
    if (heating ? t < out.value : t > out.value) out = {t, h};
  }
  return out;
}

Trouble beyond(const Plan& plan, const Extreme& ground, bool heating) {
  const auto shown = [&](double t) { return print_quantity(Quantity::temperature, t, plan.units); };
  const double limit = heating ? plan.thermal.coldest_allowed : plan.thermal.warmest_allowed;
  return {
      heating ? "limit_warmer_than_ground" : "limit_colder_than_ground",
      heating ? say("Coldest entering water allowed") : say("Warmest entering water allowed"), shown(limit),
      heating ? say("below the untouched ground at the pipe, which falls to {} on {}", shown(ground.value),
                    date_of_day(ground.hour / 24))
              : say("above the untouched ground at the pipe, which rises to {} on {}", shown(ground.value),
                    date_of_day(ground.hour / 24)),
      heating
          ? say("Lower the limit or dig deeper: no length of pipe makes the water warmer than the ground.")
          : say("Raise the limit or dig deeper: no length of pipe makes the water colder than the ground.")};
}

}  // namespace

std::optional<Trouble> beyond_the_ground(const Plan& plan, const Surroundings& s) {
  const Extreme cold = extreme_ground(plan, s, true), warm = extreme_ground(plan, s, false);
  if (cold.hour >= 0 && cold.value <= plan.thermal.coldest_allowed) return beyond(plan, cold, true);
  if (warm.hour >= 0 && warm.value >= plan.thermal.warmest_allowed) return beyond(plan, warm, false);
  return std::nullopt;
}

}  // namespace underlawn
