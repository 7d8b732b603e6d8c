// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/bring_in.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>
#include <set>
#include <tuple>

#include "base/say.h"
#include "exchange/join_lines.h"
#include "exchange/map_plane.h"
#include "exchange/spot_heights.h"
#include "plan/edits.h"
#include "plane/region.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr const char* kWords[] = {mark("nothing"),        mark("the lot line"), mark("houses"),
                                  mark("drives"),         mark("septic tanks"), mark("drain fields"),
                                  mark("reserve fields"), mark("wells"),        mark("trees"),
                                  mark("electric lines"), mark("gas lines"),    mark("communication lines"),
                                  mark("water lines"),    mark("sewer lines"),  mark("reclaimed water lines"),
                                  mark("easements"),      mark("no-dig areas"), mark("spot heights")};

bool same_points(const std::vector<Point>& a, const std::vector<Point>& b) {
  return a.size() == b.size() &&
         std::ranges::equal(a, b, [](Point p, Point q) { return distance(p, q) <= kSamePlace; });
}

constexpr std::size_t kMostCounted = 3000;  // of lots, and of things on them, when the lot is sought

bool on_plan(const std::vector<Point>& points) {
  return std::ranges::all_of(
      points, [](Point p) { return std::abs(p.x) <= kLargestPlan && std::abs(p.y) <= kLargestPlan; });
}

bool closes(const std::vector<Point>& points, double reach) {
  return points.size() >= 4 && distance(points.front(), points.back()) <= reach;
}

Polyline without_repeats(const Polyline& line) {
  Polyline out;
  for (Point p : line)
    if (out.empty() || distance(out.back(), p) > kSamePlace) out.push_back(p);
  return out;
}

class Bringer {
 public:
  Bringer(const Plan& plan, const Drawing& drawing, const Bringing& how) : drawing_(drawing), how_(how) {
    out_.plan = plan;
  }

  void take(const ShapeGroup& group, Becomes b) {
    if (b == Becomes::left_out) return leave(group);
    if (b == Becomes::heights) return add_heights(group);
    const auto kind = feature_kind_of(b);
    const FeatureShape shape = kind ? shape_of(*kind) : FeatureShape::area;
    if (shape == FeatureShape::area) add_areas(group, b);
    if (shape == FeatureShape::line) add_lines(group, b);
    if (shape == FeatureShape::point) add_points(group, b);
  }

  Brought finish() {
    choose_lot();
    lot_ = lot_ring(out_.plan.site);
    if (lot_.size() >= 3) lot_box_ = bounds(lot_);
    add_features();
    keep_heights();
    for (const auto& [why, count] : missed_) out_.left_out.push_back({why.first, count, why.second});
    return std::move(out_);
  }

 private:
  struct Wanted {
    Becomes becomes;
    std::string name;
    std::vector<Point> points;
  };
  void miss(const std::string& what, const std::string& why, long count = 1) {
    if (count > 0) missed_[{what, why}] += count;
  }
  void leave(const ShapeGroup& group) {
    const std::string& name = drawing_.layers[static_cast<std::size_t>(group.layer)].name;
    miss(group.value.empty() ? name : name + ", " + group.value, say("was not asked for"),
         static_cast<long>(group.shapes.size()));
  }
  const Shape& shape(int i) const { return drawing_.shapes[static_cast<std::size_t>(i)]; }
  std::vector<Point> placed(const std::vector<Point>& points) const {
    std::vector<Point> out;
    out.reserve(points.size());
    for (Point p : points) out.push_back(how_.placement(p));
    return out;
  }
  std::string name_of(const Shape& s) const {
    const auto& names = drawing_.layers[static_cast<std::size_t>(s.layer)].attributes;
    for (std::size_t i = 0; i < std::min(names.size(), s.values.size()); ++i)
      if (names[i] == "name" || names[i] == "Name" || names[i] == "NAME" || names[i] == "label")
        return s.values[i];
    return "";
  }

