// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/soil.h"

#include <cmath>

#include "base/say.h"

namespace underlawn {
namespace {

constexpr double kSolids = 2700;  // kg/m3
constexpr double kQuartz = 7.7;   // W/(m K)
constexpr double kWater = 0.57;   // W/(m K)

std::string number(double value) {
  std::string text = std::to_string(value);
  while (text.size() > 3 && text.back() == '0') text.pop_back();
  return text;
}

Result<void> within(std::string_view thing, double value, double low, double high, std::string_view advice) {
  if (value >= low && value <= high) return {};
  return refuse({"soil_out_of_bounds", std::string(thing), number(value),
                 say("{} to {}", number(low), number(high)), std::string(advice)});
}

double least_saturation(ConductivityModel model, Grain grain) {
  if (model != ConductivityModel::johansen) return 0;
  return grain == Grain::fine ? 0.1 : 0.05;
}

}  // namespace

std::string model_name(ConductivityModel model) {
  switch (model) {
    case ConductivityModel::johansen:
      return "Johansen";
    case ConductivityModel::lu:
      return say("Lu et al.");
    case ConductivityModel::cote_konrad:
      return say("C\u00f4t\u00e9 and Konrad");
  }
  return "";
}

std::string model_source(ConductivityModel model) {
  switch (model) {
    case ConductivityModel::johansen:
      return say("Johansen 1975, thesis, Trondheim (CRREL translation 637)");
    case ConductivityModel::lu:
      return "Lu, Ren, Gong, Horton 2007, Soil Sci. Soc. Am. J. 71:8-14";
    case ConductivityModel::cote_konrad:
      return "C\u00f4t\u00e9 and Konrad 2005, Can. Geotech. J. 42:443-458";
  }
  return "";
}

double dry_density(double porosity) {
  return kSolids * (1 - porosity);
}
double porosity_from_density(double density) {
  return 1 - density / kSolids;
}

double saturation_from_water(double water_by_mass, double porosity) {
  return water_by_mass * dry_density(porosity) / (1000 * porosity);
}

double conductivity_of_solids(double quartz) {
  const double others = quartz > 0.2 ? 2.0 : 3.0;
  return std::pow(kQuartz, quartz) * std::pow(others, 1 - quartz);
}

double saturated_conductivity(double porosity, double quartz) {
  return std::pow(conductivity_of_solids(quartz), 1 - porosity) * std::pow(kWater, porosity);
}

double dry_conductivity(double n, ConductivityModel model, Grain grain) {
  switch (model) {
    case ConductivityModel::johansen: {
      if (grain == Grain::gravel) return 0.039 * std::pow(n, -2.2);
      const double density = dry_density(n);
      return (0.135 * density + 64.7) / (kSolids - 0.947 * density);
    }
    case ConductivityModel::lu:
      return -0.56 * n + 0.51;
    case ConductivityModel::cote_konrad:
      return grain == Grain::gravel ? 1.70 * std::pow(10, -1.80 * n) : 0.75 * std::pow(10, -1.20 * n);
  }
  return 0;
}

double kersten_number(double s, ConductivityModel model, Grain grain) {
  switch (model) {
    case ConductivityModel::johansen:
      return (grain == Grain::fine ? 1.0 : 0.7) * std::log10(s) + 1;
    case ConductivityModel::lu: {
      const double alpha = grain == Grain::fine ? 0.27 : 0.96;
      return s > 0 ? std::exp(alpha * (1 - std::pow(s, alpha - 1.33))) : 0;
    }
    case ConductivityModel::cote_konrad: {
      const double kappa = grain == Grain::gravel ? 4.60 : grain == Grain::coarse ? 3.55 : 1.90;
      return kappa * s / (1 + (kappa - 1) * s);
    }
  }
  return 0;
}

Result<double> conductivity(const SoilMatter& soil, ConductivityModel model) {
  const bool lu = model == ConductivityModel::lu;
  if (auto ok = within(say("porosity"), soil.porosity, lu ? 0.2 : 0.05, lu ? 0.6 : 0.95,
                       say("Enter the pore volume per volume of soil, or take another model."));
      !ok)
    return refuse(ok.error());
  if (auto ok =
          within(say("quartz content"), soil.quartz, 0, 1, say("Enter the share of quartz in the solids."));
      !ok)
    return refuse(ok.error());
  if (auto ok = within(
          say("saturation"), soil.saturation, least_saturation(model, soil.grain), 1,
          say("Moisture cannot fill more than the pores; drier than the model's range, take another model."));
      !ok)
    return refuse(ok.error());
  const double dry = dry_conductivity(soil.porosity, model, soil.grain);
  const double wet = saturated_conductivity(soil.porosity, soil.quartz);
  return dry + kersten_number(soil.saturation, model, soil.grain) * (wet - dry);
}

double heat_capacity(const SoilMatter& soil) {
  return 2.0e6 * (1 - soil.porosity) + 4.18e6 * soil.porosity * soil.saturation;
}

double kersten_conductivity(double water_by_mass, double density, bool sandy) {
  const double w = std::log10(100 * water_by_mass), pounds = density / 16.018463;
  const double imperial = (sandy ? 0.7 * w + 0.4 : 0.9 * w - 0.2) * std::pow(10, 0.01 * pounds);
  return imperial * 0.1442279;  // Btu in/(h ft2 F)
}

const std::vector<SoilPreset>& soil_presets() {
  static const std::vector<SoilPreset> presets = {
      {mark("Sand, dry"), {0.40, 0.80, 0.10, Grain::coarse}},
      {mark("Sand, moist"), {0.40, 0.80, 0.35, Grain::coarse}},
      {mark("Sand, wet"), {0.40, 0.80, 1.00, Grain::coarse}},
      {mark("Sandy loam, moist"), {0.42, 0.60, 0.50, Grain::coarse}},
      {mark("Loam, dry"), {0.45, 0.40, 0.25, Grain::fine}},
      {mark("Loam, moist"), {0.45, 0.40, 0.60, Grain::fine}},
      {mark("Loam, wet"), {0.45, 0.40, 0.95, Grain::fine}},
      {mark("Silt loam, moist"), {0.47, 0.30, 0.65, Grain::fine}},
      {mark("Clay loam, moist"), {0.47, 0.30, 0.70, Grain::fine}},
      {mark("Clay, moist"), {0.50, 0.20, 0.75, Grain::fine}},
      {mark("Clay, wet"), {0.50, 0.20, 1.00, Grain::fine}},
      {mark("Gravel, damp"), {0.32, 0.55, 0.15, Grain::gravel}},
  };
  return presets;
}

}  // namespace underlawn
