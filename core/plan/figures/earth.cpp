// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "base/say.h"
#include "dig/cut_once.h"
#include "ground/ground.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

// A stretch of trench of one section.
struct Part {
  std::string key;                   // "trench.1"
  std::string label;                 // "Trench 1"
  std::string length, width, depth;  // keys of figures; length may be empty: the part's own
  std::string slope;                 // likewise
  std::string mean_square = {};      // of the depth, where the floor is level and the ground is not
};

// What is dug, by its names.
struct Volume {
  const char* part;
  const char* name;  // of the stretch named
  const char* total;
  double EarthWork::*value;
};

constexpr Volume kBank{".bank_volume", mark("{}, excavated"), mark("Excavated in all"), &EarthWork::bank};
constexpr Volume kBedding{".bedding_volume", mark("{}, bedding"), mark("Bedding in all"),
                          &EarthWork::bedding};
constexpr Volume kLoose{".loose_volume", mark("{}, spoil, loose"), mark("Spoil, loose in all"),
                        &EarthWork::loose};
constexpr Volume kBackfill{".backfill_volume", mark("{}, backfill, compacted"),
                           mark("Backfill, compacted in all"), &EarthWork::backfill};
constexpr Volume kSurplus{".surplus_volume", mark("{}, surplus, loose"), mark("Surplus, loose in all"),
                          &EarthWork::surplus_loose};

// How the volume of a stretch comes about: its section, and the figures that go into it.
How of_section(const Part& part) {
  How how{say("length x depth x (width + slope x depth), ends vertical"),
          {part.length, part.width, part.depth, part.slope},
          ""};
  if (part.mean_square.empty()) return how;
  how.from.push_back(part.mean_square);
  how.method = say("length x (width x mean depth + slope x mean of the depth squared), ends vertical");
  return how;
}

How of_bedding(const Part& part) {
  return {say("length x depth x (width + slope x depth) with the bedding as depth; pipe not taken off"),
          {part.length, part.width, "dig.bedding", part.slope},
          ""};
}

constexpr Volume kBankMet{".bank_met_volume", mark("{}, dug with another cut"), "", &EarthWork::bank_met};
constexpr Volume kBeddingMet{".bedding_met_volume", mark("{}, bedding that lies in another cut too"), "",
                             &EarthWork::bedding_met};

// Takes off what two cuts hold together, where there is any.
void count_once(Figures& all, const std::string& key, const Part& part, const EarthWork& w, const Volume& met,
                How& how) {
  if (!(w.*met.value > 0)) return;
  derived(all, key + met.part, words::filled(translated(met.name), &part.label, 1), w.*met.value, Q::volume,
          {say("what two cuts hold together, half to each: area of the plan in both, over the depth"),
           {part.length, part.width, part.slope},
           ""});
  how.from.push_back(key + met.part);
  how.method = say("{}; less what is counted with another cut", how.method);
}

// Of a coil trench that the run shares.
void add_run_sand(Figures& all, const std::string& key, const Part& part, const EarthWork& w, How& how) {
  if (!(w.run_bedding > 0)) return;
  derived(all, key + ".run_bedding_volume", say("{}, bedding round the run's pipes", part.label),
          w.run_bedding, Q::volume,
          {say("shared length x bedding x (width + slope x (2 x (depth - run's floor) + bedding))"),
           {part.key + ".shared", part.width, part.depth, part.key + ".run_floor", "dig.bedding", part.slope},
           ""});
  how.from.push_back(key + ".run_bedding_volume");
  how.method = say("{}; with what lies round the run's pipes", how.method);
}

void add_volumes(Figures& all, const Part& part, const EarthWork& w) {
  const std::string key = "dig." + part.key;
  const auto add = [&](const Volume& v, How how) {
    // A cubic millimetre is what is left of a difference that is nought.
    const double value = std::abs(w.*v.value) < 1e-9 ? 0 : w.*v.value;
    derived(all, key + v.part, words::filled(translated(v.name), &part.label, 1), value, Q::volume,
            std::move(how));
  };
  const std::string nunnally = say("Nunnally, Construction Methods and Management, eqs. 2-4 to 2-9");
  How bank = of_section(part), bedding = of_bedding(part);
  count_once(all, key, part, w, kBankMet, bank);
  add_run_sand(all, key, part, w, bedding);
  count_once(all, key, part, w, kBeddingMet, bedding);
  add(kBank, std::move(bank));
  add(kBedding, std::move(bedding));
  add(kLoose, {say("excavated x (1 + swell)"), {key + ".bank_volume", "ground.swell"}, nunnally});
  add(kBackfill, {say("excavated - bedding"), {key + ".bank_volume", key + ".bedding_volume"}, ""});
  add(kSurplus, {say("(excavated - backfill/(1 - shrinkage)) x (1 + swell); less than 0: short"),
                 {key + ".bank_volume", key + ".backfill_volume", "ground.shrinkage", "ground.swell"},
                 nunnally});
}

void add_totals(Figures& all, const std::vector<Part>& parts, const EarthWork& sum) {
  for (const Volume& t : {kBank, kBedding, kLoose, kBackfill, kSurplus}) {
    std::vector<std::string> from;
    from.reserve(parts.size());
    for (const Part& part : parts) from.push_back("dig." + part.key + t.part);
    derived(all, std::string("dig.total") + t.part, translated(t.total), sum.*t.value, Q::volume,
            {say("sum of trenches, header and run"), std::move(from), ""});
  }
}