  void add_heights(const ShapeGroup& group) {
    for (int i : group.shapes) {
      const auto found = spot_heights(drawing_, shape(i), how_.placement, how_.height_unit);
      if (found.empty())
        miss(say("shape for spot heights"),
             say("has no height: neither in its points nor as a number beside it"));
      heights_.insert(heights_.end(), found.begin(), found.end());
    }
  }

  // Closed outlines as they are; what is left of lines is joined.
  void add_areas(const ShapeGroup& group, Becomes b) {
    std::vector<Polyline> loose;
    const std::string what = translated(kWords[static_cast<int>(b)]);
    for (int i : group.shapes) {
      const Shape& s = shape(i);
      const auto points = placed(s.points);
      if (s.kind == ShapeKind::point) {
        miss(what, say("a point encloses nothing"));
      } else if (s.kind == ShapeKind::area || closes(points, how_.reach)) {
        if (!s.holes.empty())
          miss(what, say("holes in an area are filled"), static_cast<long>(s.holes.size()));
        add_ring(points, b, name_of(s));
      } else {
        loose.push_back(points);
      }
    }
    const JoinedLines joined = join_lines(loose, how_.reach);
    for (const Ring& ring : joined.rings) add_ring(ring, b, "");
    if (!joined.chains.empty()) miss(what, open_words(joined), static_cast<long>(joined.chains.size()));
  }
  static std::string open_words(const JoinedLines& joined) {
    if (joined.narrowest_gap > 0) {
      char gap[24];
      std::snprintf(gap, sizeof gap, "%.3f", joined.narrowest_gap);
      return say("lines that close no area; the narrowest gap is {} m", gap);
    }
    return say("lines that close no area");
  }
  void add_ring(const Ring& drawn, Becomes b, const std::string& name) {
    Ring ring = without_repeats(drawn);
    if (ring.size() > 1 && distance(ring.front(), ring.back()) <= std::max(how_.reach, kSamePlace))
      ring.pop_back();
    const std::string what = translated(kWords[static_cast<int>(b)]);
    if (!on_plan(ring)) return miss(what, say("lies too far from the rest of the drawing"));
    if (auto checked = checked_ring(ring, say("an area")); !checked)
      return miss(what, checked.error().message());
    if (b == Becomes::lot_line)
      lots_.push_back(std::move(ring));
    else
      features_.push_back({b, name, std::move(ring)});
  }

  void add_lines(const ShapeGroup& group, Becomes b) {
    std::vector<Polyline> loose;
    const std::string what = translated(kWords[static_cast<int>(b)]);
    for (int i : group.shapes) {
      const Shape& s = shape(i);
      auto points = placed(s.points);
      if (s.kind == ShapeKind::point) {
        miss(what, say("a point is no line"));
        continue;
      }
      if (s.kind == ShapeKind::area) points.push_back(points.front());
      if (!on_plan(points))
        miss(what, say("lies too far from the rest of the drawing"));
      else if (closes(points, how_.reach) || !name_of(s).empty())
        features_.push_back({b, name_of(s), without_repeats(points)});
      else
        loose.push_back(without_repeats(points));
    }
    JoinedLines joined = join_lines(loose, how_.reach);
    for (Ring& ring : joined.rings) {
      ring.push_back(ring.front());
      joined.chains.push_back(ring);
    }
    for (const Polyline& chain : joined.chains)
      if (chain.size() >= 2) features_.push_back({b, "", without_repeats(chain)});
  }

  void add_points(const ShapeGroup& group, Becomes b) {
    for (int i : group.shapes) {
      const Shape& s = shape(i);
      auto points = placed(s.points);
      const std::string what = translated(kWords[static_cast<int>(b)]);
      if (!s.text.empty())
        miss(what, say("a text is no place"));
      else if (!on_plan(points))
        miss(what, say("lies too far from the rest of the drawing"));
      else if (s.kind == ShapeKind::point)
        add_point(points[0], b, name_of(s));
      else if (s.kind == ShapeKind::area || closes(points, how_.reach))
        add_point(middle(points), b, name_of(s));
      else
        miss(what, say("an open line marks no place"));
    }
  }
  static Point middle(const std::vector<Point>& points) {
    Point low = points[0], high = points[0];
    for (Point p : points) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    return 0.5 * (low + high);
  }
  // A tree drawn as several circles about one middle is one tree.
  void add_point(Point at, Becomes b, const std::string& name) {
    constexpr double kOnePlace = 0.05;
    const auto cell = std::tuple(b, std::lround(at.x / kOnePlace), std::lround(at.y / kOnePlace));
    if (points_.insert(cell).second) features_.push_back({b, name, {at}});
  }

