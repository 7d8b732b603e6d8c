// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/layout/judge.h"

#include <algorithm>
#include <cmath>

#include "site/clearances.h"

namespace underlawn::judge {

namespace {

constexpr double kSlack = 1.5e-3;  // m: a millimetre is agreed, half of one more for the judge's own rounding

using Line = std::vector<Point>;

double turn(Point a, Point b, Point c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

double point_line(Point p, Point a, Point b) {
  const double dx = b.x - a.x, dy = b.y - a.y, long2 = dx * dx + dy * dy;
  double t = long2 > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / long2 : 0;
  t = std::min(1.0, std::max(0.0, t));
  return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

bool boxes_meet(Point a, Point b, Point c, Point d) {
  return std::max(a.x, b.x) >= std::min(c.x, d.x) && std::max(c.x, d.x) >= std::min(a.x, b.x) &&
         std::max(a.y, b.y) >= std::min(c.y, d.y) && std::max(c.y, d.y) >= std::min(a.y, b.y);
}

// The boxes first: the signs of segments that lie end to end on one line are noise.
bool cross(Point a, Point b, Point c, Point d) {
  return boxes_meet(a, b, c, d) && (turn(a, b, c) > 0) != (turn(a, b, d) > 0) &&
         (turn(c, d, a) > 0) != (turn(c, d, b) > 0);
}

double apart(const Line& l, const Line& r) {
  double least = 1e9;
  if (l.size() == 1 && r.size() == 1) return std::hypot(l[0].x - r[0].x, l[0].y - r[0].y);
  if (l.size() == 1) return apart(r, l);
  for (std::size_t i = 1; i < l.size(); ++i) {
    for (Point p : r) least = std::min(least, point_line(p, l[i - 1], l[i]));
    for (std::size_t j = 1; j < r.size(); ++j) {
      if (cross(l[i - 1], l[i], r[j - 1], r[j])) return 0;
      least = std::min({least, point_line(l[i - 1], r[j - 1], r[j]), point_line(l[i], r[j - 1], r[j])});
    }
  }
  return least;
}

bool inside(const Line& ring, Point p) {
  int winding = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i], b = ring[(i + 1) % ring.size()];
    if (a.y <= p.y && b.y > p.y && turn(a, b, p) > 0) ++winding;
    if (a.y > p.y && b.y <= p.y && turn(a, b, p) < 0) --winding;
  }
  return winding != 0;
}

Line closed(Line ring) {
  ring.push_back(ring.front());
  return ring;
}

// A rectangle along from-to, drawn in by `in` on every side.
Line floor_of(Point from, Point to, double width, double in) {
  const double long_ = std::hypot(to.x - from.x, to.y - from.y);
  const Point u = {(to.x - from.x) / long_, (to.y - from.y) / long_}, n = {-u.y, u.x};
  const double h = std::max(1e-4, width / 2 - in);
  const Point a = {from.x + in * u.x, from.y + in * u.y}, b = {to.x - in * u.x, to.y - in * u.y};
  return {{a.x - h * n.x, a.y - h * n.y},
          {b.x - h * n.x, b.y - h * n.y},
          {b.x + h * n.x, b.y + h * n.y},
          {a.x + h * n.x, a.y + h * n.y}};
}

Line outline(const Feature& f) {
  return shape_of(f.kind) == FeatureShape::area ? closed(f.points) : f.points;
}

bool may_be_crossed(const Feature& f) {
  return f.may_cross &&
         (f.kind == FeatureKind::utility || f.kind == FeatureKind::drive || f.kind == FeatureKind::easement);
}

class Judge {
 public:
  Judge(const Site& s, const Wishes& w, const Layout& l, std::optional<double> length)
      : site_(s), wishes_(w), layout_(l), length_(length) {
    for (const LotCorner& c : s.lot) lot_.push_back(c.at);
  }

