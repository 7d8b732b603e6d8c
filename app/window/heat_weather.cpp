// SPDX-License-Identifier: GPL-3.0-or-later
// The weather year in the heat panel.
#include <QComboBox>
#include <QLabel>
#include <QLocale>
#include <algorithm>

#include "base/say.h"
#include "window/cells_table.h"
#include "window/heat_bound.h"
#include "window/heat_panel.h"

namespace underlawn {

namespace {

bool by_normals(const Plan& p) {
  return p.thermal.weather_source == WeatherSource::normals;
}

int preset_of(const Plan& p) {
  const auto& all = normals_presets();
  const auto at = std::find(all.begin(), all.end(), p.thermal.normals);
  return at == all.end() ? -1 : static_cast<int>(at - all.begin());
}

QStringList month_names() {
  return {Form::tr("Jan"), Form::tr("Feb"), Form::tr("Mar"), Form::tr("Apr"),
          Form::tr("May"), Form::tr("Jun"), Form::tr("Jul"), Form::tr("Aug"),
          Form::tr("Sep"), Form::tr("Oct"), Form::tr("Nov"), Form::tr("Dec")};
}

// Numbers that were changed are no preset's any more, and must not be printed under its name.
CellsTable::Column months(const QString& head, Quantity quantity,
                          std::array<double, 12> MonthlyNormals::*field, double low, double high) {
  return {head,
          quantity,
          [field](const Plan& p, std::size_t m) { return (p.thermal.normals.*field)[m]; },
          [field](Plan& p, std::size_t m, double v) {
            (p.thermal.normals.*field)[m] = v;
            p.thermal.normals.name = mark("Normals of your own");
          },
          low,
          high};
}

QString file_words(const Plan& p) {
  const WeatherYear& year = p.thermal.weather_file;
  if (by_normals(p)) return {};
  if (year.outdoor.empty()) return Form::tr("No weather file was read yet.");
  const auto [low, high] = std::minmax_element(year.outdoor.begin(), year.outdoor.end());
  return Form::tr("%1: %2 to %3, hour by hour.")
      .arg(QString::fromStdString(year.name), printed(Quantity::temperature, *low, p),
           printed(Quantity::temperature, *high, p));
}

}  // namespace

void HeatPanel::add_weather() {
  section(tr("Weather"));
  choice(tr("Year from"), {tr("Monthly normals"), tr("Weather file")},
         heat_choice(&ThermalWishes::weather_source, tr("Source of the weather")));
  note(file_words);
  file_button(tr("Weather file…"), tr("Open a weather file"), tr("Weather files (*.epw)"),
              &HeatPanel::read_weather);
  QStringList climates;
  for (const MonthlyNormals& normals : normals_presets()) climates << short_name(normals.name);
  choice(
      tr("Climate"), climates,
      {preset_of, [](Plan& p, int i) { p.thermal.normals = normals_presets()[static_cast<std::size_t>(i)]; },
       tr("Climate")})
      ->setPlaceholderText(tr("numbers of your own"));
  only_when(by_normals);
  auto* table = new CellsTable(
      document_,
      {tr("Monthly normals"),
       {months(tr("Mean"), Quantity::temperature, &MonthlyNormals::mean, -60, 50),
        months(tr("Range of a day"), Quantity::temperature_difference, &MonthlyNormals::daily_range, 0, 40)},
       [](const Plan&) { return std::size_t{12}; },
       month_names()});
  wide(table);
  only_when(by_normals);
  on_refresh([table] { table->refresh(); });
  note([](const Plan& p) {
    return by_normals(p) && preset_of(p) >= 0
               ? tr("Typical numbers of our own, of no station: type those of the nearest one.")
               : QString();
  });
  wrong_note([](const Plan& p) {
    if (!by_normals(p)) return QString();
    const auto year = year_from_normals(p.thermal.normals);
    return year ? QString() : QString::fromStdString(year.error().message());
  });
}

}  // namespace underlawn
