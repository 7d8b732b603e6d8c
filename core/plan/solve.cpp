// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/solve.h"

#include "cost/bill.h"
#include "cost/comparison.h"
#include "cost/crew_calendar.h"
#include "cost/joints.h"
#include "cost/pricing_troubles.h"
#include "pipe/pipe_size.h"
#include "plan/checks/check.h"
#include "plan/circulation_of.h"
#include "plan/coldest_fluid.h"
#include "plan/figures/figures.h"
#include "plan/fingerprint.h"
#include "plan/laid_solver.h"
#include "plan/plan_troubles.h"
#include "thermal/loop_geometry.h"

namespace underlawn {

namespace {

// A stage's last inputs and what it made of them. `serial` changes when the output does, so that later stages
// can name a large output by its serial.
template <class In, class Out>
struct Stage {
  std::optional<In> in;
  Out out{};
  int serial = 0;

  // Runs `make` unless the inputs are those of the last run. An output that was cut short is not kept.
  template <class Make>
  const Out& run(In now, int& count, const std::stop_token& stop, Make make) {
    if (in && *in == now) return out;
    ++count;
    Out made = make(now);
    in.reset();
    if (!stop.stop_requested()) in = std::move(now);
    if (!(made == out)) ++serial;
    out = std::move(made);
    return out;
  }
};

struct Troubles {
  std::vector<Trouble> all;
  bool site = false, wishes = false, ground = false, flow = false, pricing = false;  // whether any
  bool operator==(const Troubles&) const = default;
};

struct CoilMade {
  Coil coil;
  bool refused = false;  // why is asked again in the units of the plan, when it is to be said
  bool operator==(const CoilMade&) const = default;
};

struct CoilIn {
  CoilUnknown unknown;
  double loop_diameter, pitch, coil_length, trench_length, pipe_diameter;
  CoilPattern pattern;
  double level_distance, side_distance;
  bool return_on_top;
  bool operator==(const CoilIn&) const = default;
};

struct LayoutIn {
  Site site;
  Wishes wishes;
  Coil coil;
  bool site_sound = false;
  bool can_place = false;  // wishes and coil are sound
  bool operator==(const LayoutIn&) const = default;
};

struct DigIn {
  int layout = 0;
  Wishes wishes;
  Ground ground;
  int terrain = 0;
  DigWishes how;
  bool can_dig = false;
  bool operator==(const DigIn&) const = default;
};

struct OrderIn {
  Site site;
  int layout = 0, dig = 0;
  Wishes wishes;
  Ground ground;
  DigWishes how;
  bool sound = false;
  bool operator==(const OrderIn&) const = default;
};

struct CalendarIn {
  Site site;
  int layout = 0, order = 0;
  Ground ground;
  DigWishes how;
  CrewWishes crew;
  int joints = 0;
  double test = 0;
  bool operator==(const CalendarIn&) const = default;
};

struct WorkIn {
  Site site;
  int layout = 0, dig = 0, calendar = 0;
  Wishes wishes;
  int joints = 0;
  bool operator==(const WorkIn&) const = default;
};

struct StakeOutIn {
  Site site;
  int layout = 0;
  bool site_sound = false;
  bool operator==(const StakeOutIn&) const = default;
};

struct FlowIn {
  int layout = 0;
  Wishes wishes;
  FlowWishes flow;
  bool sound = false;
  bool operator==(const FlowIn&) const = default;
};

struct FlowMade {
  std::shared_ptr<const Flow> flow;
  std::shared_ptr<const Purge> purge;
  std::optional<Trouble> refusal;
  bool operator==(const FlowMade&) const = default;
};

struct TemperaturesIn {
  int layout = 0, surroundings = 0;
  Wishes wishes;
  ThermalWishes thermal;
  Circulation circulation;
  bool operator==(const TemperaturesIn&) const = default;
};

// The last two read nearly everything.
struct LastIn {
  Plan plan;
  int coil = 0, layout = 0, dig = 0, order = 0, calendar = 0, work = 0, stake_out = 0, flow = 0,
      temperatures = 0;
  bool operator==(const LastIn&) const = default;
};

// ---- the part of the plan each stage is handed ----

Site without_notes(Site site) {
  for (Feature& f : site.features) f.note.clear();
  return site;
}

// What a tape is pulled from, what stops it, what is crossed.
Site for_taping(Site site) {
  std::erase_if(site.features, [](const Feature& f) {
    return f.kind != FeatureKind::house && f.kind != FeatureKind::tree && !can_be_crossed(f.kind);
  });
  site.heights.clear();
  return site;
}

// The layout minds the heights only where floors are to be level.
Site for_layout(Site site, bool level_floor) {
  site = without_notes(std::move(site));
  if (!level_floor) site.heights.clear();
  return site;
}

Wishes for_layout(const Wishes& wishes, const Coil& coil) {
  const Wishes usual;
  Wishes w = wishes;
  w.pipe = usual.pipe;
  w.header_pipe = usual.header_pipe;
  w.bedding = usual.bedding;
  w.level_distance = usual.level_distance;  // the coil has them
  w.side_distance = usual.side_distance;
  w.return_on_top = usual.return_on_top;
  w.unknown = usual.unknown;
  w.pitch = coil.pitch;
  w.coil_length = coil.coil_length;
  w.trench_length = coil.trench_length;
  return w;
}

Wishes for_dig(const Wishes& wishes) {
  Wishes w;
  w.trench_width = wishes.trench_width;
  w.trench_depth = wishes.trench_depth;
  w.run_width = wishes.run_width;
  w.run_depth = wishes.run_depth;
  w.bedding = wishes.bedding;
  w.level_floor = wishes.level_floor;
  return w;
}

DigWishes for_dig(const DigWishes& how) {
  DigWishes sides;
  sides.coil_sides = how.coil_sides;
  sides.run_sides = how.run_sides;
  sides.slope = how.slope;
  return sides;
}

Wishes for_work(const Wishes& wishes) {
  Wishes w;
  w.run_width = wishes.run_width;
  w.run_depth = wishes.run_depth;
  return w;
}

// Where the pipes lie is the layout's; their sizes are not.
Wishes for_temperatures(const Wishes& wishes) {
  Wishes w;
  w.pipe = wishes.pipe;
  w.header_pipe = wishes.header_pipe;
  w.run_depth = wishes.run_depth;
  return w;
}

Plan for_checks(Plan plan) {
  plan.title = {};
  plan.proposal = {};
  plan.sheets = {};
  plan.dimensions.clear();
  return plan;
}

Plan for_figures(Plan plan) {
  plan.title = {};
  plan.proposal = {};
  plan.sheets = {};
  plan.accepted.clear();
  plan.dimensions.clear();
  plan.units = UnitSystem::metric;
  return plan;
}

// ---- the stages ----

Troubles find_troubles(const Plan& plan) {
  Troubles t;
  const auto add = [&t](std::vector<Trouble> part) {
    t.all.insert(t.all.end(), part.begin(), part.end());
    return !part.empty();
  };
  t.site = add(site_troubles(plan));
  t.wishes = add(wishes_troubles(plan));
  t.ground = add(ground_troubles(plan));
  add(heat_troubles(plan));
  t.flow = add(fluid_troubles(plan));
  t.pricing = add(pricing_troubles(plan.pricing, plan.units));
  add(loose_troubles(plan));
  return t;
}

Result<Coil> ask_coil(const CoilIn& in, UnitSystem units) {
  return solve_coil({in.unknown, in.loop_diameter, in.pitch, in.coil_length, in.trench_length,
                     in.pipe_diameter, units, in.pattern, in.level_distance, in.side_distance,
                     in.return_on_top});
}

CoilMade make_coil(const CoilIn& in) {
  const auto coil = ask_coil(in, UnitSystem::metric);
  return coil ? CoilMade{*coil, false} : CoilMade{Coil{0, 0, 0, 0, 0, 0, 0}, true};
}

FlowMade make_flow(const FlowIn& in, const Layout& layout) {
  if (!in.sound || layout.trenches.empty()) return {};
  auto made = solve_flow(layout, in.wishes, in.flow);
  if (!made) return {nullptr, nullptr, made.error()};
  // Designing the header has flushed it already.
  auto purge = made->header ? Result<Purge>(made->header->flushing) : purge_loop(made->loop, in.flow);
  return {std::make_shared<const Flow>(std::move(*made)),
          purge ? std::make_shared<const Purge>(std::move(*purge)) : nullptr, std::nullopt};
}

// Where nothing can be placed the ground that could be built on is still worth seeing.
Layout place(const LayoutIn& in, const std::stop_token& stop) {
  if (!in.site_sound) return {};
  if (in.can_place) return make_layout(in.site, in.wishes, in.coil, stop);
  Layout bare;
  bare.wanted = in.wishes.circuits;
  if (auto region = buildable_region(in.site)) bare.buildable = std::move(*region);
  if (auto region = routable_region(in.site)) bare.routable = std::move(*region);
  return bare;
}

void append_new(std::vector<Trouble>& all, const std::vector<Trouble>& more) {
  for (const Trouble& t : more)
    if (std::find(all.begin(), all.end(), t) == all.end()) all.push_back(t);
}

}  // namespace

struct Stages {
  Stage<Plan, Troubles> troubles;
  Stage<CoilIn, CoilMade> coil;
  Stage<LayoutIn, Layout> layout;
  Stage<std::vector<SpotHeight>, std::shared_ptr<const Terrain>> terrain;
  Stage<DigIn, DigPlan> dig;
  Stage<OrderIn, std::shared_ptr<const DigOrder>> order;
  Stage<CalendarIn, std::shared_ptr<const CrewCalendar>> calendar;
  Stage<WorkIn, std::optional<JobWork>> work;
  Stage<StakeOutIn, StakeOut> stake_out;
  Stage<FlowIn, FlowMade> flow;
  Stage<ThermalWishes, std::shared_ptr<const Surroundings>> surroundings;
  Stage<TemperaturesIn, std::shared_ptr<const Temperatures>> temperatures;
  KernelShelf shelf;
  Stage<LastIn, std::vector<Finding>> checks;
  Stage<LastIn, Figures> figures;
  StageRuns runs;

