// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/load.h"

#include <algorithm>
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

std::string shown(Quantity q, double v) {
  return print_quantity(q, v, UnitSystem::metric);
}

// One side of the load: what the house loses in the cold, or gains in the warm.
struct Side {
  std::string load;  // what each is called
  std::string outdoor;
  bool cold;
};

std::string off_balance(const Side& side, double balance) {
  const std::string at = shown(Quantity::temperature, balance);
  return side.cold ? say("below the balance temperature of {}", at)
                   : say("above the balance temperature of {}", at);
}

Result<void> check_side(const Side& side, double load, double design, double balance) {
  if (!(load >= 0) || !std::isfinite(load))
    return refuse({"load_not_positive", side.load, shown(Quantity::power, load), say("0 W or more"),
                   say("Enter the load of the design day.")});
  const bool wrong_side = side.cold ? design >= balance : design <= balance;
  if (!std::isfinite(design) || !std::isfinite(balance) || (load > 0 && wrong_side))
    return refuse({"load_design_day", side.outdoor, shown(Quantity::temperature, design),
                   off_balance(side, balance), say("Check both temperatures.")});
  return {};
}

// W/K of a load that grows from nothing over `span` K.
double per_kelvin(double load, double span) {
  return load > 0 ? load / span : 0;
}

}  // namespace

Result<void> check_load(const DesignLoad& l) {
  const Side cold{say("design heat loss"), say("outdoor temperature for the design heat loss"), true};
  const Side warm{say("design heat gain"), say("outdoor temperature for the design heat gain"), false};
  if (auto ok = check_side(cold, l.heat_loss, l.outdoor_cold, l.balance_heating); !ok) return ok;
  return check_side(warm, l.heat_gain, l.outdoor_warm, l.balance_cooling);
}

HourlyLoad hourly_load(const DesignLoad& l, const WeatherYear& weather) {
  const double warm = per_kelvin(l.heat_loss, l.balance_heating - l.outdoor_cold);
  const double cool = per_kelvin(l.heat_gain, l.outdoor_warm - l.balance_cooling);
  HourlyLoad out;
  for (double t : weather.outdoor) {
    out.heating.push_back(std::max(0.0, warm * (l.balance_heating - t)));
    out.cooling.push_back(std::max(0.0, cool * (t - l.balance_cooling)));
  }
  return out;
}

}  // namespace underlawn
