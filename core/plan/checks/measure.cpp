// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/measure.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/say.h"
#include "base/wording.h"
#include "plane/strip.h"

namespace underlawn {

std::string trench_name(const Trench& t) {
  return say("Trench {}", std::to_string(t.number));
}
std::string trench_part(const Trench& t) {
  return "trench-" + std::to_string(t.number);
}
std::string feature_part(const Feature& f) {
  return "feature-" + std::to_string(f.id);
}
std::string edge_part(std::size_t edge) {
  return "edge-" + std::to_string(edge + 1);
}
std::string conduit_name(Conduit c) {
  return c == Conduit::header ? say("Header") : say("Supply run");
}
std::string conduit_part(Conduit c) {
  return c == Conduit::header ? "header" : "run";
}

std::string tie_part(const Tie& tie) {
  std::string part;
  for (char c : tie.key) {
    if (c == ',')
      part += '+';
    else if (c != ' ')
      part += c;
    else if (!part.empty() && part.back() != '+')
      part += '-';
  }
  return part;
}

std::string trenches_listed(const std::vector<std::string>& numbers) {
  if (numbers.size() > kMostListed) return say("{} trenches", numbers.size());
  return numbers.size() == 1 ? say("trench {}", numbers[0]) : say("trenches {}", joined(numbers));
}

std::string stakes_listed(const std::vector<std::string>& names) {
  if (names.size() > kMostListed) return say("{} stakes", names.size());
  return names.size() == 1 ? say("stake {}", names[0]) : say("stakes {}", joined(names));
}

Finding make_finding(const char* rule, const std::string& subject, Severity severity, std::string title) {
  Finding f;
  f.rule = rule;
  f.key = subject.empty() ? f.rule : f.rule + "/" + subject;
  f.severity = severity;
  f.title = std::move(title);
  return f;
}

void set_measure(Finding& f, double measured, double required, Quantity quantity) {
  f.measured = measured;
  f.required = required;
  f.quantity = quantity;
}

Ring outline(const Trench& t) {
  return floor_of(t);
}
Polyline axis(const Trench& t) {
  return middle_line(t);
}

Ring core_of(const Trench& t) {
  return strip_along(trimmed(axis(t), kCheckTolerance, kCheckTolerance), t.width - 2 * kCheckTolerance);
}

Polyline drawn(const Feature& f) {
  Polyline line = f.points;
  if (shape_of(f.kind) == FeatureShape::area && !line.empty()) line.push_back(line.front());
  return line;
}

Polyline lot_edge(const Site& site, std::size_t edge) {
  return {site.lot[edge].at, site.lot[(edge + 1) % site.lot.size()].at};
}

double area_to_feature(const Ring& area, const Feature& f) {
  switch (shape_of(f.kind)) {
    case FeatureShape::area:
      return area_distance(area, f.points);
    case FeatureShape::line:
      return line_area_distance(f.points, area);
    case FeatureShape::point:
      return distance(area, f.points.front());
  }
  return 0;
}

double line_to_feature(const Polyline& line, const Feature& f) {
  switch (shape_of(f.kind)) {
    case FeatureShape::area:
      return line_area_distance(line, f.points);
    case FeatureShape::line:
      return line_distance(line, f.points);
    case FeatureShape::point:
      break;
  }
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < line.size(); ++i)
    least = std::min(least, distance(Segment{line[i - 1], line[i]}, f.points.front()));
  return least;
}

std::vector<ConduitLine> conduit_lines(const Layout& layout) {
  std::vector<ConduitLine> lines;
  const auto add = [&](Conduit conduit, const Polyline& line) {
    Polyline kept;
    for (Point p : line)
      if (kept.empty() || distance(kept.back(), p) > kSamePlace) kept.push_back(p);
    if (kept.size() >= 2) lines.push_back({conduit, std::move(kept)});
  };
  add(Conduit::run, layout.run.line);
  for (const Polyline& leg : layout.header.legs) add(Conduit::header, leg);
  return lines;
}

std::vector<Polyline> trench_places(const Layout& layout) {
  std::vector<Polyline> places;
  for (const Trench& t : layout.trenches) places.push_back(axis(t));
  return places;
}