  // Of several rings: the one that was pointed at, else the one around most of what comes in, else the
  // largest.
  void choose_lot() {
    if (lots_.empty()) return;
    using Worth = std::tuple<bool, double, long, double>;
    std::vector<std::pair<Worth, Ring>> all;
    const bool count = lots_.size() <= kMostCounted;
    for (Ring& ring : lots_) {
      const bool meant = how_.lot_at && contains(ring, how_.placement(*how_.lot_at));
      const double size = area(ring);
      all.emplace_back(Worth{meant, how_.lot_at ? -size : 0, count ? inside(ring) : 0, size},
                       std::move(ring));
    }
    std::ranges::stable_sort(all, [](const auto& a, const auto& b) { return a.first > b.first; });
    lots_.clear();
    for (auto& [worth, ring] : all) lots_.push_back(std::move(ring));
    if (!how_.lot_at)
      std::rotate(lots_.begin(), lots_.begin() + static_cast<std::ptrdiff_t>(how_.lot_rank % lots_.size()),
                  lots_.end());
    const bool there = same_points(lots_.front(), lot_ring(out_.plan.site));
    if (there) miss(say("the lot line"), lies_there());  // and keeps its setbacks
    if (!there) {
      out_.plan = edit::with_lot(out_.plan, lots_.front(), kDefaultSetback);
      out_.counts[Becomes::lot_line] = 1;
    }
    miss(say("the lot line"), say("another ring was taken for the lot"), static_cast<long>(lots_.size()) - 1);
    out_.lots = std::move(lots_);
  }
  long inside(const Ring& ring) const {
    const Box box = bounds(ring);
    long within = 0;
    for (std::size_t i = 0; i < std::min(features_.size(), kMostCounted); ++i) {
      const Point p = features_[i].points[0];
      const bool boxed = p.x >= box.low.x && p.x <= box.high.x && p.y >= box.low.y && p.y <= box.high.y;
      within += boxed && contains(ring, p) ? 1 : 0;
    }
    return within;
  }

  static std::string lies_there() { return say("lies there already, exactly so"); }
  bool there_already(const Wanted& w) const {
    const auto kind = *feature_kind_of(w.becomes);
    return std::ranges::any_of(out_.plan.site.features, [&](const Feature& f) {
      return f.kind == kind && (kind != FeatureKind::utility || f.utility == utility_kind_of(w.becomes)) &&
             same_points(f.points, w.points);
    });
  }

  bool near_lot(const std::vector<Point>& points) const {
    if (!how_.keep_within || lot_.size() < 3) return true;
    const double reach = *how_.keep_within;
    Point low = points[0], high = points[0];
    for (Point p : points) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    if (low.x > lot_box_.high.x + reach || high.x < lot_box_.low.x - reach ||
        low.y > lot_box_.high.y + reach || high.y < lot_box_.low.y - reach)
      return false;
    if (points.size() == 1) return distance(lot_, points[0]) <= reach;
    return line_area_distance(points, lot_) <= reach;
  }

  void add_features() {
    int added = 0;
    for (const Wanted& w : features_) {
      const std::string what = translated(kWords[static_cast<int>(w.becomes)]);
      if (!near_lot(w.points)) {
        miss(what, say("lies away from the lot"));
        continue;
      }
      if (there_already(w)) {
        miss(what, lies_there());
        continue;
      }
      if (added >= kMostBrought) {
        miss(what, say("there are more than {}", std::to_string(kMostBrought)));
        continue;
      }
      Feature f;
      f.kind = *feature_kind_of(w.becomes);
      f.name = w.name;
      f.utility = utility_kind_of(w.becomes);
      if (f.kind != FeatureKind::utility) f.utility = Feature().utility;
      f.points = w.points;
      const std::size_t before = out_.plan.site.features.size();
      out_.plan = edit::with_feature(std::move(out_.plan), std::move(f));
      if (out_.plan.site.features.size() == before) {
        miss(what, say("cannot be held by a plan"));
        continue;
      }
      ++added;
      ++out_.counts[w.becomes];
    }
  }

