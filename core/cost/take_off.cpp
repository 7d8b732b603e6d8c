// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/take_off.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/say.h"
#include "cost/price_book.h"

namespace underlawn {

namespace {

std::string plain(double value) {
  std::string text = print_quantity(Quantity::count, value, UnitSystem::metric);
  return text;
}

std::string_view fluid_key(Fluid fluid) {
  switch (fluid) {
    case Fluid::propylene_glycol:
      return "propylene_glycol";
    case Fluid::ethanol:
      return "ethanol";
    case Fluid::methanol:
      return "methanol";
    case Fluid::ethylene_glycol:
      return "ethylene_glycol";
    case Fluid::water:
      break;
  }
  return "";
}

std::vector<std::string> with(std::vector<std::string> keys, std::string key) {
  keys.push_back(std::move(key));
  return keys;
}

class TakeOff {
 public:
  TakeOff(const JobDrawn& job, const Pricing& pricing)
      : job_(job), counting_(pricing.counting), terms_(pricing.terms) {}

  std::vector<Need> all() {
    add_coils();
    add_header();
    add_fittings();
    add_goods();
    add_earth();
    add_work();
    return std::move(needs_);
  }

 private:
  Need* add(std::string_view key, BillGroup group, double amount, std::string how,
            std::vector<std::string> from = {}) {
    if (!(amount > 0) || !std::isfinite(amount)) return nullptr;
    needs_.push_back({std::string(key), group, amount, {}, std::move(how), std::move(from), false});
    return &needs_.back();
  }

  std::size_t circuits() const { return job_.layout.trenches.size(); }

  // ---- pipe ----

  void add_coils() {
    std::map<int, double> lengths;
    if (job_.solved != nullptr) {
      const LoopNetwork& loop = job_.solved->loop;
      for (std::size_t i = 0; i < loop.pipes.size(); ++i)
        if (loop.pipes[i].part == LoopPart::circuit)
          lengths[loop.pipes[i].trench] += loop.network.pipes[i].length;
    } else {
      for (const Trench& t : job_.layout.trenches)
        lengths[t.number] = t.coil.coil_length + 2 * job_.flow.tail;
    }
    std::vector<double> pieces;
    double total = 0;
    for (const auto& [trench, length] : lengths) {
      pieces.push_back(length * (1 + counting_.pipe_spare));
      total += pieces.back();
    }
    Need* coils = add(pipe_key(job_.wishes.pipe), BillGroup::pipe, total,
                      say("sum over the circuits of coil and both tails, each cut whole"),
                      {"layout.circuits_placed", "coil.length", "counting.pipe_spare"});
    if (coils == nullptr) return;
    coils->pieces = std::move(pieces);
    coils->for_coils = true;
  }

  void add_header() {
    std::map<std::string, std::vector<double>> pieces;  // by size
    if (job_.solved != nullptr) {
      const LoopNetwork& loop = job_.solved->loop;
      for (std::size_t i = 0; i < loop.pipes.size(); ++i) {
        const LoopPart part = loop.pipes[i].part;
        if (part != LoopPart::circuit && part != LoopPart::heat_pump)
          pieces[loop.pipes[i].size.name].push_back(loop.network.pipes[i].length * (1 + kPipeAllowance));
      }
    } else {
      const double length = job_.layout.header.length + job_.layout.run.length;
      pieces[job_.wishes.header_pipe].assign(2, length * (1 + kPipeAllowance));
    }
    for (const auto& [size, lengths] : pieces) add_header_pipe(size, lengths);
  }

