// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/size_words.h"

#include <cmath>
#include <cstdio>

#include "base/say.h"

namespace underlawn {

namespace {

std::string circuits(int n) {
  return std::to_string(n) + (n == 1 ? say(" circuit") : say(" circuits"));
}

std::string percent(double share) {
  return std::to_string(std::lround(100 * share)) + " %";
}

// A length as long as a loop, to whole feet or metres.
std::string whole_length(double length, UnitSystem units) {
  const double unit = units == UnitSystem::us ? 0.3048 : 1;
  return print_quantity(Quantity::length, std::round(length / unit) * unit, units);
}

std::string two_digits(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.2f", value);
  return text;
}

const char* month_name(int month) {
  static const char* kNames[] = {mark("January"),   mark("February"), mark("March"),    mark("April"),
                                 mark("May"),       mark("June"),     mark("July"),     mark("August"),
                                 mark("September"), mark("October"),  mark("November"), mark("December")};
  return kNames[month];
}

std::string classic_line(const char* season, const ClassicCase& c, double length, double pipe,
                         UnitSystem units) {
  const auto shown = [&](Quantity q, double v) { return print_quantity(q, v, units); };
  return say(
      "Classic equation, {}: {} of pipe, {} of the {} in the ground (unit runs {} of {}, ground {}, water "
      "{}).",
      season, whole_length(length, units), two_digits(length / pipe), whole_length(pipe, units),
      percent(c.run_fraction), month_name(c.month), shown(Quantity::temperature, c.ground),
      shown(Quantity::temperature, c.limit));
}

}  // namespace

std::string needed_words(const LoopSizing& s) {
  if (!s.needed) return s.refusal ? s.refusal->message() : "";
  std::string words = say("{} needed", circuits(s.needed->circuits));
  words += s.drawn.circuits > 0 ? say(", {} drawn.", std::to_string(s.drawn.circuits)) : say(", none drawn.");
  if (!s.needed->placed)
    words += say(" The lot gives {}; the need is that of open ground.",
                 (s.given ? std::to_string(s.given->circuits) : std::string("none")));
  return words;
}

std::string least_coil_words(const LoopSizing& s, UnitSystem units) {
  if (s.least_coil)
    return say("In the trenches as drawn, {} a coil is about the least that holds both limits.",
               whole_length(*s.least_coil, units));
  return s.least_coil_refusal ? s.least_coil_refusal->message() : "";
}

std::string alternative_name(const Alternative& a, UnitSystem units) {
  const std::string amount = print_quantity(Quantity::length, a.amount, units);
  if (a.kind == Alternative::Kind::coil_length) return say("{} a trench", amount);
  return amount + (a.kind == Alternative::Kind::deeper ? say(" deeper") : say(" wider apart"));
}

std::vector<std::string> classic_words(const LoopSizing& s, UnitSystem units) {
  std::vector<std::string> lines;
  if (s.classic.heating)
    lines.push_back(
        classic_line("heating", *s.classic.heating, s.classic.heating_length, s.classic_pipe, units));
  if (s.classic.cooling)
    lines.push_back(
        classic_line("cooling", *s.classic.cooling, s.classic.cooling_length, s.classic_pipe, units));
  if (!lines.empty())
    lines.push_back(say(
        "It differs because it knows one month of steady running, the coldest or warmest ground of the year "
        "and the mean of the pipe; the hours know how long a cold spell lasts, when in the year it comes, "
        "and "
        "what earlier years have left in the ground."));
  return lines;
}

std::string chance_words(const Chance& c, UnitSystem units) {
  const auto shown = [&](double t) { return print_quantity(Quantity::temperature, t, units); };
  std::string words =
      say("The loop as drawn holds both limits in {} of {} draws of soil and load (95 % interval {} to {}).",
          percent(c.share), std::to_string(c.draws), percent(c.low), percent(c.high));
  if (c.coldest.middle < 1e8)
    words += say(" Coldest {}, {}, {}; warmest {}, {}, {} (5, 50, 95 % of the draws).", shown(c.coldest.low),
                 shown(c.coldest.middle), shown(c.coldest.high), shown(c.warmest.low),
                 shown(c.warmest.middle), shown(c.warmest.high));
  return words;
}

}  // namespace underlawn
