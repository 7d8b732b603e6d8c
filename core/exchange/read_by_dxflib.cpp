// SPDX-License-Identifier: GPL-3.0-or-later
// The second reader of DXF. It tells arcs, bulges and blocks as they are in the file; they are chorded and
// put in place here.
#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <set>
#include <sstream>

#include "base/utf8.h"
#include "exchange/chords.h"
#include "exchange/read_parts.h"

namespace underlawn {

namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kFarthest = 1e12;
constexpr int kDeepestBlock = 32;

struct Drawn {
  std::string layer;
  Shape shape;
};

struct Insert {
  std::string block, layer;
  DL_InsertData data;
  bool mirrored;
};

struct Block {
  Point base;
  std::vector<Drawn> shapes;
  std::vector<Insert> inserts;
};

// Where a block is put: x' = at + turn(scale * (x - base)).
struct Placing {
  double a = 1, b = 0, c = 0, d = 1;  // x' = a x + b y + at.x, y' = c x + d y + at.y
  Point at;
  Point operator()(Point p) const { return {a * p.x + b * p.y + at.x, c * p.x + d * p.y + at.y}; }
};

Placing after(const Placing& outer, const Placing& inner) {
  return {outer.a * inner.a + outer.b * inner.c, outer.a * inner.b + outer.b * inner.d,
          outer.c * inner.a + outer.d * inner.c, outer.c * inner.b + outer.d * inner.d, outer(inner.at)};
}

bool sound(Point p) {
  return std::abs(p.x) <= kFarthest && std::abs(p.y) <= kFarthest;
}

class Listener : public DL_CreationAdapter {
 public:
  Listener(double tolerance, Drawing& out) : tolerance_(tolerance), out_(out), sink_(out) {}

  void addBlock(const DL_BlockData& b) override {
    end_line();
    now_ = &blocks_[b.name];
    now_->base = {b.bpx, b.bpy};
  }
  void endBlock() override {
    end_line();
    now_ = &model_;
  }
  void addPoint(const DL_PointData& p) override { add(ShapeKind::point, {{p.x, p.y}}, {p.z}); }
  void addLine(const DL_LineData& l) override {
    add(ShapeKind::line, {{l.x1, l.y1}, {l.x2, l.y2}}, {l.z1, l.z2});
  }
  void addArc(const DL_ArcData& a) override {
    double sweep = std::fmod(a.angle2 - a.angle1, 360.0);
    if (sweep <= 0) sweep += 360;
    arc({a.cx, a.cy}, a.radius, a.angle1 * kDegree, sweep * kDegree);
  }
  void addCircle(const DL_CircleData& c) override { arc({c.cx, c.cy}, c.radius, 0, 2 * std::numbers::pi); }
  void addEllipse(const DL_EllipseData& e) override {
    double sweep = e.angle2 - e.angle1;
    if (!(sweep > 0)) sweep += 2 * std::numbers::pi;
    const Point major{e.mx, e.my}, minor = e.ratio * left_normal(major);
    const double step = chord_angle(norm(major), tolerance_);
    const int n = static_cast<int>(std::clamp(std::ceil(std::abs(sweep) / step), 4.0, 720.0));
    Polyline line;
    for (int i = 0; i <= n; ++i) {
      const double t = e.angle1 + sweep * i / n;
      line.push_back(Point{e.cx, e.cy} + std::cos(t) * major + std::sin(t) * minor);
    }
    add(ShapeKind::line, std::move(line), {});
  }
  void addPolyline(const DL_PolylineData& p) override {
    end_line();
    in_line_ = true;
    closed_ = (p.flags & 1) != 0;
    line_layer_ = layer();
    line_mirrored_ = mirrored();
  }
  void addVertex(const DL_VertexData& v) override {
    if (in_line_) vertices_.push_back(v);
  }
  void endSequence() override { end_line(); }
  void endEntity() override { end_line(); }
  void addSolid(const DL_SolidData& s) override {
    add(ShapeKind::area, {{s.x[0], s.y[0]}, {s.x[1], s.y[1]}, {s.x[3], s.y[3]}, {s.x[2], s.y[2]}}, {});
  }
  void addTrace(const DL_TraceData& s) override { addSolid(s); }
  void add3dFace(const DL_3dFaceData& s) override {
    add(ShapeKind::area, {{s.x[0], s.y[0]}, {s.x[1], s.y[1]}, {s.x[2], s.y[2]}, {s.x[3], s.y[3]}}, {});
  }
  void addText(const DL_TextData& t) override { text({t.ipx, t.ipy}, t.text); }
  void addMText(const DL_MTextData& t) override { text({t.ipx, t.ipy}, t.text); }
  void addInsert(const DL_InsertData& i) override {
    end_line();
    now_->inserts.push_back({i.name, layer(), i, mirrored()});
  }

  void finish() {
    end_line();
    put(model_, {}, "0", 0);
  }

