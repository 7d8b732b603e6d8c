// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/bent.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "plane/region.h"
#include "thermal/coil_kernel.h"

namespace underlawn {
namespace {

using std::numbers::pi;

constexpr double kStep = 0.4;          // of 1/u, along the pipe
constexpr int kLeastAround = 8;        // pieces of a loop
constexpr double kLocalFrom = 60;      // 1/m: beyond, only what is local to the bend is left, as 1/u^2
constexpr double kLongestPiece = 0.5;  // m, of the return pipe

struct Piece {
  Point laid, straight;  // as it lies, and with the trench laid straight
  double z = 0, ds = 0;
};
using Legs = std::vector<std::vector<Piece>>;

// Of a coil in trench coordinates, sorted into legs.
class Pieces {
 public:
  Pieces(const Coil& coil, std::vector<LegAxis> axes, double u) : coil_(coil), axes_(std::move(axes)), u_(u) {
    legs_.resize(axes_.size());
  }

  // `upright`: how far it stands, m from the ground to its lowest pipe; flat without.
  void add_loops(double turns, const double* lowest) {
    if (!(coil_.loops > 0)) return;
    const double radius = coil_.loop_diameter / 2, c = coil_.pitch / (2 * pi);
    const double loop = coil_.loop_pipe / coil_.loops;
    const int around = std::max(kLeastAround, static_cast<int>(std::ceil(loop * u_ / kStep)));
    const int count = static_cast<int>(std::ceil(turns * around));
    const double step = 2 * pi * turns / count;
    for (int i = 0; i < count; ++i) {
      const double th = (i + 0.5) * step;
      const double across = radius * std::sin(th);
      const Point p{radius + c * th - radius * std::cos(th), lowest ? 0 : -across};
      add(p, radius + c * th, lowest ? *lowest - radius + across : 0,
          std::hypot(c + across, radius * std::cos(th)) * step);
    }
  }

  void add_return(double aside, double z) {
    if (!(coil_.return_pipe > 0)) return;
    const int count = static_cast<int>(std::ceil(coil_.return_pipe / std::min(kLongestPiece, kStep / u_)));
    const double ds = coil_.return_pipe / count;
    for (int i = 0; i < count; ++i) add({(i + 0.5) * ds, aside}, (i + 0.5) * ds, z, ds);
  }

  const Legs& legs() const { return legs_; }
  // The pieces of one leg that may be felt in another, as they lie or laid straight.
  std::vector<Piece> near(std::size_t leg, std::size_t other) const {
    const double reach = std::sqrt(kGone) / u_ + coil_.loop_diameter;
    const LegAxis& axis = axes_[other];
    const double from = std::max(0.0, axis.from), to = std::min(axis.to, std::max(from, coil_.trench_length));
    const Segment line{axis.on_lot({from, 0}), axis.on_lot({to, 0})};
    std::vector<Piece> out;
    for (const Piece& p : legs_[leg]) {
      const double off = std::max(from - p.straight.x, p.straight.x - to);
      if (off <= reach || distance(line, p.laid) <= reach) out.push_back(p);
    }
    return out;
  }

 private:
  void add(Point p, double centre, double z, double ds) {
    std::size_t leg = 0;
    while (leg + 1 < axes_.size() && centre >= axes_[leg].to) ++leg;
    legs_[leg].push_back({axes_[leg].on_lot(p), p, z, ds});
  }

