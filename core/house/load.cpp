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

Result<void> check_side(const std::string& thing, double load, double design, double balance, bool design_below) {
  if (!(load >= 0) || !std::isfinite(load))
    return refuse({"load_not_positive", say("design {}", thing), shown(Quantity::power, load),
                   say("0 W or more"), say("Enter the load of the design day.")});
  const bool wrong_side = design_below ? design >= balance : design <= balance;
  if (!std::isfinite(design) || !std::isfinite(balance) || (load > 0 && wrong_side))
    return refuse({"load_design_day", say("outdoor temperature for the design {}", thing),
                   shown(Quantity::temperature, design),
                   std::string(design_below ? "below" : "above") + " the balance temperature of " +
                       shown(Quantity::temperature, balance),
                   say("Check both temperatures.")});
  return {};
}

// W/K of a load that grows from nothing over `span` K.
double per_kelvin(double load, double span) {
  return load > 0 ? load / span : 0;
}

}  // namespace

Result<void> check_load(const DesignLoad& l) {
  if (auto ok = check_side(say("heat loss"), l.heat_loss, l.outdoor_cold, l.balance_heating, true); !ok)
    return ok;
  return check_side(say("heat gain"), l.heat_gain, l.outdoor_warm, l.balance_cooling, false);
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
