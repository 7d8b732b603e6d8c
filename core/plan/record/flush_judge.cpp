// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/flush_judge.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "base/wording.h"
#include "flow/network_solver.h"
#include "flow/purge.h"

namespace underlawn {

namespace {

constexpr double kClosed = 1e12;  // K of a closed valve
const char* kVelocitySource = mark("2 ft/s in every pipe: UFGS 15741N; ENERGY STAR Homes Northwest");
const char* kDropSource =
    mark("Darcy-Weisbach with Churchill 1977, solved with circuits closed; 15 % for meters: our own choice");

LoopNetwork with_closed(LoopNetwork loop, const std::vector<int>& closed) {
  for (std::size_t i = 0; i < loop.pipes.size(); ++i)
    if (std::find(closed.begin(), closed.end(), loop.pipes[i].trench) != closed.end() &&
        loop.pipes[i].part == LoopPart::circuit)
      loop.network.pipes[i].fittings += kClosed;
  return loop;
}

std::vector<int> numbers_of(const LoopNetwork& loop) {
  std::vector<int> all;
  for (int c : loop.circuits) all.push_back(loop.pipes[static_cast<std::size_t>(c)].trench);
  return all;
}

// The loop with some circuits closed, at any flow.
class Flushed {
 public:
  static Result<Flushed> of(const LoopNetwork& loop, const std::vector<int>& closed,
                            const FluidProperties& water) {
    LoopNetwork now = with_closed(loop, closed);
    auto solver = NetworkSolver::of(now.network, water);
    if (!solver) return refuse(solver.error());
    return Flushed(std::move(now), std::move(*solver), water.density);
  }

  Result<void> at(double flow) { return solver_.solve(flow); }
  double drop() const { return (solver_.head_loss() - solver_.head_loss(0)) * density_ * kGravity; }
  // m/s, of pipes in which anything flows to speak of.
  double slowest() const {
    double least = 1e300, most = 0;
    for (std::size_t i = 1; i < loop_.pipes.size(); ++i) most = std::max(most, solver_.velocity(i));
    for (std::size_t i = 1; i < loop_.pipes.size(); ++i)
      if (solver_.velocity(i) > most / 1000) least = std::min(least, solver_.velocity(i));
    return least;
  }
  // s through the slowest open circuit.
  double passage() const {
    double most = 0;
    for (int number : numbers_of(loop_)) {
      double time = 0;
      for (std::size_t i = 1; i < loop_.pipes.size(); ++i)
        if (loop_.pipes[i].trench == number) time += loop_.network.pipes[i].length / solver_.velocity(i);
      if (time < 1e5) most = std::max(most, time);
    }
    return most;
  }

 private:
  Flushed(LoopNetwork loop, NetworkSolver solver, double density)
      : loop_(std::move(loop)), solver_(std::move(solver)), density_(density) {}
  LoopNetwork loop_;
  NetworkSolver solver_;
  double density_;
};

class Judge {
 public:
  Judge(const LoopNetwork& loop, const FlowWishes& wishes, const FlushReading& reading,
        const std::string& name, UnitSystem units)
      : loop_(loop), wishes_(wishes), reading_(reading), name_(name), units_(units) {}

  Result<FlushJudgement> judge() {
    if (auto ok = find_open(); !ok) return refuse(ok.error());
    const auto water =
        fluid_properties(Fluid::water, 0, std::max(0.0, reading_.temperature.value_or(kPurgeTemperature)));
    if (!water) return refuse(water.error());
    water_ = *water;
    if (auto ok = find_asked(); !ok) return refuse(ok.error());
    if (reading_.flow)
      if (auto ok = find_drops(); !ok) return refuse(ok.error());
    judge_flow();
    judge_drop();
    judge_time();
    judge_seen();
    return std::move(made_);
  }

 private:
  std::string shown(Quantity q, double value) const { return print_quantity(q, value, units_); }

  static std::string minutes(double seconds) {
    return say("{} min", std::to_string(static_cast<long>(std::ceil(seconds / 60 - 1e-6))));
  }

  void add(const std::string& key, Tone tone, const std::string& title, std::string words,
           std::string source = "") {
    made_.lines.push_back(
        {"flush." + std::string(key), tone, name_ + ", " + title, std::move(words), std::move(source)});
  }

