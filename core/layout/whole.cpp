// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/whole.h"

#include "layout/in_steps.h"
#include "layout/join_more.h"
#include "layout/legality.h"
#include "layout/pipe_turns.h"
#include "layout/square_crossings.h"
#include "layout/supply_coil.h"
#include "pipe/pipe_size.h"

namespace underlawn {

namespace {

constexpr double kHeaderMayDiffer = 4;  // m: an entry of dear ground may fall to header or run

bool on_line(const Polyline& line, Point p) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(Segment{line[i - 1], line[i]}, p) < kLegalSlack) return true;
  return false;
}

std::vector<Point> heads_of(const Whole& w) {
  std::vector<Point> heads;
  for (const Segment& t : w.field) heads.push_back(t.a);
  for (const Polyline& t : w.locked) heads.push_back(t.front());
  return heads;
}

// Off the coils of locked and of field trenches, along their bends.
bool keeps_off_coils(const Polyline& line, const Whole& w, const Wishes& wishes) {
  const auto off = [&](const Polyline& t) { return conduit_keeps_off_bent(line, t, wishes); };
  if (!std::all_of(w.locked.begin(), w.locked.end(), off)) return false;
  const Arrangement placed{{}, w.field, w.bends};
  for (std::size_t i = 0; i < w.field.size(); ++i)
    if (!off(line_of(placed, i))) return false;
  return true;
}

// Of lines that were made square those that cost more than they did, fittings too, slant again: a crossing is
// made square by itself, without what else lies there. The cost as it is then.
void keep_cheaper(const Joiner& joiner, const Wishes& wishes, const Connection& slanting, Connection& c) {
  const auto fittings = [&](const Polyline& line) { return kFitting * tight_turns(wishes, line); };
  const auto choose = [&](Polyline& line, const Polyline& was) {
    if (line == was) return;
    const double more = joiner.cost(line) - joiner.cost(was);
    if (more + fittings(line) - fittings(was) > 0)
      line = was;
    else
      c.cost += more;
  };
  choose(c.run.line, slanting.run.line);
  c.run.length = c.run.line.size() > 1 ? length(c.run.line) : 0;
  for (std::size_t i = 0; i < c.header.legs.size(); ++i) choose(c.header.legs[i], slanting.header.legs[i]);
}

}  // namespace

void drop_illegal_lines(const Site& site, const Wishes& wishes, Whole& w) {
  const auto legal = [&](const Polyline& line, double free_start) {
    return conduit_is_legal(site, wishes, line, free_start) && keeps_off_coils(line, w, wishes);
  };
  Connection& c = w.connection;
  const double stub = c.run.line.size() > 1 ? distance(c.run.line[0], c.run.line[1]) : 0;
  if (c.run.line.size() > 1 && !legal(c.run.line, stub)) c.run = {};
  std::vector<Polyline> kept;
  const Point root = !c.run.line.empty()     ? c.run.line.back()
                     : c.header.legs.empty() ? heads_of(w).front()
                                             : c.header.legs.front().front();
  const auto reached = [&](Point p) {
    return distance(root, p) < 2 * kLegalSlack ||
           std::any_of(kept.begin(), kept.end(), [p](const Polyline& leg) { return on_line(leg, p); });
  };
  for (Polyline& leg : c.header.legs)
    if (reached(leg.front()) && legal(leg, 0)) kept.push_back(std::move(leg));
  const std::vector<Point> heads = heads_of(w);
  c.joined = static_cast<int>(std::count_if(heads.begin(), heads.end(), reached));
  c.header.legs = kept;
  c.header.length = 0;
  for (const Polyline& leg : c.header.legs) c.header.length += length(leg);
}

void square_up_crossings(const Site& site, const Wishes& wishes, Whole& w) {
  const std::vector<Point> heads = heads_of(w);
  const auto off_coils = [&](const Polyline& line) { return keeps_off_coils(line, w, wishes); };
  const auto passes_head = [&](const Polyline& leg) {
    return std::any_of(heads.begin(), heads.end(), [&](Point h) {
      return on_line(leg, h) && distance(h, leg.front()) > kLegalSlack &&
             distance(h, leg.back()) > kLegalSlack;
    });
  };
  Connection& c = w.connection;
  if (c.run.line.size() > 2) {
    const double stub = distance(c.run.line[0], c.run.line[1]);
    const Polyline rest(c.run.line.begin() + 1, c.run.line.end());
    const auto whole_run = [&](const Polyline& line) {
      Polyline run = {c.run.line.front()};
      run.insert(run.end(), line.begin(), line.end());
      return run;
    };
    const Polyline square = with_square_crossings(site, wishes, rest, [&](const Polyline& line) {
      return conduit_is_legal(site, wishes, whole_run(line), stub) && off_coils(line);
    });
    c.run.line = whole_run(square);
    c.run.length = length(c.run.line);
  }
  const auto branch_on = [&](const Polyline& leg) {
    return std::any_of(c.header.legs.begin(), c.header.legs.end(), [&](const Polyline& other) {
      return &other != &leg && on_line(leg, other.front()) &&
             distance(other.front(), leg.back()) > kLegalSlack &&
             distance(other.front(), leg.front()) > kLegalSlack;
    });
  };
  for (Polyline& leg : c.header.legs)
    if (!passes_head(leg) && !branch_on(leg))
      leg = with_square_crossings(site, wishes, leg, [&](const Polyline& line) {
        return conduit_is_legal(site, wishes, line, 0) && off_coils(line);
      });
}

