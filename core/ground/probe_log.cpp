// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "ground/probe.h"

namespace underlawn {
namespace {

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"probe_log", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

std::string in_line(const std::string& thing, int line) {
  return say("{} in line {} of the probe log", thing, std::to_string(line));
}

struct Column {
  std::size_t place = 0;
  double factor = 1, offset = 0;  // SI is number * factor + offset
};

Result<Column> column_for(const TextTable& table, const char* si, const char* other, Column in_other) {
  if (const auto place = column_of(table, si)) return Column{*place};
  if (const auto place = column_of(table, other)) {
    in_other.place = *place;
    return in_other;
  }
  return refuse(trouble(in_line(say("line of column names"), table.header_line), say("without {}", si),
                        say("naming {} or {}", si, other),
                        say("Write the names with their units above the readings.")));
}

Result<double> number_in(const TextTable& table, const TextLine& row, const Column& column) {
  const auto fields = fields_of(row.text, table.separator);
  const std::string_view text = column.place < fields.size() ? fields[column.place] : std::string_view();
  const auto number = plain_number(text, table.mark);
  if (!number)
    return refuse(trouble(in_line(table.columns[column.place], row.number), in_quotes(text), say("a number"),
                          say("Take the line out, or export the log again.")));
  return *number * column.factor + column.offset;
}

Result<double> power_of(const TextTable& table) {
  for (const TextTable::Setting& s : table.settings) {
    if (s.name != "power_w_m") continue;
    auto number = plain_number(s.value, '.');
    if (!number) number = plain_number(s.value, ',');
    if (number) return *number;
    return refuse(trouble(in_line("power_w_m", s.line), in_quotes(s.value),
                          say("a number of watts per metre"), say("Write power_w_m = 5.2, say.")));
  }
  return 0.0;
}

Result<void> check_reading(const ProbeLog& log, const ProbeReading& reading, const TextLine& row) {
  if (!(reading.temperature >= -60 && reading.temperature <= 150))
    return refuse(trouble(in_line(say("temperature"), row.number), std::to_string(reading.temperature) + " C",
                          say("-60 C to 150 C"), say("Check the unit in the column's name.")));
  if (!log.readings.empty() && !(reading.time > log.readings.back().time))
    return refuse(
        trouble(in_line(say("time"), row.number), std::to_string(reading.time) + " s",
                say("more than the {} s of the line above", std::to_string(log.readings.back().time)),
                say("Keep one heating in the log, in the order of time.")));
  return {};
}

}  // namespace

Result<ProbeLog> probe_log_from_csv(std::string_view text) {
  const auto table = table_from_text(text, "probe_log", say("probe log"));
  if (!table) return refuse(table.error());
  const auto power = power_of(*table);
  if (!power) return refuse(power.error());
  const auto time = column_for(*table, "time_s", "time_min", {0, 60});
  if (!time) return refuse(time.error());
  const auto temperature = column_for(*table, "temperature_c", "temperature_f", {0, 5.0 / 9, -32 * 5.0 / 9});
  if (!temperature) return refuse(temperature.error());
  ProbeLog log{*power, {}};
  for (const TextLine& row : table->rows) {
    const auto t = number_in(*table, row, *time), warm = number_in(*table, row, *temperature);
    if (!t || !warm) return refuse(!t ? t.error() : warm.error());
    const ProbeReading reading{*t, *warm};
    if (auto ok = check_reading(log, reading, row); !ok) return refuse(ok.error());
    log.readings.push_back(reading);
  }
  return log;
}

}  // namespace underlawn
