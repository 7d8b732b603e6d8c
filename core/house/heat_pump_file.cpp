// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/heat_pump_file.h"

#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "base/utf8.h"

namespace underlawn {
namespace {

constexpr double kBtuPerHour = 1055.05585262 / 3600;  // W, NIST SP 811

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"heat_pump_file", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

std::string in_line(const std::string& thing, int line) {
  return say("{} in line {} of the heat pump table", thing, std::to_string(line));
}

// A name a column may have; SI is number * factor + offset.
struct Spelling {
  const char* name;
  double factor = 1, offset = 0;
};
struct Column {
  std::size_t place = 0;
  Spelling spelling{""};
};

Result<Column> column_for(const TextTable& table, const std::vector<Spelling>& spellings) {
  std::vector<Column> found;
  std::string names;
  for (const Spelling& s : spellings) {
    if (const auto place = column_of(table, s.name)) found.push_back({*place, s});
    names = names.empty() ? std::string(s.name) : say("{} or {}", names, s.name);
  }
  if (found.size() == 1) return found[0];
  return refuse(trouble(
      in_line(say("line of column names"), table.header_line),
      found.empty() ? say("without {}", std::string(spellings[0].name)) : say("naming two of the same"),
      say("naming {}", names), say("Write each column's name with its unit, once.")));
}

struct Columns {
  Column mode, entering, capacity, power;
};

Result<Columns> columns_of(const TextTable& table) {
  Columns c;
  const std::vector<std::pair<Column*, std::vector<Spelling>>> wanted = {
      {&c.mode, {{"mode"}}},
      {&c.entering, {{"entering_c"}, {"entering_f", 5.0 / 9, -32 * 5.0 / 9}}},
      {&c.capacity, {{"capacity_w"}, {"capacity_kw", 1000}, {"capacity_btuh", kBtuPerHour}}},
      {&c.power, {{"power_w"}, {"power_kw", 1000}}}};
  for (const auto& [into, spellings] : wanted) {
    auto column = column_for(table, spellings);
    if (!column) return refuse(column.error());
    *into = *column;
  }
  return c;
}

using Fields = std::vector<std::string_view>;

std::string_view cell(const Fields& fields, const Column& column) {
  return column.place < fields.size() ? fields[column.place] : std::string_view();
}

Result<double> number_in(const TextTable& table, const TextLine& row, const Fields& fields,
                         const Column& column) {
  const std::string_view text = cell(fields, column);
  const auto number = plain_number(text, table.mark);
  if (!number)
    return refuse(trouble(in_line(column.spelling.name, row.number), in_quotes(text), say("a number"),
                          say("Write it without marks for thousands, or take the row out.")));
  return *number * column.spelling.factor + column.spelling.offset;
}

Result<void> take_row(const TextTable& table, const TextLine& row, const Columns& columns, HeatPump& unit) {
  const Fields fields = fields_of(row.text, table.separator);
  const std::string mode = folded(cell(fields, columns.mode));
  if (mode != "heating" && mode != "cooling")
    return refuse(trouble(in_line("mode", row.number), in_quotes(cell(fields, columns.mode)),
                          say("heating or cooling"), say("Write one of the two words.")));
  const auto entering = number_in(table, row, fields, columns.entering);
  if (!entering) return refuse(entering.error());
  const auto capacity = number_in(table, row, fields, columns.capacity);
  if (!capacity) return refuse(capacity.error());
  const auto power = number_in(table, row, fields, columns.power);
  if (!power) return refuse(power.error());
  (mode == "heating" ? unit.heating : unit.cooling).push_back({*entering, *capacity, *power});
  return {};
}

}  // namespace

Result<HeatPump> heat_pump_from_csv(std::string_view text) {
  const auto table = table_from_text(text, "heat_pump_file", say("heat pump table"));
  if (!table) return refuse(table.error());
  const auto columns = columns_of(*table);
  if (!columns) return refuse(columns.error());
  HeatPump unit{say("Unit from a table"), {}, {}};
  for (const TextTable::Setting& s : table->settings)
    if (s.name == "name" && !s.value.empty()) unit.name = valid_utf8(s.value.substr(0, 80));
  for (const TextLine& row : table->rows)
    if (auto ok = take_row(*table, row, *columns, unit); !ok) return refuse(ok.error());
  if (auto ok = check_heat_pump(unit); !ok) return refuse(ok.error());
  return unit;
}

std::string heat_pump_to_csv(const HeatPump& unit) {
  std::string text = "name = " + unit.name + "\nmode,entering_c,capacity_w,power_w\n";
  for (const auto& [mode, rows] : {std::pair("heating", &unit.heating), std::pair("cooling", &unit.cooling)})
    for (const PerformancePoint& p : *rows)
      text += std::string(mode) + ',' + shortest(p.entering) + ',' + shortest(p.capacity) + ',' +
              shortest(p.power) + '\n';
  return text;
}

}  // namespace underlawn
