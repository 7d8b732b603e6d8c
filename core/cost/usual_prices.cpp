// SPDX-License-Identifier: GPL-3.0-or-later
// The usual book. All prices are round figures of our own; what goods are sold by is common practice, no
// source.
#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "cost/price_book.h"
#include "flow/header_design.h"
#include "pipe/pipe_size.h"

namespace underlawn {

namespace {

using U = PriceUnit;

constexpr double kFoot = 0.3048;
constexpr double kGallon = 3.785411784;    // l
constexpr double kYard3 = 0.764554857984;  // m3
constexpr double kPound = 0.45359237;      // kg
constexpr const char* kInLawn = mark("in the price of the lawn");

struct Usual {
  const char* key;
  const char* item;
  U unit;
  std::vector<double> packs;
  double price;
  const char* note = "";
};

const std::vector<Usual>& table() {
  static const Prices p;
  static const std::vector<Usual> rows = {
      {"digging", mark("Ground dug, filled in again and compacted"), U::cubic_metre, {}, p.digging},
      {"hand_crossing", mark("Line met by hand"), U::each, {}, p.hand_crossing},
      {"pavement", mark("Pavement cut and made good"), U::square_metre, {}, p.pavement},
      {"lawn", mark("Lawn torn up and sown"), U::square_metre, {}, p.lawn, mark("seed and straw included")},
      {"joint", mark("Fused joint"), U::each, {}, p.joint},
      {"crew_day", mark("Day of crew and machine"), U::day, {}, p.crew_day},
      {"excavator_hour", mark("Excavator with its driver"), U::hour, {}, 110},
      {"loader_hour", mark("Loader with its driver"), U::hour, {}, 95},
      {"coil_maker_hour", mark("Making coils"), U::hour, {}, 60},
      {"layer_hour", mark("Laying coils"), U::hour, {}, 60},
      {"joiner_hour", mark("Header, run and joints"), U::hour, {}, 80},
      {"tester_hour", mark("Filling and pressure test"), U::hour, {}, 80},
      {"truck_hour", mark("Truck with its driver"), U::hour, {}, 90},
      {"bedding", mark("Sand"), U::cubic_metre, {kYard3}, p.bedding},
      {"fill_earth", mark("Earth brought to fill with"), U::cubic_metre, {kYard3}, 25},
      {"earth_off", mark("Earth left over, hauled off and tipped"), U::cubic_metre, {}, 25},
      {"tie", mark("Tie"), U::each, {100, 500, 1000}, 0.1},
      {"warning_tape", mark("Warning tape"), U::metre, {1000 * kFoot}, 0.1},
      {"tracer_wire", mark("Tracer wire"), U::metre, {500 * kFoot, 1000 * kFoot}, 0.5},
      {"propylene_glycol", mark("Propylene glycol"), U::litre, {5 * kGallon, 55 * kGallon}, 5},
      {"ethanol", mark("Ethanol"), U::litre, {5 * kGallon, 55 * kGallon}, 3},
      {"methanol", mark("Methanol"), U::litre, {5 * kGallon, 55 * kGallon}, 2},
      {"ethylene_glycol", mark("Ethylene glycol"), U::litre, {5 * kGallon, 55 * kGallon}, 4},
      {"sleeve", mark("Sleeve through the wall"), U::metre, {10 * kFoot}, 20},
      {"grout", mark("Grout, bag"), U::each, {}, 15},
      {"insulation", mark("Pipe insulation"), U::metre, {6 * kFoot}, 8},
      {"seed", mark("Grass seed"), U::kilogram, {5 * kPound, 25 * kPound, 50 * kPound}, 0, kInLawn},
      {"straw", mark("Straw, bale"), U::each, {}, 0, kInLawn},
  };
  return rows;
}

PriceRow row(std::string key, std::string item, U unit, std::vector<double> packs, double price) {
  return {std::move(key), std::move(item), unit, std::move(packs), price, "", ""};
}

double to_tenths(double value) {
  return std::round(10 * value) / 10;
}

// By weight, but for the two sizes that the layout's own prices are usually for.
double pipe_price(const PipeSize& size) {
  constexpr double kPerKilogram = 12;
  const Wishes usual;
  if (size.name == usual.pipe) return usual.prices.coil_pipe;
  if (size.name == usual.header_pipe) return usual.prices.header_pipe;
  return std::max(0.1, to_tenths(kPerKilogram * pipe_mass(size)));
}

// 0: cut off for the buyer.
std::vector<double> rolls(const PipeSize& size) {
  if (size.outside_diameter > 0.0889 - 1e-6) return {20 * kFoot, 40 * kFoot};  // 3 in: sticks
  if (size.outside_diameter > 0.0603 - 1e-6) return {0, 40 * kFoot, 300 * kFoot, 500 * kFoot};
  return {0, 300 * kFoot, 500 * kFoot, 600 * kFoot, 800 * kFoot, 1000 * kFoot};
}

std::optional<PriceRow> pipe_row(std::string_view key) {
  constexpr std::string_view kPipe = "pipe ";
  if (!key.starts_with(kPipe)) return std::nullopt;
  const auto size = find_pipe(key.substr(kPipe.size()));
  if (!size) return std::nullopt;
  return row(std::string(key), say("Pipe, {}", size->name), U::metre, rolls(*size), pipe_price(*size));
}

struct Fitting {
  std::string_view word;
  const char* item;
  double per_metre;  // price by outside diameter
};
constexpr Fitting kFittings[] = {{"tee", mark("Tee"), 200},
                                 {"elbow 90", mark("Elbow 90°"), 140},
                                 {"elbow 45", mark("Elbow 45°"), 140},
                                 {"reducer", mark("Reducer"), 120},
                                 {"coupling", mark("Coupling"), 100},
                                 {"cap", mark("Test plug"), 80},
                                 {"union", mark("Union to the house piping"), 600}};

double diameter_of(std::string_view nominal) {
  for (const PipeSize& size : pipe_sizes())
    if (size.nominal == nominal) return size.outside_diameter;
  return 0;
}

std::optional<PriceRow> fitting_row(std::string_view key) {
  for (const Fitting& f : kFittings) {
    if (!key.starts_with(f.word) || key.size() < f.word.size() + 2 || key[f.word.size()] != ' ') continue;
    const std::string_view sizes = key.substr(f.word.size() + 1);
    const std::string_view larger = sizes.substr(0, sizes.find(" x "));
    const double diameter = diameter_of(larger);
    if (diameter <= 0) continue;
    if (sizes != larger && diameter_of(sizes.substr(larger.size() + 3)) <= 0) continue;
    return row(std::string(key), translated(f.item) + ", " + std::string(sizes), U::each, {},
               std::max(1.0, std::round(f.per_metre * diameter)));
  }
  return std::nullopt;
}

}  // namespace

std::string pipe_key(std::string_view size) {
  return "pipe " + std::string(size);
}

std::string fitting_key(std::string_view word, std::string_view nominal) {
  return std::string(word) + " " + std::string(nominal);
}

std::optional<PriceRow> usual_row(std::string_view key) {
  for (const Usual& u : table())
    if (key == u.key)
      return PriceRow{u.key, translated(u.item), u.unit, u.packs, u.price, "", translated(u.note)};
  if (auto pipe = pipe_row(key)) return pipe;
  return fitting_row(key);
}

const std::vector<std::string>& usual_keys() {
  static const std::vector<std::string> keys = [] {
    std::vector<std::string> all;
    for (const PipeSize& size : pipe_sizes()) all.push_back(pipe_key(size.name));
    for (const Usual& u : table()) all.emplace_back(u.key);
    return all;
  }();
  return keys;
}

}  // namespace underlawn