  // What is left of the coils' rolls serves a header of their size.
  void add_header_pipe(const std::string& size, const std::vector<double>& lengths) {
    double total = 0;
    for (double length : lengths) total += length;
    const std::vector<std::string> from = {"header.length", "run.length", "buy.allowance"};
    if (size == job_.wishes.pipe && !needs_.empty() && needs_.front().for_coils) {
      Need& coils = needs_.front();
      coils.amount += total;
      coils.pieces.insert(coils.pieces.end(), lengths.begin(), lengths.end());
      coils.how =
          say("{}; with header and run of this size x (1 + allowance), out of what is left", coils.how);
      coils.from.insert(coils.from.end(), from.begin(), from.end());
    } else {
      add(pipe_key(size), BillGroup::pipe, total,
          say("supply and return of header and run of this size x (1 + allowance)"), from);
    }
  }

  // ---- fittings ----

  void add_fittings() {
    const double spare = 1 + counting_.fitting_spare;
    if (job_.solved != nullptr)
      for (const auto& [key, count] : count_fittings(job_.solved->loop, job_.layout, job_.flow.arrangement))
        add(key, BillGroup::fittings, std::ceil(count * spare - 1e-9),
            say("{} where pipes meet, turn or change size", plain(count)),
            {"layout.circuits_placed", "counting.fitting_spare"});
    if (circuits() == 0) return;
    std::map<std::string, double> caps;
    caps[nominal_of(job_.wishes.pipe)] += 2.0 * static_cast<double>(circuits());
    caps[run_nominal()] += 2;
    for (const auto& [nominal, count] : caps)
      if (!nominal.empty())
        add(fitting_key("cap", nominal), BillGroup::fittings, count,
            say("both ends of every circuit until it is joined, both of the run for the test"),
            {"layout.circuits_placed"});
  }

  static std::string nominal_of(const std::string& size) {
    const auto pipe = find_pipe(size);
    return pipe ? pipe->nominal : "";
  }
  std::string run_nominal() const {
    return job_.solved != nullptr ? job_.solved->sizes.run.nominal : nominal_of(job_.wishes.header_pipe);
  }

  // ---- goods ----

  // Pipes through the wall.
  double through_wall() const {
    const bool home_runs = job_.flow.arrangement == HeaderArrangement::home_runs;
    return 2.0 * (home_runs ? static_cast<double>(circuits()) : 1.0);
  }

  double trench_length() const {
    double length = job_.dig.header_vertical.length + job_.dig.run_vertical.length;
    for (const EarthWork& t : job_.dig.trenches_vertical) length += t.length;
    return length;
  }

  void add_goods() {
    double loops = 0, straight = 0;
    for (const Trench& t : job_.layout.trenches) {
      loops += t.coil.loops;
      if (is_straight(t.coil.pattern)) straight += t.coil.coil_length;
    }
    if (straight > 0 && counting_.tie_distance > 0)
      add("tie", BillGroup::goods, std::ceil(straight / counting_.tie_distance),
          say("pipe in the trenches/{}",
              print_quantity(Quantity::length, counting_.tie_distance, UnitSystem::metric)),
          {"cost.pipe_in_coils", "counting.tie_distance"});
    else
      add("tie", BillGroup::goods, std::ceil(loops * counting_.ties_per_loop),
          say("{} for each loop", plain(counting_.ties_per_loop)),
          {"coil.loops", "layout.circuits_placed", "counting.ties_per_loop"});
    const std::vector<std::string> trenches = {"coil.trench_length", "layout.circuits_placed",
                                               "header.length", "run.length"};
    add("warning_tape", BillGroup::goods, trench_length() * counting_.tape_lines,
        say("{} over every trench, header and run", plain(counting_.tape_lines)),
        with(trenches, "counting.tape_lines"));
    if (counting_.tracer)
      add("tracer_wire", BillGroup::goods, trench_length(), say("once along every trench, header and run"),
          trenches);
    if (job_.solved != nullptr && job_.flow.fluid != Fluid::water)
      add(fluid_key(job_.flow.fluid), BillGroup::goods,
          1000 * job_.solved->antifreeze.concentrate * (1 + counting_.antifreeze_spare),
          say("concentrate of the loop's fill, the heat pump not counted"),
          {"flow.concentrate", "counting.antifreeze_spare"});
    if (job_.layout.run.line.size() < 2) return;
    add("sleeve", BillGroup::goods, through_wall() * counting_.sleeve, say("each pipe through the wall"),
        {"layout.circuits_placed", "counting.sleeve"});
    add("grout", BillGroup::goods, std::ceil(counting_.grout), say("at the entry"), {"counting.grout"});
    add("insulation", BillGroup::goods, through_wall() * counting_.insulated,
        say("each pipe at the house; 60 in: UFGS 15741N"), {"layout.circuits_placed", "counting.insulated"});
  }