  std::vector<std::string> run() {
    counts();
    for (const Trench& t : layout_.trenches) trench(t);
    for (std::size_t i = 0; i < layout_.trenches.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) pair(layout_.trenches[i], layout_.trenches[j]);
    if (!layout_.run.line.empty()) conduit(layout_.run.line, true);
    for (const Line& leg : layout_.header.legs) conduit(leg, false);
    joints();
    return std::move(faults_);
  }

 private:
  void fault(const std::string& what, double measured) {
    faults_.push_back(what + ": " + std::to_string(measured));
  }
  static std::string name(const Trench& t) { return "trench " + std::to_string(t.number); }

  void counts() {
    const auto placed = static_cast<int>(layout_.trenches.size());
    if (placed > wishes_.circuits) fault("more placed than wanted", placed);
    if (layout_.fits < placed) fault("fewer said to fit than placed", layout_.fits);
    for (int i = 0; i < placed; ++i)
      if (layout_.trenches[static_cast<std::size_t>(i)].number != i + 1) fault("number out of order", i + 1);
  }

  void trench(const Trench& t) {
    const double long_ = std::hypot(t.end.x - t.head.x, t.end.y - t.head.y);
    const double least = length_.value_or(wishes_.least_length), most = length_.value_or(wishes_.most_length);
    if (long_ < least - 1e-6 || long_ > most + 1e-6) fault(name(t) + " has another length", long_);
    const Line floor = floor_of(t.head, t.end, t.width, 0), core = floor_of(t.head, t.end, t.width, kSlack);
    for (std::size_t i = 0; i < lot_.size(); ++i) {
      const Line edge = {lot_[i], lot_[(i + 1) % lot_.size()]};
      if (inside(core, edge[0]) || apart(closed(core), edge) <= 0) fault(name(t) + " over the lot line", 0);
      const double d = apart(closed(floor), edge);
      if (d < site_.lot[i].setback - kSlack)
        fault(name(t) + " in the setback of edge " + std::to_string(i), d);
    }
    for (Point p : core)
      if (!inside(lot_, p)) fault(name(t) + " outside the lot", p.x);
    for (const Feature& f : site_.features) {
      const bool area = shape_of(f.kind) == FeatureShape::area;
      if (inside(core, f.points[0]) || (area && inside(f.points, core[0])) ||
          apart(closed(core), outline(f)) <= 0)
        fault(name(t) + " on feature " + std::to_string(f.id), 0);
      const double d = apart(closed(floor), outline(f));
      if (d < trench_clearance(site_, f) - kSlack)
        fault(name(t) + " too near feature " + std::to_string(f.id), d - trench_clearance(site_, f));
    }
  }

  static Point ahead(const Trench& t) {
    const double long_ = std::hypot(t.end.x - t.head.x, t.end.y - t.head.y);
    return {(t.end.x - t.head.x) / long_, (t.end.y - t.head.y) / long_};
  }

  void pair(const Trench& a, const Trench& b) {
    const Point u = ahead(a), v = ahead(b);
    const double long_ = std::hypot(a.end.x - a.head.x, a.end.y - a.head.y);
    const auto along = [&](Point p) { return (p.x - a.head.x) * u.x + (p.y - a.head.y) * u.y; };
    const double low = std::min(along(b.head), along(b.end)), high = std::max(along(b.head), along(b.end));
    const bool alike = std::abs(u.x * v.x + u.y * v.y) > std::cos(3.141592653589793 / 6);
    if (alike && std::min(high, long_) - std::max(low, 0.0) > kSlack) {
      const double d = apart({a.head, a.end}, {b.head, b.end});
      if (d < wishes_.spacing - kSlack) fault(name(a) + " and " + name(b) + " closer than the spacing", d);
      return;
    }
    const Line fa = floor_of(a.head, a.end, a.width, 0), fb = floor_of(b.head, b.end, b.width, 0);
    const double d = inside(fa, fb[0]) || inside(fb, fa[0]) ? 0 : apart(closed(fa), closed(fb));
    if (d < wishes_.end_gap - kSlack) fault(name(a) + " and " + name(b) + " closer than the end gap", d);
  }

