// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/traverse.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

namespace underlawn {

namespace {

using std::numbers::pi;

constexpr int kMostChords = 720;  // of one curve

// By the deed's north: x is the departure, y the latitude.
Point along(double azimuth, double length) {
  return {length * std::sin(azimuth), length * std::cos(azimuth)};
}

double chord_length(const Course& c) {
  return c.curve ? c.curve->chord : c.length;
}

int chords_of(const Curve& c, double tolerance) {
  const double ratio = std::clamp(1 - tolerance / c.radius, -1.0, 1.0);
  const double most = 2 * std::acos(ratio);  // turn of a chord whose middle is off by the tolerance
  if (!(most > 0)) return kMostChords;
  return static_cast<int>(std::clamp(std::ceil(c.delta / most), 1.0, static_cast<double>(kMostChords)));
}

// The curve's points between `a` and `b`, which may lie a little off its chord: it turns by the same angle.
Polyline arc_between(const Curve& c, Point a, Point b, double tolerance) {
  Polyline line = {a};
  const int n = chords_of(c, tolerance);
  const Point chord = b - a, side = left_normal(chord);
  const double half = c.delta / 2,
               bulge = c.left ? -1 : 1;  // the arc lies right of its chord when it curves left
  for (int i = 1; i < n; ++i) {
    const double turn = -half + c.delta * i / n;
    const double x = (std::sin(turn) / std::sin(half) + 1) / 2;
    const double y = (std::cos(turn) - std::cos(half)) / (2 * std::sin(half));
    line.push_back(a + x * chord + (bulge * y) * side);
  }
  line.push_back(b);
  return line;
}

double segment_area(const Curve& c, double scale) {
  const double r = c.radius * scale;
  return r * r * (c.delta - std::sin(c.delta)) / 2;
}

// Signed: counter-clockwise is positive.
double enclosed(const std::vector<Leg>& legs, std::size_t ties, const std::vector<Point>& corners) {
  double twice = 0, segments = 0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    twice += cross(corners[i] - corners[0], corners[(i + 1) % corners.size()] - corners[0]);
  for (std::size_t i = ties; i < legs.size(); ++i) {
    if (!legs[i].course.curve) continue;
    const Curve& c = *legs[i].course.curve;
    const double scale = distance(corners[i - ties], corners[i - ties + 1]) / c.chord;
    segments += (c.left ? 1 : -1) * segment_area(c, scale);
  }
  return std::abs(twice / 2 + segments);
}

// From the deed's own north to the plan.
struct Turned {
  double radians;
  Point operator()(Point p) const { return rotated(p, radians); }
};

void add_legs(Traverse& t, const std::vector<Course>& courses) {
  Point at;
  for (const Course& c : courses) {
    Leg leg;
    leg.course = c;
    if (c.worked_out) {
      const Point home = t.begin - at;
      leg.course.length = norm(home);
      leg.course.azimuth = in_turn(std::atan2(home.x, home.y));
      t.worked_out = true;
    }
    const Point step = c.worked_out ? t.begin - at : along(c.azimuth, chord_length(c));
    leg.departure = step.x;
    leg.latitude = step.y;
    at = at + step;
    if (c.tie) {
      ++t.ties;
      t.begin = at;
    }
    t.legs.push_back(std::move(leg));
  }
  t.end = at;
}

// A deed that says it comes back does; so does one that misses by less than this share of its length.
constexpr double kComesBack = 0.02;

bool comes_back(const Traverse& t) {
  const std::size_t legs = t.legs.size() - t.ties;
  const bool curved =
      std::any_of(t.legs.begin(), t.legs.end(), [](const Leg& l) { return l.course.curve.has_value(); });
  if (legs < (curved ? 2u : 3u)) return false;
  return t.legs.back().course.to_beginning || t.misclosure <= kComesBack * t.run;
}

void close(Traverse& t) {
  for (std::size_t i = t.ties; i < t.legs.size(); ++i) {
    t.perimeter += t.legs[i].course.length;
    t.run += std::hypot(t.legs[i].latitude, t.legs[i].departure);
  }
  const Point off = t.end - t.begin;
  t.latitude = off.y;
  t.departure = off.x;
  t.misclosure = norm(off);
  t.closing_azimuth = t.misclosure > 0 ? in_turn(std::atan2(-off.x, -off.y)) : 0;
  t.comes_back = comes_back(t);
  if (t.comes_back && t.misclosure > kSamePlace) t.precision = t.run / t.misclosure;
}

void correct(Traverse& t) {
  if (!(t.run > 0)) return;
  for (std::size_t i = t.ties; i < t.legs.size(); ++i) {
    Leg& leg = t.legs[i];
    const double share = std::hypot(leg.latitude, leg.departure) / t.run;
    leg.latitude_correction = -t.latitude * share;
    leg.departure_correction = -t.departure * share;
  }
}

void place(Traverse& t, const Deed& deed, double north) {
  const Turned turned{north - pi / 2 - deed.turn};
  Point at;
  std::vector<Point> corners;
  for (std::size_t i = 0; i < t.legs.size(); ++i) {
    Leg& leg = t.legs[i];
    if (i == t.ties) corners.push_back(at);
    const Point to =
        at + Point{leg.departure + leg.departure_correction, leg.latitude + leg.latitude_correction};
    const Polyline line =
        leg.course.curve ? arc_between(*leg.course.curve, at, to, deed.chord_tolerance) : Polyline{at, to};
    for (Point p : line) leg.line.push_back(deed.start + turned(p));
    if (i >= t.ties) {
      corners.push_back(to);
      t.ring.insert(t.ring.end(), leg.line.begin(), leg.line.end() - 1);
    }
    at = to;
  }
  if (t.legs.size() > t.ties && !t.comes_back) t.ring.push_back(t.legs.back().line.back());
  t.area = corners.size() > 2 ? enclosed(t.legs, t.ties, corners) : 0;
  t.begin = deed.start + turned(t.begin);
  t.end = deed.start + turned(t.end);
}

}  // namespace

Traverse run_traverse(const std::vector<Course>& courses, const Deed& deed, double north) {
  Traverse t;
  add_legs(t, courses);
  close(t);
  if (deed.closure == ClosureChoice::compass_rule && t.comes_back) correct(t);
  place(t, deed, north);
  return t;
}

std::string quadrant_bearing(double azimuth, int decimals) {
  const double scale = std::pow(10, decimals), a = in_turn(azimuth);
  const bool south = a > pi / 2 && a<3 * pi / 2, west = a> pi;
  const double angle = south ? std::abs(pi - a) : west ? 2 * pi - a : a;
  const auto units = std::llround(angle * 180 / pi * 3600 * scale);
  const auto whole = static_cast<long long>(scale);
  const long long degrees = units / (3600 * whole), minutes = units / (60 * whole) % 60;
  const double seconds = static_cast<double>(units % (60 * whole)) / scale;
  char text[64];
  std::snprintf(text, sizeof text, "%c %02lld°%02lld'%0*.*f\" %c", south ? 'S' : 'N', degrees, minutes,
                decimals > 0 ? decimals + 3 : 2, decimals, seconds, west ? 'W' : 'E');
  return text;
}

}  // namespace underlawn
