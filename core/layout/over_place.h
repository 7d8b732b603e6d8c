// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches over one place, and what is in the way of each.
#pragma once

#include "layout/capsule.h"

namespace underlawn {

// Something that a trench's floor keeps off.
struct InWay {
  std::vector<Capsule> capsules;
  std::vector<Ring> areas;  // nothing may lie inside; of the lot, outside
  bool lot = false;
  double spare = 0;   // m that it may reach over one end of the trench, which is then the head
  double weight = 0;  // how hard it is to be rid of
};

// A straight line through the place, or beside it by less than half a trench's width.
struct LineOver {
  Point at;          // on the line, next to the place
  double angle = 0;  // rad
};

struct TrenchOver {
  Segment line;
  double weight = 1e300;              // of all that is in its way
  double within = 1e300;              // m that it would have to go along its line to be out of it, in sum
  std::vector<std::size_t> blockers;  // what that is
};

class LineCut {
 public:
  // `all` stays alive as long as it.
  LineCut(const std::vector<InWay>& all, const LineOver& line, double trench_width);

  // The trench of that length over the place with the least in its way. What `goes_with(i, hit)` says goes
  // with others that are hit is not counted.
  template <class GoesWith>
  TrenchOver easiest(double length, const GoesWith& goes_with) const {
    TrenchOver best;
    std::vector<char> hit(all_.size());
    for (double from : starts(length)) {
      const double within = mark(from, length, hit);
      TrenchOver t{{line_.at + from * u_, line_.at + (from + length) * u_}, 0, within, {}};
      for (std::size_t i = 0; i < hit.size(); ++i)
        if (hit[i] && !goes_with(i, hit)) t.blockers.push_back(i), t.weight += all_[i].weight;
      if (t.weight < best.weight || (t.weight == best.weight && within < best.within - kNearly))
        best = std::move(t);
    }
    return best;
  }
  // m of line about the place that none of the first `count` things is in the way of.
  double open(std::size_t count) const;

 private:
  static constexpr double kNearly = 1e-6;  // m
  struct Blocked {
    double low, high;  // m along the line, from the place
    std::size_t by;
  };
  void cut(const Capsule& c, std::size_t by);
  void cut(const Ring& area, bool lot, std::size_t by);
  std::vector<double> starts(double length) const;
  double mark(double from, double length, std::vector<char>& hit) const;

  const std::vector<InWay>& all_;
  LineOver line_;
  Point u_;
  double half_;
  std::vector<Blocked> blocked_;
};

}  // namespace underlawn
