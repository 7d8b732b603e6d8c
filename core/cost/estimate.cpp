// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/estimate.h"

#include "base/say.h"
#include "base/units.h"
#include "cost/crew_time.h"

namespace underlawn {

namespace {

using Q = Quantity;

int lines_met(const Site& site, const Layout& layout) {
  int met = 0;
  for (const Crossing& c : layout.crossings) {
    const Feature* f = find_feature(site, c.feature_id);
    met += f != nullptr && f->kind == FeatureKind::utility;
  }
  return met;
}

double coil_pipe(const Layout& layout) {
  double pipe = 0;
  for (const Trench& t : layout.trenches) pipe += t.coil.coil_length;
  return pipe;
}

double header_pipe(const Layout& layout) {
  return 2 * (layout.header.length + layout.run.length) * (1 + kPipeAllowance);
}

void add_lines(Estimate& e, const Layout& layout, const EarthWork& total, int met, const Prices& p,
               double day_length) {
  const auto add = [&](const std::string& key, const std::string& thing, double amount, Q quantity,
                       double price) {
    e.lines.push_back({key, thing, amount, quantity, price, amount * price});
    e.total += amount * price;
  };
  add("digging", say("Ground dug, filled in again and compacted"), total.bank, Q::volume, p.digging);
  add("hand_crossing", say("Lines met by hand"), met, Q::count, p.hand_crossing);
  add("pavement", say("Pavement cut and made good"), e.torn.pavement, Q::area, p.pavement);
  add("lawn", say("Lawn torn up and sown"), e.torn.lawn, Q::area, p.lawn);
  add("bedding", say("Sand"), total.bedding, Q::volume, p.bedding);
  add("coil_pipe", say("Pipe in coils"), coil_pipe(layout), Q::length, p.coil_pipe);
  add("header_pipe", say("Pipe of header and run"), header_pipe(layout), Q::length, p.header_pipe);
  add("joint", say("Fused joints"), e.joints, Q::count, p.joint);
  add("crew_day", say("Days of crew and machine"), days_paid(e.time, day_length), Q::count, p.crew_day);
}

}  // namespace

std::string print_price(double price, Quantity amount, UnitSystem units) {
  if (amount == Q::count) return print_quantity(Q::money, price, units);
  static constexpr double kTon = 3516.8528420667;  // W: 12,000 Btu/h
  const bool tons = amount == Q::power && units == UnitSystem::us;
  const ShownUnit& unit = bare_unit(amount, units);
  const std::string_view text =
      unit.text.substr(std::min(unit.text.find_first_not_of(' '), unit.text.size()));
  return say("{} per {}", print_quantity(Q::money, price * (tons ? kTon : unit.factor), units),
             tons ? say_as("of cooling", "ton") : std::string(text));
}

double Estimate::sum_of(std::string_view key) const {
  const auto at = std::find_if(lines.begin(), lines.end(), [&](const CostLine& l) { return l.key == key; });
  return at == lines.end() ? 0 : at->sum;
}

Cost make_cost(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes,
               const Ground& ground, double test, const DigWishes& how, const CrewWishes& crew) {
  if (layout.trenches.empty() || dig.trenches_vertical.size() != layout.trenches.size()) return {};
  const int met = lines_met(site, layout);
  const auto make = [&](bool sloped) {
    Estimate e;
    e.joints = joints_of(layout);
    e.torn = lot_torn(site, layout, dig, wishes, sloped);
    e.time = crew_time(layout, dig, ground, {met, e.joints, test, sloped}, crew, how.excavator);
    add_lines(e, layout, sloped ? dig.total_sloped : dig.total_vertical, met, wishes.prices, crew.day_length);
    return e;
  };
  return {make(false), make(true)};
}

}  // namespace underlawn
