// SPDX-License-Identifier: GPL-3.0-or-later
// The heat pump and its limits in the heat panel.
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "house/heat_pump_file.h"
#include "window/cells_table.h"
#include "window/heat_bound.h"
#include "window/heat_panel.h"

namespace underlawn {

namespace {

using Table = std::vector<PerformancePoint> HeatPump::*;

constexpr double kLeastEntering = -30, kMostEntering = 70;  // deg C
constexpr double kMostPower = 1e6;                          // W
constexpr double kNextEntering = 5;                         // K above the last, of a row that is added
constexpr double kUsualFluidResistance = 0.1;               // m K/W, until another is typed

// By the numbers alone: the unit may have been given a name.
int preset_of(const Plan& p) {
  const auto& all = heat_pump_presets();
  const auto at = std::find_if(all.begin(), all.end(), [&](const HeatPump& unit) {
    return unit.heating == p.thermal.unit.heating && unit.cooling == p.thermal.unit.cooling;
  });
  return at == all.end() ? -1 : static_cast<int>(at - all.begin());
}

CellsTable::Column point(Table table, const QString& head, Quantity quantity, double PerformancePoint::*field,
                         double low, double high) {
  return {head,
          quantity,
          [=](const Plan& p, std::size_t i) { return (p.thermal.unit.*table)[i].*field; },
          [=](Plan& p, std::size_t i, double v) { (p.thermal.unit.*table)[i].*field = v; },
          low,
          high,
          quantity == Quantity::power};
}

CellsTable::Of performance(Table table, const QString& what) {
  CellsTable::Column power =
      point(table, Form::tr("Electricity"), Quantity::power, &PerformancePoint::power, 0, kMostPower);
  power.metric = true;
  return {what,
          {point(table, Form::tr("Entering"), Quantity::temperature, &PerformancePoint::entering,
                 kLeastEntering, kMostEntering),
           point(table, Form::tr("Capacity"), Quantity::power, &PerformancePoint::capacity, 0, kMostPower),
           power},
          [=](const Plan& p) { return (p.thermal.unit.*table).size(); },
          {},
          [=](Plan& p) {
            auto& rows = p.thermal.unit.*table;
            PerformancePoint next = rows.empty() ? PerformancePoint{0, 10'000, 3000} : rows.back();
            if (!rows.empty()) next.entering = std::min(next.entering + kNextEntering, kMostEntering);
            rows.push_back(next);
          },
          [=](Plan& p, std::size_t i) {
            auto& rows = p.thermal.unit.*table;
            rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(i));
          }};
}

bool has_resistance(const Plan& p) {
  return p.thermal.fluid_resistance.has_value();
}

}  // namespace

void HeatPanel::add_unit() {
  section(tr("Heat pump"));
  QStringList units;
  for (const HeatPump& unit : heat_pump_presets()) units << short_name(unit.name);
  choice(
      tr("Start from"), units,
      {preset_of, [](Plan& p, int i) { p.thermal.unit = heat_pump_presets()[static_cast<std::size_t>(i)]; },
       tr("Heat pump")})
      ->setPlaceholderText(tr("a table of your own"));
  text(tr("Name"), {[](const Plan& p) { return QString::fromStdString(translated(p.thermal.unit.name)); },
                    [](Plan& p, const QString& v) { p.thermal.unit.name = v.simplified().toStdString(); },
                    tr("Name of the heat pump")});
  file_button(tr("Performance table…"), tr("Open a heat pump's performance table"),
              tr("Tables (*.csv *.txt *.tsv)"), &HeatPanel::read_performance);
  const std::pair<QString, Table> tables[] = {{tr("Heating, by entering water"), &HeatPump::heating},
                                              {tr("Cooling, by entering water"), &HeatPump::cooling}};
  for (const auto& [what, rows] : tables) {
    note([what = what](const Plan&) { return what; });
    auto* table = new CellsTable(document_, performance(rows, what));
    wide(table);
    on_refresh([table] { table->refresh(); });
  }
  wrong_note([](const Plan& p) {
    const auto sound = check_heat_pump(p.thermal.unit);
    return sound ? QString() : QString::fromStdString(sound.error().message());
  });
  note([](const Plan& p) {
    return preset_of(p) >= 0
               ? tr("Typical numbers of our own, of no maker: type those of the unit's data sheet.")
               : QString();
  });
  add_limits();
}

void HeatPanel::add_limits() {
  section(tr("Limits and design life"));
  number(tr("Coldest entering water"), Quantity::temperature,
         heat_number(&ThermalWishes::coldest_allowed, tr("Coldest entering water allowed")));
  number(tr("Warmest entering water"), Quantity::temperature,
         heat_number(&ThermalWishes::warmest_allowed, tr("Warmest entering water allowed")));
  number(
      tr("Design life, years"), Quantity::count,
      {[](const Plan& p) { return p.thermal.years; },
       [](Plan& p, double v) { p.thermal.years = static_cast<int>(std::lround(std::clamp(v, -1e6, 1e6))); },
       tr("Design life")});
  check(tr("Resistance of pipe and film is given"),
        {has_resistance,
         [this](Plan& p, bool on) {
           const Outcome* outcome = document_.outcome();
           const bool known = outcome != nullptr && outcome->temperatures != nullptr;
           const double now =
               known ? outcome->temperatures->circulation.fluid_resistance : kUsualFluidResistance;
           p.thermal.fluid_resistance = on ? std::optional(now) : std::nullopt;
         },
         tr("Resistance of pipe wall and film")});
  number(tr("Resistance of pipe and film"), Quantity::resistance,
         {[](const Plan& p) { return p.thermal.fluid_resistance.value_or(kUsualFluidResistance); },
          [](Plan& p, double v) { p.thermal.fluid_resistance = v; }, tr("Resistance of pipe wall and film")});
  only_when(has_resistance);
  note(
      [this](const Plan& p) { return has_resistance(p) ? QString() : figure_line("heat.fluid_resistance"); });
}

}  // namespace underlawn
