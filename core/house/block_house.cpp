// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/block_house.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "base/quantity.h"
#include "base/say.h"
#include "base/typed_text.h"

namespace underlawn {
namespace {

using Q = Quantity;

std::string shown(Q q, double v) {
  return print_quantity(q, v, UnitSystem::metric);
}

// Four digits are enough to see what was typed; U-values and air changes have no quantity of their own.
std::string shown(double v, std::string_view unit) {
  if (!std::isfinite(v)) return say("not a number");
  char text[40];
  std::snprintf(text, sizeof text, "%.4g", v);
  return text + std::string(unit);
}

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"block_house", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

bool above_to(double v, double low, double high) {
  return v > low && v <= high;
}
bool within(double v, double low, double high) {
  return v >= low && v <= high;
}

Result<void> check_surface(const Surface& s, std::size_t number) {
  const std::string name =
      s.name.empty() ? say("surface {}", std::to_string(number)) : say("surface {}", in_quotes(s.name));
  if (!above_to(s.area, 0, 1e5))
    return refuse(trouble(say("area of {}", name), shown(Q::area, s.area),
                          say("more than 0 and at most 100 000 m2"),
                          say("Enter its area, or take the surface out.")));
  if (!above_to(s.u_value, 0, 10))
    return refuse(trouble(say("U-value of {}", name), shown(s.u_value, " W/(m2 K)"),
                          say("more than 0 and at most 10 W/(m2 K)"),
                          say("Enter 1/R: R-20 in Btu/(h ft2 F) is 0.28 W/(m2 K).")));
  return {};
}

Result<void> check_air(const BlockHouse& h) {
  if (!within(h.volume, 0, 1e6) || !within(h.floor_area, 0, 1e5) || !(heated_volume(h) > 0))
    return refuse(trouble(say("heated volume"), shown(Q::volume, heated_volume(h)),
                          say("more than 0 and at most 1 000 000 m3"),
                          say("Enter the heated volume, or the floor area and the ceiling height.")));
  if (h.volume == 0 && !within(h.ceiling_height, 1.8, 12))
    return refuse(trouble(say("ceiling height"), shown(Q::length, h.ceiling_height), say("1.8 m to 12 m"),
                          say("Enter the mean height of the rooms, or the volume.")));
  if (!within(h.air_change, 0, 20))
    return refuse(
        trouble(say("air change"), say("{} per hour", shown(h.air_change, "")), say("0 to 20 per hour"),
                say("A tight house has about 0.2 per hour, a draughty one 1 (common practice, no source).")));
  return {};
}

Result<void> check_gain(const std::string& thing, double w) {
  if (within(w, 0, 1e5)) return {};
  return refuse(
      trouble(thing, shown(Q::power, w), say("0 W to 100 kW"), say("Enter 0 where there are none.")));
}

Result<void> check_temperature(const std::string& thing, double t, double low, double high) {
  if (within(t, low, high)) return {};
  return refuse(trouble(thing, shown(Q::temperature, t),
                        say("{} to {}", shown(Q::temperature, low), shown(Q::temperature, high)),
                        say("Enter the temperature again, with its unit.")));
}

Result<void> check_heating(const BlockHouse& h) {
  if (auto ok = check_gain(say("internal gains"), h.gains); !ok) return ok;
  if (auto ok = check_temperature(say("indoor temperature for heating"), h.indoor_heating, 5, 35); !ok)
    return ok;
  if (auto ok = check_temperature(say("cold design day"), h.outdoor_cold, -70, 60); !ok) return ok;
  const double balance = balance_temperature(h, h.indoor_heating);
  if (h.outdoor_cold < balance) return {};
  return refuse(
      trouble(say("cold design day"), shown(Q::temperature, h.outdoor_cold),
              say("below the balance temperature of {}, down to which the internal gains heat the house",
                  shown(Q::temperature, balance)),
              say("Check the gains, the surfaces and the design day.")));
}

Result<void> check_cooling(const BlockHouse& h) {
  if (!h.cooled) return {};
  if (auto ok = check_gain(say("sun at the warm design day"), h.solar_gains); !ok) return ok;
  if (auto ok = check_gain(say("moisture gains"), h.moisture_gains); !ok) return ok;
  if (auto ok = check_temperature(say("indoor temperature for cooling"), h.indoor_cooling, 5, 35); !ok)
    return ok;
  if (auto ok = check_temperature(say("warm design day"), h.outdoor_warm, -70, 60); !ok) return ok;
  if (h.indoor_cooling < h.indoor_heating)
    return refuse(trouble(say("indoor temperature for cooling"), shown(Q::temperature, h.indoor_cooling),
                          say("not below that for heating, {}", shown(Q::temperature, h.indoor_heating)),
                          say("Heating and cooling would run at once: set them apart.")));
  const double balance = balance_temperature(h, h.indoor_cooling);
  if (h.outdoor_warm > balance) return {};
  return refuse(trouble(say("warm design day"), shown(Q::temperature, h.outdoor_warm),
                        say("above the balance temperature of {}", shown(Q::temperature, balance)),
                        say("Check the warm day, or say that the house is not cooled.")));
}

Result<void> check_house(const BlockHouse& h) {
  if (h.surfaces.empty())
    return refuse(trouble(say("list of surfaces"), say_as("a list", "empty"), say("at least one surface"),
                          say("Enter walls, windows, roof and floor with area and U-value.")));
  for (std::size_t i = 0; i < h.surfaces.size(); ++i)
    if (auto ok = check_surface(h.surfaces[i], i + 1); !ok) return ok;
  if (auto ok = check_air(h); !ok) return ok;
  if (auto ok = check_heating(h); !ok) return ok;
  return check_cooling(h);
}

}  // namespace

double heated_volume(const BlockHouse& h) {
  return h.volume != 0 ? h.volume : h.floor_area * h.ceiling_height;
}

double loss_coefficient(const BlockHouse& h) {
  double sum = 1.2 * 1006 / 3600 * h.air_change * heated_volume(h);
  for (const Surface& s : h.surfaces) sum += s.area * s.u_value;
  return sum;
}

double block_heat_loss(const BlockHouse& h) {
  return loss_coefficient(h) * (h.indoor_heating - h.outdoor_cold);
}

double block_heat_gain(const BlockHouse& h) {
  if (!h.cooled) return 0;
  const double through_envelope = loss_coefficient(h) * (h.outdoor_warm - h.indoor_cooling);
  return std::max(0.0, through_envelope + h.gains + h.solar_gains + h.moisture_gains);
}

double balance_temperature(const BlockHouse& h, double indoor) {
  return indoor - h.gains / loss_coefficient(h);
}

Result<DesignLoad> design_load_from_block(const BlockHouse& h, GainsAtDesign at_design) {
  if (auto ok = check_house(h); !ok) return refuse(ok.error());
  DesignLoad load;
  load.heat_loss = block_heat_loss(h) - (at_design == GainsAtDesign::taken_off ? h.gains : 0);
  load.outdoor_cold = h.outdoor_cold;
  load.balance_heating = balance_temperature(h, h.indoor_heating);
  load.heat_gain = block_heat_gain(h);
  if (h.cooled) load.outdoor_warm = h.outdoor_warm;
  if (h.cooled) load.balance_cooling = balance_temperature(h, h.indoor_cooling);
  if (auto ok = check_load(load); !ok) return refuse(ok.error());
  return load;
}

}  // namespace underlawn
