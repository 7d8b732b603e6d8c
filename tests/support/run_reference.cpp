// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/run_reference.h"

#include <geos_c.h>

#include <cmath>
#include <map>
#include <queue>
#include <stdexcept>

#include "site/clearances.h"

namespace underlawn::sample {

namespace {

constexpr int kQuarter = 16;      // chords to a quarter of a curve, inside it
constexpr int kTangents = 6;      // and tangents, outside it: one bend there can pass a whole quarter
constexpr double kHair = 1e-5;    // m: what rounding may put a line beside its edge
constexpr double kAtEnd = 1e-4;   // m
constexpr double kSlack = 2e-3;   // m: nearer than asked by less than this is as asked
constexpr double kBendPrice = 1;  // m of plain digging, as the rest
constexpr double kFootingPrice = 0.5, kFootingReach = 1;
constexpr double kCoilPrice = 1;
// What a crossing of a utility flatter than half a right angle is worth avoiding: so much longer a way is
// taken to pass it squarely.
constexpr double kSlantPrice = 4, kSlant = 0.7854;

class Geos {
 public:
  Geos() : handle_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(handle_); }
  Geos(const Geos&) = delete;

  using Shape = std::shared_ptr<GEOSGeometry>;
  GEOSContextHandle_t handle() const { return handle_; }
  Shape own(GEOSGeometry* g) const {
    if (g == nullptr) throw std::runtime_error("GEOS gave no answer");
    return {g, [h = handle_](GEOSGeometry* p) { GEOSGeom_destroy_r(h, p); }};
  }
  GEOSCoordSequence* points(const std::vector<Point>& all, bool close) const {
    const auto n = static_cast<unsigned>(all.size());
    GEOSCoordSequence* s = GEOSCoordSeq_create_r(handle_, n + (close ? 1 : 0), 2);
    for (unsigned i = 0; i < n + (close ? 1 : 0); ++i)
      GEOSCoordSeq_setXY_r(handle_, s, i, all[i % n].x, all[i % n].y);
    return s;
  }
  Shape polygon(const Ring& ring) const {
    const Shape raw = own(GEOSGeom_createPolygon_r(
        handle_, GEOSGeom_createLinearRing_r(handle_, points(ring, true)), nullptr, 0));
    return buffer(raw, 0);
  }
  Shape line(const Polyline& line) const {
    if (line.size() == 1) return own(GEOSGeom_createPoint_r(handle_, points(line, false)));
    return own(GEOSGeom_createLineString_r(handle_, points(line, false)));
  }
  Shape empty() const { return own(GEOSGeom_createEmptyPolygon_r(handle_)); }
  Shape unite(const Shape& a, const Shape& b) const { return own(GEOSUnion_r(handle_, a.get(), b.get())); }
  Shape minus(const Shape& a, const Shape& b) const {
    return own(GEOSDifference_r(handle_, a.get(), b.get()));
  }
  Shape both(const Shape& a, const Shape& b) const {
    return own(GEOSIntersection_r(handle_, a.get(), b.get()));
  }
  Shape buffer(const Shape& a, double by) const { return own(GEOSBuffer_r(handle_, a.get(), by, kQuarter)); }
  Shape outside(const Shape& a, double by) const {
    const double out = by / std::cos(std::acos(-1.0) / (4 * kTangents));
    return own(GEOSBuffer_r(handle_, a.get(), out, kTangents));
  }
  Shape mitred(const Shape& a, double by) const {
    return own(
        GEOSBufferWithStyle_r(handle_, a.get(), by, kQuarter, GEOSBUF_CAP_FLAT, GEOSBUF_JOIN_MITRE, 5));
  }
  bool is_empty(const Shape& a) const { return GEOSisEmpty_r(handle_, a.get()) == 1; }

  std::vector<Point> coordinates(const GEOSGeometry* g) const {
    const GEOSCoordSequence* s = GEOSGeom_getCoordSeq_r(handle_, g);
    unsigned n = 0;
    GEOSCoordSeq_getSize_r(handle_, s, &n);
    std::vector<Point> out(n);
    for (unsigned i = 0; i < n; ++i) GEOSCoordSeq_getXY_r(handle_, s, i, &out[i].x, &out[i].y);
    return out;
  }
  template <class Visit>
  void each_part(const Shape& g, Visit visit) const {
    for (int i = 0; i < GEOSGetNumGeometries_r(handle_, g.get()); ++i)
      visit(GEOSGetGeometryN_r(handle_, g.get(), i));
  }
  // Every ring of every polygon, without its repeated last point.
  std::vector<Ring> rings(const Shape& g) const {
    std::vector<Ring> all;
    const auto add = [&](const GEOSGeometry* ring) {
      Ring r = coordinates(ring);
      if (r.size() > 1) r.pop_back();
      all.push_back(std::move(r));
    };
    each_part(g, [&](const GEOSGeometry* p) {
      if (GEOSGeomTypeId_r(handle_, p) != GEOS_POLYGON || GEOSisEmpty_r(handle_, p) == 1) return;
      add(GEOSGetExteriorRing_r(handle_, p));
      for (int i = 0; i < GEOSGetNumInteriorRings_r(handle_, p); ++i)
        add(GEOSGetInteriorRingN_r(handle_, p, i));
    });
    return all;
  }