  Result<void> find_open() {
    const std::vector<int> all = numbers_of(loop_);
    for (int number : all)
      if (reading_.open.empty() ||
          std::find(reading_.open.begin(), reading_.open.end(), number) != reading_.open.end())
        open_.push_back(number);
      else
        closed_.push_back(number);
    for (int number : reading_.open)
      if (std::find(all.begin(), all.end(), number) == all.end())
        return refuse({"flush_no_circuit", say("{}, open circuit", name_), std::to_string(number),
                       say("one of {}", joined_and(all)),
                       say("Enter the numbers of the trenches that were open.")});
    return {};
  }

  // Velocities go nearly as the flow.
  Result<void> find_asked() {
    auto open = Flushed::of(loop_, closed_, water_);
    if (!open) return refuse(open.error());
    double flow = wishes_.design_flow;
    for (int i = 0; i < 30; ++i) {
      if (auto ok = open->at(flow); !ok) return refuse(ok.error());
      const double next = flow * wishes_.purge_velocity / open->slowest();
      if (std::abs(next / flow - 1) < 1e-9) break;
      flow = next;
    }
    made_.asked = flow;
    made_.expected_at_asked = open->drop();
    made_.time_asked = std::max(kPurgeHold, wishes_.purge_volumes * open->passage());
    return {};
  }

  Result<double> drop_with(const std::vector<int>& also_closed, double* slowest = nullptr) const {
    std::vector<int> closed = closed_;
    closed.insert(closed.end(), also_closed.begin(), also_closed.end());
    auto now = Flushed::of(loop_, closed, water_);
    if (!now) return refuse(now.error());
    if (auto ok = now->at(*reading_.flow); !ok) return refuse(ok.error());
    if (slowest != nullptr) *slowest = now->slowest();
    return now->drop();
  }

  std::vector<std::vector<int>> ways_to_close(std::size_t count) const {
    if (count == 0) return {{}};
    std::vector<std::vector<int>> ways;
    const auto n = static_cast<std::ptrdiff_t>(count);
    if (count == 1)
      for (int number : open_) ways.push_back({number});
    else
      ways = {{open_.begin(), open_.begin() + n}, {open_.end() - n, open_.end()}};
    return ways;
  }

  Result<void> find_drops() {
    for (std::size_t closed = 0; closed < open_.size(); ++closed) {
      DropWith with{static_cast<int>(open_.size() - closed), 1e300, 0, {}};
      for (const std::vector<int>& way : ways_to_close(closed)) {
        const auto drop = drop_with(way, closed == 0 ? &slowest_ : nullptr);
        if (!drop) return refuse(drop.error());
        if (*drop < with.least) with.least = *drop, with.least_closed = way;
        with.most = std::max(with.most, *drop);
      }
      made_.drops.push_back(std::move(with));
    }
    return {};
  }

  void judge_flow() {
    const std::string asked = shown(Quantity::flow, made_.asked);
    if (!reading_.flow)
      return add("flow", Tone::open, say("flow"), say("Not read; at least {} is asked.", asked),
                 translated(kVelocitySource));
    const std::string read = shown(Quantity::flow, *reading_.flow);
    if (slowest_ >= wishes_.purge_velocity * 0.999)
      return add("flow", Tone::good, say("flow"), say("{}; at least {} is asked.", read, asked),
                 translated(kVelocitySource));
    add("flow", Tone::bad, say("flow"),
        say("{} leaves {} in the slowest pipe, {} is asked: bring the cart to {}, or flush fewer circuits at "
            "a time.",
            read, shown(Quantity::velocity, slowest_), shown(Quantity::velocity, wishes_.purge_velocity),
            asked),
        translated(kVelocitySource));
  }

  bool fits(double read, const DropWith& with) const {
    return read >= with.least * (1 - kDropError) && read <= with.most * (1 + kDropError);
  }
  // How far off, relative.
  static double off(double read, const DropWith& with) {
    return read < with.least ? with.least / read - 1 : read > with.most ? read / with.most - 1 : 0;
  }

  const DropWith* nearest(double read) const {
    const DropWith* best = nullptr;
    for (const DropWith& with : made_.drops)
      if (fits(read, with) && (best == nullptr || off(read, with) < off(read, *best))) best = &with;
    return best;
  }

