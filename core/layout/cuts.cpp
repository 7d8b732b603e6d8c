// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/cuts.h"

namespace underlawn {

namespace {

constexpr double kInfinite = 1e9;

double half_chord(double reach, double off) {
  return std::sqrt(std::max(0.0, reach * reach - off * off));
}

Point on_axis(Point p, const Turn& turn, Axis axis) {
  const Point t = turn.there(p);
  return axis == Axis::x ? t : Point{t.y, t.x};
}

void sort_intervals(Free& all) {
  std::sort(all.begin(), all.end(), [](const Interval& l, const Interval& r) { return l.low < r.low; });
}

// The parts of `within` that nothing blocks.
void gaps_between(Free& blocked, Interval within, Free& out) {
  sort_intervals(blocked);
  out.clear();
  double from = within.low;
  for (const Interval& b : blocked) {
    if (b.low >= within.high) break;
    if (b.low >= from) out.push_back({from, b.low});
    from = std::max(from, b.high);
  }
  if (from <= within.high) out.push_back({from, within.high});
}

}  // namespace

// Largest x of the capsule at a height it reaches: a straight side parallel to the segment between two arcs
// about its ends.
double Cuts::Shape::right(double y) const {
  if (std::isnan(slope)) return std::max(ax, bx) + half_chord(reach, y - ay);
  if (y <= ay - drop) return ax + half_chord(reach, y - ay);
  if (y >= by - drop) return bx + half_chord(reach, y - by);
  return ax + beside + (y - ay + drop) * slope;
}

double Cuts::Shape::left(double y) const {
  if (std::isnan(slope)) return std::min(ax, bx) - half_chord(reach, y - ay);
  if (y <= ay + drop) return ax - half_chord(reach, y - ay);
  if (y >= by + drop) return bx - half_chord(reach, y - by);
  return ax - beside + (y - ay - drop) * slope;
}

Cuts::Cuts(const Ground& ground, const Turn& turn, Axis axis, double wider) {
  const std::size_t n = ground.capsules.size();
  spans_.reserve(n);
  shapes_.reserve(n);
  for (const Capsule& k : ground.capsules) {
    Point a = on_axis(k.a, turn, axis), b = on_axis(k.b, turn, axis);
    if (a.y > b.y) std::swap(a, b);
    const double reach = k.reach + wider, rise = b.y - a.y, run = b.x - a.x;
    const double long_ = std::sqrt(rise * rise + run * run);
    Shape s{a.x, a.y, b.x, b.y, reach, std::nan(""), 0, 0};
    if (rise > 0) {
      s.slope = run / rise;
      s.beside = reach * rise / long_;
      s.drop = reach * run / long_;
    }
    spans_.push_back({a.y - reach, b.y + reach});
    shapes_.push_back(s);
  }
  add_area(ground.lot, turn, axis);
  for (const Ring& ring : ground.areas) add_area(ring, turn, axis);
}

void Cuts::add_area(const Ring& ring, const Turn& turn, Axis axis) {
  Area area{sides_.size(), sides_.size(), kInfinite, -kInfinite};
  Interval along{kInfinite, -kInfinite};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = on_axis(ring[i], turn, axis);
    const Point b = on_axis(ring[(i + 1) % ring.size()], turn, axis);
    sides_.push_back({a.x, a.y, b.y, (b.x - a.x) / (b.y - a.y)});
    area.low = std::min(area.low, a.y);
    area.high = std::max(area.high, a.y);
    along = {std::min(along.low, a.x), std::max(along.high, a.x)};
  }
  area.last = sides_.size();
  if (areas_.empty()) along_ = along;
  areas_.push_back(area);
}

// The outside of the lot, the inside of the others, on the line across = at.
void Cuts::block_ring(const Area& area, double at, bool inside, double grow, Free& blocked) const {
  thread_local std::vector<double> meets;
  meets.clear();
  if (area.low <= at && at <= area.high)
    for (std::size_t i = area.first; i < area.last; ++i) {
      const Side& s = sides_[i];
      if ((s.ay > at) != (s.by > at)) meets.push_back(s.ax + (at - s.ay) * s.slope);
    }
  std::sort(meets.begin(), meets.end());
  if (inside) {
    for (std::size_t i = 1; i < meets.size(); i += 2)
      blocked.push_back({meets[i - 1] - grow, meets[i] + grow});
    return;
  }
  double from = -kInfinite;
  for (std::size_t i = 0; i < meets.size(); i += 2) {
    blocked.push_back({from, meets[i] + grow});
    from = meets[i + 1] - grow;
  }
  blocked.push_back({from, kInfinite});
}

void Cuts::free(double low, double high, double grow, Free& out) const {
  thread_local Free blocked;
  blocked.clear();
  for (std::size_t i = 0; i < spans_.size(); ++i) {
    if (high < spans_[i].low || low > spans_[i].high) continue;
    const Shape& s = shapes_[i];
    const double bottom = std::max(low, spans_[i].low), top = std::min(high, spans_[i].high);
    // A convex side is farthest out at the height of the farther end, or as near to it as the strip lets.
    const double right = s.right(std::clamp(s.ax > s.bx ? s.ay : s.by, bottom, top));
    const double left = s.left(std::clamp(s.ax < s.bx ? s.ay : s.by, bottom, top));
    blocked.push_back({left - grow, right + grow});
  }
  const double middle = (low + high) / 2;
  for (std::size_t i = 0; i < areas_.size(); ++i) block_ring(areas_[i], middle, i > 0, grow, blocked);
  gaps_between(blocked, along_, out);
}

void Cuts::add_ends(double beside, std::vector<double>& out) const {
  for (const Shape& s : shapes_)
    for (double y : {s.ay, s.by})
      for (double off : {s.reach + beside, -s.reach - beside}) out.push_back(y + off);
}

bool Cuts::is_free(Point p) const {
  thread_local Free here;
  free(p.y, p.y, 0, here);
  return std::any_of(here.begin(), here.end(), [&](const Interval& i) {
    return i.low - kSamePlace <= p.x && p.x <= i.high + kSamePlace;
  });
}

Free met(const Free& a, const Free& b) {
  Free out;
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const Interval shared{std::max(a[i].low, b[j].low), std::min(a[i].high, b[j].high)};
    if (shared.low <= shared.high) out.push_back(shared);
    a[i].high < b[j].high ? ++i : ++j;
  }
  return out;
}

void join(Free& a, const Free& b, double shift) {
  for (const Interval& i : b) a.push_back({i.low + shift, i.high + shift});
  sort_intervals(a);
  std::size_t last = 0;
  for (std::size_t i = 1; i < a.size(); ++i) {
    if (a[i].low <= a[last].high)
      a[last].high = std::max(a[last].high, a[i].high);
    else
      a[++last] = a[i];
  }
  if (!a.empty()) a.resize(last + 1);
}

int packed(const Free& intervals, double pitch, double slack) {
  int sum = 0;
  double at = -kInfinite;
  for (const Interval& i : intervals) {
    const double from = std::max(i.low, at);
    if (from > i.high + slack) continue;
    const int here = static_cast<int>((i.high + slack - from) / pitch) + 1;
    sum += here;
    at = from + here * pitch;
  }
  return sum;
}

}  // namespace underlawn