  const Coil& coil_;
  std::vector<LegAxis> axes_;
  double u_;
  Legs legs_;
};

double square(Point a, Point b) {
  return dot(a - b, a - b);
}

// Twice the sum over pairs of pieces in different legs; `seen`: the vertical part.
template <class Seen>
double change(const Pieces& pieces, double u, const Seen& seen) {
  const double u2 = u * u;
  double sum = 0;
  for (std::size_t i = 0; i < pieces.legs().size(); ++i)
    for (std::size_t j = i + 1; j < pieces.legs().size(); ++j) {
      const std::vector<Piece> these = pieces.near(i, j), those = pieces.near(j, i);
      for (const Piece& a : these)
        for (const Piece& b : those) {
          const double laid = u2 * square(a.laid, b.laid), straight = u2 * square(a.straight, b.straight);
          if (laid > kGone && straight > kGone) continue;
          sum += a.ds * b.ds * seen(a.z, b.z) * (std::exp(-laid) - std::exp(-straight));
        }
    }
  return 2 * sum;
}

std::vector<LegAxis> axes_of(const CoilInGround& c) {
  return leg_axes(c.head, c.bends, c.end);
}

}  // namespace

std::vector<LegAxis> leg_axes(Point head, const std::vector<Point>& bends, Point end) {
  Polyline line = {head};
  line.insert(line.end(), bends.begin(), bends.end());
  line.push_back(end);
  std::vector<LegAxis> axes;
  double from = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point along = unit(line[i] - line[i - 1]);
    const double to = from + distance(line[i - 1], line[i]);
    axes.push_back({line[i - 1] - from * along, along, from, to});
    from = to;
  }
  axes.front().from = -std::numeric_limits<double>::infinity();
  axes.back().to = std::numeric_limits<double>::infinity();
  return axes;
}

std::vector<LegPiece> cut_at_bends(double from, double to, double centre, const std::vector<LegAxis>& legs) {
  std::vector<LegPiece> out;
  for (const LegAxis& leg : legs) {
    const double begin = std::max(from, leg.from - centre), stop = std::min(to, leg.to - centre);
    if (stop > begin) out.push_back({leg, begin, stop});
  }
  return out;
}

std::vector<LaidStrand> laid_strands(const CoilInGround& c, int around) {
  const std::vector<LegAxis> legs = axes_of(c);
  std::vector<LaidStrand> out;
  for (const Strand& s : coil_strands(c.coil, c.return_offset, around)) {
    const double length = distance(s.line.a, s.line.b);
    if (!(length > 0)) continue;
    const double centre = s.loops ? c.coil.loop_diameter / 2 - s.line.a.x : 0, y = s.line.a.y;
    for (const LegPiece& p : cut_at_bends(s.line.a.x, s.line.b.x, centre, legs))
      out.push_back({{p.leg.on_lot({p.from, y}), p.leg.on_lot({p.to, y})}, s.pipe / length});
  }
  return out;
}

KernelTable change_by_bends(const CoilInGround& c) {
  KernelTable table{};
  if (c.bends.empty()) return table;
  double last = 0;
  for (int n = 0; n < kKernelNodes; ++n) {
    const double u = kernel_node(n);
    if (u > kLocalFrom) {
      table[n] = last / (u * u);
      continue;
    }
    Pieces pieces(c.coil, axes_of(c), u);
    pieces.add_loops(c.coil.loops, nullptr);
    pieces.add_return(c.return_offset, 0);
    table[n] = change(pieces, u, [](double, double) { return 1.0; });
    last = table[n] * u * u;
  }
  return table;
}

KernelTable change_by_bends(const UprightInGround& c, double image_raise) {
  KernelTable table{};
  if (c.bends.empty()) return table;
  double last = 0;
  for (int n = 0; n < kKernelNodes; ++n) {
    const double u = kernel_node(n), u2 = u * u;
    const double wall = std::exp(-u2 * c.pipe_radius * c.pipe_radius);
    if (u > kLocalFrom) {
      table[n] = last / u2 * wall;
      continue;
    }
    Pieces pieces(c.coil, leg_axes(c.head, c.bends, c.end), u);
    pieces.add_loops(angle_at_stop(c.coil) / (2 * pi), &c.depth);
    pieces.add_return(c.return_offset(), c.return_depth());
    table[n] = change(pieces, u, [&](double za, double zb) {
      const double dz = za - zb, up = za + zb + 2 * image_raise;
      return wall * std::exp(-u2 * dz * dz) - std::exp(-u2 * up * up);
    });
    last = table[n] * u2 / wall;
  }
  return table;
}

}  // namespace underlawn
