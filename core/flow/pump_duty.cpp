// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/pump_duty.h"

#include <boost/math/tools/roots.hpp>
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

double root(const std::function<double(double)>& f, double low, double high) {
  std::uintmax_t steps = 100;
  const auto [a, b] =
      boost::math::tools::toms748_solve(f, low, high, boost::math::tools::eps_tolerance<double>(34), steps);
  return (a + b) / 2;
}

Trouble no_pump() {
  return {"pump_none", say("points of the pump's curve"), "0", say("3 or more"),
          say("Enter the maker's curve.")};
}

// Flow at which the pump's head, straight on from its last two points, is used up.
double most_flow(const Circulator& pump) {
  const CurvePoint &a = pump.curve[pump.curve.size() - 2], &b = pump.curve.back();
  return b.flow + b.head * (b.flow - a.flow) / (a.head - b.head);
}

}  // namespace

Result<DutyPoint> duty_point(const Circulator& pump, const SystemCurve& system) {
  if (pump.curve.size() < 2) return refuse(no_pump());
  const double high = most_flow(pump), low = 1e-6 * high;
  const auto over = [&](double q) { return pump_head(pump, q) - system(q); };
  if (!(over(low) > 0))
    return refuse({"pump_too_weak", say("head of {} at no flow", pump.name),
                   print_quantity(Quantity::head, pump_head(pump, 0), UnitSystem::metric),
                   say("more than the loop takes"), say("Choose a stronger pump.")});
  const double q = root(over, low, high);
  return DutyPoint{q, pump_head(pump, q), pump_power(pump, q)};
}

Result<SpeedPoint> speed_for(const Circulator& pump, const SystemCurve& system, double flow) {
  if (pump.curve.size() < 2) return refuse(no_pump());
  const double head = system(flow);
  const auto over = [&](double n) { return n * n * pump_head(pump, flow / n) - head; };
  if (over(1) < 0)
    return refuse(
        {"pump_too_slow",
         say("head of {} at {}", pump.name, print_quantity(Quantity::flow, flow, UnitSystem::metric)),
         print_quantity(Quantity::head, pump_head(pump, flow), UnitSystem::metric),
         say("at least {}", print_quantity(Quantity::head, head, UnitSystem::metric)),
         say("Choose a stronger pump or wider pipes.")});
  const double n = over(1) == 0 ? 1 : root(over, flow / most_flow(pump), 1);
  return SpeedPoint{n, flow, head, n * n * n * pump_power(pump, flow / n)};
}

std::string pump_grade(double power, double capacity) {
  const double hp = power / capacity / kHorsepowerPer100Tons;
  if (hp <= 5) return say_as("a pump", "excellent");
  if (hp <= 7.5) return say_as("a pump", "good");
  if (hp <= 10) return say_as("a pump", "mediocre");
  return hp <= 15 ? say_as("a pump", "poor") : say_as("a pump", "bad");
}

}  // namespace underlawn