// Where the run's pipes lie over the coil.
void add_shared(Figures& all, const Plan& plan, const Outcome& outcome, std::size_t i) {
  const Trench& t = outcome.layout.trenches[i];
  const double shared = shared_with_run(t, outcome.layout);
  if (!(shared > 0)) return;
  const std::string key = trench_key(t.number), name = std::to_string(t.number);
  derived(all, key + ".shared", say("Trench {}, stretch that the run lies in", name), shared, Q::length,
          {say("run's line on the floor of the trench"), {"run.length", key + ".length"}, ""});
  const double run = outcome.layout.run.depth.value_or(plan.wishes.run_depth);
  derived(all, key + ".run_floor", say("Trench {}, depth of the run's pipes over the coil", name),
          run_floor_over(outcome.dig.floors[i], run, plan.wishes.bedding), Q::length,
          {say("depth of the run, but no deeper than the bedding over the coil"),
           {"dig.run_depth", key + ".depth", "dig.bedding"},
           ""});
}

std::vector<Part> parts_of(Figures& all, const Plan& plan, const Outcome& outcome) {
  std::vector<Part> parts;
  for (std::size_t i = 0; i < outcome.layout.trenches.size(); ++i) {
    const std::string key = trench_key(outcome.layout.trenches[i].number);
    const bool varies = all.find(key + ".mean_depth") != nullptr;
    parts.push_back({key, say("Trench {}", std::to_string(outcome.layout.trenches[i].number)),
                     key + ".length", key + ".width", key + (varies ? ".mean_depth" : ".depth"),
                     "dig.coil_slope", varies ? key + ".mean_square_depth" : ""});
    add_shared(all, plan, outcome, i);
  }
  const auto conduit = [&](const char* key, const std::string& label, const char* length) {
    const std::string depth = std::string(key) + ".mean_depth";
    const bool own = all.find(depth) != nullptr;
    parts.push_back({key, label, length, "dig.run_width", own ? depth : "dig.run_depth", "dig.run_slope",
                     own ? std::string(key) + ".mean_square_depth" : ""});
  };
  if (all.find("header.length") != nullptr) conduit("header", say("Header"), "header.length");
  if (all.find("run.length") != nullptr) {
    derived(all, "run.dug_length", say("Supply run dug for itself"), outcome.dig.run.length, Q::length,
            {say("run - its stretch in a coil trench"), {"run.length", "run.shared"}, ""});
    conduit("run", say("Supply run"), "run.dug_length");
  }
  return parts;
}

const EarthWork& work_of(const DigPlan& dig, const Part& part, std::size_t i) {
  if (part.key == "header") return dig.header;
  return part.key == "run" ? dig.run : dig.trenches[i];
}

void add_heap(Figures& all, const Outcome& outcome) {
  std::vector<std::string> from;
  for (const Trench& t : outcome.layout.trenches) {
    from.push_back("dig." + trench_key(t.number) + ".loose_volume");
    from.push_back(trench_key(t.number) + ".length");
  }
  from.emplace_back("ground.repose");
  const std::string source = say("triangular heap: Nunnally, Construction Methods and Management, sec. 2-5");
  derived(all, "dig.spoil_width", say("Spoil heap beside a coil trench, width"), outcome.dig.spoil_width,
          Q::length, {say("B = sqrt(4 V/(L tan R)), the widest heap"), from, source});
  derived(all, "dig.spoil_height", say("Spoil heap beside a coil trench, height"), outcome.dig.spoil_height,
          Q::length, {say("(B/2) tan R"), {"dig.spoil_width", "ground.repose"}, source});
}

void add_slopes(Figures& all, const Plan& plan, const DigPlan& dig) {
  if (plan.dig.slope)
    typed(all, "dig.slope", say("Own slope of the sides, horizontal per vertical"), dig.slope, Q::slope);
  else
    derived(all, "dig.slope", say("Protective slope, horizontal per vertical"), dig.slope, Q::slope,
            {say("table, by the soil type typed: {}", std::string(soil_name(plan.ground.soil))),
             {},
             say("29 CFR 1926 Subpart P, Table B-1")});
  const auto chosen = [&](const char* key, const std::string& label, double slope) {
    derived(all, key, label, slope, Q::slope,
            {say("the slope where sides are laid back, 0 where they stand vertical"), {"dig.slope"}, ""});
  };
  chosen("dig.coil_slope", say("Sides of coil trenches as chosen, slope"), dig.coil_slope);
  chosen("dig.run_slope", say("Sides of header and run as chosen, slope"), dig.run_slope);
}

}  // namespace

void add_earth(Figures& all, const Plan& plan, const Outcome& outcome) {
  add_slopes(all, plan, outcome.dig);
  if (outcome.layout.trenches.empty()) return;
  add_floors(all, plan, outcome);
  derived(all, "dig.top_width", say("Sloped coil trench, width at the ground"), outcome.dig.top_width_sloped,
          Q::length,
          {say("width + 2 x slope x depth"), {"dig.trench_width", "dig.slope", "dig.trench_depth"}, ""});
  const std::vector<Part> parts = parts_of(all, plan, outcome);
  std::vector<std::string> lengths;
  lengths.reserve(parts.size());
  for (const Part& part : parts) lengths.push_back(part.length);
  derived(all, "dig.length", say("Trench to dig in all"), outcome.dig.total.length, Q::length,
          {say("sum of trenches, header and run"), std::move(lengths), ""});
  for (std::size_t i = 0; i < parts.size(); ++i)
    add_volumes(all, parts[i], work_of(outcome.dig, parts[i], i));
  add_totals(all, parts, outcome.dig.total);
  add_heap(all, outcome);
}

}  // namespace underlawn::figures
