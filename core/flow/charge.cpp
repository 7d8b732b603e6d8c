// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/charge.h"

#include <algorithm>
#include <array>
#include <boost/math/tools/roots.hpp>

#include "base/quantity.h"
#include "base/say.h"
#include "flow/network.h"
#include "flow/pressure_test.h"
#include "pipe/liquid_volume.h"

namespace underlawn {
namespace {

constexpr double kHalfYear = 365.25 / 2 * 86400, kMonth = 30 * 86400.0, kMostCharge = 5e6,
                 kVacuum = -0.99 * kAtmosphere;
constexpr double kWater = 1000;  // kg/m3

std::string print(double pressure) {
  return print_quantity(Quantity::pressure, pressure, UnitSystem::metric);
}

// A season or the fill: what the loop takes per Pa, and what it has drawn since the fill.
struct Moment {
  double per_pascal = 0;  // m3/Pa
  double drawn = 0;       // m3
};

Result<Moment> moment(const ExpansionLoop& loop, double fill, double now, double seconds) {
  const auto change = volume_change(loop, fill, now);
  if (!change) return tl::unexpected(change.error());
  const auto multiplier = modulus_multiplier(now);
  if (!multiplier) return tl::unexpected(multiplier.error());
  const double c = loop_compliance(loop.loop, loop.creep.poisson);
  return Moment{loop_volume(loop.loop) *
                    (c / (creep_modulus(loop.creep, seconds) * *multiplier) + 1 / kLiquidBulkModulus),
                change->drawn()};
}

struct Tank {
  double volume = 0, precharge = 0;
  double liquid(double p) const {
    return p <= precharge ? 0 : volume * (1 - (precharge + kAtmosphere) / (p + kAtmosphere));
  }
};

struct Year {
  Moment fill, winter, summer, early_winter, early_summer;

  static double pressure(const Moment& m, const Tank& tank, double contents) {
    const auto excess = [&](double p) { return m.per_pascal * p + tank.liquid(p) + m.drawn - contents; };
    if (excess(kVacuum) >= 0) return kVacuum;
    double high = 1e5;
    while (excess(high) < 0) high *= 2;
    std::uintmax_t steps = 80;
    return boost::math::tools::toms748_solve(excess, kVacuum, high,
                                             boost::math::tools::eps_tolerance<double>(45), steps)
        .first;
  }

