// SPDX-License-Identifier: GPL-3.0-or-later
// How large the loop has to be, as a table or as JSON.

#include <charconv>

#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/size_json.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "plan/sizing/size_words.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

constexpr int kUsualDraws = 300;

using Row = std::vector<std::string>;

Row row_of(const std::string& name, const FieldSize& f, UnitSystem units) {
  const auto shown = [&](Quantity q, double v) { return print_quantity(q, v, units); };
  const bool ran = f.coldest < 1e8;
  return {name,
          std::to_string(f.circuits),
          shown(Quantity::length, f.coil_pipe),
          shown(Quantity::length, f.trench),
          ran ? shown(Quantity::temperature, f.coldest) : "-",
          ran ? shown(Quantity::temperature, f.warmest) : "-",
          print_quantity(Quantity::count, f.seasonal, units, Fineness::fine),
          shown(Quantity::volume, f.bank),
          f.placed ? say("yes") : say("no")};
}

void tell_sizes(const LoopSizing& s, UnitSystem units, std::ostream& out) {
  std::vector<Row> rows = {{"", say("circuits"), say("pipe"), say("trench"), say_as("water", "coldest"),
                            say_as("water", "warmest"), say("seasonal"), say_as("earth", "dug"),
                            say("lot takes it")}};
  if (s.drawn.circuits > 0) rows.push_back(row_of(say_as("a size", "as drawn"), s.drawn, units));
  if (s.needed) rows.push_back(row_of(say_as("a size", "needed"), *s.needed, units));
  if (s.given) rows.push_back(row_of(say("lot gives"), *s.given, units));
  for (const Alternative& a : s.alternatives)
    if (a.size) rows.push_back(row_of(alternative_name(a, units), *a.size, units));
  tell_table(rows, out);
}

void tell(const LoopSizing& s, const Plan& plan, const std::optional<Chance>& chance, std::ostream& out) {
  out << needed_words(s) << "\n\n";
  tell_sizes(s, plan.units, out);
  for (const Alternative& a : s.alternatives)
    if (a.refusal) out << alternative_name(a, plan.units) << ": " << a.refusal->message() << "\n";
  out << "\n" << least_coil_words(s, plan.units) << "\n";
  for (const std::string& line : classic_words(s, plan.units)) out << line << "\n";
  if (chance) out << chance_words(*chance, plan.units) << "\n";
}

std::optional<int> draws_in(const Arguments& arguments, const Console& console) {
  const std::string text = arguments.value("--draws").value_or(std::to_string(kUsualDraws));
  int draws = -1;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), draws);
  if (error == std::errc() && end == text.data() + text.size() && draws >= 0 && draws <= 100'000)
    return draws;
  console.complain("--draws", say("“{}” is no whole number from 0 to 100000.", text));
  return std::nullopt;
}

}  // namespace

Exit run_size(const Arguments& arguments, const Console& console) {
  const auto draws = draws_in(arguments, console);
  if (!draws) return Exit::usage;
  const std::string& path = arguments.places[0];
  const auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  const auto sizing = size_loop(*plan);
  if (!sizing) {
    console.complain(path, sizing.error().message());
    return Exit::errors_remain;
  }
  std::optional<Chance> chance;
  if (const Outcome outcome = solve(*plan); *draws > 0 && outcome.temperatures != nullptr)
    if (auto found = chance_of_holding(*plan, outcome, {*draws, 1, {}})) chance = *found;
  if (arguments.has("--json"))
    console.out << (spoken_here() == nullptr ? json_to_text(size_json(*sizing, chance)) : in_english([&] {
      return json_to_text(size_json(*size_loop(*plan), chance));
    }));
  else
    tell(*sizing, *plan, chance, console.out);
  return sizing->needed ? Exit::ok : Exit::errors_remain;
}

}  // namespace underlawn::cli