 private:
  GEOSContextHandle_t handle_;
};

// Whether two segments cross, and flatter than kSlant.
bool cross_aslant(Point a, Point b, Point c, Point d) {
  const Point u = b - a, v = d - c;
  const double turn = cross(u, v);
  if (std::abs(turn) < 1e-12) return false;
  const double at = cross(c - a, v) / turn, on = cross(c - a, u) / turn;
  return at > 0 && at < 1 && on > 0 && on < 1 && std::atan2(std::abs(turn), std::abs(dot(u, v))) < kSlant;
}

// Beside the line by `half`, from `start` m after its first point to `end` m past its last.
Ring box_on(Point a, Point b, double start, double end, double half) {
  const double long_ = std::hypot(b.x - a.x, b.y - a.y);
  const Point u{(b.x - a.x) / long_, (b.y - a.y) / long_}, n{-u.y * half, u.x * half};
  const Point p{a.x + start * u.x, a.y + start * u.y}, q{b.x + end * u.x, b.y + end * u.y};
  return {{p.x - n.x, p.y - n.y}, {q.x - n.x, q.y - n.y}, {q.x + n.x, q.y + n.y}, {p.x + n.x, p.y + n.y}};
}

double apart(Point a, Point b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

}  // namespace

class RunReference::Ground {
 public:
  Ground(const Site& site, const Wishes& w, const Layout& layout) {
    const double half = w.run_width / 2;
    Geos::Shape taken = geos_.empty(), outside = geos_.empty(), coils = geos_.empty();
    Ring lot;
    for (std::size_t i = 0; i < site.lot.size(); ++i) {
      lot.push_back(site.lot[i].at);
      const Polyline edge{site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at};
      if (apart(edge[0], edge[1]) == 0) continue;
      taken = geos_.unite(taken, geos_.buffer(geos_.line(edge), site.lot[i].setback + half));
      outside = geos_.unite(outside, geos_.outside(geos_.line(edge), site.lot[i].setback + half));
    }
    for (const Feature& f : site.features) add_feature(f, site, half, taken, outside);
    for (const Trench& t : layout.trenches) {
      if (t.role == TrenchRole::supply) continue;
      const double keep = (w.run_width + t.width) / 2;
      const Geos::Shape coil = geos_.polygon(box_on(t.head, t.end, half, half, keep));
      taken = geos_.unite(taken, coil);
      outside = geos_.unite(outside, coil);
      coils = geos_.unite(coils, geos_.polygon(box_on(t.head, t.end, w.run_width, w.run_width,
                                                      std::max(w.spacing, 2.2 * keep) / 2)));
    }
    add_dear(coils, kCoilPrice, 0);
    free_ = geos_.minus(geos_.polygon(lot), taken);
    seen_ = geos_.mitred(free_, kSlack);
    ready_ = GEOSPrepare_r(geos_.handle(), seen_.get());
    add_corners(free_, -1);
    add_corners(geos_.minus(geos_.polygon(lot), outside), -1);
    for (const Dear& d : dear_) add_corners(geos_.mitred(d.shape, kHair), 1);
    for (const Geos::Shape& s : dear_outside_) add_corners(s, 1);
  }
  ~Ground() { GEOSPreparedGeom_destroy_r(geos_.handle(), ready_); }

  bool sees(Point a, Point b) const {
    return GEOSPreparedCovers_r(geos_.handle(), ready_, geos_.line({a, b}).get()) == 1;
  }

