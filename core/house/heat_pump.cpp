// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/heat_pump.h"

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

constexpr double kMost = 1e6;  // W of capacity or power

std::string shown(Quantity q, double value) {
  return print_quantity(q, value, UnitSystem::metric);
}

Trouble table_trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"heat_pump_table", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

using Table = std::vector<PerformancePoint>;

// How a value has to follow the one of the row before.
std::string not_beyond(bool rising, const std::string& before) {
  return rising ? say("not less than {}", before) : say("not more than {}", before);
}

Result<void> check_row(const PerformancePoint& p, const std::string& row) {
  if (!(p.capacity > 0 && p.capacity <= kMost) || !(p.power > 0 && p.power <= kMost))
    return refuse(table_trouble(
        row, say("{} at {}", shown(Quantity::power, p.capacity), shown(Quantity::power, p.power)),
        say("more than 0 W and at most {}", shown(Quantity::power, kMost)),
        say("Enter capacity and power in the same unit as the others.")));
  if (!(p.entering >= -30 && p.entering <= 70))
    return refuse(
        table_trouble(row, shown(Quantity::temperature, p.entering),
                      say("{} to {}", shown(Quantity::temperature, -30), shown(Quantity::temperature, 70)),
                      say("Enter the temperature of the water that enters, with its unit.")));
  return {};
}

// `warm`: heating, where capacity should not fall as the water warms; else cooling, where it should not rise.
Result<void> check_step(const PerformancePoint& before, const PerformancePoint& p, const std::string& row,
                        bool warm) {
  if (!(p.entering > before.entering))
    return refuse(table_trouble(row, shown(Quantity::temperature, p.entering),
                                say("more than {}", shown(Quantity::temperature, before.entering)),
                                say("Sort the rows by entering water temperature, each once.")));
  if (warm ? p.capacity < before.capacity : p.capacity > before.capacity)
    return refuse(table_trouble(
        row, shown(Quantity::power, p.capacity), not_beyond(warm, shown(Quantity::power, before.capacity)),
        say("Look for a digit typed wrong: capacity should follow the water's temperature.")));
  const double cop = p.capacity / p.power, cop_before = before.capacity / before.power;
  if (warm ? cop < 0.98 * cop_before : cop > 1.02 * cop_before)
    return refuse(table_trouble(
        say("COP of {}", row), shown(Quantity::ratio, cop),
        not_beyond(warm, shown(Quantity::ratio, cop_before)),
        say("Look for a digit typed wrong: a unit works better the nearer the water is to the room.")));
  if (!warm && p.power < 0.98 * before.power)
    return refuse(table_trouble(
        row, shown(Quantity::power, p.power), say("not less than {}", shown(Quantity::power, before.power)),
        say("Look for a digit typed wrong: cooling takes more power with warmer water.")));
  return {};
}

// Power that climbs and then drops, or drops and then climbs, is a slip of the pen and not a machine.
Result<void> check_turns(const Table& table, const std::string& name) {
  for (std::size_t i = 2; i < table.size(); ++i) {
    const double a = table[i - 2].power, b = table[i - 1].power, c = table[i].power;
    if ((b > 1.05 * a && c < b / 1.05) || (b < a / 1.05 && c > 1.05 * b))
      return refuse(table_trouble(say("{}, row {}", name, std::to_string(i)), shown(Quantity::power, b),
                                  say("between its neighbours of {} and {} or near them",
                                      shown(Quantity::power, a), shown(Quantity::power, c)),
                                  say("Look for a digit typed wrong in the power.")));
  }
  return {};
}

Result<void> check_size(const Table& table, const std::string& name) {
  constexpr std::size_t kMostRows = 100;
  if (table.size() < 2 || table.size() > kMostRows)
    return refuse(table_trouble(name, say("{} rows", std::to_string(table.size())),
                                say("at least two rows, at most 100"),
                                say("Enter capacity and power at two or more entering water temperatures.")));
  return {};
}

Result<void> check_table(const Table& table, bool warm) {
  const std::string name = warm ? say("heat pump table for heating") : say("heat pump table for cooling");
  if (auto ok = check_size(table, name); !ok) return ok;
  for (std::size_t i = 0; i < table.size(); ++i) {
    const std::string row = say("{}, row {}", name, std::to_string(i + 1));
    if (auto ok = check_row(table[i], row); !ok) return ok;
    if (i == 0) continue;
    if (auto ok = check_step(table[i - 1], table[i], row, warm); !ok) return ok;
  }
  const double span = table.back().entering - table.front().entering;
  if (span < kNarrowestTable)
    return refuse(table_trouble(warm ? say("span of the heat pump table for heating")
                                     : say("span of the heat pump table for cooling"),
                                shown(Quantity::temperature_difference, span),
                                say("{} or more", shown(Quantity::temperature_difference, kNarrowestTable)),
                                say("Add rows down to the coldest and up to the warmest water expected.")));
  return check_turns(table, name);
}

}  // namespace

const HeatPump& generic_heat_pump() {
  static const HeatPump unit = {mark("Generic 3 ton unit (typical numbers, no maker's)"),
                                {{-5, 9200, 3080},
                                 {0, 10500, 3280},
                                 {5, 11800, 3450},
                                 {10, 13100, 3600},
                                 {15, 14300, 3740},
                                 {20, 15400, 3870},
                                 {25, 16400, 3990}},
                                {{10, 12700, 1750},
                                 {15, 12300, 2030},
                                 {20, 11850, 2320},
                                 {25, 11400, 2510},
                                 {30, 10900, 2830},
                                 {35, 10350, 3190},
                                 {40, 9750, 3590}}};
  return unit;
}

HeatPump scaled(const HeatPump& unit, double factor) {
  HeatPump out = unit;
  for (auto* table : {&out.heating, &out.cooling})
    for (PerformancePoint& p : *table) {
      p.capacity *= factor;
      p.power *= factor;
    }
  return out;
}

Result<void> check_heat_pump(const HeatPump& unit) {
  if (auto ok = check_table(unit.heating, true); !ok) return ok;
  if (auto ok = check_table(unit.cooling, false); !ok) return ok;
  for (const PerformancePoint& p : unit.heating)
    if (p.capacity <= p.power || p.capacity > 20 * p.power)
      return refuse(table_trouble(
          say("heating COP at {}", shown(Quantity::temperature, p.entering)),
          shown(Quantity::ratio, p.capacity / p.power), say("more than 1 and at most 20"),
          say("A heat pump gives more heat than it takes power: look for swapped columns or units.")));
  return {};
}

Performance performance_at(const std::vector<PerformancePoint>& table, double entering) {
  const PerformancePoint &first = table.front(), &last = table.back();
  if (entering < first.entering) return {first.capacity, first.power, 0, 0, true};
  if (entering > last.entering) return {last.capacity, last.power, 0, 0, true};
  std::size_t i = 1;
  while (i + 1 < table.size() && entering > table[i].entering) ++i;
  const PerformancePoint &a = table[i - 1], &b = table[i];
  const double step = b.entering - a.entering, s = (entering - a.entering) / step;
  const double dc = (b.capacity - a.capacity) / step, dp = (b.power - a.power) / step;
  return {a.capacity + s * step * dc, a.power + s * step * dp, dc, dp, false};
}

}  // namespace underlawn
