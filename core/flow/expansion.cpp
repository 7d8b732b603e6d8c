// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/expansion.h"

#include <algorithm>

#include "base/quantity.h"
#include "base/say.h"
#include "pipe/liquid_volume.h"

namespace underlawn {

Result<void> check_seasons(const Seasons& s) {
  if (s.coldest <= s.fill && s.fill <= s.warmest) return {};
  const auto print = [](double t) { return print_quantity(Quantity::temperature, t, UnitSystem::metric); };
  return refuse({"expansion_seasons", say("temperature of the loop when filled"), print(s.fill),
                 say("from the coldest, {}, to the warmest, {}", print(s.coldest), print(s.warmest)),
                 say("Enter the loop's temperatures: coldest in winter, when filled, warmest in summer.")});
}

Result<VolumeChange> volume_change(const ExpansionLoop& loop, double from, double to) {
  if (auto ok = check_loop(loop.loop); !ok) return tl::unexpected(ok.error());
  if (auto ok = check_creep(loop.creep); !ok) return tl::unexpected(ok.error());
  const auto liquid = liquid_growth(loop.fluid, loop.mass_fraction, from, to);
  if (!liquid) return tl::unexpected(liquid.error());
  const double volume = loop_volume(loop.loop);
  return VolumeChange{volume * bore_expansion(loop.hold, loop.creep.poisson) * (to - from), volume * *liquid};
}

Result<OpenLoop> open_loop(const ExpansionLoop& loop, const Seasons& seasons) {
  if (auto ok = check_seasons(seasons); !ok) return tl::unexpected(ok.error());
  const auto winter = volume_change(loop, seasons.fill, seasons.coldest);
  if (!winter) return tl::unexpected(winter.error());
  const auto summer = volume_change(loop, seasons.fill, seasons.warmest);
  if (!summer) return tl::unexpected(summer.error());
  OpenLoop open{-winter->drawn(), -summer->drawn(), 0};
  open.canister = std::max({open.winter, open.summer, 0.0}) - std::min({open.winter, open.summer, 0.0});
  return open;
}

}  // namespace underlawn
