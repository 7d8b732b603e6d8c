// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/random_plans.h"

#include <algorithm>

namespace underlawn::sample {

namespace {

using Random = std::mt19937_64;

int below(Random& random, int n) {
  return static_cast<int>(random() % static_cast<unsigned>(n));
}

double number(Random& random) {
  static const double odd[] = {0, -0.0, 1e-300, -1e300, 0.1, 1.0 / 3, 123456789.123, 5e-324, 2, 1e22};
  if (below(random, 8) == 0) return odd[below(random, 10)];
  return std::uniform_real_distribution<>(-500, 500)(random);
}

std::string word(Random& random) {
  static const char* odd[] = {"",     "Oak",          "\"quoted\"", "back\\slash", "line\nfeed", "Straße 7",
                              "井戸", "\x01\x1f\x7f", "</script>",  "🌳",           " ",          "e\u0301"};
  return odd[below(random, 12)];
}

Point point(Random& random) {
  return {number(random), number(random)};
}

Feature feature(Random& random, int id) {
  Feature f;
  f.id = id;
  f.kind = static_cast<FeatureKind>(below(random, kFeatureKinds));
  f.name = word(random);
  for (int n = 1 + below(random, 8); n > 0; --n) f.points.push_back(point(random));
  if (below(random, 2)) f.trench_clearance = number(random);
  if (below(random, 2)) f.run_clearance = number(random);
  if (below(random, 2)) f.trunk_diameter = number(random);
  f.utility = static_cast<UtilityKind>(below(random, 6));
  if (below(random, 2)) f.depth = number(random);
  f.may_cross = below(random, 2) == 1;
  f.note = word(random);
  return f;
}

Site site(Random& random) {
  Site s;
  for (int n = below(random, 9); n > 0; --n) s.lot.push_back({point(random), number(random)});
  int id = 0;
  for (int n = below(random, 12); n > 0; --n)
    s.features.push_back(feature(random, id += 1 + below(random, 3)));
  if (below(random, 2)) s.entry = EntryPoint{below(random, 20), point(random)};
  s.north = number(random);
  s.root_zone_factor = number(random);
  for (int kind = 0; kind < kFeatureKinds; kind += 1 + below(random, 5))
    s.rules.push_back({static_cast<FeatureKind>(kind), number(random), number(random)});
  for (int n = below(random, 4); n > 0; --n) s.heights.push_back({point(random), number(random)});
  return s;
}

GivenTrench given(Random& random) {
  GivenTrench t{point(random), point(random), number(random), number(random), {}};
  for (int n = below(random, 3); n > 0; --n) t.bends.push_back(point(random));
  return t;
}

void arrangement(Random& random, Wishes& w) {
  w.aim = static_cast<Aim>(below(random, 7));
  w.level_floor = below(random, 2) == 1;
  w.prices.currency = word(random);
  for (double* value :
       {&w.prices.digging, &w.prices.lawn, &w.prices.tree_distance, &w.least_length, &w.most_length})
    *value = number(random);
  w.groups = below(random, 9) - 2;
  if (below(random, 3) == 0) w.direction = number(random);
  if (below(random, 3) == 0) w.header_on = Segment{point(random), point(random)};
  for (int n = below(random, 3); n > 0; --n)
    w.group_headers.push_back({below(random, 6), {point(random), point(random)}});
  for (int n = below(random, 3); n > 0; --n) w.locked.push_back(given(random));
  for (int n = below(random, 3); n > 0; --n) w.run_by.push_back(point(random));
  for (int n = below(random, 3); n > 0; --n) w.closed.push_back({below(random, 20), below(random, 9) - 1});
  for (int n = below(random, 3); n > 0; --n) w.kept.push_back({point(random), point(random)});
  for (const Segment& t : w.kept) w.kept_run.push_back(t.b);
}

Wishes wishes(Random& random) {
  Wishes w;
  w.pipe = word(random);
  w.header_pipe = word(random);
  w.unknown = static_cast<CoilUnknown>(below(random, 3));
  for (double* value : {&w.pitch, &w.coil_length, &w.trench_length, &w.loop_diameter, &w.trench_width,
                        &w.trench_depth, &w.spacing, &w.end_gap, &w.run_width, &w.run_depth, &w.bedding})
    *value = number(random);
  w.circuits = below(random, 2001) - 1000;
  w.coil_in_run = below(random, 2) == 1;
  if (below(random, 4) == 0)
    for (int n = below(random, 3); n > 0; --n) w.given.push_back(given(random));
  arrangement(random, w);
  w.pattern = static_cast<CoilPattern>(below(random, kCoilPatterns));
  w.level_distance = below(random, 2) ? w.level_distance : number(random);
  w.side_distance = below(random, 2) ? w.side_distance : number(random);
  w.return_on_top = below(random, 2) == 1;
  return w;
}

std::vector<PerformancePoint> points(Random& random) {
  std::vector<PerformancePoint> all;
  for (int n = below(random, 4); n > 0; --n) all.push_back({number(random), number(random), number(random)});
  return all;
}

std::vector<double> numbers(Random& random) {
  std::vector<double> all;
  for (int n = below(random, 4); n > 0; --n) all.push_back(number(random));
  return all;
}

BlockHouse block(Random& random) {
  BlockHouse b;
  for (int n = below(random, 3); n > 0; --n)
    b.surfaces.push_back({word(random), number(random), number(random)});
  for (double* value :
       {&b.volume, &b.floor_area, &b.ceiling_height, &b.air_change, &b.gains, &b.solar_gains,
        &b.moisture_gains, &b.indoor_heating, &b.indoor_cooling, &b.outdoor_cold, &b.outdoor_warm})
    *value = number(random);
  b.cooled = below(random, 2) == 1;
  return b;
}

Circulator circulator(Random& random) {
  Circulator c;
  c.name = word(random);
  for (int n = below(random, 4); n > 0; --n)
    c.curve.push_back({number(random), number(random), number(random)});
  return c;
}

FlowWishes flow(Random& random) {
  FlowWishes f;
  f.fluid = static_cast<Fluid>(below(random, 5));
  f.arrangement = static_cast<HeaderArrangement>(below(random, 3));
  for (double* value :
       {&f.mass_fraction, &f.freeze_margin, &f.design_flow, &f.capacity, &f.design_temperature,
        &f.coldest_temperature, &f.tail, &f.heat_pump.head, &f.heat_pump.flow, &f.hose_kit.head,
        &f.hose_kit.flow, &f.valves_k, &f.purge_velocity, &f.purge_volumes, &f.most_imbalance, &f.most_head})
    *value = number(random);
  f.step_down = below(random, 2) == 1;
  for (int n = below(random, 4); n > 0; --n) f.header_sizes.push_back(word(random));
  f.run_size = word(random);
  f.circulator = circulator(random);
  f.flush_cart = circulator(random);
  return f;
}

LoopTest test(Random& random) {
  LoopTest t;
  t.procedure = static_cast<TestProcedure>(below(random, 4));
  for (double* value : {&t.working_pressure, &t.gauge_height, &t.temperature, &t.weakest_fitting})
    *value = number(random);
  t.fitting_name = word(random);
  if (below(random, 2)) t.pumped = number(random);
  for (int n = below(random, 4); n > 0; --n) {
    t.readings.push_back({number(random), number(random), {}});
    if (below(random, 2)) t.readings.back().temperature = number(random);
  }
  return t;
}

ThermalWishes thermal(Random& random) {
  ThermalWishes t;
  SoilWishes& s = t.soil;
  s.source = static_cast<SoilSource>(below(random, 2));
  s.typed = {number(random), number(random)};
  s.matter = {number(random), number(random), number(random), static_cast<Grain>(below(random, 3))};
  s.model = static_cast<ConductivityModel>(below(random, 3));
  t.climate_source = static_cast<ClimateSource>(below(random, 2));
  t.climate = {number(random), number(random), number(random)};
  t.surface_resistance = number(random);
  t.weather_source = static_cast<WeatherSource>(below(random, 2));
  t.normals.name = word(random);
  for (int m = 0; m < 12; ++m) t.normals.mean[m] = number(random);
  for (int m = 0; m < 12; ++m) t.normals.daily_range[m] = number(random);
  for (int n = below(random, 4); n > 0; --n) t.weather_file.outdoor.push_back(number(random));
  if (!t.weather_file.outdoor.empty()) t.weather_file.name = word(random);
  t.load_source = static_cast<LoadSource>(below(random, 3));
  t.block = block(random);
  t.hours = {word(random), numbers(random), numbers(random), numbers(random)};
  t.load = {number(random), number(random), number(random), number(random), number(random), number(random)};
  t.unit = {word(random), points(random), points(random)};
  if (below(random, 2)) t.fluid_resistance = number(random);
  t.coldest_allowed = number(random);
  t.warmest_allowed = number(random);
  t.years = below(random, 200) - 50;
  return t;
}

Picture picture(Random& random) {
  Picture p;
  p.name = word(random);
  p.file = word(random);
  p.data = SharedText(word(random));
  p.page = below(random, 9) - 2;
  p.at = point(random);
  for (double* value : {&p.width, &p.height, &p.turn, &p.strength}) *value = number(random);
  p.locked = below(random, 2) == 1;
  p.hidden = below(random, 2) == 1;
  p.on_sheets = below(random, 2) == 1;
  return p;
}

Sighting sighting(Random& random) {
  Sighting s;
  s.name = word(random);
  s.method = static_cast<SightingMethod>(below(random, 5));
  s.from = word(random);
  s.to = word(random);
  for (double* value : {&s.first, &s.second, &s.bearing, &s.latitude, &s.longitude, &s.east, &s.north})
    *value = number(random);
  s.left = below(random, 2) == 1;
  if (below(random, 2) == 1) s.height = number(random);
  s.note = word(random);
  return s;
}

Survey survey(Random& random) {
  Survey s;
  s.deed = {word(random) + "\n" + word(random), point(random), number(random),
            static_cast<ClosureChoice>(below(random, 2)), number(random)};
  for (int n = below(random, 4); n > 0; --n) s.notebook.push_back(sighting(random));
  if (below(random, 2) == 1) s.grid = GridTie{number(random), number(random), point(random)};
  return s;
}

Machine machine(Random& random) {
  return {word(random),   number(random), number(random), number(random),
          number(random), number(random), number(random), number(random)};
}

DigWishes dig(Random& random) {
  DigWishes d;
  d.coil_sides = static_cast<Sides>(below(random, kSides));
  d.run_sides = static_cast<Sides>(below(random, kSides));
  if (below(random, 2)) d.slope = number(random);
  d.spoil_off = number(random);
  d.haul = static_cast<Haul>(below(random, 3));
  if (below(random, 2)) d.access = {number(random), number(random)};
  if (below(random, 2)) d.laydown = {number(random), number(random)};
  d.excavator = machine(random);
  return d;
}

CrewWishes crew(Random& random) {
  CrewWishes c;
  c.start = word(random);
  c.weekdays = word(random);
  c.loader = machine(random);
  for (int* value : {&c.excavators, &c.racks, &c.coils_ready, &c.laying_crews, &c.joiners, &c.trucks})
    *value = below(random, 200) - 50;
  for (double* value : {&c.begins, &c.day_length, &c.rain_slack, &c.trencher, &c.hand_crossing,
                        &c.coil_making, &c.straight_making, &c.coil_laying, &c.header_laying, &c.joint_making,
                        &c.test_filling, &c.truck_load, &c.truck_trip})
    *value = number(random);
  return c;
}

std::string piece(Random& random) {
  static const char* pieces[] = {
      "{",   "}",        "[",   "]",   ",",    ":",    "\"", "null", "true", "1e999",
      "-1",  "1e308",    "NaN", "\\u", "\xff", "[[]]", "{}", "0",    "\"\"", "99999999999999999999",
      "[1]", "\"kind\"", "\n"};
  return pieces[below(random, 23)];
}

Pricing pricing(Random& random) {
  Pricing p;
  p.book.name = word(random);
  for (int n = below(random, 3); n > 0; --n) {
    PriceRow row{
        word(random), word(random), static_cast<PriceUnit>(below(random, 8)), {}, {}, "2026-03-01", ""};
    if (below(random, 2)) row.price = number(random);
    if (below(random, 2)) row.packs = {number(random), number(random)};
    if (!row.packs.empty() && below(random, 2)) row.pack_prices = {number(random), number(random)};
    p.book.rows.push_back(row);
  }
  std::ranges::stable_sort(p.book.rows, {}, &PriceRow::key);
  const auto twice = std::ranges::unique(p.book.rows, {}, &PriceRow::key);
  p.book.rows.erase(twice.begin(), twice.end());
  for (PriceRow& row : p.book.rows) row.note = word(random);
  p.book.date = word(random);
  p.book.oldest = number(random);
  Counting& c = p.counting;
  for (double* value : {&c.ties_per_loop, &c.tie_distance, &c.tape_lines, &c.seed, &c.straw, &c.insulated,
                        &c.sleeve, &c.grout, &c.pipe_spare, &c.fitting_spare, &c.antifreeze_spare})
    *value = number(random);
  c.tracer = below(random, 2) != 0;
  for (double* value : {&p.terms.overhead, &p.terms.markup, &p.terms.tax}) *value = number(random);
  p.terms.labour = static_cast<LabourBy>(below(random, 2));
  p.terms.tax_on = static_cast<TaxOn>(below(random, 2));
  p.terms.extras.push_back(
      {word(random), number(random), word(random), number(random), below(random, 2) != 0});
  p.terms.incentives.push_back({word(random), IncentiveKind::percent, number(random), number(random)});
  p.terms.incentives.push_back({word(random), IncentiveKind::fixed, number(random), {}});
  Running& r = p.running;
  for (double* value : {&r.electricity, &r.electricity_escalation, &r.electricity_emission, &r.discount,
                        &r.inflation, &r.unit_cost, &r.maintenance})
    *value = number(random);
  r.unit_life = below(random, 50);
  if (below(random, 2)) p.running.years = below(random, 50);
  p.running.others.push_back({word(random), word(random), word(random), number(random), number(random),
                              number(random), number(random), number(random), number(random), number(random),
                              number(random), number(random), below(random, 50)});
  return p;
}

std::optional<double> maybe(Random& random) {
  return below(random, 2) ? std::optional(number(random)) : std::nullopt;
}

JobRecord record(Random& random) {
  JobRecord r;
  TestRecord& t = r.test;
  for (std::string* text : {&r.permit, &r.locate_ticket, &r.note, &t.start, &t.end, &t.part, &t.tester,
                            &t.witness, &t.gauge, &t.gauge_checked, &t.weather, &t.joints_covered, &t.note})
    *text = word(random);
  t.medium = static_cast<TestMedium>(below(random, 2));
  t.result = static_cast<TestResult>(below(random, 3));
  for (std::optional<double>* value : {&t.gauge_range, &t.air_temperature, &t.pressure_while_filling})
    *value = maybe(random);
  for (int n = below(random, 3); n > 0; --n) {
    FlushReading f;
    for (int i = below(random, 3); i > 0; --i) f.open.push_back(below(random, 20));
    f.direction = static_cast<FlushDirection>(below(random, 2));
    f.water = static_cast<WaterSeen>(below(random, 4));
    f.air = static_cast<AirSeen>(below(random, 4));
    f.when = word(random);
    f.note = word(random);
    for (std::optional<double>* value :
         {&f.duration, &f.flow, &f.pressure_drop, &f.temperature, &f.turbidity})
      *value = maybe(random);
    r.flush.push_back(f);
  }
  FillRecord& f = r.fill;
  for (std::string* text :
       {&f.when, &f.filled_by, &f.product, &f.batch, &f.refractometer, &f.inhibitor, &f.water, &f.note})
    *text = word(random);
  for (std::optional<double>* value :
       {&f.strength, &f.put_in, &f.freezing_point, &f.ph, &f.temperature, &f.pressure})
    *value = maybe(random);
  f.labelled = below(random, 2) == 1;
  for (int n = below(random, 3); n > 0; --n)
    r.signatures.push_back({word(random), word(random), word(random), word(random)});
  return r;
}

BuiltPoint built_point(Random& random) {
  BuiltPoint p;
  for (int n = below(random, 4); n > 0; --n) p.tapes.push_back({word(random), number(random)});
  p.left = below(random, 2) == 1;
  if (below(random, 2)) p.at = point(random);
  return p;
}

BuiltTrench built_trench(Random& random) {
  BuiltTrench t;
  t.number = below(random, 20);
  t.fate = static_cast<TrenchFate>(below(random, 3));
  if (below(random, 2)) t.head = built_point(random);
  if (below(random, 2)) t.end = built_point(random);
  for (int n = below(random, 3); n > 0; --n) t.bends.push_back(built_point(random));
  t.stopped_by = static_cast<StopCause>(below(random, 7));
  for (std::optional<double>* value : {&t.length, &t.depth, &t.end_depth, &t.pipe, &t.pitch})
    *value = maybe(random);
  for (std::string* text : {&t.dug_on, &t.filled_on, &t.note}) *text = word(random);
  return t;
}

AsBuilt as_built(Random& random) {
  AsBuilt a;
  for (std::string* text : {&a.measured_by, &a.measured_on, &a.run_pipe, &a.header_pipe, &a.note})
    *text = word(random);
  for (int n = below(random, 3); n > 0; --n) a.trenches.push_back(built_trench(random));
  for (int n = below(random, 3); n > 0; --n) a.run.push_back(built_point(random));
  for (int n = below(random, 3); n > 0; --n) a.header.push_back({{built_point(random)}, maybe(random)});
  a.run_depth = maybe(random);
  a.header_depth = maybe(random);
  for (int n = below(random, 3); n > 0; --n) {
    BuiltCrossing c{below(random, 3), word(random),  UtilityKind::electric, {},
                    maybe(random),    maybe(random), word(random)};
    if (c.feature_id == 0) c.utility = static_cast<UtilityKind>(below(random, 6));
    if (below(random, 2)) c.place = built_point(random);
    a.crossings.push_back(c);
  }
  for (int n = below(random, 3); n > 0; --n) {
    Photo p{word(random), word(random), below(random, 9), word(random), {}};
    if (below(random, 2)) p.at = point(random);
    a.photos.push_back(p);
  }
  return a;
}

}  // namespace

Plan random_plan(Random& random) {
  Plan plan;
  for (std::string* text : {&plan.title.project, &plan.title.address, &plan.title.owner, &plan.title.designer,
                            &plan.title.phone, &plan.title.note})
    *text = word(random);
  plan.units = below(random, 2) ? UnitSystem::us : UnitSystem::metric;
  plan.site = site(random);
  plan.ground = {static_cast<SoilType>(below(random, 4)), number(random), number(random), number(random),
                 number(random)};
  plan.wishes = wishes(random);
  if (below(random, 2)) plan.thermal = thermal(random);
  if (below(random, 2)) plan.flow = flow(random);
  if (below(random, 2)) plan.test = test(random);
  if (below(random, 2)) plan.dig = dig(random);
  if (below(random, 2)) plan.crew = crew(random);
  if (below(random, 2))
    plan.sheets = {1 + below(random, 500), word(random), static_cast<SheetUnits>(below(random, 3)),
                   below(random, 2) == 1};
  if (below(random, 2))
    plan.proposal = {word(random), word(random), word(random), word(random), word(random)};
  for (int n = below(random, 4); n > 0; --n) plan.accepted.push_back({word(random), word(random)});
  std::ranges::stable_sort(plan.accepted, {}, &Acceptance::finding);
  for (int n = below(random, 4); n > 0; --n)
    plan.dimensions.push_back({point(random), point(random), static_cast<DimensionWay>(below(random, 3)),
                               number(random), below(random, 2) ? word(random) : std::string()});
  for (int n = below(random, 4) - 1; n > 0; --n) plan.pictures.push_back(picture(random));
  if (below(random, 3) == 0) plan.survey = survey(random);
  if (below(random, 3) == 0) plan.map_place = MapPlace{number(random), number(random), point(random)};
  if (below(random, 2)) plan.pricing = pricing(random);
  if (below(random, 2)) plan.record = record(random);
  if (below(random, 2)) plan.as_built = as_built(random);
  return plan;
}

std::string mutated(std::string text, Random& random) {
  for (int n = 1 + below(random, 3); n > 0 && !text.empty(); --n) {
    const auto at = static_cast<std::size_t>(below(random, static_cast<int>(text.size())));
    const auto size = static_cast<std::size_t>(below(random, 12));
    switch (below(random, 5)) {
      case 0:
        text[at] = static_cast<char>(below(random, 256));
        break;
      case 1:
        text.erase(at, size);
        break;
      case 2:
        text.insert(at, text.substr(at, size * 8));
        break;
      case 3:
        text.replace(at, 1 + size / 3, piece(random));
        break;
      case 4: {
        // A whole value between two separators, so that the file stays JSON more often.
        const std::size_t from = text.find(": ", at);
        const std::size_t to = from == std::string::npos ? from : text.find_first_of(",}\n", from);
        if (to != std::string::npos) text.replace(from + 2, to - from - 2, piece(random));
      }
    }
  }
  return text;
}

}  // namespace underlawn::sample
