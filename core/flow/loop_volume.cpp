// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/loop_volume.h"

#include <numbers>

#include "base/quantity.h"
#include "base/say.h"
#include "base/typed_text.h"
#include "pipe/polyethylene.h"

namespace underlawn {
namespace {

double holds(const PipeShare& p) {
  return std::numbers::pi / 4 * p.bore * p.bore * p.length;
}

std::string metres(double m) {
  return print_quantity(Quantity::length, m, UnitSystem::metric, Fineness::fine);
}

Result<void> check_pipe(const PipeShare& p) {
  const std::string name = in_quotes(p.name);
  if (!(p.bore > 0 && p.bore < p.outside_diameter && p.outside_diameter < 2))
    return refuse({"loop_bore", say("bore of pipe {}", name), metres(p.bore),
                   say("more than 0 and less than its outside diameter of {}", metres(p.outside_diameter)),
                   say("Choose the pipe again.")});
  if (!(p.length > 0 && p.length < 1e6))
    return refuse({"loop_length", say("length of pipe {}", name), metres(p.length),
                   say("more than 0 and less than 1000 km"),
                   say("Enter the length laid, or leave the pipe out.")});
  if (!(p.dr >= 4 && p.dr <= 41))
    return refuse({"loop_dr", say("dimension ratio of pipe {}", name),
                   print_quantity(Quantity::count, p.dr, UnitSystem::metric), say("4 to 41"),
                   say("Enter the DR printed on the pipe.")});
  return {};
}

}  // namespace

Result<void> check_loop(const LoopVolume& loop) {
  if (loop.pipes.empty())
    return refuse({"loop_empty", say("number of pipes in the loop"), "0", say("at least 1"),
                   say("Lay the loop first, or type its pipes.")});
  for (const PipeShare& p : loop.pipes)
    if (auto ok = check_pipe(p); !ok) return ok;
  return {};
}

double loop_volume(const LoopVolume& loop) {
  double sum = 0;
  for (const PipeShare& p : loop.pipes) sum += holds(p);
  return sum;
}

double loop_compliance(const LoopVolume& loop, double poisson) {
  double sum = 0;
  for (const PipeShare& p : loop.pipes) sum += holds(p) * bore_compliance(p.dr, poisson);
  return sum / loop_volume(loop);
}

}  // namespace underlawn
