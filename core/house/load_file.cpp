// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/load_file.h"

#include <algorithm>
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "base/utf8.h"
#include "house/hour_column.h"
#include "house/weather.h"

namespace underlawn {
namespace {

constexpr std::size_t kYear = kWeatherHours, kLeapYear = kYear + 24;
constexpr std::size_t kLeapDay = (31 + 28) * 24;  // its first hour
constexpr double kMostLoad = 1e6;                 // W
constexpr double kBtuPerHour = 1055.05585262 / 3600;

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"load_file", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

struct LoadColumn {
  std::string name;
  std::size_t place = 0;
  double factor = 1;  // W of one unit
};

// The columns called `load` and one of the units.
std::vector<LoadColumn> columns_for(const TextTable& table, const std::string& load) {
  std::vector<LoadColumn> found;
  for (std::size_t i = 0; i < table.columns.size(); ++i)
    for (const auto& [unit, factor] :
         {std::pair("_w", 1.0), std::pair("_kw", 1000.0), std::pair("_btuh", kBtuPerHour)})
      if (table.columns[i] == load + unit) found.push_back({table.columns[i], i, factor});
  return found;
}

std::string place_of(const TextTable& table, std::size_t row, const LoadColumn& column) {
  return say("{} in line {} of the load file (row {})", column.name, std::to_string(table.rows[row].number),
             std::to_string(row + 1));
}

Result<double> cell(const TextTable& table, std::size_t row, const LoadColumn& column, bool signed_load) {
  const auto fields = fields_of(table.rows[row].text, table.separator);
  const std::string thing = place_of(table, row, column);
  if (column.place >= fields.size() || fields[column.place].empty())
    return refuse(trouble(thing, say("missing"), say("a number"), say("Write 0 for an hour without load.")));
  const std::string_view text = fields[column.place];
  const auto number = plain_number(text, table.mark);
  if (!number)
    return refuse(trouble(thing, in_quotes(text), say("a number"),
                          table.mark == ',' ? say("Write 1234,5, without marks for thousands.")
                                            : say("Write 1234.5, without marks for thousands.")));
  const double watts = *number * column.factor;
  if (watts < 0 && !signed_load)
    return refuse(trouble(thing, in_quotes(text), say("0 or more"),
                          say("Give heating and cooling as two columns, both positive.")));
  if (!(std::abs(watts) <= kMostLoad))
    return refuse(trouble(thing, in_quotes(text),
                          say("at most {}", print_quantity(Quantity::power, kMostLoad, UnitSystem::metric)),
                          say("Check the unit in the column's name.")));
  return watts == 0 ? 0.0 : watts;
}

std::string name_of_column(std::string_view load) {
  if (load == "heating") return say("column of heating load");
  return load == "cooling" ? say("column of cooling load") : say("column of ground load");
}

Result<std::vector<double>> read_column(const TextTable& table, const std::string& load) {
  const auto columns = columns_for(table, load);
  if (columns.empty()) return std::vector<double>{};
  if (columns.size() > 1)
    return refuse(trouble(name_of_column(load), say_as("a column", "there twice"),
                          say_as("a column", "there once"),
                          say("Take out {} or {}.", columns[0].name, columns[1].name)));
  std::vector<double> out;
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    if (table.rows.size() == kLeapYear && row >= kLeapDay && row < kLeapDay + 24) continue;
    auto watts = cell(table, row, columns[0], load == "ground");
    if (!watts) return refuse(watts.error());
    out.push_back(*watts);
  }
  return out;
}

Result<void> check_rows(const TextTable& table) {
  const std::size_t rows = table.rows.size();
  if (rows == kYear || rows == kLeapYear) return {};
  return refuse(trouble(say("load file"), say("{} rows, the last in line {}", rows, table.rows.back().number),
                        say("8760 rows, one for each hour of a year (8784 in a leap year)"),
                        rows < kYear ? say("Rows are missing: export the whole year again.")
                                     : say("Export one year, hour by hour.")));
}

Result<void> check_columns(const TextTable& table) {
  const bool house = !columns_for(table, "heating").empty() || !columns_for(table, "cooling").empty();
  const bool ground = !columns_for(table, "ground").empty();
  if (house && ground)
    return refuse(trouble(say("load file"), say("loads of the house and of the ground"),
                          say("one of the two"), say("Take out the columns that are not meant.")));
  if (!house && !ground) {
    std::string names;
    for (const std::string& name : table.columns) names += (names.empty() ? "" : ", ") + name;
    return refuse(
        trouble(say("first line of the load file"), in_quotes(names, 80),
                say("names of columns such as heating_w and cooling_w (or _kw, _btuh), or ground_w"),
                say("Write the names with their units above the rows.")));
  }
  return {};
}

void remark_on_columns(const TextTable& table, std::vector<Trouble>& remarks) {
  std::vector<std::size_t> read;
  for (const char* load : {"heating", "cooling", "ground"})
    for (const LoadColumn& c : columns_for(table, load)) read.push_back(c.place);
  for (const char* name : {"hour", "time", "timestamp", "date"})
    if (const auto place = column_of(table, name)) read.push_back(*place);
  for (std::size_t i = 0; i < table.columns.size(); ++i)
    if (std::find(read.begin(), read.end(), i) == read.end() && remarks.size() < 20)
      remarks.push_back({"load_file_column", say("column {} of the load file", in_quotes(table.columns[i])),
                         say_as("a column", "not read"), "", say("Its name is none that is known here.")});
}

bool all_zero(const std::vector<double>& load) {
  return std::all_of(load.begin(), load.end(), [](double w) { return w == 0; });
}

Result<HourlyFile> read_loads(const TextTable& table) {
  HourlyFile loads;
  for (const auto& [name, into] : {std::pair("heating", &loads.heating), std::pair("cooling", &loads.cooling),
                                   std::pair("ground", &loads.ground)}) {
    auto column = read_column(table, name);
    if (!column) return refuse(column.error());
    *into = std::move(*column);
  }
  if (all_zero(loads.heating) && all_zero(loads.cooling) && all_zero(loads.ground))
    return refuse(trouble(say("load file"), say("0 W in every hour"), say("some load in the year"),
                          say("Export the loads again.")));
  if (loads.ground.empty() && loads.heating.empty()) loads.heating.resize(kYear);
  if (loads.ground.empty() && loads.cooling.empty()) loads.cooling.resize(kYear);
  return loads;
}

}  // namespace

