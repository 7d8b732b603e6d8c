// SPDX-License-Identifier: GPL-3.0-or-later
// How choices are called in files.
#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "base/say.h"
#include "field/trench.h"
#include "plan/finding.h"
#include "plan/plan.h"

namespace underlawn {

template <class E, std::size_t N>
using Names = std::array<std::pair<E, std::string_view>, N>;

inline constexpr Names<UnitSystem, 2> kUnitSystemNames = {
    {{UnitSystem::metric, "metric"}, {UnitSystem::us, "us"}}};

inline constexpr Names<DimensionWay, 3> kDimensionWayNames = {{{DimensionWay::straight, "straight"},
                                                               {DimensionWay::level, "level"},
                                                               {DimensionWay::upright, "upright"}}};

inline constexpr Names<FeatureKind, kFeatureKinds> kFeatureKindNames = {{
    {FeatureKind::house, "house"},
    {FeatureKind::drive, "drive"},
    {FeatureKind::septic_tank, "septic_tank"},
    {FeatureKind::drain_field, "drain_field"},
    {FeatureKind::reserve_field, "reserve_field"},
    {FeatureKind::well, "well"},
    {FeatureKind::tree, "tree"},
    {FeatureKind::utility, "utility"},
    {FeatureKind::easement, "easement"},
    {FeatureKind::no_dig, "no_dig"},
}};

inline constexpr Names<UtilityKind, 6> kUtilityKindNames = {{
    {UtilityKind::electric, "electric"},
    {UtilityKind::gas, "gas"},
    {UtilityKind::communication, "communication"},
    {UtilityKind::water, "water"},
    {UtilityKind::sewer, "sewer"},
    {UtilityKind::reclaimed, "reclaimed"},
}};

inline constexpr Names<ClosureChoice, 2> kClosureChoiceNames = {{
    {ClosureChoice::as_written, "as_written"},
    {ClosureChoice::compass_rule, "compass_rule"},
}};

inline constexpr Names<SightingMethod, 5> kSightingMethodNames = {{
    {SightingMethod::two_distances, "two_distances"},
    {SightingMethod::station_offset, "station_offset"},
    {SightingMethod::bearing_distance, "bearing_distance"},
    {SightingMethod::latitude_longitude, "latitude_longitude"},
    {SightingMethod::east_north, "east_north"},
}};

inline constexpr Names<SoilType, 4> kSoilTypeNames = {{
    {SoilType::stable_rock, "stable_rock"},
    {SoilType::type_a, "type_a"},
    {SoilType::type_b, "type_b"},
    {SoilType::type_c, "type_c"},
}};

inline constexpr Names<CoilPattern, kCoilPatterns> kCoilPatternNames = {{
    {CoilPattern::flat_coil, "flat_coil"},
    {CoilPattern::upright_coil, "upright_coil"},
    {CoilPattern::single_pipe, "single_pipe"},
    {CoilPattern::two_pipes, "two_pipes"},
    {CoilPattern::four_pipes, "four_pipes"},
    {CoilPattern::six_pipes, "six_pipes"},
}};

inline constexpr Names<CoilUnknown, 3> kCoilUnknownNames = {{
    {CoilUnknown::pitch, "pitch"},
    {CoilUnknown::coil_length, "coil_length"},
    {CoilUnknown::trench_length, "trench_length"},
}};

inline constexpr Names<Aim, 7> kAimNames = {{
    {Aim::digging, "digging"},
    {Aim::circuits, "circuits"},
    {Aim::metres, "metres"},
    {Aim::lawn, "lawn"},
    {Aim::cost, "cost"},
    {Aim::trees, "trees"},
    {Aim::mix, "mix"},
}};

inline constexpr Names<SoilSource, 2> kSoilSourceNames = {{
    {SoilSource::typed, "typed"},
    {SoilSource::matter, "matter"},
}};

inline constexpr Names<Grain, 3> kGrainNames = {{
    {Grain::gravel, "gravel"},
    {Grain::coarse, "coarse"},
    {Grain::fine, "fine"},
}};

inline constexpr Names<ConductivityModel, 3> kConductivityModelNames = {{
    {ConductivityModel::johansen, "johansen"},
    {ConductivityModel::lu, "lu"},
    {ConductivityModel::cote_konrad, "cote_konrad"},
}};

inline constexpr Names<ClimateSource, 2> kClimateSourceNames = {{
    {ClimateSource::weather, "weather"},
    {ClimateSource::typed, "typed"},
}};

inline constexpr Names<WeatherSource, 2> kWeatherSourceNames = {{
    {WeatherSource::normals, "normals"},
    {WeatherSource::file, "file"},
}};

inline constexpr Names<LoadSource, 3> kLoadSourceNames = {{
    {LoadSource::design, "design"},
    {LoadSource::block, "block"},
    {LoadSource::hours, "hours"},
}};

inline constexpr Names<Fluid, 5> kFluidNames = {{
    {Fluid::water, "water"},
    {Fluid::propylene_glycol, "propylene_glycol"},
    {Fluid::ethanol, "ethanol"},
    {Fluid::methanol, "methanol"},
    {Fluid::ethylene_glycol, "ethylene_glycol"},
}};

inline constexpr Names<HeaderArrangement, 3> kHeaderArrangementNames = {{
    {HeaderArrangement::direct_return, "direct_return"},
    {HeaderArrangement::reverse_return, "reverse_return"},
    {HeaderArrangement::home_runs, "home_runs"},
}};

inline constexpr Names<TestProcedure, 4> kTestProcedureNames = {{
    {TestProcedure::pump_then_shut_in, "pump_then_shut_in"},
    {TestProcedure::hold_then_shut_in, "hold_then_shut_in"},
    {TestProcedure::long_hold_then_shut_in, "long_hold_then_shut_in"},
    {TestProcedure::rebound, "rebound"},
}};

inline constexpr Names<PriceUnit, 8> kPriceUnitNames = {{
    {PriceUnit::each, "each"},
    {PriceUnit::metre, "m"},
    {PriceUnit::square_metre, "m2"},
    {PriceUnit::cubic_metre, "m3"},
    {PriceUnit::litre, "l"},
    {PriceUnit::kilogram, "kg"},
    {PriceUnit::hour, "h"},
    {PriceUnit::day, "day"},
}};

inline constexpr Names<LabourBy, 2> kLabourByNames = {{{LabourBy::days, "days"}, {LabourBy::hours, "hours"}}};

inline constexpr Names<TaxOn, 2> kTaxOnNames = {
    {{TaxOn::materials, "materials"}, {TaxOn::everything, "everything"}}};

inline constexpr Names<IncentiveKind, 2> kIncentiveKindNames = {
    {{IncentiveKind::fixed, "fixed"}, {IncentiveKind::percent, "percent"}}};

inline constexpr Names<SheetUnits, kSheetUnitsChoices> kSheetUnitsNames = {
    {{SheetUnits::as_plan, "as_plan"}, {SheetUnits::metric, "metric"}, {SheetUnits::us, "us"}}};

inline constexpr Names<Sides, kSides> kSidesNames = {{
    {Sides::stay_out, "stay_out"},
    {Sides::slope, "slope"},
    {Sides::shield, "shield"},
    {Sides::shoring, "shoring"},
}};

inline constexpr Names<Haul, 3> kHaulNames = {{
    {Haul::none, "none"},
    {Haul::needed, "needed"},
    {Haul::all, "all"},
}};

inline constexpr Names<TrenchRole, 2> kTrenchRoleNames = {{
    {TrenchRole::field, "field"},
    {TrenchRole::supply, "supply"},
}};

inline constexpr Names<Conduit, 2> kConduitNames = {{{Conduit::header, "header"}, {Conduit::run, "run"}}};

inline constexpr Names<Severity, 3> kSeverityNames = {{
    {Severity::hint, "hint"},
    {Severity::warning, "warning"},
    {Severity::error, "error"},
}};

// Empty for a value that is no choice.
template <class E, std::size_t N>
std::string_view name_of(const Names<E, N>& names, E value) {
  for (const auto& [choice, name] : names)
    if (choice == value) return name;
  return {};
}

// "house, drive or tree", for messages.
template <class E, std::size_t N>
std::string choices(const Names<E, N>& names) {
  std::string all;
  for (std::size_t i = 0; i < N; ++i)
    all = i == 0       ? std::string(names[i].second)
          : i + 1 == N ? say("{} or {}", all, names[i].second)
                       : say("{}, {}", all, names[i].second);
  return all;
}

}  // namespace underlawn