  // Of a leg, and on which dear grounds its way stands at the end.
  std::pair<double, unsigned> priced(Point a, Point b, unsigned inside) const {
    double price = apart(a, b);
    for (const auto& [c, d] : utilities_)
      if (cross_aslant(a, b, c, d)) price += kSlantPrice;
    unsigned after = 0;
    for (std::size_t d = 0; d < dear_.size(); ++d) {
      const Geos::Shape in = geos_.both(geos_.line({a, b}), dear_[d].shape);
      geos_.each_part(in, [&](const GEOSGeometry* part) {
        if (GEOSGeomTypeId_r(geos_.handle(), part) != GEOS_LINESTRING) return;
        const std::vector<Point> p = geos_.coordinates(part);
        if (p.size() < 2) return;
        const double from = std::min(apart(a, p.front()), apart(a, p.back())),
                     to = std::max(apart(a, p.front()), apart(a, p.back()));
        price += dear_[d].per_metre * (to - from);
        if (from > kAtEnd || (inside >> d & 1U) == 0) price += dear_[d].per_entry;
        if (to > apart(a, b) - kAtEnd) after |= 1U << d;
      });
    }
    return {price, after};
  }

  unsigned standing(Point p) const {
    unsigned inside = 0;
    for (std::size_t d = 0; d < dear_.size(); ++d)
      if (GEOSCovers_r(geos_.handle(), dear_[d].shape.get(), geos_.line({p}).get()) == 1) inside |= 1U << d;
    return inside;
  }

  const std::vector<Point>& bends() const { return bends_; }
  bool covers(const Polyline& line, double beyond) const {
    const Geos::Shape wider = geos_.buffer(free_, beyond);
    return GEOSCovers_r(geos_.handle(), wider.get(), geos_.line(line).get()) == 1;
  }

 private:
  struct Dear {
    Geos::Shape shape;
    double per_metre, per_entry;
  };

  Geos::Shape outline(const Feature& f) const {
    return shape_of(f.kind) == FeatureShape::area ? geos_.polygon(f.points) : geos_.line(f.points);
  }

  void add_crossable(const Feature& f, double half) {
    const bool utility = f.kind == FeatureKind::utility, drive = f.kind == FeatureKind::drive;
    const double by = utility ? kToleranceZone + half : half;
    dear_outside_.push_back(geos_.outside(outline(f), by));
    for (std::size_t i = 1; utility && i < f.points.size(); ++i)
      utilities_.emplace_back(f.points[i - 1], f.points[i]);
    add_dear(geos_.buffer(outline(f), by), utility ? 3 : drive ? 2 : 1, utility ? 3 : drive ? 6 : 2);
  }

  void add_feature(const Feature& f, const Site& site, double half, Geos::Shape& taken,
                   Geos::Shape& outside) {
    if (crossable(f)) return add_crossable(f, half);
    taken = geos_.unite(taken, geos_.buffer(outline(f), run_clearance(site, f) + half));
    outside = geos_.unite(outside, geos_.outside(outline(f), run_clearance(site, f) + half));
    if (f.kind != FeatureKind::house) return;
    const double reach = run_clearance(site, f) + half + kFootingReach;
    Geos::Shape beside = geos_.empty();
    for (std::size_t i = 0; i < f.points.size(); ++i)
      beside = geos_.unite(beside, geos_.polygon(box_on(f.points[i], f.points[(i + 1) % f.points.size()],
                                                        -reach, reach, reach)));
    add_dear(beside, kFootingPrice, 0);
  }

  // Its edge is outside.
  void add_dear(const Geos::Shape& shape, double per_metre, double per_entry) {
    const Geos::Shape inner = geos_.mitred(shape, -kHair);
    if (!geos_.is_empty(inner)) dear_.push_back({inner, per_metre, per_entry});
  }

  // Where the boundary, taken left about, turns the one way or the other.
  void add_corners(const Geos::Shape& shape, int sense) {
    for (const Ring& ring : geos_.rings(shape)) {
      const std::size_t n = ring.size();
      if (n < 3) continue;
      double twice = 0;
      for (std::size_t i = 0; i < n; ++i) twice += cross(ring[i], ring[(i + 1) % n]);
      const bool hole = is_hole(shape, ring);
      const double left = ((twice > 0) != hole) ? 1 : -1;
      for (std::size_t i = 0; i < n; ++i) {
        const Point a = ring[(i + n - 1) % n], b = ring[i], c = ring[(i + 1) % n];
        if (sense * left * cross(b - a, c - b) > 0 && sees(b, b + Point{1e-9, 0})) bends_.push_back(b);
      }
    }
  }
  bool is_hole(const Geos::Shape& shape, const Ring& ring) const {
    bool hole = false;
    geos_.each_part(shape, [&](const GEOSGeometry* p) {
      if (GEOSGeomTypeId_r(geos_.handle(), p) != GEOS_POLYGON) return;
      for (int i = 0; i < GEOSGetNumInteriorRings_r(geos_.handle(), p); ++i)
        hole = hole || apart(geos_.coordinates(GEOSGetInteriorRingN_r(geos_.handle(), p, i)).front(),
                             ring.front()) == 0;
    });
    return hole;
  }

