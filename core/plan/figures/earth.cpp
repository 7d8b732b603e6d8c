// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "dig/dig.h"
#include "ground/ground.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

// The same figures are given for vertical sides and for the protective slope.
struct Sides {
  std::string key;    // "dig.vertical"
  std::string words;  // ", vertical sides"
  bool sloped;
};

// A stretch of trench of one section.
struct Part {
  std::string key;                   // "trench.1"
  std::string label;                 // "Trench 1"
  std::string length, width, depth;  // keys of figures; length may be empty: the part's own
  std::string mean_square = {};      // of the depth, where the floor is level and the ground is not
};

void add_volumes(Figures& all, const Sides& sides, const Part& part, const EarthWork& w) {
  const std::string key = sides.key + "." + part.key;
  const std::string label = part.label + ", ";
  std::vector<std::string> cut = {part.length, part.width, part.depth};
  std::vector<std::string> bed = {part.length, part.width, "dig.bedding"};
  if (sides.sloped) {
    cut.emplace_back("dig.slope");
    bed.emplace_back("dig.slope");
  }
  std::string section =
      sides.sloped ? say("length x depth x (width + slope x depth)") : say("length x width x depth");
  if (!part.mean_square.empty() && sides.sloped) {
    section = say("length x (width x mean depth + slope x mean of the depth squared)");
    cut.push_back(part.mean_square);
  }
  derived(all, key + ".bank_volume", label + "excavated" + sides.words, w.bank, Q::volume,
          {say("{}, ends vertical", section), cut, ""});
  derived(all, key + ".bedding_volume", label + "bedding" + sides.words, w.bedding, Q::volume,
          {say("{} with the bedding as depth; pipe not taken off", section), bed, ""});
  derived(all, key + ".loose_volume", say("{}spoil, loose{}", label, sides.words), w.loose, Q::volume,
          {say("excavated x (1 + swell)"),
           {key + ".bank_volume", "ground.swell"},
           say("Nunnally, Construction Methods and Management (from memory)")});
  derived(all, key + ".backfill_volume", say("{}backfill, compacted{}", label, sides.words), w.backfill,
          Q::volume, {say("excavated - bedding"), {key + ".bank_volume", key + ".bedding_volume"}, ""});
  derived(all, key + ".surplus_volume", say("{}surplus, loose{}", label, sides.words), w.surplus_loose,
          Q::volume,
          {say("(excavated - backfill/(1 - shrinkage)) x (1 + swell); less than 0: short"),
           {key + ".bank_volume", key + ".backfill_volume", "ground.shrinkage", "ground.swell"},
           say("Nunnally, Construction Methods and Management (from memory)")});
}

struct Total {
  const char* part;
  const char* label;
  double EarthWork::*value;
};

constexpr Total kTotals[] = {
    {".bank_volume", mark("Excavated"), &EarthWork::bank},
    {".bedding_volume", mark("Bedding"), &EarthWork::bedding},
    {".loose_volume", mark("Spoil, loose"), &EarthWork::loose},
    {".backfill_volume", mark("Backfill, compacted"), &EarthWork::backfill},
    {".surplus_volume", mark("Surplus, loose"), &EarthWork::surplus_loose},
};

void add_totals(Figures& all, const Sides& sides, const std::vector<Part>& parts, const EarthWork& sum) {
  for (const Total& t : kTotals) {
    std::vector<std::string> from;
    for (const Part& part : parts) from.push_back(sides.key + "." + part.key + t.part);
    derived(all, sides.key + ".total" + t.part, say("{} in all{}", t.label, sides.words), sum.*t.value,
            Q::volume, {say("sum of trenches, header and run"), std::move(from), ""});
  }
}

