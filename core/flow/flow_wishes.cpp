// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/flow_wishes.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "pipe/pipe_size.h"

namespace underlawn {
namespace {

constexpr std::size_t kMostPoints = 50, kMostSteps = 200;

// One number and what it may be.
struct Bound {
  std::string code, thing;
  Quantity quantity;
  double value, low, high;
  bool above_low;  // must be more than `low`
  std::string advice;
};

std::string shown(Quantity q, double value, UnitSystem units) {
  if (std::isnan(value)) return say("not a number");
  if (std::isinf(value)) return value > 0 ? say("infinite") : say("minus infinite");
  return print_quantity(q, value, units, Fineness::fine);
}

void check(std::vector<Trouble>& troubles, UnitSystem units, const std::vector<Bound>& bounds) {
  for (const Bound& b : bounds) {
    if (b.value <= b.high && (b.above_low ? b.value > b.low : b.value >= b.low)) continue;
    const std::string low = shown(b.quantity, b.low, units), high = shown(b.quantity, b.high, units);
    troubles.push_back(
        {b.code + "_out_of_bounds", b.thing, shown(b.quantity, b.value, units),
         b.above_low ? say("more than {} and at most {}", low, high) : say("from {} to {}", low, high),
         b.advice});
  }
}

void check_numbers(std::vector<Trouble>& troubles, const FlowWishes& w, UnitSystem units) {
  const std::string loss = say("Take it from the maker's table at its flow.");
  check(
      troubles, units,
      {{"freeze_margin", say("Freeze margin"), Quantity::temperature_difference, w.freeze_margin, 0, 30,
        false, say("Enter how far below the coldest fluid it may first freeze.")},
       {"design_flow", say("Design flow"), Quantity::flow, w.design_flow, 0, 0.1, true,
        say("Enter the heat pump's flow; 3 gpm a ton (0.054 L/s a kW) is usual.")},
       {"heat_pump_capacity", say("Heat pump capacity"), Quantity::power, w.capacity, 0, 1e6, true,
        say("Enter the heating capacity.")},
       {"tail", say("Tail from trench head to header"), Quantity::length, w.tail, 0, 100, false,
        say("Enter the pipe between a trench head and the header.")},
       {"heat_pump_head", say("Heat pump head loss"), Quantity::head, w.heat_pump.head, 0, 100, false, loss},
       {"hose_kit_head", say("Hose kit head loss"), Quantity::head, w.hose_kit.head, 0, 100, false, loss},
       {"valves_k", say("Sum of K of valves"), Quantity::count, w.valves_k, 0, 1e4, false,
        say("Enter the valves' loss factors added up.")},
       {"purge_velocity", say("Purge velocity"), Quantity::velocity, w.purge_velocity, 0, 5, true,
        say("2 ft/s (0.61 m/s) carries air down and out.")},
       {"purge_volumes", say("Purge volumes"), Quantity::count, w.purge_volumes, 1, 100, false,
        say("Enter how often a circuit's liquid is changed.")},
       {"most_imbalance", say("Imbalance allowed"), Quantity::ratio, w.most_imbalance, 0, 1, true,
        say("10 % is usual.")},
       {"most_head", say("Head allowed"), Quantity::head, w.most_head, 0, 200, false,
        say("Enter the most head the loop may take, 0 for what the circulator gives.")}});
  if (w.heat_pump.head > 0)
    check(troubles, units,
          {{"heat_pump_loss_flow", say("Flow of the heat pump's head loss"), Quantity::flow, w.heat_pump.flow,
            0, 0.1, true, loss}});
  if (w.hose_kit.head > 0)
    check(troubles, units,
          {{"hose_kit_loss_flow", say("Flow of the hose kit's head loss"), Quantity::flow, w.hose_kit.flow, 0,
            0.1, true, loss}});
}

void check_fluid(std::vector<Trouble>& troubles, const FlowWishes& w) {
  const auto freezes = freezing_point(w.fluid, w.mass_fraction);
  if (!freezes) {
    troubles.push_back(freezes.error());
    return;
  }
  const std::string name = fluid_name(w.fluid);
  for (const auto& [temperature, thing] :
       {std::pair{w.design_temperature, say("Design temperature of the {}", name)},
        std::pair{w.coldest_temperature, say("Coldest temperature of the {}", name)}}) {
    auto fluid = fluid_properties(w.fluid, w.mass_fraction, temperature);
    if (fluid) continue;
    Trouble t = fluid.error();
    t.thing = thing;
    troubles.push_back(std::move(t));
  }
}

// Whose curve is read.
enum class Role { circulator, flush_cart };

std::string flow_at(Role role, std::size_t point) {
  return role == Role::circulator ? say("Flow at point {} of the circulator curve", point)
                                  : say("Flow at point {} of the flush cart curve", point);
}

std::string head_at(Role role, std::size_t point) {
  return role == Role::circulator ? say("Head at point {} of the circulator curve", point)
                                  : say("Head at point {} of the flush cart curve", point);
}

std::string power_at(Role role, std::size_t point) {
  return role == Role::circulator ? say("Power at point {} of the circulator curve", point)
                                  : say("Power at point {} of the flush cart curve", point);
}

bool check_points(std::vector<Trouble>& troubles, const Circulator& pump, Role role, UnitSystem units) {
  const std::size_t before = troubles.size();
  for (std::size_t i = 0; i < pump.curve.size(); ++i) {
    const CurvePoint& p = pump.curve[i];
    const std::string advice = say("Read the point off the maker's curve.");
    check(troubles, units,
          {{"pump_flow", flow_at(role, i + 1), Quantity::flow, p.flow, 0, 1, false, advice},
           {"pump_head", head_at(role, i + 1), Quantity::head, p.head, 0, 500, false, advice},
           {"pump_power", power_at(role, i + 1), Quantity::power, p.power, 0, 1e6, false, advice}});
  }
  return troubles.size() == before;
}

void check_pump(std::vector<Trouble>& troubles, const Circulator& pump, Role role, UnitSystem units) {
  const auto& c = pump.curve;
  if (c.empty()) return;
  if (c.size() < 3 || c.size() > kMostPoints)
    troubles.push_back({"pump_curve_points",
                        role == Role::circulator ? say("Points of the circulator curve")
                                                 : say("Points of the flush cart curve"),
                        std::to_string(c.size()), say("none, or 3 to {}", std::to_string(kMostPoints)),
                        say("Read off no flow, most flow, and between.")});
  if (!check_points(troubles, pump, role, units)) return;
  for (std::size_t i = 1; i < c.size(); ++i) {
    if (!(c[i].flow > c[i - 1].flow))
      troubles.push_back({"pump_flow_falls", flow_at(role, i + 1), shown(Quantity::flow, c[i].flow, units),
                          say("more than {}, the point before", shown(Quantity::flow, c[i - 1].flow, units)),
                          say("Put the points in order of flow.")});
    if (!(c[i].head < c[i - 1].head))
      troubles.push_back(
          {"pump_head_rises", head_at(role, i + 1), shown(Quantity::head, c[i].head, units),
           say("less than {}, the point before", shown(Quantity::head, c[i - 1].head, units)),
           say("A pump whose head rises with flow has no one duty point; leave that part out.")});
  }
}

void check_size(std::vector<Trouble>& troubles, const std::string& name, const std::string& thing) {
  auto size = find_pipe(name);
  if (size) return;
  Trouble t = size.error();
  t.thing = thing;
  troubles.push_back(std::move(t));
}

// The two points whose straight line serves at a flow.
std::size_t piece_of(const std::vector<CurvePoint>& c, double flow) {
  std::size_t i = 1;
  while (i + 1 < c.size() && flow > c[i].flow) ++i;
  return i;
}

double between(double x, double x0, double x1, double y0, double y1) {
  return y0 + (x - x0) / (x1 - x0) * (y1 - y0);
}

}  // namespace

std::string header_arrangement_name(HeaderArrangement arrangement) {
  switch (arrangement) {
    case HeaderArrangement::direct_return:
      return say("direct return");
    case HeaderArrangement::reverse_return:
      return say("reverse return");
    case HeaderArrangement::home_runs:
      return say("home runs");
  }
  return say("unknown");
}

const Circulator& generic_circulator() {
  static const Circulator pump{
      mark("Typical circulator (numbers of our own)"),
      {{0, 12, 130}, {3e-4, 11, 200}, {6e-4, 9, 250}, {9e-4, 6, 275}, {1.3e-3, 1, 280}}};
  return pump;
}

const Circulator& generic_flush_cart() {
  static const Circulator cart{
      mark("Typical flush cart (numbers of our own)"),
      {{0, 36, 1000}, {1.5e-3, 33, 1300}, {3e-3, 27, 1500}, {4.5e-3, 17, 1600}, {5.7e-3, 5, 1600}}};
  return cart;
}

std::vector<Trouble> flow_troubles(const FlowWishes& w, UnitSystem units) {
  std::vector<Trouble> troubles;
  check_numbers(troubles, w, units);
  check_fluid(troubles, w);
  check_pump(troubles, w.circulator, Role::circulator, units);
  check_pump(troubles, w.flush_cart, Role::flush_cart, units);
  if (w.header_sizes.size() > kMostSteps)
    troubles.push_back({"header_steps", say("Sizes of the header"), std::to_string(w.header_sizes.size()),
                        say("at most {}", std::to_string(kMostSteps)), say("Name one size for each step.")});
  for (const std::string& name : w.header_sizes) check_size(troubles, name, say("Header size"));
  if (!w.run_size.empty()) check_size(troubles, w.run_size, say("Run size"));
  return troubles;
}

double pump_head(const Circulator& pump, double flow) {
  const auto& c = pump.curve;
  const std::size_t i = piece_of(c, flow);
  return std::max(0.0, between(flow, c[i - 1].flow, c[i].flow, c[i - 1].head, c[i].head));
}

double pump_power(const Circulator& pump, double flow) {
  const auto& c = pump.curve;
  const double q = std::clamp(flow, c.front().flow, c.back().flow);
  const std::size_t i = piece_of(c, q);
  return between(q, c[i - 1].flow, c[i].flow, c[i - 1].power, c[i].power);
}

}  // namespace underlawn