  void conduit(const Line& line, bool is_run) {
    const std::string what = is_run ? "run" : "header";
    const double half = wishes_.run_width / 2;
    for (std::size_t i = 1; i < line.size(); ++i)
      for (Point p : {line[i], Point{(line[i - 1].x + line[i].x) / 2, (line[i - 1].y + line[i].y) / 2}})
        if (!inside(lot_, p)) fault(what + " outside the lot", p.x);
    for (std::size_t i = 0; i < lot_.size(); ++i) {
      const double d = apart(line, {lot_[i], lot_[(i + 1) % lot_.size()]}) - half;
      if (d < site_.lot[i].setback - kSlack) fault(what + " in the setback of edge " + std::to_string(i), d);
    }
    for (const Feature& f : site_.features)
      if (!may_be_crossed(f)) conduit_and_feature(line, is_run, f);
    for (const Trench& t : layout_.trenches)
      if (!(is_run && t.role == TrenchRole::supply)) conduit_and_trench(line, what, t);
  }

  // The first leg of the run passes the clearance of its own house, but not the house.
  void conduit_and_feature(const Line& line, bool is_run, const Feature& f) {
    const std::string what = is_run ? "run" : "header";
    const bool own = is_run && site_.entry && f.id == site_.entry->house_id;
    const bool area = shape_of(f.kind) == FeatureShape::area;
    if (own)
      for (int i = 1; i < 100; ++i) {
        const Point p = {line[0].x + i * 0.01 * (line[1].x - line[0].x),
                         line[0].y + i * 0.01 * (line[1].y - line[0].y)};
        if (inside(f.points, p) && apart({p}, outline(f)) > kSlack) fault("run passes under its house", i);
      }
    const Line rest(line.begin() + (own ? 1 : 0), line.end());
    if (area && inside(f.points, rest.back())) fault(what + " inside feature " + std::to_string(f.id), 0);
    const double d = apart(rest, outline(f)) - wishes_.run_width / 2 - run_clearance(site_, f);
    if (d < -kSlack) fault(what + " too near feature " + std::to_string(f.id), d);
  }

  // Off the coil by both half widths; the header trench takes half its own width of the head.
  void conduit_and_trench(const Line& line, const std::string& what, const Trench& t) {
    const double half = wishes_.run_width / 2;
    const Point u = ahead(t);
    const Point from = {t.head.x + half * u.x, t.head.y + half * u.y};
    const Line kept = floor_of(from, t.end, t.width + wishes_.run_width, kSlack);
    if (inside(kept, line[0]) || apart(line, closed(kept)) <= 0)
      fault(what + " on the coil of " + name(t), apart(line, {from, t.end}));
  }

  void joints() {
    if (layout_.run.line.empty()) return;
    if (std::hypot(layout_.run.line[0].x - site_.entry->at.x, layout_.run.line[0].y - site_.entry->at.y) >
        kSlack)
      fault("run does not start at the entry point", 0);
    std::vector<Line> reached = {layout_.run.line};
    for (const Line& leg : layout_.header.legs) {
      double d = std::hypot(leg[0].x - layout_.run.line.back().x, leg[0].y - layout_.run.line.back().y);
      for (std::size_t i = 1; i < reached.size(); ++i) d = std::min(d, apart({leg[0]}, reached[i]));
      if (d > kSlack) fault("a leg of the header starts nowhere", d);
      reached.push_back(leg);
    }
    for (const Trench& t : layout_.trenches) {
      double d = 1e9;
      for (const Line& l : reached) d = std::min(d, apart(l, {t.head}));
      if (d > kSlack) unjoined_.push_back(t.number);
    }
    if (!unjoined_.empty() && layout_.troubles.empty())
      fault("heads joined to nothing, and no word of it", unjoined_[0]);
  }

  const Site& site_;
  const Wishes& wishes_;
  const Layout& layout_;
  std::optional<double> length_;
  Line lot_;
  std::vector<int> unjoined_;
  std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> faults(const Site& site, const Wishes& wishes, const Layout& layout,
                                std::optional<double> length) {
  return Judge(site, wishes, layout, length).run();
}

}  // namespace underlawn::judge
