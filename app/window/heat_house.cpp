// SPDX-License-Identifier: GPL-3.0-or-later
// What the house asks for, in the heat panel.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <numeric>

#include "base/say.h"
#include "window/heat_bound.h"
#include "window/heat_panel.h"

namespace underlawn {

namespace {

bool by_design(const Plan& p) {
  return p.thermal.load_source == LoadSource::design;
}

Form::Bound<double> load(double DesignLoad::*field, const QString& what) {
  return heat_number(&ThermalWishes::load, field, what);
}

double year_sum(const std::vector<double>& watts) {
  return 3600 * std::accumulate(watts.begin(), watts.end(), 0.0);
}

QString of_a_year(const QString& name, const std::vector<double>& watts, const Plan& p) {
  const double most = *std::max_element(watts.begin(), watts.end());
  return Form::tr("%1: %2 in the year, %3 at most")
      .arg(name, printed(Quantity::energy, year_sum(watts), p), printed(Quantity::power, most, p));
}

QString hours_words(const Plan& p) {
  if (p.thermal.load_source != LoadSource::hours) return {};
  const HourlyFile& hours = p.thermal.hours;
  QStringList lines;
  if (!hours.heating.empty()) lines << of_a_year(Form::tr("Heating"), hours.heating, p);
  if (!hours.cooling.empty()) lines << of_a_year(Form::tr("Cooling"), hours.cooling, p);
  if (!hours.ground.empty())
    lines << Form::tr("Heat taken from the ground, less what is given to it: %1 in the year")
                 .arg(printed(Quantity::energy, year_sum(hours.ground), p));
  if (lines.isEmpty()) return Form::tr("No file of hourly loads was read yet.");
  return QString::fromStdString(hours.name) + '\n' + lines.join('\n');
}

// A house to start from, so that there is something to change.
BlockHouse a_house() {
  BlockHouse house;
  house.surfaces = {{say("Walls"), 160, 0.35},
                    {say("Windows"), 25, 1.8},
                    {say("Roof"), 100, 0.2},
                    {say("Floor"), 100, 0.3}};
  house.floor_area = 180;
  return house;
}

void choose_source(Plan& p, int i) {
  ThermalWishes& t = p.thermal;
  t.load_source = static_cast<LoadSource>(i);
  if (t.load_source == LoadSource::block && t.block == BlockHouse{}) t.block = a_house();
}

}  // namespace

void HeatPanel::add_house() {
  section(tr("House"));
  choice(tr("Loads from"), {tr("Design loads"), tr("Block of the house"), tr("Hourly file")},
         {[](const Plan& p) { return static_cast<int>(p.thermal.load_source); }, choose_source,
          tr("Source of the loads")});
  add_design();
  add_block();
  add_hours();
}

void HeatPanel::add_design() {
  const auto row = [this](const QString& label, Quantity q, double DesignLoad::*field, const QString& what) {
    QuantityField* entry = number(label, q, load(field, what));
    only_when(by_design);
    return entry;
  };
  row(tr("Design heat loss"), Quantity::power, &DesignLoad::heat_loss, tr("Design heat loss"));
  row(tr("Outdoors then"), Quantity::temperature, &DesignLoad::outdoor_cold, tr("Cold design day"));
  row(tr("No heat above"), Quantity::temperature, &DesignLoad::balance_heating,
      tr("Balance temperature of heating"))
      ->edit()
      ->setToolTip(tr("Balance temperature: above it sun, people and lamps carry the house"));
  row(tr("Design heat gain"), Quantity::power, &DesignLoad::heat_gain, tr("Design heat gain"))
      ->edit()
      ->setToolTip(tr("0 for a house that is not cooled"));
  row(tr("Outdoors at the gain"), Quantity::temperature, &DesignLoad::outdoor_warm, tr("Warm design day"));
  row(tr("No cooling below"), Quantity::temperature, &DesignLoad::balance_cooling,
      tr("Balance temperature of cooling"));
  note([this](const Plan& p) {
    const Outcome* outcome = document_.outcome();
    if (!by_design(p) || outcome == nullptr || outcome->surroundings == nullptr) return QString();
    const DesignDays days = design_days(outcome->surroundings->weather);
    return tr("The weather year is below %1 in 0.4 % of its hours, and above %2 in 0.4 %.")
        .arg(printed(Quantity::temperature, days.cold, p), printed(Quantity::temperature, days.warm, p));
  });
  wrong_note([](const Plan& p) {
    const auto sound = check_load(p.thermal.load);
    return sound || !by_design(p) ? QString() : QString::fromStdString(sound.error().message());
  });
}

void HeatPanel::add_hours() {
  note(hours_words);
  file_button(tr("Hourly loads…"), tr("Open a year of hourly loads"), tr("Tables (*.csv *.txt *.tsv)"),
              &HeatPanel::read_loads);
}

}  // namespace underlawn