std::vector<Polyline> conduit_places(const Layout& layout) {
  std::vector<Polyline> places;
  for (ConduitLine& c : conduit_lines(layout)) places.push_back(std::move(c.line));
  return places;
}

namespace {

// Shares along a (0..1) at which it meets b; both ends of a parallel overlap.
std::vector<double> shares(Segment a, Segment b) {
  const Point u = a.b - a.a;
  const Point v = b.b - b.a;
  const double turn = cross(u, v);
  const double long_ = dot(u, u);
  std::vector<double> found;
  if (long_ == 0) return found;
  if (std::abs(turn) > 1e-12 * long_) {
    const double s = cross(b.a - a.a, v) / turn;
    const double t = cross(b.a - a.a, u) / turn;
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) found.push_back(s);
    return found;
  }
  for (Point p : {b.a, b.b}) {
    const double s = std::clamp(dot(p - a.a, u) / long_, 0.0, 1.0);
    if (distance(b, a.a + s * u) < kSamePlace) found.push_back(s);
  }
  return found;
}

}  // namespace

std::vector<Point> meetings(const Polyline& a, const Polyline& b) {
  std::vector<Point> found;
  for (std::size_t i = 1; i < a.size(); ++i)
    for (std::size_t j = 1; j < b.size(); ++j)
      for (double s : shares({a[i - 1], a[i]}, {b[j - 1], b[j]})) {
        const Point p = a[i - 1] + s * (a[i] - a[i - 1]);
        const bool known = std::any_of(found.begin(), found.end(),
                                       [p](Point q) { return distance(p, q) < kCheckTolerance; });
        if (!known) found.push_back(p);
      }
  return found;
}

double length_inside(const Polyline& line, const Ring& area) {
  double inside = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Segment leg{line[i - 1], line[i]};
    std::vector<double> cuts = {0, 1};
    for (std::size_t j = 0; j < area.size(); ++j)
      for (double s : shares(leg, {area[j], area[(j + 1) % area.size()]})) cuts.push_back(s);
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t k = 1; k < cuts.size(); ++k) {
      const Point middle = leg.a + 0.5 * (cuts[k - 1] + cuts[k]) * (leg.b - leg.a);
      double off_edge = std::numeric_limits<double>::infinity();
      for (std::size_t j = 0; j < area.size(); ++j)
        off_edge = std::min(off_edge, distance(Segment{area[j], area[(j + 1) % area.size()]}, middle));
      if (off_edge > kCheckTolerance && contains(area, middle))
        inside += (cuts[k] - cuts[k - 1]) * distance(leg.a, leg.b);
    }
  }
  return inside;
}

double conduit_inside(const Layout& layout, Conduit conduit, const Feature& area) {
  double inside = 0;
  for (const ConduitLine& c : conduit_lines(layout))
    if (c.conduit == conduit) inside += length_inside(c.line, area.points);
  return inside;
}

namespace {

bool alongside(const Segment& a, const Segment& b) {
  const Point u = unit(a.b - a.a);
  const Point v = unit(b.b - b.a);
  if (std::abs(dot(u, v)) < std::cos(std::numbers::pi / 6)) return false;
  const double far_end = dot(a.b - a.a, u);
  const double from = std::min(dot(b.a - a.a, u), dot(b.b - a.a, u));
  const double to = std::max(dot(b.a - a.a, u), dot(b.b - a.a, u));
  return std::min(far_end, to) - std::max(0.0, from) > kCheckTolerance;
}

}  // namespace

Gaps gaps_between(const Trench& a, const Trench& b) {
  Gaps gaps;
  const auto least = [](std::optional<double>& of, double now) { of = std::min(of.value_or(now), now); };
  for (const Segment& l : legs_of(axis(a)))
    for (const Segment& r : legs_of(axis(b)))
      if (alongside(l, r))
        least(gaps.beside, distance(l, r));
      else
        least(gaps.at_ends, area_distance(rectangle_along(l, a.width), rectangle_along(r, b.width)));
  return gaps;
}

std::vector<Segment> legs_of(const Polyline& line) {
  std::vector<Segment> legs;
  for (std::size_t i = 1; i < line.size(); ++i) legs.push_back({line[i - 1], line[i]});
  return legs;
}

}  // namespace underlawn