Result<WithRemarks<HourlyFile>> loads_from_csv(std::string_view text, std::string name) {
  const auto table = table_from_text(text, "load_file", say("load file"));
  if (!table) return refuse(table.error());
  if (auto ok = check_columns(*table); !ok) return refuse(ok.error());
  // A gap says more than a wrong number of rows.
  auto remarks = check_hours(*table);
  if (!remarks) return refuse(remarks.error());
  if (auto ok = check_rows(*table); !ok) return refuse(ok.error());
  auto loads = read_loads(*table);
  if (!loads) return refuse(loads.error());
  loads->name = valid_utf8(name);
  if (table->rows.size() == kLeapYear)
    remarks->push_back({"load_file_leap_day", say("29 February of the load file"),
                        say_as("a day", "left out"), "", say("The years worked with have 365 days.")});
  remark_on_columns(*table, *remarks);
  return WithRemarks<HourlyFile>{std::move(*loads), std::move(*remarks)};
}

std::string loads_to_csv(const HourlyFile& loads) {
  const bool ground = !loads.ground.empty();
  std::string text = ground ? "hour,ground_w\n" : "hour,heating_w,cooling_w\n";
  for (std::size_t h = 0; h < (ground ? loads.ground : loads.heating).size(); ++h) {
    text += std::to_string(h) + ',' + shortest(ground ? loads.ground[h] : loads.heating[h]);
    if (!ground) text += ',' + shortest(loads.cooling[h]);
    text += '\n';
  }
  return text;
}

}  // namespace underlawn
