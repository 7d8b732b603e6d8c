// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_readings.h"

#include <string>

#include "base/quantity.h"
#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"

namespace underlawn {
namespace {

constexpr const char* kCode = "test_readings";

struct Unit {
  const char* column;
  double factor, offset;  // SI = factor x (value + offset)
};
struct Column {
  Unit unit;
  std::size_t place;
};

const std::vector<Unit> kTimes = {{"time_s", 1, 0}, {"time_min", 60, 0}, {"time_h", 3600, 0}};
const std::vector<Unit> kPressures = {
    {"pressure_psi", 6894.757293168, 0}, {"pressure_kpa", 1000, 0}, {"pressure_bar", 1e5, 0}};
const std::vector<Unit> kTemperatures = {{"temperature_c", 1, 0}, {"temperature_f", 1 / 1.8, -32}};

std::string names_of(const std::vector<Unit>& units) {
  std::string names;
  for (const Unit& u : units)
    names = names.empty() ? std::string(u.column) : say("{} or {}", names, u.column);
  return names;
}

// The one column in any of `units`; nothing where there is none.
Result<std::optional<Column>> find_column(const TextTable& table, const std::vector<Unit>& units) {
  std::optional<Column> found;
  for (const Unit& unit : units)
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      if (table.columns[i] != unit.column) continue;
      if (found)
        return refuse({kCode, say("columns of the pressure log"),
                       say("{} and {}", in_quotes(found->unit.column), in_quotes(unit.column)),
                       say("only one of them"), say("Take one of the two out.")});
      found = Column{unit, i};
    }
  return found;
}

// All columns at once, or each would be learned from a refusal of its own.
Trouble columns_missing(bool time, bool pressure) {
  const std::string without = time && pressure
                                  ? say("column {} and column {}", names_of(kTimes), names_of(kPressures))
                                  : say("column {}", names_of(time ? kTimes : kPressures));
  return {
      kCode, say("{} of the pressure log", without), say_as("a column", "missing"), say("there"),
      say("Name in the table's first line one column for the time, {}, one for the pressure, {}, and, where "
          "the pipe's temperature was read, {}: as time_min,pressure_psi,temperature_f.",
          names_of(kTimes), names_of(kPressures), names_of(kTemperatures))};
}

Result<std::optional<double>> cell(const TextTable& table, std::size_t row, const Column& column) {
  const auto fields = fields_of(table.rows[row].text, table.separator);
  if (column.place >= fields.size() || fields[column.place].empty()) return std::optional<double>{};
  const auto number = plain_number(fields[column.place], table.mark);
  if (number) return std::optional(column.unit.factor * (*number + column.unit.offset));
  return refuse(
      {kCode,
       say("{} in line {} of the pressure log (row {})", column.unit.column, table.rows[row].number, row + 1),
       in_quotes(fields[column.place]), say("a number"), say("Correct the cell or take the row out.")});
}

Result<double> need_cell(const TextTable& table, std::size_t row, const Column& column) {
  const auto found = cell(table, row, column);
  if (!found) return tl::unexpected(found.error());
  if (*found) return **found;
  return refuse(
      {kCode,
       say("{} in line {} of the pressure log (row {})", column.unit.column, table.rows[row].number, row + 1),
       say("missing"), say("a number"), say("Fill the cell or take the row out.")});
}

Result<PressureReading> reading(const TextTable& table, std::size_t row, const Column& time,
                                const Column& pressure, const std::optional<Column>& temperature) {
  const auto t = need_cell(table, row, time);
  if (!t) return tl::unexpected(t.error());
  const auto p = need_cell(table, row, pressure);
  if (!p) return tl::unexpected(p.error());
  PressureReading out{*t, *p, {}};
  if (!temperature) return out;
  const auto warm = cell(table, row, *temperature);
  if (!warm) return tl::unexpected(warm.error());
  out.temperature = *warm;
  return out;
}

Result<void> check_reading(const PressureReading& r, std::size_t row) {
  const auto trouble = [&](const std::string& thing, Quantity q, double value, const std::string& bound) {
    return refuse({kCode, thing, print_quantity(q, value, UnitSystem::metric), bound,
                   say("Check the reading and the unit in the column's name.")});
  };
  if (!(r.time >= -30 * 86400.0 && r.time <= 30 * 86400.0))
    return trouble(say("time of reading {}", row + 1), Quantity::duration, r.time,
                   say("within 30 days of shutting the valve"));
  if (!(r.pressure >= -1e5 && r.pressure <= 1e7))
    return trouble(say("pressure of reading {}", row + 1), Quantity::pressure, r.pressure,
                   say("-100 to 10 000 kPa"));
  if (r.temperature && !(*r.temperature >= -30 && *r.temperature <= 60))
    return trouble(say("temperature of reading {}", row + 1), Quantity::temperature, *r.temperature,
                   say("-30 to 60 C"));
  return {};
}

}  // namespace

Result<void> check_readings(const std::vector<PressureReading>& readings) {
  if (readings.empty() || readings.size() > kMostReadings)
    return refuse({kCode, say("number of pressure readings"), std::to_string(readings.size()),
                   say("1 to {}", std::to_string(kMostReadings)),
                   say("One reading every minute is plenty.")});
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (auto ok = check_reading(readings[i], i); !ok) return ok;
    if (i > 0 && !(readings[i].time > readings[i - 1].time))
      return refuse(
          {kCode, say("time of reading {}", std::to_string(i + 1)),
           print_quantity(Quantity::duration, readings[i].time, UnitSystem::metric),
           say("later than the one before it"),
           say("Put the readings in order of time; write times as minutes since the valve was shut.")});
  }
  return {};
}

Result<std::vector<PressureReading>> readings_from_text(std::string_view text) {
  const auto table = table_from_text(text, kCode, say("the pressure log"));
  if (!table) return tl::unexpected(table.error());
  const auto any_time = find_column(*table, kTimes), any_pressure = find_column(*table, kPressures);
  if (!any_time) return tl::unexpected(any_time.error());
  if (!any_pressure) return tl::unexpected(any_pressure.error());
  if (!*any_time || !*any_pressure) return refuse(columns_missing(!*any_time, !*any_pressure));
  const Column &time = **any_time, &pressure = **any_pressure;
  const auto temperature = find_column(*table, kTemperatures);
  if (!temperature) return tl::unexpected(temperature.error());
  std::vector<PressureReading> readings;
  for (std::size_t row = 0; row < table->rows.size(); ++row) {
    const auto r = reading(*table, row, time, pressure, *temperature);
    if (!r) return tl::unexpected(r.error());
    readings.push_back(*r);
  }
  if (auto ok = check_readings(readings); !ok) return tl::unexpected(ok.error());
  return readings;
}

}  // namespace underlawn