  void solve_ground(const Plan& plan, const Layout* laid, Outcome& outcome, const std::stop_token& stop);
  void take_laid(const Layout& laid);
  Outcome run_all(const Plan& plan, const Layout* laid, const std::stop_token& stop);
  void solve_dig(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_order(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_crew(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_flow_stage(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_heat(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_prices(const Plan& plan, Outcome& outcome);
  void solve_report(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
};

void Stages::take_laid(const Layout& laid) {
  layout.in.reset();
  if (layout.out == laid) return;
  layout.out = laid;
  ++layout.serial;
}

// Troubles, coil and layout.
void Stages::solve_ground(const Plan& plan, const Layout* laid, Outcome& outcome,
                          const std::stop_token& stop) {
  Plan untitled = plan;
  untitled.title = {};
  untitled.proposal = {};
  untitled.accepted.clear();
  const Troubles& found = troubles.run(std::move(untitled), runs.troubles, stop, find_troubles);
  outcome.troubles = found.all;

  const Wishes& w = plan.wishes;
  const auto pipe = find_pipe(w.pipe);  // unknown: named among the troubles, and an ordinary one stands in
  const double outside = pipe ? pipe->outside_diameter : CoilRequest{}.pipe_diameter;
  const CoilIn asked{w.unknown, w.loop_diameter, w.pitch,          w.coil_length,   w.trench_length,
                     outside,   w.pattern,       w.level_distance, w.side_distance, w.return_on_top};
  const CoilMade& made = coil.run(asked, runs.coil, stop, make_coil);
  outcome.coil = made.coil;
  // A wish that is out of bounds has been named already; the coil's own refusal of it would only repeat that.
  if (made.refused && !found.wishes) append_new(outcome.troubles, {ask_coil(asked, plan.units).error()});
  if (stop.stop_requested()) return;

  // Heights out of bounds are named among the troubles.
  outcome.terrain = terrain.run(
      found.site ? std::vector<SpotHeight>{} : plan.site.heights, runs.terrain, stop,
      [](std::vector<SpotHeight> heights) { return std::make_shared<const Terrain>(std::move(heights)); });
  if (laid != nullptr) {
    take_laid(*laid);
    outcome.layout = *laid;
    return;
  }
  LayoutIn in{for_layout(plan.site, w.level_floor), for_layout(w, made.coil), made.coil, !found.site,
              !found.wishes && !made.refused};
  outcome.layout =
      layout.run(std::move(in), runs.layout, stop, [&](const LayoutIn& i) { return place(i, stop); });
  append_new(outcome.troubles, outcome.layout.troubles);
}

void Stages::solve_dig(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  const bool can_dig = !troubles.out.ground && !troubles.out.wishes;
  DigIn in{layout.serial, for_dig(plan.wishes), plan.ground, terrain.serial, for_dig(plan.dig), can_dig};
  outcome.dig = dig.run(std::move(in), runs.dig, stop, [&](const DigIn& i) {
    return i.can_dig ? make_dig(outcome.layout, i.wishes, i.ground, *outcome.terrain, i.how) : DigPlan{};
  });
  solve_order(plan, outcome, stop);
  StakeOutIn where{for_taping(without_notes(plan.site)), layout.serial, !troubles.out.site};
  outcome.stake_out = stake_out.run(std::move(where), runs.stake_out, stop, [&](const StakeOutIn& i) {
    return i.site_sound ? make_stake_out(i.site, outcome.layout) : StakeOut{};
  });
}

void Stages::solve_order(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  OrderIn asked{without_notes(plan.site),
                layout.serial,
                dig.serial,
                for_dig(plan.wishes),
                plan.ground,
                plan.dig,
                !troubles.out.ground && !troubles.out.wishes && !troubles.out.site};
  outcome.order = order.run(std::move(asked), runs.order, stop, [&](const OrderIn& i) {
    if (!i.sound || outcome.layout.trenches.empty()) return std::shared_ptr<const DigOrder>();
    return std::shared_ptr<const DigOrder>(std::make_shared<DigOrder>(
        make_dig_order(i.site, outcome.layout, outcome.dig, i.wishes, i.ground, i.how)));
  });
}

// Who does what when, and what that comes to. Joints are those of the sized loop, so flow comes before.
void Stages::solve_crew(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  const JobDrawn job{outcome.layout, outcome.dig, plan.wishes, plan.flow, outcome.flow.get()};
  const int joints = count_joints(job, troubles.out.pricing ? Pricing{} : plan.pricing);
  CalendarIn when{without_notes(plan.site),
                  layout.serial,
                  order.serial,
                  plan.ground,
                  plan.dig,
                  plan.crew,
                  joints,
                  test_duration(plan.test.procedure)};
  outcome.calendar = calendar.run(std::move(when), runs.calendar, stop, [&](const CalendarIn& i) {
    if (outcome.order == nullptr) return std::shared_ptr<const CrewCalendar>();
    return std::shared_ptr<const CrewCalendar>(std::make_shared<CrewCalendar>(
        make_calendar({i.site, outcome.layout, *outcome.order, i.ground, i.how, i.crew, i.joints, i.test})));
  });
  WorkIn done{without_notes(plan.site), layout.serial,         dig.serial,
              calendar.serial,          for_work(plan.wishes), joints};
  outcome.work = work.run(std::move(done), runs.work, stop, [&](const WorkIn& i) {
    if (outcome.calendar == nullptr || outcome.calendar->tasks.empty()) return std::optional<JobWork>();
    return std::optional(
        job_work(i.site, outcome.layout, outcome.dig, i.wishes, i.joints, *outcome.calendar));
  });
}

void Stages::solve_flow_stage(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  FlowIn in{layout.serial, for_temperatures(plan.wishes), plan.flow,
            !troubles.out.flow && !troubles.out.wishes};
  const FlowMade& made =
      flow.run(std::move(in), runs.flow, stop, [&](const FlowIn& i) { return make_flow(i, outcome.layout); });
  outcome.flow = made.flow;
  outcome.purge = made.purge;
  outcome.flow_refusal = made.refusal;
}

void Stages::solve_heat(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  outcome.surroundings = surroundings.run(plan.thermal, runs.surroundings, stop, [](const ThermalWishes& w) {
    auto made = make_surroundings(w);
    return made ? std::make_shared<const Surroundings>(std::move(*made)) : nullptr;
  });
  TemperaturesIn in{
      layout.serial, surroundings.serial, for_temperatures(plan.wishes), plan.thermal,
      troubles.out.flow ? Circulation{} : circulation_of(plan, outcome.flow.get(), outcome.layout)};
  outcome.temperatures =
      temperatures.run(std::move(in), runs.temperatures, stop, [&](const TemperaturesIn& i) {
        return outcome.surroundings == nullptr || i.circulation.heat_flow_rate <= 0
                   ? nullptr
                   : std::make_shared<const Temperatures>(
                         solve_temperatures(pipes_in_ground(outcome.layout, i.wishes), *outcome.surroundings,
                                            i.thermal, i.circulation, shelf, stop));
      });
  outcome.flow = protected_flow(std::move(outcome.flow), plan.flow, outcome.temperatures.get());
}

// Cheap, so made anew each time.
void Stages::solve_prices(const Plan& plan, Outcome& outcome) {
  if (troubles.out.pricing || !outcome.work) return;
  const JobDrawn job{outcome.layout, outcome.dig, plan.wishes, plan.flow, outcome.flow.get()};
  outcome.bill = std::make_shared<const Bill>(
      make_bill(take_off(job, *outcome.work, plan.pricing), plan.pricing, plan.wishes));
  if (outcome.temperatures != nullptr)
    outcome.comparison = std::make_shared<const Comparison>(
        compare(outcome.temperatures->simulation, outcome.bill->net, plan.pricing.running, plan.thermal.years,
                heat_pump_priced(plan.pricing)));
}

void Stages::solve_report(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  const auto in = [&](Plan part) {
    return LastIn{std::move(part), coil.serial, layout.serial,    dig.serial,  order.serial,
                  calendar.serial, work.serial, stake_out.serial, flow.serial, temperatures.serial};
  };
  outcome.findings = checks.run(in(for_checks(plan)), runs.checks, stop,
                                [&](const LastIn& i) { return run_checks(i.plan, outcome); });
  if (stop.stop_requested()) return;
  outcome.figures = figures.run(in(for_figures(plan)), runs.figures, stop,
                                [&](const LastIn& i) { return make_figures(i.plan, outcome); });
}

Outcome Stages::run_all(const Plan& plan, const Layout* laid, const std::stop_token& stop) {
  Outcome outcome;
  outcome.fingerprint = fingerprint(plan);
  if (stop.stop_requested()) return outcome;
  solve_ground(plan, laid, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_dig(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_flow_stage(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_crew(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_heat(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_prices(plan, outcome);
  solve_report(plan, outcome, stop);
  return outcome;
}

struct Solver::Kept {
  Stages stages;
};

Solver::Solver() : kept_(std::make_unique<Kept>()) {}
Solver::~Solver() = default;
const StageRuns& Solver::runs() const {
  return kept_->stages.runs;
}
Outcome Solver::solve(const Plan& plan, std::stop_token stop) {
  return kept_->stages.run_all(plan, nullptr, stop);
}

LaidSolver::LaidSolver() : stages_(std::make_unique<Stages>()) {}
LaidSolver::~LaidSolver() = default;
Outcome LaidSolver::solve(const Plan& plan, const Layout& laid, std::stop_token stop) {
  return stages_->run_all(plan, &laid, stop);
}

Outcome solve(const Plan& plan, std::stop_token stop) {
  return Solver().solve(plan, std::move(stop));
}

}  // namespace underlawn
