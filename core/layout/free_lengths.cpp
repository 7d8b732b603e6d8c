// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/free_lengths.h"

#include <cmath>

#include "layout/given.h"
#include "layout/legality.h"

namespace underlawn {

namespace {

constexpr int kFewer = 2;            // than wanted, whose longest lengths are sought
constexpr double kLengthStep = 0.1;  // m
constexpr double kStride = 0.2;      // m: no gap shorter than this is looked for
constexpr double kExact = 1e-3;      // m
constexpr double kHair = 4e-3;       // m to spare: a place that only the slack of the proof allows is none

// Asks of a trench whether it may lie so: by the ground, the other trenches, and header and run.
class Room {
 public:
  Room(const Keeping& keeping, const Whole& w, std::size_t which)
      : site_(keeping.site), wishes_(keeping.wishes), others_(others_of(w, which)) {
    conduits_ = w.connection.header.legs;
    if (w.connection.run.line.size() > 1) conduits_.push_back(w.connection.run.line);
  }
  bool free(const Segment& t) const {
    const auto apart = [&](const Segment& other) { return pair_is_legal(other, t, wishes_); };
    const auto off = [&](const Polyline& line) { return conduit_keeps_off(line, t, wishes_); };
    const Segment spared{t.a, t.b + kHair * unit(t.b - t.a)};
    return std::all_of(others_.begin(), others_.end(), apart) &&
           std::all_of(conduits_.begin(), conduits_.end(), off) &&
           trench_is_legal(site_, spared, wishes_.trench_width + 2 * kHair);
  }

 private:
  static std::vector<Segment> others_of(const Whole& w, std::size_t but) {
    std::vector<Segment> all = legs_of(w.locked);
    for (std::size_t i = 0; i < w.field.size(); ++i)
      if (i != but) all.push_back(w.field[i]);
    if (w.in_run) all.push_back(*w.in_run);
    return all;
  }

  const Site& site_;
  const Wishes& wishes_;
  std::vector<Segment> others_;
  std::vector<Polyline> conduits_;
};

double drawn_out(const Room& room, const Segment& t, double most) {
  const Point u = unit(t.b - t.a);
  const auto free = [&](double length) { return room.free({t.a, t.a + length * u}); };
  double holds = distance(t.a, t.b);
  while (holds < most && free(std::min(most, holds + kStride))) holds = std::min(most, holds + kStride);
  if (holds >= most) return most;
  double fails = std::min(most, holds + kStride);
  while (fails - holds > kExact) {
    const double middle = (holds + fails) / 2;
    (free(middle) ? holds : fails) = middle;
  }
  return holds;
}

}  // namespace

std::vector<double> lengths_to_seek(const Keeping& keeping, const Coil& coil, int wanted,
                                    const std::stop_token& stop) {
  const auto fit = [&](double length) {
    Coil c = coil;
    c.trench_length = length;
    return FieldSearch(keeping, c, wanted, false).most(stop);
  };
  const double least = keeping.wishes.least_length, most = keeping.wishes.most_length;
  std::vector<double> all = {least};
  for (int count = wanted; count >= std::max(1, wanted - kFewer) && !stop.stop_requested(); --count) {
    double holds = all.back(), fails = most;
    if (fit(holds) < count) continue;
    if (fit(most) >= count) holds = most;
    while (fails - holds > kLengthStep && !stop.stop_requested()) {
      const double middle = (holds + fails) / 2;
      (fit(middle) >= count ? holds : fails) = middle;
    }
    if (holds > all.back() + kLengthStep) all.push_back(holds);
  }
  std::reverse(all.begin(), all.end());
  return all;
}

bool reaches(const Connection& c, Point head) {
  const auto passes = [head](const Polyline& line) {
    for (std::size_t i = 1; i < line.size(); ++i)
      if (distance(Segment{line[i - 1], line[i]}, head) < 2 * kLegalSlack) return true;
    return false;
  };
  return passes(c.run.line) || std::any_of(c.header.legs.begin(), c.header.legs.end(), passes);
}

Whole joined_alone(const Keeping& keeping, const Completer& completer, Arrangement a) {
  drop_illegal(keeping, a);
  return a.trenches.empty() ? Whole{} : joined_alone(completer, completer.complete(a));
}

Whole joined_alone(const Completer& completer, Whole w) {
  if (w.unjoined() == 0 || w.connection.header.legs.empty()) return w;
  Arrangement a;
  a.bearing.angle = w.angle;
  for (const Segment& t : w.field)
    if (reaches(w.connection, t.a)) a.trenches.push_back(t);
  return a.trenches.empty() ? w : completer.complete(a);
}

void draw_out(const Keeping& keeping, Whole& w) {
  const double most = keeping.wishes.most_length;
  for (std::size_t i = 0; i < w.field.size(); ++i) {
    Segment& t = w.field[i];
    if (distance(t.a, t.b) >= most) continue;
    t.b = t.a + drawn_out(Room(keeping, w, i), t, most) * unit(t.b - t.a);
  }
}

double metres_of(const std::vector<Segment>& trenches) {
  double sum = 0;
  for (const Segment& t : trenches) sum += distance(t.a, t.b);
  return sum;
}

double metres_of(const Whole& w) {
  return metres_of(w.field);
}

bool more_metres(const Whole& l, const Whole& r) {
  if (l.field.empty() != r.field.empty()) return r.field.empty();
  const bool l_run = !l.connection.run.line.empty(), r_run = !r.connection.run.line.empty();
  if (l_run != r_run) return l_run;
  if (l.unjoined() != r.unjoined()) return l.unjoined() < r.unjoined();
  const double more = metres_of(l) - metres_of(r);
  return std::abs(more) > kExact ? more > 0 : l.measure < r.measure;
}

void fit_coils(const Wishes& wishes, const Coil& usual, std::vector<Trench>& trenches) {
  for (Trench& t : trenches) {
    if (t.role != TrenchRole::field || t.locked) continue;
    if (std::abs(distance(t.head, t.end) - usual.trench_length) < kExact) continue;
    Wishes one = wishes;
    one.given = {{t.head, t.end}};
    if (const auto made = given_trenches(one, usual)) t.coil = made->front().coil;
  }
}

}  // namespace underlawn
