// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/cuts.h"

#include <functional>

namespace underlawn {

namespace {

constexpr double kInfinite = 1e9;
constexpr double kTouching = 1e-6;  // m: a strip that reaches no farther into a thing touches it

Point on_axis(Point p, const Turn& turn, Axis axis) {
  const Point t = turn.there(p);
  return axis == Axis::x ? t : Point{t.y, t.x};
}

// For few, and for what is nearly in order.
template <class T, class Before>
void insert_in_order(T* first, T* last, Before before) {
  for (T* i = first + (first != last); i < last; ++i) {
    const T moved = *i;
    T* to = i;
    for (; to != first && before(moved, *(to - 1)); --to) *to = *(to - 1);
    *to = moved;
  }
}

template <class T, class Before>
void sort_few(T* first, T* last, Before before) {
  last - first > 16 ? std::sort(first, last, before) : insert_in_order(first, last, before);
}

bool before(const Interval& l, const Interval& r) {
  return l.low < r.low;
}

// The parts of `within` that nothing blocks.
void gaps_between(Interval* blocked, Interval* end, Interval within, Free& out) {
  insert_in_order(blocked, end, before);
  double from = within.low;
  for (; blocked != end && blocked->low < within.high; ++blocked) {
    if (blocked->low >= from) out.push_back({from, blocked->low});
    from = std::max(from, blocked->high);
  }
  if (from <= within.high) out.push_back({from, within.high});
}

// Used again and again.
struct Room {
  std::vector<Interval> blocked;
  std::vector<double> meets;
  std::vector<std::uint32_t> met;
  void hold(std::size_t capsules, std::size_t sides) {
    if (blocked.size() < capsules + sides + 2) blocked.resize(capsules + sides + 2);
    if (meets.size() < sides) meets.resize(sides);
    if (met.size() < capsules + 1) met.resize(capsules + 1);
  }
};

}  // namespace

Cuts::Cuts(const Confines& ground, const Turn& turn, Axis axis, double wider) {
  const std::size_t n = ground.capsules.size();
  thread_local std::vector<Capsule> turned;  // used again and again
  turned.clear();
  for (const Capsule& k : ground.capsules) {
    Point a = on_axis(k.a, turn, axis), b = on_axis(k.b, turn, axis);
    if (a.y > b.y) std::swap(a, b);
    turned.push_back({a, b, k.reach + wider});
  }
  // In the order along the strips, so that what blocks one is nearly in order.
  std::sort(turned.begin(), turned.end(), [](const Capsule& l, const Capsule& r) {
    return std::min(l.a.x, l.b.x) - l.reach < std::min(r.a.x, r.b.x) - r.reach;
  });
  spans_.reserve(n);
  shapes_.reserve(n);
  for (const Capsule& k : turned) {
    spans_.push_back({k.a.y - k.reach, k.b.y + k.reach});
    shapes_.push_back(shape_of(k.a, k.b, k.reach));
  }
  std::size_t sides = ground.lot.size();
  for (const Ring& ring : ground.areas) sides += ring.size();
  sides_.reserve(sides);
  areas_.reserve(1 + ground.areas.size());
  add_area(ground.lot, turn, axis);
  for (const Ring& ring : ground.areas) add_area(ring, turn, axis);
}

Cuts::Shape Cuts::shape_of(Point a, Point b, double reach) {
  const double rise = b.y - a.y, run = b.x - a.x;
  const double right_end = a.x > b.x ? a.y : b.y, left_end = a.x < b.x ? a.y : b.y;
  if (!(rise > 0)) {
    const double right = std::max(a.x, b.x), left = std::min(a.x, b.x);
    return {a.y,
            b.y,
            reach,
            0,
            0,
            {kInfinite, kInfinite, right, right, right, right_end, right + reach},
            {kInfinite, kInfinite, left, left, left, left_end, left - reach}};
  }
  const double long_ = std::sqrt(rise * rise + run * run);
  const double beside = reach * rise / long_, drop = reach * run / long_;
  return {a.y,
          b.y,
          reach,
          run / rise,
          drop,
          {a.y - drop, b.y - drop, a.x, b.x, a.x + beside, right_end, std::max(a.x, b.x) + reach},
          {a.y + drop, b.y + drop, a.x, b.x, a.x - beside, left_end, std::min(a.x, b.x) - reach}};
}

void Cuts::add_area(const Ring& ring, const Turn& turn, Axis axis) {
  Area area{sides_.size(), sides_.size(), kInfinite, -kInfinite};
  Interval along{kInfinite, -kInfinite};
  Point a = ring.empty() ? Point{} : on_axis(ring.front(), turn, axis);
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point b = on_axis(ring[(i + 1) % ring.size()], turn, axis);
    sides_.push_back({a.x, a.y, b.y, (b.x - a.x) / (b.y - a.y)});
    area.low = std::min(area.low, a.y);
    area.high = std::max(area.high, a.y);
    along = {std::min(along.low, a.x), std::max(along.high, a.x)};
    a = b;
  }
  area.last = sides_.size();
  if (areas_.empty()) along_ = along;
  areas_.push_back(area);
}