  Geos geos_;
  Geos::Shape free_, seen_;
  const GEOSPreparedGeometry* ready_ = nullptr;
  std::vector<Dear> dear_;
  std::vector<Geos::Shape> dear_outside_;
  std::vector<std::pair<Point, Point>> utilities_;
  std::vector<Point> bends_;
};

namespace {

Point foot_on(const Segment& s, Point p) {
  const Point d = s.b - s.a;
  const double t = std::clamp(dot(p - s.a, d) / std::max(1e-12, dot(d, d)), 0.0, 1.0);
  return s.a + t * d;
}

struct Label {
  std::size_t node, before;
  unsigned inside;
  double cost;
};

}  // namespace

RunReference::RunReference(const Site& site, const Wishes& wishes, const Layout& layout)
    : ground_(std::make_unique<Ground>(site, wishes, layout)) {}
RunReference::~RunReference() = default;

bool RunReference::free(const Polyline& line, double beyond) const {
  return ground_->covers(line, beyond);
}

double RunReference::cost(const Polyline& line) const {
  unsigned inside = ground_->standing(line.front());
  double sum = kBendPrice * static_cast<double>(line.size() - 2);
  for (std::size_t i = 1; i < line.size(); ++i) {
    const auto [price, after] = ground_->priced(line[i - 1], line[i], inside);
    sum += price;
    inside = after;
  }
  return sum;
}

std::optional<ReferenceWay> RunReference::best(Point from, Point to, double at_most) const {
  return best(from, Segment{to, to}, at_most);
}

// Dijkstra over corner and what the way stands in; the last leg goes to the nearest place on the header or to
// either of its ends. What cannot be cheaper than `at_most`, however straight the rest, is not gone on with.
std::optional<ReferenceWay> RunReference::best(Point from, const Segment& header, double at_most) const {
  std::vector<Point> at = {from};
  at.insert(at.end(), ground_->bends().begin(), ground_->bends().end());
  std::vector<Label> labels = {{0, 0, ground_->standing(from), 0}};
  std::map<std::pair<std::size_t, unsigned>, double> least;
  std::map<std::pair<std::size_t, std::size_t>, bool> seen;
  using Entry = std::pair<double, std::size_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
  open.push({0, 0});
  double bound = at_most;
  std::optional<std::pair<std::size_t, Point>> last;
  const auto rest = [&](Point p) { return apart(p, foot_on(header, p)); };
  while (!open.empty()) {
    const auto [key, id] = open.top();
    open.pop();
    if (key > bound) break;
    const Label l = labels[id];
    const auto known = least.find({l.node, l.inside});
    if (known != least.end() && known->second < l.cost - 1e-12) continue;
    const double base = l.cost + (l.node == 0 ? 0 : kBendPrice);
    for (Point end : {foot_on(header, at[l.node]), header.a, header.b}) {
      if (base + apart(at[l.node], end) > bound || apart(at[l.node], end) < kHair ||
          !ground_->sees(at[l.node], end))
        continue;
      const double cost = base + ground_->priced(at[l.node], end, l.inside).first;
      if (cost > bound) continue;
      bound = cost;
      last = {id, end};
    }
    for (std::size_t i = 1; i < at.size(); ++i) {
      const double straight = apart(at[l.node], at[i]);
      if (i == l.node || straight < kHair || base + straight + kBendPrice + rest(at[i]) > bound) continue;
      const auto pair = std::minmax(i, l.node);
      auto sight = seen.find(pair);
      if (sight == seen.end()) sight = seen.emplace(pair, ground_->sees(at[i], at[l.node])).first;
      if (!sight->second) continue;
      const auto [price, after] = ground_->priced(at[l.node], at[i], l.inside);
      const double cost = base + price;
      if (cost + kBendPrice + rest(at[i]) > bound) continue;
      const auto [there, fresh] = least.try_emplace({i, after}, cost);
      if (!fresh && there->second <= cost) continue;
      there->second = cost;
      labels.push_back({i, id, after, cost});
      open.push({cost + rest(at[i]), labels.size() - 1});
    }
  }
  if (!last) return std::nullopt;
  ReferenceWay way;
  way.cost = bound;
  way.line.push_back(last->second);
  for (std::size_t id = last->first;; id = labels[id].before) {
    way.line.push_back(at[labels[id].node]);
    if (labels[id].node == 0) break;
  }
  std::reverse(way.line.begin(), way.line.end());
  return way;
}

}  // namespace underlawn::sample
