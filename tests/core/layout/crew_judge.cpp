// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/layout/crew_judge.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>

namespace underlawn::judge {

namespace {

constexpr double kOn = 3e-3;  // m: what is drawn to meet meets within a millimetre or two
constexpr double kAslant = 15 * std::numbers::pi / 180;

double apart(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

// Share of the way from a to b that is nearest to p.
double share_at(Point a, Point b, Point p) {
  const double dx = b.x - a.x, dy = b.y - a.y, long2 = dx * dx + dy * dy;
  return long2 > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / long2, 0.0, 1.0) : 0;
}

double off(Point a, Point b, Point p) {
  const double t = share_at(a, b, p);
  return apart(p, {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
}

double spanning_tree(const std::vector<Point>& at) {
  if (at.empty()) return 0;
  std::vector<double> away(at.size(), 1e9);
  std::vector<bool> in(at.size());
  away[0] = 0;
  double sum = 0;
  for (std::size_t n = 0; n < at.size(); ++n) {
    std::size_t next = at.size();
    for (std::size_t i = 0; i < at.size(); ++i)
      if (!in[i] && (next == at.size() || away[i] < away[next])) next = i;
    in[next] = true;
    sum += away[next];
    for (std::size_t i = 0; i < at.size(); ++i) away[i] = std::min(away[i], apart(at[i], at[next]));
  }
  return sum;
}

Point ahead(const Trench& t) {
  const double l = apart(t.head, t.end);
  return {(t.end.x - t.head.x) / l, (t.end.y - t.head.y) / l};
}

// Run's end, heads and corners as nodes of a plain graph.
class Ways {
 public:
  explicit Ways(const Layout& l) {
    std::vector<Point> marks = {l.run.line.back()};
    for (const Trench& t : l.trenches) marks.push_back(t.head);
    for (const Polyline& leg : l.header.legs) marks.insert(marks.end(), leg.begin(), leg.end());
    for (const Polyline& leg : l.header.legs) add(leg, marks);
    add(l.run.line, marks);
    root_ = node(l.run.line.back());
    search();
  }

  // From the run's end; empty where no line leads there.
  std::vector<std::size_t> to(Point p) const {
    for (std::size_t n = 0; n < at_.size(); ++n) {
      if (apart(at_[n], p) > kOn || far_[n] > 1e8) continue;
      std::vector<std::size_t> way = {n};
      while (way.back() != root_) way.push_back(before_[way.back()]);
      return way;
    }
    return {};
  }
  double length(std::size_t a, std::size_t b) const { return apart(at_[a], at_[b]); }
  Point place(std::size_t node) const { return at_[node]; }

 private:
  std::size_t node(Point p) {
    for (std::size_t n = 0; n < at_.size(); ++n)
      if (apart(at_[n], p) < kOn) return n;
    at_.push_back(p);
    on_.emplace_back();
    return at_.size() - 1;
  }

  void add(const Polyline& line, const std::vector<Point>& marks) {
    for (std::size_t i = 1; i < line.size(); ++i) {
      std::map<double, std::size_t> along = {{0, node(line[i - 1])}, {1, node(line[i])}};
      for (Point m : marks)
        if (off(line[i - 1], line[i], m) < kOn) along.emplace(share_at(line[i - 1], line[i], m), node(m));
      for (auto a = along.begin(), b = std::next(a); b != along.end(); ++a, ++b)
        if (a->second != b->second) {
          on_[a->second].push_back(b->second);
          on_[b->second].push_back(a->second);
        }
    }
  }

  void search() {
    far_.assign(at_.size(), 1e9);
    before_.assign(at_.size(), root_);
    std::vector<bool> done(at_.size());
    far_[root_] = 0;
    for (std::size_t round = 0; round < at_.size(); ++round) {
      std::size_t next = at_.size();
      for (std::size_t n = 0; n < at_.size(); ++n)
        if (!done[n] && (next == at_.size() || far_[n] < far_[next])) next = n;
      done[next] = true;
      for (std::size_t n : on_[next])
        if (far_[next] + length(next, n) < far_[n]) {
          far_[n] = far_[next] + length(next, n);
          before_[n] = next;
        }
    }
  }

  std::vector<Point> at_;
  std::vector<std::vector<std::size_t>> on_;
  std::vector<double> far_;
  std::vector<std::size_t> before_;
  std::size_t root_ = 0;
};

double off_line(const std::vector<Trench>& group) {
  const Point u = ahead(group.front());
  double most = 0;
  for (const double way : {1.0, -1.0}) {
    double low = 1e9, high = -1e9;
    for (const Trench& t : group) {
      if (way * (ahead(t).x * u.x + ahead(t).y * u.y) <= 0) continue;
      low = std::min(low, t.head.x * u.x + t.head.y * u.y);
      high = std::max(high, t.head.x * u.x + t.head.y * u.y);
    }
    most = std::max(most, high - low);
  }
  return most;
}

// The place is what of the lines some of the group's circuits use and not all: from the first of its joints
// on.
HeaderPlace place_of(const std::vector<Trench>& group, const Ways& ways) {
  HeaderPlace place;
  place.circuits = static_cast<int>(group.size());
  place.off_line = off_line(group);
  const Point u = ahead(group.front());
  std::vector<Point> heads;
  std::map<std::pair<std::size_t, std::size_t>, int> carries;
  for (const Trench& t : group) {
    heads.push_back(t.head);
    const auto way = ways.to(t.head);
    place.unjoined += way.empty();
    for (std::size_t i = 1; i < way.size(); ++i) ++carries[{way[i - 1], way[i]}];
  }
  for (const auto& [edge, circuits] : carries) {
    if (circuits == place.circuits) continue;
    const Point a = ways.place(edge.first), b = ways.place(edge.second);
    const double l = apart(a, b);
    place.trench += l;
    if (std::abs((b.x - a.x) * u.x + (b.y - a.y) * u.y) > l * std::sin(kAslant)) place.aslant += l;
  }
  place.spanning = spanning_tree(heads);
  return place;
}

}  // namespace

std::vector<HeaderPlace> header_places(const Layout& layout) {
  std::vector<Trench> field;
  for (const Trench& t : layout.trenches)
    if (t.role == TrenchRole::field && !t.locked) field.push_back(t);
  std::vector<int> sizes = layout.groups;
  if (sizes.empty()) sizes = {static_cast<int>(field.size())};
  std::vector<HeaderPlace> places;
  if (layout.run.line.size() < 2) return places;
  const Ways ways(layout);
  auto from = field.begin();
  for (int size : sizes) {
    if (size <= 0 || field.end() - from < size) break;
    places.push_back(place_of({from, from + size}, ways));
    from += size;
  }
  return places;
}

std::vector<CircuitPipe> circuit_pipes(const Layout& layout) {
  std::vector<CircuitPipe> pipes;
  if (layout.run.line.size() < 2) return pipes;
  const Ways ways(layout);
  std::map<std::pair<std::size_t, std::size_t>, int> carries;
  for (const Trench& t : layout.trenches) {
    const auto way = ways.to(t.head);
    for (std::size_t i = 1; i < way.size(); ++i) ++carries[{way[i - 1], way[i]}];
  }
  for (const Trench& t : layout.trenches) {
    const auto way = ways.to(t.head);
    if (way.empty()) continue;
    CircuitPipe p{t.number, t.coil.coil_length, t.coil.coil_length, t.coil.coil_length};
    for (std::size_t i = 1; i < way.size(); ++i) {
      const double length = 2 * ways.length(way[i - 1], way[i]);
      p.whole += length;
      if (carries[{way[i - 1], way[i]}] == 1) p.own += length;
    }
    pipes.push_back(p);
  }
  return pipes;
}

double spread(const std::vector<CircuitPipe>& pipes, double CircuitPipe::*length) {
  double low = 1e9, high = 0, sum = 0;
  for (const CircuitPipe& p : pipes) {
    low = std::min(low, p.*length);
    high = std::max(high, p.*length);
    sum += p.*length;
  }
  return pipes.empty() ? 0 : (high - low) / (sum / static_cast<double>(pipes.size()));
}

// The arc's middle lies on the line that halves the corner; so does the inner corner of what is left of the
// trench for the pipe's middle.
int tight_bends(const Polyline& line, double width, double diameter, double radius) {
  int tight = 0;
  double used = 0;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const double a = std::atan2(line[i].y - line[i - 1].y, line[i].x - line[i - 1].x);
    const double b = std::atan2(line[i + 1].y - line[i].y, line[i + 1].x - line[i].x);
    const double turn = std::abs(std::remainder(b - a, 2 * std::numbers::pi));
    const double room = (width - diameter) / 2;
    // From the trench's own corner outward along the halving line: outer walls meet at +, inner at -.
    const double outer = room / std::cos(turn / 2),
                 middle_of_arc = outer - radius * (1 / std::cos(turn / 2) - 1);
    const double leg = radius * std::tan(turn / 2);
    const bool fits = turn < 3.1 && middle_of_arc >= -outer - 1e-9;
    const bool has_leg =
        used + leg <= apart(line[i - 1], line[i]) + 1e-9 && leg <= apart(line[i], line[i + 1]) + 1e-9;
    tight += !(fits && has_leg);
    used = leg;
  }
  return tight;
}

bool in_ring(const Ring& ring, Point p) {
  bool in = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    if ((ring[i].y > p.y) != (ring[j].y > p.y) &&
        p.x < ring[i].x + (p.y - ring[i].y) / (ring[j].y - ring[i].y) * (ring[j].x - ring[i].x))
      in = !in;
  return in;
}

double to_ring(const Ring& ring, Point p) {
  double least = 1e9;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    least = std::min(least, off(ring[j], ring[i], p));
  return least;
}

}  // namespace underlawn::judge
