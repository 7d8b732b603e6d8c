// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/finite_volumes.h"

#include <Eigen/Sparse>
#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>

namespace underlawn::finite_volumes {
namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Eigen::VectorXd;

double width(const Edges& e, std::size_t i) {
  return e[i + 1] - e[i];
}
double middle(const Edges& e, std::size_t i) {
  return (e[i] + e[i + 1]) / 2;
}

// From `start` outwards by `way` (1 or -1) to `end`; a last sliver joins its neighbour.
void grow(Edges& edges, double start, double end, double fine, double growth, int way) {
  double at = start, step = fine * growth;
  while (way * (end - at) > 1.5 * step) {
    at += way * step;
    edges.push_back(at);
    step *= growth;
  }
  if (way * (end - at) > 1e-12) edges.push_back(end);
}

// Heat between two cells per kelvin: the conductivity times the face over the distance of their middles.
struct Links {
  std::vector<Eigen::Triplet<double>> entries;
  void join(std::size_t a, std::size_t b, double conductance) {
    const int i = static_cast<int>(a), j = static_cast<int>(b);
    entries.push_back({i, i, conductance});
    entries.push_back({j, j, conductance});
    entries.push_back({i, j, -conductance});
    entries.push_back({j, i, -conductance});
  }
};

void join_cell(const Ground& g, std::size_t i, std::size_t j, std::size_t k, Links& links) {
  const double dx = width(g.x, i), dy = width(g.y, j), dz = width(g.z, k), c = g.conductivity;
  const std::size_t here = g.cell(i, j, k), nx = g.x.size() - 1;
  if (i + 1 < nx) links.join(here, g.cell(i + 1, j, k), c * dy * dz / ((dx + width(g.x, i + 1)) / 2));
  if (i + 1 == nx && nx > 1 && g.periodic_x)
    links.join(here, g.cell(0, j, k), c * dy * dz / ((dx + width(g.x, 0)) / 2));
  if (j + 2 < g.y.size()) links.join(here, g.cell(i, j + 1, k), c * dx * dz / ((dy + width(g.y, j + 1)) / 2));
  if (k + 2 < g.z.size()) links.join(here, g.cell(i, j, k + 1), c * dx * dy / ((dz + width(g.z, k + 1)) / 2));
  if (k == 0) {
    const double to_air = dx * dy / (dz / 2 / c + g.surface_resistance);
    links.entries.push_back({static_cast<int>(here), static_cast<int>(here), to_air});
  }
}

Matrix conduction(const Ground& g) {
  Links links;
  for (std::size_t k = 0; k + 1 < g.z.size(); ++k)
    for (std::size_t j = 0; j + 1 < g.y.size(); ++j)
      for (std::size_t i = 0; i + 1 < g.x.size(); ++i) join_cell(g, i, j, k, links);
  const auto n = static_cast<Eigen::Index>(g.cells());
  Matrix m(n, n);
  m.setFromTriplets(links.entries.begin(), links.entries.end());
  return m;
}

VectorXd capacity(const Ground& g) {
  VectorXd c(static_cast<Eigen::Index>(g.cells()));
  for (std::size_t k = 0; k + 1 < g.z.size(); ++k)
    for (std::size_t j = 0; j + 1 < g.y.size(); ++j)
      for (std::size_t i = 0; i + 1 < g.x.size(); ++i)
        c[static_cast<Eigen::Index>(g.cell(i, j, k))] =
            g.heat_capacity * width(g.x, i) * width(g.y, j) * width(g.z, k);
  return c;
}

// A section is solved directly, a volume by conjugate gradients from the step before.
class StepSolver {
 public:
  explicit StepSolver(bool section) : section_(section) {}
  void prepare(const Matrix& m) {
    if (section_)
      direct_.compute(m);
    else
      iterative_.setTolerance(1e-5), iterative_.compute(m);
  }
  VectorXd solve(const VectorXd& right, const VectorXd& guess) {
    return section_ ? VectorXd(direct_.solve(right)) : VectorXd(iterative_.solveWithGuess(right, guess));
  }

 private:
  bool section_;
  Eigen::SimplicialLDLT<Matrix> direct_;
  Eigen::ConjugateGradient<Matrix, Eigen::Lower | Eigen::Upper, Eigen::DiagonalPreconditioner<double>>
      iterative_;
};

// Share of a Gaussian in each cell of an axis.
std::vector<double> shares_along(const Edges& e, double at, double deviation, double period) {
  std::vector<double> out(e.size() - 1, 0.0);
  const int images = period > 0 ? 1 + static_cast<int>(std::ceil(6 * deviation / period)) : 0;
  for (int n = -images; n <= images; ++n)
    for (std::size_t i = 0; i + 1 < e.size(); ++i) {
      const double scale = 1 / (std::numbers::sqrt2 * deviation), to = at + n * period;
      out[i] += (std::erf((e[i + 1] - to) * scale) - std::erf((e[i] - to) * scale)) / 2;
    }
  return out;
}

std::size_t place(const Edges& e, double at) {
  const auto it = std::upper_bound(e.begin(), e.end(), at);
  return std::min<std::size_t>(std::max<std::ptrdiff_t>(it - e.begin() - 1, 0), e.size() - 2);
}

// The two cells whose middles bracket `at`, and the share of the second.
struct Between {
  std::size_t low;
  double share;
};
Between between(const Edges& e, double at) {
  std::size_t i = place(e, at);
  if (i > 0 && at < middle(e, i)) --i;
  i = std::min(i, e.size() - 3);
  return {i, std::clamp((at - middle(e, i)) / (middle(e, i + 1) - middle(e, i)), 0.0, 1.0)};
}

}  // namespace