  void keep_heights() {
    std::vector<SpotHeight> near;
    for (const SpotHeight& h : heights_)
      if (near_lot({h.at}) && on_plan({h.at})) near.push_back(h);
    miss(say("spot heights"), say("lies away from the lot"),
         static_cast<long>(heights_.size() - near.size()));
    const std::size_t before = out_.plan.site.heights.size();
    const long lost = add_spot_heights(out_.plan.site, near);
    miss(say("spot heights"), say("there is one at that place already, or there are too many"), lost);
    const std::size_t added = out_.plan.site.heights.size() - before;
    if (added > 0) out_.counts[Becomes::heights] = static_cast<int>(added);
  }

  const Drawing& drawing_;
  const Bringing& how_;
  Brought out_;
  std::vector<Ring> lots_;
  std::vector<Wanted> features_;
  std::vector<SpotHeight> heights_;
  std::set<std::tuple<Becomes, long, long>> points_;
  Ring lot_;
  Box lot_box_;
  std::map<std::pair<std::string, std::string>, long> missed_;
};

// A lot that was drawn otherwise lies under the drawing by chance only.
void learn_place(Plan& plan, const Plan& before, const Drawing& drawing, const Placement& placement) {
  const bool own_lot = !before.site.lot.empty() && plan.site.lot == before.site.lot;
  if (plan.map_place || !drawing.place || own_lot) return;
  plan.map_place = MapPlace{drawing.place->latitude, drawing.place->longitude, placement(drawing.place->at)};
}

}  // namespace

Placement usual_placement(const Drawing& drawing, const Plan& plan, double unit, const std::vector<int>& of) {
  Placement p;
  p.unit = unit;
  p.turn = plan.site.north - std::numbers::pi / 2;
  if (drawing.place && plan.map_place) {
    p.from = drawing.place->at;
    p.to =
        to_plan(*plan.map_place, plan.site.north, {{drawing.place->latitude, drawing.place->longitude}})[0];
    if (std::isfinite(p.to.x) && std::isfinite(p.to.y)) return p;
  }
  std::vector<Shape> some;
  some.reserve(of.size());
  for (int i : of) some.push_back(drawing.shapes[static_cast<std::size_t>(i)]);
  const Box box = extent(of.empty() ? drawing.shapes : some);
  p.from = box.low;
  p.to = {0, 0};
  return p;
}

std::optional<MapCircle> circle_round_lot(const Plan& plan, double margin) {
  if (!plan.map_place || plan.site.lot.size() < 3) return std::nullopt;
  const Box box = bounds(lot_ring(plan.site));
  const LatLon middle = from_plan(*plan.map_place, plan.site.north, {0.5 * (box.low + box.high)})[0];
  if (!std::isfinite(middle.latitude) || !std::isfinite(middle.longitude)) return std::nullopt;
  return MapCircle{middle, distance(box.low, box.high) / 2 + margin};
}

std::optional<double> unit_from(Point a, Point b, double metres) {
  const double drawn = distance(a, b);
  if (!(drawn > 1e-9) || !(drawn < 1e12) || !(metres > 0) || !(metres <= kLargestPlan)) return std::nullopt;
  return metres / drawn;
}

Brought bring_in(const Plan& plan, const Drawing& drawing, const std::vector<ShapeGroup>& groups,
                 const std::vector<Becomes>& becomes, const Bringing& how) {
  Bringer bringer(plan, drawing, how);
  for (std::size_t i = 0; i < groups.size() && i < becomes.size(); ++i) bringer.take(groups[i], becomes[i]);
  Brought out = bringer.finish();
  if (out.anything()) learn_place(out.plan, plan, drawing, how.placement);
  return out;
}

}  // namespace underlawn