std::vector<Part> parts_of(Figures& all, const Outcome& outcome) {
  std::vector<Part> parts;
  for (const Trench& t : outcome.layout.trenches) {
    const std::string key = trench_key(t.number);
    const bool varies = all.find(key + ".mean_depth") != nullptr;
    parts.push_back({key, say("Trench {}", std::to_string(t.number)), key + ".length", key + ".width",
                     key + (varies ? ".mean_depth" : ".depth"), varies ? key + ".mean_square_depth" : ""});
  }
  if (all.find("header.length") != nullptr)
    parts.push_back({"header", say("Header"), "header.length", "dig.run_width", "dig.run_depth"});
  if (all.find("run.length") != nullptr) {
    derived(all, "run.dug_length", say("Supply run dug for itself"), outcome.dig.run_vertical.length,
            Q::length, {say("run - its stretch in a coil trench"), {"run.length", "run.shared"}, ""});
    parts.push_back({"run", say("Supply run"), "run.dug_length", "dig.run_width", "dig.run_depth"});
  }
  return parts;
}

const EarthWork& work_of(const DigPlan& dig, const Part& part, std::size_t i, bool sloped) {
  if (part.key == "header") return sloped ? dig.header_sloped : dig.header_vertical;
  if (part.key == "run") return sloped ? dig.run_sloped : dig.run_vertical;
  return sloped ? dig.trenches_sloped[i] : dig.trenches_vertical[i];
}

void add_heap(Figures& all, const Outcome& outcome, const Sides& sides, double width, double height) {
  if (outcome.layout.trenches.empty()) return;
  std::vector<std::string> from;
  for (const Trench& t : outcome.layout.trenches) {
    from.push_back(sides.key + "." + trench_key(t.number) + ".loose_volume");
    from.push_back(trench_key(t.number) + ".length");
  }
  from.emplace_back("ground.repose");
  const std::string source = say("Nunnally, Construction Methods and Management (from memory)");
  derived(all, sides.key + ".spoil_width", say("Spoil heap beside a coil trench, width{}", sides.words),
          width, Q::length, {say("B = sqrt(4 V/(L tan R)), the widest heap"), from, source});
  derived(all, sides.key + ".spoil_height", say("Spoil heap beside a coil trench, height{}", sides.words),
          height, Q::length, {say("(B/2) tan R"), {sides.key + ".spoil_width", "ground.repose"}, source});
}

void add_sides(Figures& all, const Outcome& outcome, const Sides& sides, const std::vector<Part>& parts) {
  const DigPlan& dig = outcome.dig;
  for (std::size_t i = 0; i < parts.size(); ++i)
    add_volumes(all, sides, parts[i], work_of(dig, parts[i], i, sides.sloped));
  add_totals(all, sides, parts, sides.sloped ? dig.total_sloped : dig.total_vertical);
  add_heap(all, outcome, sides, sides.sloped ? dig.spoil_width : dig.spoil_width_vertical,
           sides.sloped ? dig.spoil_height : dig.spoil_height_vertical);
}

}  // namespace

void add_earth(Figures& all, const Plan& plan, const Outcome& outcome) {
  if (plan.dig.slope)
    typed(all, "dig.slope", say("Own slope of the sides, horizontal per vertical"), outcome.dig.slope,
          Q::slope);
  else
    derived(all, "dig.slope", say("Protective slope, horizontal per vertical"), outcome.dig.slope, Q::slope,
            {say("table, by the soil type typed: {}", std::string(soil_name(plan.ground.soil))),
             {},
             say("29 CFR 1926 Subpart P, Table B-1")});
  if (outcome.layout.trenches.empty()) return;
  add_floors(all, plan, outcome);
  derived(all, "dig.top_width", say("Sloped coil trench, width at the ground"), outcome.dig.top_width_sloped,
          Q::length,
          {say("width + 2 x slope x depth"), {"dig.trench_width", "dig.slope", "dig.trench_depth"}, ""});
  const std::vector<Part> parts = parts_of(all, outcome);
  std::vector<std::string> lengths;
  for (const Part& part : parts) lengths.push_back(part.length);
  derived(all, "dig.length", say("Trench to dig in all"), outcome.dig.total_vertical.length, Q::length,
          {say("sum of trenches, header and run"), std::move(lengths), ""});
  add_sides(all, outcome, {"dig.vertical", say(", vertical sides"), false}, parts);
  add_sides(all, outcome, {"dig.sloped", say(", protective slope"), true}, parts);
}

}  // namespace underlawn::figures