  Charge charged(double at_fill, const Tank& tank) const {
    const double contents = fill.per_pascal * at_fill + tank.liquid(at_fill);
    Charge c{at_fill, pressure(winter, tank, contents), pressure(summer, tank, contents)};
    c.highest = std::max({at_fill, c.winter, c.summer, pressure(early_winter, tank, contents),
                          pressure(early_summer, tank, contents)});
    c.tank = tank.volume;
    c.vacuum = std::min(c.winter, c.summer) <= kVacuum;
    return c;
  }
};

double lowest(const Charge& c) {
  return std::min({c.at_fill, c.winter, c.summer});
}
Result<void> check_wishes(const ChargeWishes& w) {
  const auto within = [](double v, double low, double high) { return v >= low && v <= high; };
  const auto trouble = [](const std::string& thing, std::string value, const std::string& bound) {
    return refuse({"charge_wish", thing, std::move(value), bound, say("Correct the entry.")});
  };
  const auto metres = [](double m) { return print_quantity(Quantity::length, m, UnitSystem::metric); };
  if (!within(w.least_at_top, 0, 1e6))
    return trouble(say("least pressure at the highest point"), print(w.least_at_top), say("0 to 1 MPa"));
  if (!within(w.top_above_gauge, 0, 100))
    return trouble(say("height of the highest point over the gauge"), metres(w.top_above_gauge),
                   say("0 to 100 m"));
  if (!within(w.bottom_below_gauge, 0, 300))
    return trouble(say("depth of the lowest point below the gauge"), metres(w.bottom_below_gauge),
                   say("0 to 300 m"));
  if (!within(w.tank, 0, 1000))
    return trouble(say("volume of the expansion tank"),
                   print_quantity(Quantity::fluid_volume, w.tank, UnitSystem::metric), say("0 to 1000 m3"));
  if (w.tank_precharge && !within(*w.tank_precharge, 0, 1e6))
    return trouble(say("precharge of the expansion tank"), print(*w.tank_precharge), say("0 to 1 MPa"));
  if (!within(w.settling, 60, 3e7))
    return trouble(say("time the loop settles under pressure"),
                   print_quantity(Quantity::duration, w.settling, UnitSystem::metric),
                   say("1 min to 1 year"));
  return {};
}

double least_at_gauge(const ChargeWishes& w) {
  return w.least_at_top + kWater * kGravity * w.top_above_gauge;
}
double most_at_gauge(const ChargeWishes& w) {
  return w.most_at_bottom - kWater * kGravity * w.bottom_below_gauge;
}

Tank tank_of(const ChargeWishes& w, double volume) {
  return {volume, w.tank_precharge.value_or(least_at_gauge(w))};
}

Result<Year> year_of(const ExpansionLoop& loop, const Seasons& s, const ChargeWishes& w) {
  if (auto ok = check_wishes(w); !ok) return tl::unexpected(ok.error());
  if (auto ok = check_seasons(s); !ok) return tl::unexpected(ok.error());
  const std::pair<double, double> moments[] = {{s.fill, w.settling},
                                               {s.coldest, kHalfYear},
                                               {s.warmest, kHalfYear},
                                               {s.coldest, kMonth},
                                               {s.warmest, kMonth}};
  std::array<Moment, 5> m;
  for (std::size_t i = 0; i < m.size(); ++i) {
    const auto found = moment(loop, s.fill, moments[i].first, moments[i].second);
    if (!found) return tl::unexpected(found.error());
    m[i] = *found;
  }
  return Year{m[0], m[1], m[2], m[3], m[4]};
}

// The least charge for a tank; above kMostCharge where none is enough.
Charge least_for(const Year& year, const Tank& tank, double least) {
  const auto excess = [&](double p) { return lowest(year.charged(p, tank)) - least; };
  if (excess(least) >= 0) return year.charged(least, tank);
  if (excess(kMostCharge) < 0) return year.charged(2 * kMostCharge, tank);
  std::uintmax_t steps = 80;
  return year.charged(boost::math::tools::toms748_solve(excess, least, kMostCharge,
                                                        boost::math::tools::eps_tolerance<double>(40), steps)
                          .second,
                      tank);
}

Trouble too_high(const ChargeWishes& w, const Charge& charge, const std::string& advice) {
  return {"charge_too_high", say("highest pressure of the year at the gauge"), print(charge.highest),
          say("at most {}", print(most_at_gauge(w))), advice};
}

}  // namespace

Result<Charge> charge_to(const ExpansionLoop& loop, const Seasons& seasons, const ChargeWishes& wishes,
                         double at_fill) {
  const auto year = year_of(loop, seasons, wishes);
  if (!year) return tl::unexpected(year.error());
  if (!(at_fill >= 0 && at_fill <= kMostCharge))
    return refuse({"charge_pressure", say("charging pressure"), print(at_fill),
                   say("0 to {}", print(kMostCharge)), say("Enter the gauge pressure at the fill.")});
  return year->charged(at_fill, tank_of(wishes, wishes.tank));
}

Result<Charge> least_charge(const ExpansionLoop& loop, const Seasons& seasons, const ChargeWishes& wishes) {
  const auto year = year_of(loop, seasons, wishes);
  if (!year) return tl::unexpected(year.error());
  const double least = least_at_gauge(wishes), most = most_at_gauge(wishes);
  if (!(least < most && most <= kMostCharge))
    return refuse({"charge_no_room", say("most pressure at the gauge"), print(most),
                   say("more than the least, {}, and at most {}", print(least), print(kMostCharge)),
                   say("Allow more pressure at the lowest point, or less at the highest.")});
  const auto with = [&](double volume) { return least_for(*year, tank_of(wishes, volume), least); };
  const Charge given = with(wishes.tank);
  if (given.highest <= most) return given;
  if (wishes.tank > 0)
    return refuse(too_high(wishes, given, say("Take a larger tank, or none and let one be worked out.")));
  double small = 0, large = loop_volume(loop.loop);
  if (with(large).highest > most)
    return refuse(
        too_high(wishes, with(large), say("Fill at a milder temperature, or make the loop an open one.")));
  while (large - small > 1e-4 * large) {
    const double middle = (small + large) / 2;
    (with(middle).highest > most ? small : large) = middle;
  }
  Charge charge = with(large);
  charge.tank_needed = true;
  return charge;
}

}  // namespace underlawn
