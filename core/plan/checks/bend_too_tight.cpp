// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "field/straight.h"
#include "pipe/pipe_size.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kAngleTolerance = 1e-4;      // rad
constexpr double kLeastPitchInDiameters = 4;  // of loops side by side, so that bedding gets between them
constexpr double kTightestCoil = 18;          // inside diameter of a coil per outside diameter of its pipe

Finding found(Severity severity, std::string title, double measured, double required) {
  Finding f = make_finding("bend_too_tight", "coil", severity, std::move(title));
  set_measure(f, measured, required);
  return f;
}

// Loops of coiled pipe lie in the curve the pipe was coiled in, so they may be tighter than pipe that is bent
// cold on site; that is worth a hint only. Tighter than pipe is ever coiled, it kinks. Bends of header and
// run are fittings.
std::vector<Finding> tight_loops(const Plan& plan, const Outcome& outcome) {
  const auto pipe = find_pipe(plan.wishes.pipe);
  const double loop = outcome.coil.loop_diameter;
  if (!pipe || outcome.coil.loops <= 0) return {};
  const double cold = 2 * pipe->least_bend_radius();
  const double coiled = (kTightestCoil + 1) * pipe->outside_diameter;
  if (!falls_short(loop, cold)) return {};
  Finding f;
  if (falls_short(loop, coiled)) {
    f = found(Severity::error, say("The loops kink {}", pipe->name), loop, coiled);
    f.advice = say("Use loops at least {} across, or a smaller pipe.",
                   print_quantity(Quantity::length, coiled, plan.units));
    f.source = say("coils of pipe at least 18 pipe diameters inside, EN 12201-2 (from memory)");
  } else {
    f = found(Severity::hint, say("The loops are tighter than {} may be bent cold", pipe->name), loop, cold);
    f.advice = say(
        "Use pipe delivered in coils and lay it in its own curve; tie the loops, force none, warm the coil "
        "in the cold.");
    f.source = say("cold bending without fittings: makers' tables by dimension ratio");
  }
  f.places = trench_places(outcome.layout);
  return {f};
}

// How sharply a trench may turn for what lies in it.
struct MostTurn {
  double turn = 0;    // rad
  const char* title;  // of bend and trench, marked
  std::string advice, source;
};

// Where a flat coil turns between two loops a pitch p apart, their inner sides come p cos(turn/2) -
// D sin(turn/2) near one another.
MostTurn of_flat_coil(const Coil& coil, const PipeSize& pipe) {
  const double least = kLeastPitchInDiameters * pipe.outside_diameter;
  const double far = std::hypot(coil.pitch, coil.loop_diameter);
  const double half = std::acos(std::min(1.0, least / far)) - std::atan2(coil.loop_diameter, coil.pitch);
  return {2 * half, mark("The loops lie on one another inside bend {} of trench {}"),
          say("Open the corner into several smaller bends a loop apart, leave loops out there, or make two "
              "trenches "
              "of it."),
          say("inner sides of the loops 4 pipe diameters apart: common practice, no source")};
}

// A loop that stands is flat: across a corner its middle lies (D/2) sin(turn/2) off the corner.
MostTurn of_upright_coil(const Coil& coil, const PipeSize& pipe, double width) {
  const double room = std::max(0.0, width - 2 * pipe.outside_diameter);
  const double half = std::asin(std::min(1.0, room / (coil.loop_diameter / 2)));
  return {2 * half, mark("Standing loops do not go round bend {} of trench {}"),
          say("Widen the trench there, open the corner into several smaller bends, or stop the coil and go "
              "on behind "
              "it."),
          say("a loop is flat and stands between the walls: common practice, no source")};
}

// The widest arc between the walls of a corner that lets the pipe move m to each side: 2 m/(1 - cos(turn/2)).
MostTurn of_straight_pipe(const Coil& coil, const PipeSize& pipe, double width) {
  const double sides = pipe_sides(coil.pattern) > 1 ? coil.side_distance : 0;
  const double room = std::max(0.0, width - sides - pipe.outside_diameter);
  const double half = std::acos(std::max(-1.0, 1 - room / pipe.least_bend_radius()));
  return {2 * half, mark("The pipe is bent too tight at bend {} of trench {}"),
          say("Round the corner off, widen the trench there, or use elbows."),
          say("cold bending without fittings: makers' tables by dimension ratio")};
}

MostTurn most_turn(const Trench& t, const PipeSize& pipe) {
  if (t.coil.pattern == CoilPattern::flat_coil) return of_flat_coil(t.coil, pipe);
  if (t.coil.pattern == CoilPattern::upright_coil) return of_upright_coil(t.coil, pipe, t.width);
  return of_straight_pipe(t.coil, pipe, t.width);
}

double signed_turn(const Polyline& line, std::size_t i) {
  const Point before = line[i] - line[i - 1], after = line[i + 1] - line[i];
  return std::atan2(cross(before, after), dot(before, after));
}

// Bends less than `together` apart are one: what they turn by from this one on.
double turn_from(const Polyline& line, std::size_t bend, double together) {
  double turn = 0, most = 0;
  for (std::size_t i = bend; i + 1 < line.size(); ++i) {
    if (i > bend && (together -= distance(line[i - 1], line[i])) < 0) break;
    turn += signed_turn(line, i);
    most = std::max(most, std::abs(turn));
  }
  return most;
}

void add_sharp_corners(const Plan& plan, const Trench& t, std::vector<Finding>& findings) {
  const auto pipe = find_pipe(plan.wishes.pipe);
  if (!pipe || !t.coil.laid() || t.bends.empty()) return;
  const MostTurn most = most_turn(t, *pipe);
  const Polyline line = axis(t);
  const double together = is_straight(t.coil.pattern) ? 2 * pipe->least_bend_radius() : t.coil.pitch;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const double turn = turn_from(line, i, together), allowed = std::max(0.0, most.turn);
    if (turn <= allowed + kAngleTolerance) continue;
    const std::string bend = std::to_string(i), places[] = {bend, std::to_string(t.number)};
    Finding f = make_finding("bend_too_tight", trench_part(t) + "/bend-" + bend, Severity::warning,
                             words::filled(translated(most.title), places, 2));
    set_measure(f, turn, allowed, Quantity::angle);
    f.advice = most.advice;
    f.source = most.source;
    f.places = {{line[i]}};
    findings.push_back(std::move(f));
  }
}

}  // namespace

std::vector<Finding> bend_too_tight(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings = tight_loops(plan, outcome);
  for (const Trench& t : outcome.layout.trenches) add_sharp_corners(plan, t, findings);
  return findings;
}

}  // namespace underlawn::checks
