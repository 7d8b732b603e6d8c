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
  std::string key;  // "dig.vertical"
  bool sloped;
};

// A stretch of trench of one section.
struct Part {
  std::string key;                   // "trench.1"
  std::string label;                 // "Trench 1"
  std::string length, width, depth;  // keys of figures; length may be empty: the part's own
  std::string mean_square = {};      // of the depth, where the floor is level and the ground is not
};

// What is dug, by its names with vertical and with sloped sides.
struct Volume {
  const char* part;
  const char* names[2];  // of the stretch named
  const char* totals[2];
  double EarthWork::*value;
};

constexpr Volume kBank{".bank_volume",
                       {mark("{}, excavated, vertical sides"), mark("{}, excavated, protective slope")},
                       {mark("Excavated in all, vertical sides"), mark("Excavated in all, protective slope")},
                       &EarthWork::bank};
constexpr Volume kBedding{".bedding_volume",
                          {mark("{}, bedding, vertical sides"), mark("{}, bedding, protective slope")},
                          {mark("Bedding in all, vertical sides"), mark("Bedding in all, protective slope")},
                          &EarthWork::bedding};
constexpr Volume kLoose{
    ".loose_volume",
    {mark("{}, spoil, loose, vertical sides"), mark("{}, spoil, loose, protective slope")},
    {mark("Spoil, loose in all, vertical sides"), mark("Spoil, loose in all, protective slope")},
    &EarthWork::loose};
constexpr Volume kBackfill{
    ".backfill_volume",
    {mark("{}, backfill, compacted, vertical sides"), mark("{}, backfill, compacted, protective slope")},
    {mark("Backfill, compacted in all, vertical sides"),
     mark("Backfill, compacted in all, protective slope")},
    &EarthWork::backfill};
constexpr Volume kSurplus{
    ".surplus_volume",
    {mark("{}, surplus, loose, vertical sides"), mark("{}, surplus, loose, protective slope")},
    {mark("Surplus, loose in all, vertical sides"), mark("Surplus, loose in all, protective slope")},
    &EarthWork::surplus_loose};

// How the volume of a stretch comes about: its section, and the figures that go into it.
How of_section(const Sides& sides, const Part& part) {
  How how{say("length x width x depth, ends vertical"), {part.length, part.width, part.depth}, ""};
  if (!sides.sloped) return how;
  how.from.emplace_back("dig.slope");
  how.method = say("length x depth x (width + slope x depth), ends vertical");
  if (part.mean_square.empty()) return how;
  how.from.push_back(part.mean_square);
  how.method = say("length x (width x mean depth + slope x mean of the depth squared), ends vertical");
  return how;
}

How of_bedding(const Sides& sides, const Part& part) {
  How how{say("length x width x depth with the bedding as depth; pipe not taken off"),
          {part.length, part.width, "dig.bedding"},
          ""};
  if (!sides.sloped) return how;
  how.from.emplace_back("dig.slope");
  how.method =
      part.mean_square.empty()
          ? say("length x depth x (width + slope x depth) with the bedding as depth; pipe not taken off")
          : say("length x (width x mean depth + slope x mean of the depth squared) with the bedding as "
                "depth; pipe not taken off");
  return how;
}

void add_volumes(Figures& all, const Sides& sides, const Part& part, const EarthWork& w) {
  const std::string key = sides.key + "." + part.key;
  const auto add = [&](const Volume& v, How how) {
    derived(all, key + v.part, words::filled(translated(v.names[sides.sloped ? 1 : 0]), &part.label, 1),
            w.*v.value, Q::volume, std::move(how));
  };
  const std::string nunnally = say("Nunnally, Construction Methods and Management (from memory)");
  add(kBank, of_section(sides, part));
  add(kBedding, of_bedding(sides, part));
  add(kLoose, {say("excavated x (1 + swell)"), {key + ".bank_volume", "ground.swell"}, nunnally});
  add(kBackfill, {say("excavated - bedding"), {key + ".bank_volume", key + ".bedding_volume"}, ""});
  add(kSurplus, {say("(excavated - backfill/(1 - shrinkage)) x (1 + swell); less than 0: short"),
                 {key + ".bank_volume", key + ".backfill_volume", "ground.shrinkage", "ground.swell"},
                 nunnally});
}

void add_totals(Figures& all, const Sides& sides, const std::vector<Part>& parts, const EarthWork& sum) {
  for (const Volume& t : {kBank, kBedding, kLoose, kBackfill, kSurplus}) {
    std::vector<std::string> from;
    for (const Part& part : parts) from.push_back(sides.key + "." + part.key + t.part);
    derived(all, sides.key + ".total" + t.part, translated(t.totals[sides.sloped ? 1 : 0]), sum.*t.value,
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
  derived(all, sides.key + ".spoil_width",
          sides.sloped ? say("Spoil heap beside a coil trench, width, protective slope")
                       : say("Spoil heap beside a coil trench, width, vertical sides"),
          width, Q::length, {say("B = sqrt(4 V/(L tan R)), the widest heap"), from, source});
  derived(all, sides.key + ".spoil_height",
          sides.sloped ? say("Spoil heap beside a coil trench, height, protective slope")
                       : say("Spoil heap beside a coil trench, height, vertical sides"),
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
  add_sides(all, outcome, {"dig.vertical", false}, parts);
  add_sides(all, outcome, {"dig.sloped", true}, parts);
}

}  // namespace underlawn::figures