Edges graded(double low, double from, double to, double high, double fine, double growth) {
  const int count = std::max(1, static_cast<int>(std::ceil((to - from) / fine - 1e-9)));
  Edges edges;
  for (int i = 0; i <= count; ++i) edges.push_back(from + (to - from) * i / count);
  grow(edges, from, low, fine, growth, -1);
  grow(edges, to, high, fine, growth, 1);
  std::sort(edges.begin(), edges.end());
  return edges;
}

Edges equal(double length, int count) {
  Edges edges;
  for (int i = 0; i <= count; ++i) edges.push_back(length * i / count);
  return edges;
}

std::vector<Rise> warm(const Ground& g, double heat, const Weights& given, const Weights& read, double first,
                       double last, int steps) {
  const Matrix k = conduction(g);
  const VectorXd c = capacity(g);
  const auto n = static_cast<Eigen::Index>(g.cells());
  const VectorXd source = heat * Eigen::Map<const VectorXd>(given.data(), n);
  const Eigen::Map<const VectorXd> mean(read.data(), n);
  StepSolver solver(g.x.size() == 2);
  VectorXd rise = VectorXd::Zero(n);
  std::vector<Rise> out;
  double t = 0;
  for (double dt = first; t < last; dt *= 2) {
    Matrix m = k;
    m.diagonal() += c / dt;
    solver.prepare(m);
    for (int i = 0; i < steps && t < last; ++i) {
      rise = solver.solve(source + (c / dt).cwiseProduct(rise), rise);
      t += dt;
      out.push_back({t, mean.dot(rise)});
    }
  }
  return out;
}

double at(const std::vector<Rise>& rises, double t) {
  std::size_t i = 1;
  while (i + 1 < rises.size() && rises[i].t < t) ++i;
  const Rise &a = rises[i - 1], &b = rises[i];
  return a.mean + (b.mean - a.mean) * std::log(t / a.t) / std::log(b.t / a.t);
}

Weights disc(const Ground& g, double y, double z, double radius) {
  constexpr int kAcross = 200;
  Weights out(g.cells(), 0.0);
  double sum = 0;
  for (int a = 0; a < kAcross; ++a)
    for (int b = 0; b < kAcross; ++b) {
      const double dy = (2 * (a + 0.5) / kAcross - 1) * radius, dz = (2 * (b + 0.5) / kAcross - 1) * radius;
      if (dy * dy + dz * dz > radius * radius || y + dy < g.y.front()) continue;
      out[g.cell(0, place(g.y, y + dy), place(g.z, z + dz))] += 1;
      sum += 1;
    }
  for (double& w : out) w /= sum;
  return out;
}

Weights rim(const Ground& g, double y, double z, double radius) {
  constexpr int kRound = 64;
  Weights out(g.cells(), 0.0);
  for (int i = 0; i < kRound; ++i) {
    const double th = 2 * std::numbers::pi * (i + 0.5) / kRound;
    const double aside = y + radius * std::cos(th);
    // beyond a side that mirrors lies the mirrored point
    const Between a = between(g.y, aside < g.y.front() ? 2 * g.y.front() - aside : aside);
    const Between b = between(g.z, z + radius * std::sin(th));
    for (int p = 0; p < 2; ++p)
      for (int q = 0; q < 2; ++q)
        out[g.cell(0, a.low + p, b.low + q)] +=
            (p ? a.share : 1 - a.share) * (q ? b.share : 1 - b.share) / kRound;
  }
  return out;
}

Weights smeared(const Ground& g, const std::vector<std::array<double, 3>>& points,
                const std::vector<double>& shares, Spread spread) {
  Weights out(g.cells(), 0.0);
  const double period = g.periodic_x ? g.x.back() - g.x.front() : 0;
  for (std::size_t p = 0; p < points.size(); ++p) {
    const auto x = shares_along(g.x, points[p][0], spread.along, period);
    const auto y = shares_along(g.y, points[p][1], spread.along, 0);
    const auto z = shares_along(g.z, points[p][2], spread.down, 0);
    for (std::size_t k = 0; k < z.size(); ++k)
      for (std::size_t j = 0; j < y.size(); ++j) {
        if (y[j] * z[k] < 1e-12) continue;
        for (std::size_t i = 0; i < x.size(); ++i) out[g.cell(i, j, k)] += shares[p] * x[i] * y[j] * z[k];
      }
  }
  return out;
}

}  // namespace underlawn::finite_volumes
