// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "field/trench.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

// The lines across a trench: square to it, but next to a bend swung over to the corner's mitre.
class Across {
 public:
  Across(const Polyline& line, double width) : line_(line) {
    double s = 0;
    for (std::size_t i = 1; i < line.size(); ++i) {
      const double long_ = distance(line[i - 1], line[i]);
      legs_.push_back({s, std::min(width, long_ / 2), unit(line[i] - line[i - 1])});
      s += long_;
    }
    for (std::size_t i = 0; i < legs_.size(); ++i) {
      const Leg& leg = legs_[i];
      if (i > 0) add_turns({leg.from, leg.from + leg.swing});
      if (i + 1 < legs_.size()) add_turns({legs_[i + 1].from - leg.swing});
    }
  }

  Point at(double s, double aside) const {
    std::size_t i = 0;
    while (i + 1 < legs_.size() && s > legs_[i + 1].from) ++i;
    const Leg& leg = legs_[i];
    const double in = s - leg.from;
    Point across = left_normal(leg.along);
    if (i > 0 && in < leg.swing) across = swung(across, i - 1, in / leg.swing);
    if (i + 1 < legs_.size() && legs_[i + 1].from - s < leg.swing)
      across = swung(across, i, (legs_[i + 1].from - s) / leg.swing);
    return line_[i] + in * leg.along + aside * across;
  }

  // Where along the trench a straight line in it bends on the lot, between two places, in order.
  std::vector<double> between(double from, double to) const {
    std::vector<double> out;
    for (double s : turns_)
      if (s > std::min(from, to) && s < std::max(from, to)) out.push_back(s);
    if (from > to) std::reverse(out.begin(), out.end());
    return out;
  }

 private:
  struct Leg {
    double from, swing;  // m along the trench; m over which the lines across swing
    Point along;
  };
  void add_turns(const std::vector<double>& more) { turns_.insert(turns_.end(), more.begin(), more.end()); }
  Point swung(Point square, std::size_t before, double share) const {
    const Point u = legs_[before].along, v = legs_[before + 1].along;
    const bool sharp = dot(u, v) < -0.5;  // beyond kMitredTurn
    const Point corner = sharp ? left_normal(u) : mitre(u, v, 1);
    return share * square + (1 - share) * corner;
  }
  const Polyline& line_;
  std::vector<Leg> legs_;
  std::vector<double> turns_;
};

}  // namespace

Polyline on_lot(const Trench& t, const Polyline& in_trench) {
  const Polyline line = without_idle_points(middle_line(t));
  const Across across(line, t.width);
  Polyline out;
  for (std::size_t i = 0; i < in_trench.size(); ++i) {
    const Point p = in_trench[i];
    if (i > 0) {
      const Point q = in_trench[i - 1];
      for (double s : across.between(q.x, p.x))
        out.push_back(across.at(s, q.y + (s - q.x) / (p.x - q.x) * (p.y - q.y)));
    }
    out.push_back(across.at(p.x, p.y));
  }
  return out;
}

}  // namespace underlawn
