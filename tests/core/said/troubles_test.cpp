// SPDX-License-Identifier: GPL-3.0-or-later
// What is said of flow, heat, pressure tests, survey and layout: every word of it in the language spoken.
#include <cmath>
#include <limits>

#include "flow/charge.h"
#include "flow/flow_remarks.h"
#include "flow/flow_wishes.h"
#include "flow/hydraulics.h"
#include "flow/loop_test.h"
#include "flow/test_procedure.h"
#include "flow/test_safety.h"
#include "flow/test_verdict.h"
#include "ground/ground.h"
#include "house/block_house.h"
#include "house/calendar.h"
#include "house/heat_pump_file.h"
#include "layout/layout.h"
#include "pipe/fluid.h"
#include "pipe/rating.h"
#include "plan/solve.h"
#include "plane/region.h"
#include "support/flow_layouts.h"
#include "support/said.h"
#include "support/sample_plans.h"
#include "survey/notebook.h"
#include "survey/survey_troubles.h"
#include "thermal/surroundings.h"

namespace underlawn {
namespace {

using test::Listener;
using test::units_and;
using testing::IsEmpty;

constexpr double kInfinite = std::numeric_limits<double>::infinity();

FlowWishes odd_flow() {
  FlowWishes w;
  w.freeze_margin = w.capacity = w.tail = -1;
  w.design_flow = std::nan("");
  w.valves_k = kInfinite;
  w.purge_velocity = w.purge_volumes = w.most_imbalance = w.most_head = -kInfinite;
  w.heat_pump = w.hose_kit = {500, 7};
  w.coldest_temperature = w.design_temperature = -60;
  w.circulator.curve = {{0, 3, 1}, {0, 4, 1}, {1e-4, 5, 1}};
  w.flush_cart.curve = {{-1, 3, 1}, {5, -4, -1}};
  w.header_sizes = {"a hose"};
  w.run_size = "a hose";
  return w;
}

}  // namespace

TEST(TroublesSay, Flow) {
  Listener listener(units_and({"DR", "MPa", "Re"}));
  for (UnitSystem units : {UnitSystem::us, UnitSystem::metric})
    listener.hear(flow_troubles(odd_flow(), units));
  Wishes wishes;
  FlowWishes w;
  w.design_flow = 5e-3;
  w.coldest_temperature = -20;
  w.most_head = 0.5;
  for (const Layout& layout : {hand_layout(2, 3, true), hand_layout(0, 1, false), Layout{}})
    for (HeaderArrangement a : {HeaderArrangement::direct_return, HeaderArrangement::home_runs}) {
      w.arrangement = a;
      listener.hear(header_arrangement_name(a));
      const auto flow = solve_flow(layout, wishes, w);
      listener.hear(flow);
      if (!flow) continue;
      listener.hear(flow_remarks(*flow, w, UnitSystem::us));
      listener.hear(balance_advice(flow->remedies, UnitSystem::us));
      if (flow->pump) listener.hear(flow->pump->grade);
      for (const NetPipe& p : flow->loop.network.pipes) listener.hear(p.name);
    }
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  EXPECT_GT(listener.heard(), 60);
}

TEST(TroublesSay, Fluids) {
  Listener listener(units_and({"DR"}));
  for (Fluid f :
       {Fluid::water, Fluid::propylene_glycol, Fluid::ethanol, Fluid::methanol, Fluid::ethylene_glycol}) {
    listener.hear(fluid_name(f));
    listener.hear(fluid_caution(f));
    listener.hear(freezing_point(f, 2));
    listener.hear(concentration_for(f, -200));
    listener.hear(fluid_properties(f, 0.1, -90));
  }
  listener.hear(find_pipe("a hose"));
  listener.hear(pressure_rating(PeMaterial::pe4710, 100, 20));
  listener.hear(pressure_rating(PeMaterial::pe4710, 11, 300));
  listener.hear(weakest_part({}));
  listener.hear(weakest_part({{"tee", -1}}));
  EXPECT_THAT(listener.unsaid(), IsEmpty());
}

TEST(TroublesSay, PressureTests) {
  Listener listener(units_and({"ASTM"}));
  const LoopVolume loop{{{"pipe", 0.0215, 0.0267, 11, 900}}};
  LoopTest odd;
  odd.working_pressure = odd.gauge_height = odd.temperature = odd.weakest_fitting = std::nan("");
  odd.pumped = -1;
  listener.hear(loop_test_troubles(odd));
  listener.hear(check_loop({}));
  for (const PipeShare& p :
       {PipeShare{"a", 1, 0.5, 11, 9}, PipeShare{"a", 0.02, 0.03, 11, -9}, PipeShare{"a", 0.02, 0.03, 99, 9}})
    listener.hear(check_loop({{p}}));
  for (TestProcedure p : {TestProcedure::pump_then_shut_in, TestProcedure::hold_then_shut_in,
                          TestProcedure::long_hold_then_shut_in, TestProcedure::rebound})
    listener.hear(test_procedure_name(p));
  for (const std::string& line : test_cautions(loop, 600e3)) listener.hear(line);
  const TestProgramme programme = long_hold_then_shut_in(600e3);
  listener.hear(programme.name);
  const auto log = [](double start, double fall) {
    std::vector<PressureReading> readings;
    for (double t = 0; t <= 3600; t += 300) readings.push_back({t, start - fall * t, {}});
    return readings;
  };
  for (const auto& readings : {log(600e3, 0), log(600e3, 90), log(600e3, -20), log(100e3, 0), log(560e3, 4),
                               std::vector<PressureReading>{}, std::vector<PressureReading>{{0, 1, {}}}}) {
    const auto verdict = judge_test(programme, loop, {}, {}, readings, 0.09, UnitSystem::us);
    listener.hear(verdict);
    if (!verdict) continue;
    listener.hear(verdict->reason);
    listener.hear(verdict->next);
  }
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  EXPECT_GT(listener.heard(), 30);
}

TEST(TroublesSay, HeatAndHouse) {
  Listener listener(units_and({"Btu", "MJ", "COP"}));
  ThermalWishes w;
  w.soil.source = SoilSource::typed;
  w.soil.typed = {-1, -1};
  w.surface_resistance = w.coldest_allowed = -99;
  w.warmest_allowed = 999;
  w.years = 0;
  w.fluid_resistance = -1;
  w.load.heat_loss = w.load.heat_gain = -1;
  w.weather_source = WeatherSource::file;
  listener.hear(thermal_troubles(w));
  w.load = {};
  w.load.outdoor_cold = 40;
  listener.hear(check_load(w.load));
  BlockHouse house;
  listener.hear(design_load_from_block(house));
  house.surfaces = {{"", -1, 1}};
  listener.hear(design_load_from_block(house));
  house.surfaces = {{"North", 10, 99}};
  listener.hear(design_load_from_block(house));
  house.surfaces = {{"North", 10, 1}};
  listener.hear(design_load_from_block(house));
  house.floor_area = 100;
  house.air_change = 99;
  listener.hear(design_load_from_block(house));
  house.air_change = 0.3;
  house.outdoor_cold = 30;
  listener.hear(design_load_from_block(house));
  HeatPump unit = generic_heat_pump();
  unit.heating.resize(1);
  listener.hear(check_heat_pump(unit));
  for (double factor : {-1.0, 1e9, 0.01}) {
    unit = generic_heat_pump();
    unit.heating[2].power *= factor;
    listener.hear(check_heat_pump(unit));
  }
  for (ConductivityModel m :
       {ConductivityModel::johansen, ConductivityModel::lu, ConductivityModel::cote_konrad})
    listener.hear(conductivity({2, -1, 3, Grain::fine}, m));
  for (SoilType s : {SoilType::stable_rock, SoilType::type_a, SoilType::type_b, SoilType::type_c})
    listener.hear(soil_name(s));
  for (int day = 0; day < 365; day += 20) listener.hear(date_of_hour(24 * day + 5));
  for (const MonthlyNormals& n : normals_presets()) listener.hear(translated(n.name));
  for (const HeatPump& p : heat_pump_presets()) listener.hear(translated(p.name));
  for (const EarthPreset& e : earth_presets()) listener.hear(translated(e.name));
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  EXPECT_GT(listener.heard(), 60);
}

TEST(TroublesSay, Survey) {
  Listener listener(units_and());
  Survey survey;
  Sighting s;
  s.name = "A";
  s.first = s.second = s.east = s.north = 1e12;
  s.bearing = 99;
  s.latitude = s.longitude = 999;
  s.height = std::nan("");
  survey.notebook = {s, s, Sighting{}};
  survey.deed.turn = 99;
  survey.deed.start = {1e9, -1e9};
  survey.deed.chord_tolerance = 0;
  listener.hear(survey_troubles(survey, UnitSystem::us));
  NotebookSetting setting;
  setting.known = {{"lot 1", {0, 0}}, {"lot 2", {10, 0}}};
  for (SightingMethod m : {SightingMethod::two_distances, SightingMethod::station_offset,
                           SightingMethod::bearing_distance, SightingMethod::latitude_longitude})
    for (const char* from : {"lot 1", "nowhere", "", "A"})
      for (double first : {-1.0, 1.0, 1e7, kInfinite}) {
        Sighting one;
        one.name = "A";
        one.method = m;
        one.from = from;
        one.to = "lot 2";
        one.first = first;
        one.second = 2;
        survey.notebook = {one};
        for (const PlacedSighting& p : place_notebook(survey, setting)) listener.hear(p.at);
      }
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  EXPECT_GT(listener.heard(), 60);
}

TEST(TroublesSay, RingsAndLayouts) {
  Listener listener(units_and({"House", "Power", "Well", "Oak", "Maple", "Birch"}));
  for (const Ring& ring :
       {Ring{}, Ring{{0, 0}, {1, 0}}, Ring{{0, 0}, {1, 0}, {2, 0}}, Ring{{0, 0}, {1, 1}, {1, 0}, {0, 1}},
        Ring{{0, 0}, {1, std::nan("")}, {2, 2}}, Ring{{0, 0}, {1e9, 0}, {2, 2}}, Ring(9999)})
    listener.hear(checked_ring(ring, say("lot line")));
  Plan plan = sample::tiny_lot();
  listener.hear(solve(plan).layout.troubles);
  plan = sample::half_acre();
  plan.wishes.trench_width = -1;
  listener.hear(solve(plan).layout.troubles);
  plan = sample::half_acre();
  plan.wishes.locked = {{{1, 1}, {1, 1}}};
  plan.wishes.closed = {{99, 3}, {sample::house, 77}};
  plan.wishes.run_by = {{1e3, 1e3}};
  plan.wishes.groups = 4;
  listener.hear(solve(plan).layout.troubles);
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  EXPECT_GT(listener.heard(), 10);
}

}  // namespace underlawn