int tight_turns(const Wishes& wishes, const Polyline& line) {
  const auto pipe = find_pipe(wishes.header_pipe);
  return pipe ? turns_too_tight(line, wishes.run_width, *pipe) : 0;
}

int tight_turns(const Wishes& wishes, const Connection& connection) {
  int sum = tight_turns(wishes, connection.run.line);
  for (const Polyline& leg : connection.header.legs) sum += tight_turns(wishes, leg);
  return sum;
}

Completer::Completer(const Keeping& k, const Coil& coil, const Conduits& conduits, std::stop_token stop)
    : keeping_(k), coil_(coil), conduits_(conduits), stop_(std::move(stop)) {}

Whole Completer::complete(const Arrangement& a) const {
  Joiner joiner = joiner_of(a);
  return complete(a, joiner, false);
}

// Where the run does not happen to hold the coil that is missing, the cheapest other joint on the header
// where it does.
Whole Completer::complete(const Arrangement& a, Joiner& joiner, bool shift) const {
  Whole w = joined_at(a, joiner, std::nullopt, shift, kAnyPrice);
  const bool one_missing = keeping_.wishes.coil_in_run && w.count() + 1 == keeping_.wishes.circuits;
  if (!one_missing || w.connection.run.line.empty() || !a.in_line) return w;
  // To no joint is the run longer than to this one and on along the header, round a bend or two.
  if (w.connection.cost + 2 * kBend < coil_.trench_length) return w;
  for (double share : {0.0, 1.0 / 3, 2.0 / 3, 1.0}) {
    if (stop_.stop_requested()) break;
    // The header costs much the same wherever the run meets it. Bends make a way cheaper once they are
    // shifted.
    const double at_most = w.connection.run_cost + fittings_cost(w) + kHeaderMayDiffer;
    Whole other = joined_at(a, joiner, share, shift, w.in_run && !shift ? at_most : kAnyPrice);
    if (other.in_run && (!w.in_run || in_steps(other.cost) < in_steps(w.cost))) w = std::move(other);
  }
  return w;
}

double Completer::fittings_cost(const Whole& w) const {
  return kFitting * tight_turns(keeping_.wishes, w.connection);
}

Whole Completer::joined_at(const Arrangement& a, Joiner& joiner, std::optional<double> share, bool shift,
                           double at_most) const {
  return joined_by(a, joiner, joiner.join(share, shift, at_most));
}

Whole Completer::complete_by_kept_run(const Arrangement& a, Joiner& joiner) const {
  Connection by = joiner.join_by(keeping_.wishes.kept_run);
  return by.run.line.empty() ? Whole{} : joined_by(a, joiner, std::move(by));
}

Whole Completer::joined_by(const Arrangement& a, const Joiner& joiner, Connection connection) const {
  Whole w;
  w.field = a.trenches;
  w.bends = a.bends;
  w.angle = a.bearing.angle;
  w.locked = keeping_.held.trenches;
  w.connection = std::move(connection);
  join_locked(w);
  const Connection slanting = w.connection;
  square_up_crossings(keeping_.site, keeping_.wishes, w);
  keep_cheaper(joiner, keeping_.wishes, slanting, w.connection);
  drop_illegal_lines(keeping_.site, keeping_.wishes, w);
  if (keeping_.wishes.coil_in_run && w.connection.run.line.size() > 1 &&
      w.count() < keeping_.wishes.circuits) {
    std::vector<Segment> lying = w.field;
    for (const Segment& leg : legs_of(w.locked)) lying.push_back(leg);
    w.in_run = coil_in_run(keeping_.site, keeping_.wishes, w.connection.run, w.connection.header, lying,
                           coil_.trench_length);
  }
  const double weight = keeping_.wishes.trench_width * keeping_.wishes.trench_depth /
                        std::max(1e-6, keeping_.wishes.run_width * keeping_.wishes.run_depth);
  w.digging = w.connection.cost + fittings_cost(w) + (a.bearing.drawn ? 0 : kOddBearing) +
              digging_for_slopes(keeping_, w.field);
  w.cost = w.digging + weight * coil_.trench_length * static_cast<double>(w.field.size());
  if (w.in_run) w.cost += std::max(0.0, weight - 1) * coil_.trench_length;
  return w;
}

void Completer::join_locked(Whole& w) const {
  if (w.locked.empty()) return;
  Held field;
  std::vector<Point> heads;
  for (const Segment& t : w.field) field.trenches.push_back({t.a, t.b});
  for (const Polyline& t : w.locked) heads.push_back(t.front());
  join_more(conduits_with_held(conduits_, field), w.field.front().a, heads, w.connection);
}

}  // namespace underlawn
