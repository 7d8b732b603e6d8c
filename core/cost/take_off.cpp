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

  std::vector<Need> pipe() {
    add_pipe();
    return std::move(needs_);
  }

  std::vector<Need> all(const JobWork& work) {
    add_pipe();
    add_fittings();
    add_goods();
    add_earth(work);
    add_work(work);
    return std::move(needs_);
  }

 private:
  Need* add(std::string_view key, BillGroup group, double amount, std::string how,
            std::vector<std::string> from = {}) {
    if (!(amount > 0) || !std::isfinite(amount)) return nullptr;
    needs_.push_back({std::string(key), group, amount, {}, {}, std::move(how), std::move(from), false});
    return &needs_.back();
  }

  std::size_t circuits() const { return job_.layout.trenches.size(); }

  // ---- pipe ----

  void add_pipe() {
    const PipePieces pieces = pipe_pieces(job_, counting_);
    add_coils(pieces);
    for (const auto& [size, lengths] : pieces.conduits) add_header_pipe(size, lengths);
  }

  void add_coils(const PipePieces& pieces) {
    double total = 0;
    for (double length : pieces.coils) total += length;
    Need* coils = add(pipe_key(job_.wishes.pipe), BillGroup::pipe, total,
                      say("sum over the circuits of coil and both ends, each cut whole"),
                      {"layout.circuits_placed", "coil.length", "buy.coil_end", "counting.pipe_spare"});
    if (coils == nullptr) return;
    coils->pieces = pieces.coils;
    coils->names = coil_names();
    coils->names.resize(coils->pieces.size());
    coils->for_coils = true;
  }

  // In the order of pipe_pieces.
  std::vector<std::string> coil_names() const {
    std::vector<int> numbers;
    numbers.reserve(job_.layout.trenches.size());
    for (const Trench& t : job_.layout.trenches) numbers.push_back(t.number);
    std::ranges::sort(numbers);
    std::vector<std::string> names;
    names.reserve(numbers.size());
    for (int number : numbers) names.push_back(say("coil of trench {}", std::to_string(number)));
    return names;
  }

  static void add_conduits(Need& need, const std::vector<double>& lengths) {
    need.pieces.insert(need.pieces.end(), lengths.begin(), lengths.end());
    need.names.resize(need.pieces.size(), say("header and run"));
  }

  // What is left of the coils' rolls serves a header of their size.
  void add_header_pipe(const std::string& size, const std::vector<double>& lengths) {
    double total = 0;
    for (double length : lengths) total += length;
    const std::vector<std::string> from = {"header.length", "run.length", "buy.allowance"};
    if (size == job_.wishes.pipe && !needs_.empty() && needs_.front().for_coils) {
      Need& coils = needs_.front();
      coils.amount += total;
      add_conduits(coils, lengths);
      coils.how =
          say("{}; with header and run of this size x (1 + allowance), out of what is left", coils.how);
      coils.from.insert(coils.from.end(), from.begin(), from.end());
    } else {
      Need* pipe = add(pipe_key(size), BillGroup::pipe, total,
                       say("supply and return of header and run of this size x (1 + allowance)"), from);
      if (pipe != nullptr) add_conduits(*pipe, lengths);
    }
  }

  // ---- fittings ----

  void add_fittings() {
    const double spare = 1 + counting_.fitting_spare;
    if (job_.solved != nullptr)
      for (const auto& [key, count] :
           count_fittings(job_.solved->loop, job_.layout, job_.flow.arrangement).fittings)
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

  double trench_length() const { return job_.dig.total.length; }

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

  void add_earth(const JobWork& work) {
    add("bedding", BillGroup::goods, job_.dig.total.bedding, say("sand round the pipe, compacted"),
        {"dig.total.bedding_volume"});
    add("fill_earth", BillGroup::goods, -job_.dig.total.surplus_loose,
        say("loose, what the fill takes more than was dug"), {"dig.total.surplus_volume"});
    const double lawn = work.torn.lawn;
    if (counting_.seed > 0)
      add("seed", BillGroup::goods, lawn * counting_.seed,
          say("lawn torn up x {} g a m2", plain(1000 * counting_.seed)), {"layout.lawn", "counting.seed"});
    if (counting_.straw > 0)
      add("straw", BillGroup::goods, std::ceil(lawn / counting_.straw),
          say("lawn torn up/{} m2 a bale", plain(counting_.straw)), {"layout.lawn", "counting.straw"});
  }

  // ---- work ----

  void add_hours(const std::string& key, double seconds, const std::string& how, const std::string& from) {
    add(key, BillGroup::work, seconds / 3600, how, {from});
  }

  void add_by_days(const JobWork& work) {
    add("digging", BillGroup::work, job_.dig.total.bank, say_as("of earth", "excavated"),
        {"dig.total.bank_volume"});
    add("hand_crossing", BillGroup::work, work.met_by_hand, say("utilities that header and run cross"),
        {"cost.met_by_hand"});
    add("joint", BillGroup::work, work.joints, say("fused joints"), {"layout.joints"});
    add("crew_day", BillGroup::work, work.time.days, say("days with the lot open, in whole days"),
        {"days.paid"});
  }

  void add_by_hours(const CrewTime& time) {
    add_hours("excavator_hour", time.digging, say("machine time, lines met by hand included"),
              "days.digging");
    add_hours("loader_hour", time.filling, say("bedding and backfill"), "days.filling");
    add_hours("coil_maker_hour", time.making, say("of all coils"), "days.coil_making");
    add_hours("layer_hour", time.laying, say("of all coils"), "days.coil_laying");
    add_hours("joiner_hour", time.joining, say("header and run laid, joints fused"), "days.joining");
    add_hours("tester_hour", time.testing, say("filled, flushed and tested"), "days.testing");
  }

  void add_work(const JobWork& work) {
    if (terms_.labour == LabourBy::days)
      add_by_days(work);
    else
      add_by_hours(work.time);
    add_hours("truck_hour", work.time.hauling, say("while spoil is trucked off and brought back"),
              "days.hauling");
    add("earth_off", BillGroup::work, job_.dig.total.surplus_loose, say("loose, left when all is filled"),
        {"dig.total.surplus_volume"});
    add("pavement", BillGroup::work, work.torn.pavement, say("drives cut"), {"cost.pavement_area"});
    add("lawn", BillGroup::work, work.torn.lawn, say("trenches, spoil, ways and room to work"),
        {"layout.lawn"});
  }

  const JobDrawn& job_;
  const Counting& counting_;
  const OfferTerms& terms_;
  std::vector<Need> needs_;
};

}  // namespace

