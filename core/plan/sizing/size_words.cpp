// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/size_words.h"

#include <cmath>
#include <cstdio>

#include "base/say.h"

namespace underlawn {

namespace {

std::string circuits(int n) {
  return n == 1 ? say("{} circuit", n) : say("{} circuits", n);
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

std::string month_name(int month) {
  static const char* kNames[] = {mark("January"),   mark("February"), mark("March"),    mark("April"),
                                 mark("May"),       mark("June"),     mark("July"),     mark("August"),
                                 mark("September"), mark("October"),  mark("November"), mark("December")};
  return translated(kNames[month]);
}

std::string classic_line(bool heating, const ClassicCase& c, double length, double pipe, UnitSystem units) {
  const auto shown = [&](Quantity q, double v) { return print_quantity(q, v, units); };
  const std::string parts[] = {whole_length(length, units),
                               two_digits(length / pipe),
                               whole_length(pipe, units),
                               percent(c.run_fraction),
                               month_name(c.month),
                               shown(Quantity::temperature, c.ground),
                               shown(Quantity::temperature, c.limit)};
  const char* line =
      heating ? mark(
                    "Classic equation, heating: {} of pipe, {} of the {} in the ground (unit runs {} of "
                    "{}, ground {}, water {}).")
              : mark(
                    "Classic equation, cooling: {} of pipe, {} of the {} in the ground (unit runs {} of "
                    "{}, ground {}, water {}).");
  return words::filled(translated(line), parts, std::size(parts));
}

}  // namespace

std::string needed_words(const LoopSizing& s) {
  if (!s.needed) return s.refusal ? s.refusal->message() : "";
  const std::string need = circuits(s.needed->circuits);
  const std::string words = s.drawn.circuits > 0
                                ? say("{} of this coil needed, {} drawn.", need, s.drawn.circuits)
                                : say("{} of this coil needed, none drawn.", need);
  if (s.needed->placed) return words;
  return s.given ? say("{} The lot gives {}; the need is that of open ground.", words, s.given->circuits)
                 : say("{} The lot gives none; the need is that of open ground.", words);
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
  return a.kind == Alternative::Kind::deeper ? say("{} deeper", amount) : say("{} wider apart", amount);
}

std::vector<std::string> classic_words(const LoopSizing& s, UnitSystem units) {
  std::vector<std::string> lines;
  if (s.classic.heating)
    lines.push_back(classic_line(true, *s.classic.heating, s.classic.heating_length, s.classic_pipe, units));
  if (s.classic.cooling)
    lines.push_back(classic_line(false, *s.classic.cooling, s.classic.cooling_length, s.classic_pipe, units));
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
  const std::string words =
      say("The loop as drawn holds both limits in {} of {} draws of soil and load (95 % interval {} to {}).",
          percent(c.share), std::to_string(c.draws), percent(c.low), percent(c.high));
  if (!(c.coldest.middle < 1e8)) return words;
  return say("{} Coldest {}, {}, {}; warmest {}, {}, {} (5, 50, 95 % of the draws).", words,
             shown(c.coldest.low), shown(c.coldest.middle), shown(c.coldest.high), shown(c.warmest.low),
             shown(c.warmest.middle), shown(c.warmest.high));
}

}  // namespace underlawn