 private:
  std::string layer() { return valid_utf8(getAttributes().getLayer()); }
  bool mirrored() {
    const double* d = getExtrusion() == nullptr ? nullptr : getExtrusion()->getDirection();
    return d != nullptr && d[2] < 0;
  }
  // Entities whose plane looks down are drawn mirrored (DXF Reference, "Arbitrary Axis Algorithm").
  void arc(Point centre, double radius, double start, double sweep) {
    if (!sound(centre) || !(std::abs(radius) <= kFarthest)) return;
    Polyline line = {centre + radius * direction(start)};
    for (Point p : arc_points(centre, radius, start, sweep, tolerance_)) line.push_back(p);
    if (sweep >= 2 * std::numbers::pi - 1e-12) line.back() = line.front();
    if (mirrored())
      for (Point& p : line) p.x = -p.x;
    add(ShapeKind::line, std::move(line), {});
  }
  void text(Point at, const std::string& words) {
    end_line();
    Shape s{ShapeKind::point, {at}, {}, {}, 0, valid_utf8(words).substr(0, 200), {}};
    s.text = valid_utf8(s.text);
    if (!s.text.empty() && sound(at)) now_->shapes.push_back({layer(), std::move(s)});
  }
  void end_line() {
    if (!in_line_) return;
    in_line_ = false;
    const auto all = std::move(vertices_);
    vertices_.clear();
    Shape s;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Point a{all[i].x, all[i].y};
      if (s.points.empty()) s.points.push_back(a);
      if (i + 1 == all.size() && !closed_) break;
      const auto& next = all[(i + 1) % all.size()];
      const Polyline way = bulge_points(a, {next.x, next.y}, all[i].bulge, tolerance_);
      s.points.insert(s.points.end(), way.begin(), way.end());
    }
    if (line_mirrored_)
      for (Point& p : s.points) p.x = -p.x;
    if (std::ranges::any_of(all, [](const DL_VertexData& v) { return v.z != 0; }) &&
        s.points.size() >= all.size() && s.points.size() <= all.size() + 1)
      for (std::size_t i = 0; i < s.points.size(); ++i) s.heights.push_back(all[i % all.size()].z);
    keep(line_layer_, std::move(s));
  }
  void add(ShapeKind kind, std::vector<Point> points, std::vector<double> heights) {
    end_line();
    if (std::ranges::all_of(heights, [](double z) { return z == 0; })) heights.clear();
    keep(layer(), Shape{kind, std::move(points), {}, std::move(heights), 0, "", {}});
  }
  void keep(const std::string& on, Shape s) {
    if (!std::ranges::all_of(s.points, sound) || (s.kind != ShapeKind::point && s.points.size() < 2)) return;
    now_->shapes.push_back({on, std::move(s)});
  }

  void put(const Block& block, const Placing& where, const std::string& inherited, int depth) {
    for (const Drawn& d : block.shapes) {
      Shape s = d.shape;
      for (Point& p : s.points) p = where(p);
      s.layer = sink_.layer(d.layer == "0" ? inherited : d.layer);
      if (s.text.empty()) ++out_.arrived;
      if (!sink_.add(std::move(s))) return;
    }
    for (const Insert& i : block.inserts) insert(i, where, inherited, depth);
  }
  void insert(const Insert& i, const Placing& outer, const std::string& inherited, int depth) {
    const auto at = blocks_.find(i.block);
    if (at == blocks_.end() || depth >= kDeepestBlock || !open_.insert(i.block).second) return;
    const DL_InsertData& d = i.data;
    const double turn = d.angle * kDegree, c = std::cos(turn), s = std::sin(turn), flip = i.mirrored ? -1 : 1;
    for (int row = 0; row < std::clamp(d.rows, 1, 1000) && !sink_.full(); ++row)
      for (int col = 0; col < std::clamp(d.cols, 1, 1000) && !sink_.full(); ++col) {
        const Point step = rotated({col * d.colSp, row * d.rowSp}, turn);
        Placing p{flip * c * d.sx, flip * -s * d.sy, s * d.sx, c * d.sy, {0, 0}};
        const Point base = p(at->second.base);
        p.at = Point{flip * (d.ipx + step.x), d.ipy + step.y} - base;
        put(at->second, after(outer, p), i.layer == "0" ? inherited : i.layer, depth + 1);
      }
    open_.erase(i.block);
  }

  double tolerance_;
  Drawing& out_;
  ShapeSink sink_;
  std::map<std::string, Block> blocks_;
  Block model_;
  Block* now_ = &model_;
  std::set<std::string> open_;
  bool in_line_ = false, closed_ = false, line_mirrored_ = false;
  std::string line_layer_;
  std::vector<DL_VertexData> vertices_;
};

}  // namespace

void read_by_dxflib(const std::string& plain, double tolerance, Drawing& out) {
  out.reader = "dxflib " DL_VERSION;
  Listener listener(tolerance, out);
  std::istringstream in(plain);
  DL_Dxf reader;
  reader.in(in, &listener);
  listener.finish();
}

}  // namespace underlawn