namespace {

std::vector<double> coil_pieces(const JobDrawn& job, double spare) {
  std::map<int, double> lengths;  // by number of the trench
  if (job.solved != nullptr) {
    const LoopNetwork& loop = job.solved->loop;
    for (std::size_t i = 0; i < loop.pipes.size(); ++i)
      if (loop.pipes[i].part == LoopPart::circuit)
        lengths[loop.pipes[i].trench] += loop.network.pipes[i].length;
  } else {
    for (const Trench& t : job.layout.trenches) lengths[t.number] = t.coil.coil_length + 2 * job.flow.tail;
  }
  std::vector<double> pieces;
  pieces.reserve(lengths.size());
  for (const auto& [trench, length] : lengths) pieces.push_back(length * (1 + spare));
  return pieces;
}

}  // namespace

PipePieces pipe_pieces(const JobDrawn& job, const Counting& counting) {
  PipePieces pieces{coil_pieces(job, counting.pipe_spare), {}};
  if (job.solved == nullptr) {
    const double length = job.layout.header.length + job.layout.run.length;
    pieces.conduits[job.wishes.header_pipe].assign(2, length * (1 + kPipeAllowance));
    return pieces;
  }
  const LoopNetwork& loop = job.solved->loop;
  for (std::size_t i = 0; i < loop.pipes.size(); ++i)
    if (loop.pipes[i].part != LoopPart::circuit && loop.pipes[i].part != LoopPart::heat_pump)
      pieces.conduits[loop.pipes[i].size.name].push_back(loop.network.pipes[i].length * (1 + kPipeAllowance));
  return pieces;
}

std::vector<Need> take_off(const JobDrawn& job, const JobWork& work, const Pricing& pricing) {
  if (job.layout.trenches.empty()) return {};
  return TakeOff(job, pricing).all(work);
}

std::vector<Need> take_off_pipe(const JobDrawn& job, const Pricing& pricing) {
  if (job.layout.trenches.empty()) return {};
  return TakeOff(job, pricing).pipe();
}

Bought bought_of(const Need& need, const PriceRow& row) {
  const std::vector<Pack> packs = packs_of(row);
  const double price = row.price.value_or(1);
  double longest = 0, piece = 0;
  for (const Pack& p : packs) longest = std::max(longest, p.amount);
  for (double length : need.pieces) piece = std::max(piece, length);
  const bool whole = need.for_coils || piece <= longest || longest == 0;
  return need.pieces.empty() || !whole ? buy(need.amount, packs, price) : cut(need.pieces, packs, price);
}

}  // namespace underlawn