  void add_earth() {
    const EarthWork& total = job_.sloped ? job_.dig.total_sloped : job_.dig.total_vertical;
    const std::string of = job_.sloped ? "dig.sloped.total." : "dig.vertical.total.";
    add("bedding", BillGroup::goods, total.bedding, say("sand round the pipe, compacted"),
        {of + "bedding_volume"});
    const double lawn = job_.estimate.torn.lawn;
    if (counting_.seed > 0)
      add("seed", BillGroup::goods, lawn * counting_.seed,
          say("lawn torn up x {} g a m2", plain(1000 * counting_.seed)), {"layout.lawn", "counting.seed"});
    if (counting_.straw > 0)
      add("straw", BillGroup::goods, std::ceil(lawn / counting_.straw),
          say("lawn torn up/{} m2 a bale", plain(counting_.straw)), {"layout.lawn", "counting.straw"});
  }

  // ---- work ----

  void add_work() {
    const CrewTime& time = job_.estimate.time;
    const double met = amount_of("hand_crossing");
    if (terms_.labour == LabourBy::days) {
      add("digging", BillGroup::work, amount_of("digging"), say_as("of earth", "excavated"),
          {job_.sloped ? "dig.sloped.total.bank_volume" : "dig.vertical.total.bank_volume"});
      add("hand_crossing", BillGroup::work, met, say("utilities that header and run cross"),
          {"cost.met_by_hand"});
      add("joint", BillGroup::work, job_.estimate.joints, say("fused joints"), {"layout.joints"});
      add("crew_day", BillGroup::work, amount_of("crew_day"), say("days with the lot open, in whole days"),
          {job_.sloped ? "days.sloped.open" : "days.paid"});
    } else {
      const auto hours = [&](const std::string& key, double seconds, const std::string& how,
                             const std::string& from) {
        add(key, BillGroup::work, seconds / 3600, how, {from});
      };
      hours("excavator_hour", time.digging, say("machine time, lines met by hand included"), "days.digging");
      hours("loader_hour", time.filling, say("bedding and backfill"), "days.filling");
      hours("coil_maker_hour", time.making, say("of all coils"), "days.coil_making");
      hours("layer_hour", time.laying, say("of all coils"), "days.coil_laying");
      hours("joiner_hour", time.joining, say("header and run laid, joints fused"), "days.joining");
      hours("tester_hour", time.testing, say("filled, flushed and tested"), "days.testing");
    }
    add("pavement", BillGroup::work, job_.estimate.torn.pavement, say("drives cut"), {"cost.pavement_area"});
    add("lawn", BillGroup::work, job_.estimate.torn.lawn, say("trenches, spoil and room to work"),
        {"layout.lawn"});
  }

  double amount_of(std::string_view key) const {
    for (const CostLine& line : job_.estimate.lines)
      if (line.key == key) return line.amount;
    return 0;
  }

  const JobDrawn& job_;
  const Counting& counting_;
  const OfferTerms& terms_;
  std::vector<Need> needs_;
};

}  // namespace

std::vector<Need> take_off(const JobDrawn& job, const Pricing& pricing) {
  if (job.layout.trenches.empty()) return {};
  return TakeOff(job, pricing).all();
}

}  // namespace underlawn
