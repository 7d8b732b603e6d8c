// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/shared_stretch.h"

#include <algorithm>
#include <optional>

#include "dig/dig.h"

namespace underlawn {

namespace {

struct Span {
  double from = 0, to = 1;  // part of a segment, as fractions of it
  double length() const { return std::max(0.0, to - from); }
};

// Keeps the part of the span where start + fraction * change lies between low and high.
void clip(Span& span, double start, double change, double low, double high) {
  if (change == 0) {
    if (start < low || start > high) span.to = span.from;
    return;
  }
  const double at_low = (low - start) / change, at_high = (high - start) / change;
  span.from = std::max(span.from, std::min(at_low, at_high));
  span.to = std::min(span.to, std::max(at_low, at_high));
}

Span on_floor(Point a, Point b, const Segment& leg, double width) {
  const Point along = unit(leg.b - leg.a);
  const Point across = left_normal(along);
  Span span;
  clip(span, dot(a - leg.a, along), dot(b - a, along), 0, distance(leg.a, leg.b));
  clip(span, dot(a - leg.a, across), dot(b - a, across), -width / 2, width / 2);
  return span;
}

// What of the segment lies on those floors, apart and rising.
std::vector<Span> shared_spans(Point a, Point b, const std::vector<Trench>& trenches) {
  std::vector<Span> spans;
  for (const Trench& trench : trenches) {
    if (trench.role != TrenchRole::supply) continue;
    const Polyline floor = middle_line(trench);
    for (std::size_t leg = 1; leg < floor.size(); ++leg)
      if (distance(floor[leg - 1], floor[leg]) >= kSamePlace)
        spans.push_back(on_floor(a, b, {floor[leg - 1], floor[leg]}, trench.width));
  }
  std::erase_if(spans, [](const Span& s) { return !(s.length() > 0); });
  std::sort(spans.begin(), spans.end(), [](const Span& l, const Span& r) { return l.from < r.from; });
  std::vector<Span> apart;
  for (const Span& s : spans)
    if (!apart.empty() && s.from <= apart.back().to)
      apart.back().to = std::max(apart.back().to, s.to);
    else
      apart.push_back(s);
  return apart;
}

class Splitter {
 public:
  void add(Point a, Point b, bool shared) {
    if (distance(a, b) < kSamePlace) return;
    std::vector<Polyline>& parts = shared ? parts_.shared : parts_.own;
    if (parts.empty() || !same_kind(shared)) parts.push_back({a});
    parts.back().push_back(b);
    last_ = shared;
  }
  SharedParts take() { return std::move(parts_); }

 private:
  bool same_kind(bool shared) const { return last_ && *last_ == shared; }
  SharedParts parts_;
  std::optional<bool> last_;
};

}  // namespace

SharedParts parts_shared(const Polyline& line, const std::vector<Trench>& trenches) {
  Splitter splitter;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point a = line[i - 1], change = line[i] - a;
    double at = 0;
    for (const Span& span : shared_spans(a, line[i], trenches)) {
      splitter.add(a + at * change, a + span.from * change, false);
      splitter.add(a + span.from * change, a + span.to * change, true);
      at = span.to;
    }
    splitter.add(a + at * change, line[i], false);
  }
  return splitter.take();
}

double stretch_in_supply_trenches(const Polyline& line, const std::vector<Trench>& trenches) {
  double stretch = 0;
  for (const Polyline& part : parts_shared(line, trenches).shared) stretch += length(part);
  return stretch;
}

}  // namespace underlawn