  void judge_drop() {
    if (!reading_.flow || !reading_.pressure_drop)
      return add("drop", Tone::open, say("pressure drop"),
                 say("Needs flow and pressure drop; {} is expected at {}.",
                     shown(Quantity::pressure, made_.expected_at_asked), shown(Quantity::flow, made_.asked)),
                 translated(kDropSource));
    const double read = *reading_.pressure_drop, all = made_.drops.front().least;
    const std::string expected = say("{} read, {} expected with {}", shown(Quantity::pressure, read),
                                     shown(Quantity::pressure, all), said_open());
    const DropWith* best = nearest(read);
    if (best == nullptr) return off_all(read, all, expected);
    made_.flowing = best->flowing;
    if (best->flowing < static_cast<int>(open_.size())) return fewer(*best, expected);
    const bool blind = made_.drops.size() > 1 && fits(read, made_.drops[1]);
    add("drop", blind ? Tone::doubt : Tone::good, say("pressure drop"),
        blind ? say("{}. One closed circuit would show {} to {}, too near to tell: flush fewer at a time.",
                    expected, shown(Quantity::pressure, made_.drops[1].least),
                    shown(Quantity::pressure, made_.drops[1].most))
              : with_one_closed(expected),
        translated(kDropSource));
  }

  std::string said_open() const {
    return open_.size() == 1 ? say("its one circuit flowing")
                             : say("all {} circuits flowing", std::to_string(open_.size()));
  }
  std::string with_one_closed(const std::string& expected) const {
    if (made_.drops.size() < 2) return expected + ".";
    return say("{}; with one closed at least {}.", expected, shown(Quantity::pressure, made_.drops[1].least));
  }

  void fewer(const DropWith& with, const std::string& expected) {
    const int missing = static_cast<int>(open_.size()) - with.flowing;
    const std::string least = shown(Quantity::pressure, with.least),
                      most = shown(Quantity::pressure, with.most);
    add("drop", Tone::bad, say("pressure drop"),
        missing == 1 ? say("{}: it reads like {} of {} circuits flowing ({} to {}). One circuit is blocked "
                           "or holds air: flush "
                           "one circuit at a time, look for a shut valve or a kink.",
                           expected, with.flowing, open_.size(), least, most)
                     : say("{}: it reads like {} of {} circuits flowing ({} to {}). {} circuits are blocked "
                           "or holds air: flush "
                           "one circuit at a time, look for a shut valve or a kink.",
                           expected, with.flowing, open_.size(), least, most, missing),
        translated(kDropSource));
  }

  void off_all(double read, double all, const std::string& expected) {
    const std::string less =
        say("{}: less than open pipes can take. Something lets water past the loop (a valve at the "
            "heat pump, a bypass), or the flow meter reads high.",
            expected);
    const std::string more =
        say("{}: more than even one circuit alone takes, or between what whole circuits take. Look "
            "for a valve part shut, a kink, dirt or air in header or run, and at the gauges.",
            expected);
    add("drop", Tone::bad, say("pressure drop"), read < all ? less : more, translated(kDropSource));
  }

  void judge_time() {
    if (!reading_.duration)
      return add(
          "time", Tone::open, say("time"),
          say("Not noted; {} is asked at {}.", minutes(made_.time_asked), shown(Quantity::flow, made_.asked)),
          "UFGS 15741N");
    const bool enough = *reading_.duration >= made_.time_asked - 1;
    add("time", enough ? Tone::good : Tone::bad, say("time"),
        say("{}; at least {} is asked.", minutes(*reading_.duration), minutes(made_.time_asked)),
        "UFGS 15741N");
  }

  void judge_seen() {
    if (reading_.air == AirSeen::bubbles || reading_.air == AirSeen::slugs)
      add("air", Tone::bad, say("air"), say("Air was still seen at the end: go on until none comes."),
          say("common practice, no source"));
    if (reading_.air == AirSeen::none) add("air", Tone::good, say("air"), say("None seen at the end."));
    if (reading_.water == WaterSeen::cloudy || reading_.water == WaterSeen::dirty)
      add("water", Tone::bad, say("water"), say("It did not come back clear: go on, and clean the strainer."),
          say("common practice, no source"));
    if (reading_.water == WaterSeen::clear) add("water", Tone::good, say("water"), say("Came back clear."));
  }

  const LoopNetwork& loop_;
  const FlowWishes& wishes_;
  const FlushReading& reading_;
  const std::string& name_;
  UnitSystem units_;
  FluidProperties water_;
  std::vector<int> open_, closed_;
  double slowest_ = 0;
  FlushJudgement made_;
};

}  // namespace

Result<FlushJudgement> judge_flush(const LoopNetwork& loop, const FlowWishes& wishes,
                                   const FlushReading& reading, const std::string& name, UnitSystem units) {
  return Judge(loop, wishes, reading, name, units).judge();
}

}  // namespace underlawn
