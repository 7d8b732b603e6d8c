// SPDX-License-Identifier: GPL-3.0-or-later
// Soil and the ground's own temperature in the heat panel.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "ground/surface_cover.h"
#include "house/calendar.h"
#include "window/heat_bound.h"
#include "window/heat_panel.h"

namespace underlawn {

namespace {

constexpr double kSameResistance = 1e-9;  // m2 K/W

bool by_matter(const Plan& p) {
  return p.thermal.soil.source == SoilSource::matter;
}

bool by_number(const Plan& p) {
  return !by_matter(p);
}

bool typed_climate(const Plan& p) {
  return p.thermal.climate_source == ClimateSource::typed;
}

Form::Bound<double> matter(double SoilMatter::*field, const QString& what) {
  return bound_to(what, &Plan::thermal, &ThermalWishes::soil, &SoilWishes::matter, field);
}

Form::Bound<double> typed(double SoilThermal::*field, const QString& what) {
  return bound_to(what, &Plan::thermal, &ThermalWishes::soil, &SoilWishes::typed, field);
}

template <class Choice>
Form::Bound<int> soil_choice(Choice SoilWishes::*field, const QString& what) {
  return bound_to<int>(what, &Plan::thermal, &ThermalWishes::soil, field);
}

int soil_preset(const Plan& p) {
  const auto& all = soil_presets();
  const auto at = std::find_if(all.begin(), all.end(),
                               [&](const SoilPreset& s) { return s.matter == p.thermal.soil.matter; });
  return at == all.end() ? -1 : static_cast<int>(at - all.begin());
}

int cover_of(const Plan& p) {
  const auto& all = surface_covers();
  const auto at = std::find_if(all.begin(), all.end(), [&](const SurfaceCover& c) {
    return std::abs(c.resistance - p.thermal.surface_resistance) < kSameResistance;
  });
  return at == all.end() ? -1 : static_cast<int>(at - all.begin());
}

QString models_side_by_side(const Plan& p) {
  if (!by_matter(p)) return {};
  QStringList lines;
  for (const auto model :
       {ConductivityModel::johansen, ConductivityModel::lu, ConductivityModel::cote_konrad}) {
    const auto k = conductivity(p.thermal.soil.matter, model);
    const QString name = QString::fromUtf8(model_name(model));
    lines << (k ? Form::tr("%1: %2").arg(name, printed(Quantity::conductivity, *k, p))
                : Form::tr("%1: not measured for this soil").arg(name));
  }
  return Form::tr("Conductivity by the three models") + '\n' + lines.join('\n') + '\n' +
         QString::fromUtf8(model_source(p.thermal.soil.model));
}

QString used_words(const Plan& p) {
  const auto soil = soil_thermal(p.thermal.soil);
  if (!soil) return {};
  return Form::tr("Used: %1, %2; diffusivity %3.")
      .arg(printed(Quantity::conductivity, soil->conductivity, p),
           printed(Quantity::heat_capacity, soil->heat_capacity, p),
           printed(Quantity::diffusivity, soil->diffusivity(), p));
}

QString fit_words(const QString& file, const ProbeFit& fit, const Plan& p) {
  const auto k = [&](double v) { return printed(Quantity::conductivity, v, p); };
  const auto time = [&](double v) { return printed(Quantity::duration, v, p); };
  return Form::tr(
             "From %1: %2, 95 % interval %3 to %4. Fitted from %5 to %6 (%7 readings); thirds of the "
             "window differ by %8.")
      .arg(file, k(fit.conductivity), k(fit.low), k(fit.high), time(fit.window.from), time(fit.window.to))
      .arg(fit.readings)
      .arg(printed(Quantity::ratio, fit.spread, p));
}

}  // namespace

void HeatPanel::add_soil() {
  section(tr("Soil as heat meets it"));
  choice(tr("Known by"), {tr("Typed or measured"), tr("What it is made of")},
         soil_choice(&SoilWishes::source, tr("Source of the soil")));
  add_matter();
  add_typed_soil();
  wrong_note([](const Plan& p) {
    const auto soil = soil_thermal(p.thermal.soil);
    return soil ? QString() : QString::fromStdString(soil.error().message());
  });
  note(used_words);
  file_button(tr("Needle-probe log…"), tr("Open the log of a needle probe"), tr("Tables (*.csv *.txt *.tsv)"),
              &HeatPanel::read_probe);
  note([this](const Plan& p) {
    const bool used = probe_ && by_number(p) && p.thermal.soil.typed.conductivity == probe_->fit.conductivity;
    return used ? fit_words(probe_->file, probe_->fit, p) : QString();
  });
}

void HeatPanel::add_matter() {
  QStringList presets;
  for (const SoilPreset& preset : soil_presets()) presets << QString::fromStdString(translated(preset.name));
  choice(tr("Texture and moisture"), presets,
         {soil_preset,
          [](Plan& p, int i) { p.thermal.soil.matter = soil_presets()[static_cast<std::size_t>(i)].matter; },
          tr("Kind of soil")})
      ->setPlaceholderText(tr("numbers of your own"));
  only_when(by_matter);
  number(tr("Porosity"), Quantity::ratio, matter(&SoilMatter::porosity, tr("Porosity")))
      ->edit()
      ->setToolTip(tr("Pores by volume; the dry density says the same"));
  only_when(by_matter);
  number(tr("Dry density"), Quantity::density,
         {[](const Plan& p) { return dry_density(p.thermal.soil.matter.porosity); },
          [](Plan& p, double v) { p.thermal.soil.matter.porosity = porosity_from_density(v); },
          tr("Dry density")});
  only_when(by_matter);
  number(tr("Quartz of the solids"), Quantity::ratio, matter(&SoilMatter::quartz, tr("Quartz")));
  only_when(by_matter);
  number(tr("Water in the pores"), Quantity::ratio, matter(&SoilMatter::saturation, tr("Saturation")))
      ->edit()
      ->setToolTip(tr("Saturation: 0 dry, 100 % all pores full"));
  only_when(by_matter);
  choice(tr("Grain"), {tr("Gravel, coarse sand"), tr("Medium and fine sand"), tr("Silt and clay")},
         bound_to<int>(tr("Grain"), &Plan::thermal, &ThermalWishes::soil, &SoilWishes::matter,
                       &SoilMatter::grain));
  only_when(by_matter);
  QStringList models;
  for (const auto model :
       {ConductivityModel::johansen, ConductivityModel::lu, ConductivityModel::cote_konrad})
    models << QString::fromUtf8(model_name(model));
  choice(tr("Model"), models, soil_choice(&SoilWishes::model, tr("Conductivity model")));
  only_when(by_matter);
  note(models_side_by_side);
}

void HeatPanel::add_typed_soil() {
  number(tr("Conductivity"), Quantity::conductivity,
         typed(&SoilThermal::conductivity, tr("Soil conductivity")));
  only_when(by_number);
  number(tr("Heat capacity"), Quantity::heat_capacity,
         typed(&SoilThermal::heat_capacity, tr("Soil heat capacity")));
  only_when(by_number);
}

void HeatPanel::add_surface() {
  section(tr("Surface, and the ground's own temperature"));
  QStringList covers;
  for (const SurfaceCover& cover : surface_covers()) covers << QString::fromStdString(translated(cover.name));
  choice(tr("Cover"), covers,
         {cover_of,
          [](Plan& p, int i) {
            p.thermal.surface_resistance = surface_covers()[static_cast<std::size_t>(i)].resistance;
          },
          tr("Surface cover")})
      ->setPlaceholderText(tr("a number of your own"));
  number(tr("Resistance"), Quantity::surface_resistance,
         heat_number(&ThermalWishes::surface_resistance, tr("Surface resistance")))
      ->edit()
      ->setToolTip(tr("Of cover and air film together. Common practice, no source"));
  add_climate();
}

void HeatPanel::add_climate() {
  choice(tr("Ground temperature"), {tr("From the weather"), tr("Typed")},
         heat_choice(&ThermalWishes::climate_source, tr("Source of the ground temperature")));
  number(tr("Mean of the year"), Quantity::temperature,
         heat_number(&ThermalWishes::climate, &GroundClimate::mean, tr("Mean ground temperature")));
  only_when(typed_climate);
  number(tr("Half its swing"), Quantity::temperature_difference,
         heat_number(&ThermalWishes::climate, &GroundClimate::amplitude, tr("Ground temperature swing")))
      ->edit()
      ->setToolTip(tr("Half the difference of the warmest and the coldest day at the surface"));
  only_when(typed_climate);
  number(tr("Coldest day"), Quantity::count,
         heat_number(&ThermalWishes::climate, &GroundClimate::coldest_day, tr("Coldest day of the surface")))
      ->edit()
      ->setToolTip(tr("Day of the year on which the surface is coldest; 1 January is 1"));
  only_when(typed_climate);
  note([this](const Plan& p) {
    const Outcome* outcome = document_.outcome();
    const bool read = outcome != nullptr && outcome->surroundings != nullptr;
    if (!typed_climate(p) && !read) return QString();
    const GroundClimate& c = typed_climate(p) ? p.thermal.climate : outcome->surroundings->climate;
    const int day = std::clamp(static_cast<int>(std::lround(c.coldest_day)) - 1, 0, 364);
    return tr("%1 in the mean, %2 either way at the surface, coldest on %3.")
        .arg(printed(Quantity::temperature, c.mean, p),
             printed(Quantity::temperature_difference, c.amplitude, p),
             QString::fromStdString(date_of_day(day)));
  });
}

}  // namespace underlawn