// Where the line across = at meets an area's sides, in order.
double* Cuts::crossed(const Area& area, double at, double* meets) const {
  double* last = meets;
  if (area.low <= at && at <= area.high)
    for (std::size_t i = area.first; i < area.last; ++i) {
      const Side& s = sides_[i];
      if ((s.ay > at) != (s.by > at)) *last++ = s.ax + (at - s.ay) * s.slope;
    }
  sort_few(meets, last, std::less<>());
  return last;
}

// The inside of all but the lot, on the line across = at.
Interval* Cuts::block_areas(double at, double grow, Interval* blocked, double* meets) const {
  for (std::size_t i = 1; i < areas_.size(); ++i) {
    double* end = crossed(areas_[i], at, meets);
    for (double* m = meets; m < end; m += 2) *blocked++ = {m[0] - grow, m[1] + grow};
  }
  return blocked;
}

Interval* Cuts::block(double low, double high, double grow, std::uint32_t* met, Interval* blocked) const {
  // Which are met is found without a branch, that no guess of the processor goes wrong on it.
  const std::uint32_t* const first = met;
  for (std::uint32_t i = 0; i < spans_.size(); ++i) {
    *met = i;
    met += static_cast<int>(high >= spans_[i].low + kTouching) &
           static_cast<int>(low <= spans_[i].high - kTouching);
  }
  for (const std::uint32_t* i = first; i != met; ++i) {
    const Shape& s = shapes_[*i];
    const double bottom = std::max(low, spans_[*i].low), top = std::min(high, spans_[*i].high);
    // A convex side is farthest out at the height of the farther end, or as near to it as the strip lets.
    const auto within = [&](double y) { return bottom <= y && y <= top; };
    const auto nearest = [&](double y) { return y < bottom ? bottom : top; };
    const double right = within(s.right.farthest) ? s.right.out : s.right_at(nearest(s.right.farthest));
    const double left = within(s.left.farthest) ? s.left.out : s.left_at(nearest(s.left.farthest));
    *blocked++ = {left - grow, right + grow};
  }
  return blocked;
}

void Cuts::free(double low, double high, double grow, Free& out) const {
  thread_local Room room;
  room.hold(spans_.size(), sides_.size());
  out.clear();
  const double at = (low + high) / 2;
  double* meets = room.meets.data();
  double* end = crossed(areas_.front(), at, meets);
  if (end == meets) return;
  const Interval inside{std::max(along_.low, meets[0] + grow), std::min(along_.high, end[-1] - grow)};
  Interval* blocked = room.blocked.data();
  for (const double* m = meets + 1; m + 1 < end; m += 2) *blocked++ = {m[0] - grow, m[1] + grow};
  blocked = block_areas(at, grow, blocked, meets);
  blocked = block(low, high, grow, room.met.data(), blocked);
  gaps_between(room.blocked.data(), blocked, inside, out);
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

void met(const Free& a, const Free& b, Free& out) {
  out.clear();
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const Interval shared{std::max(a[i].low, b[j].low), std::min(a[i].high, b[j].high)};
    if (shared.low <= shared.high) out.push_back(shared);
    a[i].high < b[j].high ? ++i : ++j;
  }
}

void join(Free& a, const Free& b, double shift) {
  for (const Interval& i : b) a.push_back({i.low + shift, i.high + shift});
  sort_few(a.data(), a.data() + a.size(), before);
  std::size_t last = 0;
  for (std::size_t i = 1; i < a.size(); ++i) {
    if (a[i].low <= a[last].high)
      a[last].high = std::max(a[last].high, a[i].high);
    else
      a[++last] = a[i];
  }
  if (!a.empty()) a.resize(last + 1);
}

int packed(FreeView intervals, double pitch, double slack) {
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
