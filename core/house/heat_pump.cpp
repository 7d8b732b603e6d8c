// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/heat_pump.h"

#include "base/quantity.h"

namespace underlawn {
namespace {

std::string shown(Quantity q, double value) {
  return print_quantity(q, value, UnitSystem::metric);
}

Trouble table_trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"heat_pump_table", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

// `rises`: whether capacity should not fall as the water warms.
Result<void> check_table(const std::vector<PerformancePoint>& table, std::string_view mode, bool rises) {
  const std::string name = "heat pump table for " + std::string(mode);
  if (table.size() < 2)
    return refuse(table_trouble(name, std::to_string(table.size()) + " rows", "at least two rows",
                                "Enter capacity and power at two or more entering water temperatures."));
  for (std::size_t i = 0; i < table.size(); ++i) {
    const PerformancePoint& p = table[i];
    const std::string row = name + ", row " + std::to_string(i + 1);
    if (!(p.capacity > 0) || !(p.power > 0))
      return refuse(
          table_trouble(row, shown(Quantity::power, p.capacity) + " at " + shown(Quantity::power, p.power),
                        "more than 0 W", "Enter capacity and power in the same unit as the others."));
    if (i == 0) continue;
    const PerformancePoint& before = table[i - 1];
    if (!(p.entering > before.entering))
      return refuse(table_trouble(row, shown(Quantity::temperature, p.entering),
                                  "more than " + shown(Quantity::temperature, before.entering),
                                  "Sort the rows by entering water temperature, each once."));
    if (rises ? p.capacity < before.capacity : p.capacity > before.capacity)
      return refuse(table_trouble(
          row, shown(Quantity::power, p.capacity),
          std::string(rises ? "not less than " : "not more than ") + shown(Quantity::power, before.capacity),
          "Look for a digit typed wrong: capacity should follow the water's temperature."));
  }
  return {};
}

}  // namespace

const HeatPump& generic_heat_pump() {
  static const HeatPump unit = {"Generic 3 ton unit (typical numbers, no maker's)",
                                {{-5, 9200, 3080},
                                 {0, 10500, 3280},
                                 {5, 11800, 3450},
                                 {10, 13100, 3600},
                                 {15, 14300, 3740},
                                 {20, 15400, 3870}},
                                {{10, 12700, 1750},
                                 {15, 12300, 2030},
                                 {20, 11850, 2320},
                                 {25, 11400, 2510},
                                 {30, 10900, 2830},
                                 {35, 10350, 3190}}};
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
  if (auto ok = check_table(unit.heating, "heating", true); !ok) return ok;
  if (auto ok = check_table(unit.cooling, "cooling", false); !ok) return ok;
  for (const PerformancePoint& p : unit.heating)
    if (p.capacity <= p.power)
      return refuse(
          table_trouble("heating COP at " + shown(Quantity::temperature, p.entering),
                        shown(Quantity::ratio, p.capacity / p.power), "more than 1",
                        "A heat pump gives more heat than it takes power: look for swapped columns."));
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
