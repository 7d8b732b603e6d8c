// SPDX-License-Identifier: GPL-3.0-or-later
// Heat conduction in a box of ground by finite volumes and backward Euler (Patankar, Numerical Heat Transfer
// and Fluid Flow, 1980, ch. 4), from the ground's own temperature. It knows nothing of sources, images or
// kernels.
#pragma once

#include <array>
#include <functional>
#include <vector>

namespace underlawn::finite_volumes {

// Edges of the cells along one axis, rising, m.
using Edges = std::vector<double>;

// Cells of `fine` m between `from` and `to`, each next one `growth` times as wide out to `low` and `high`.
Edges graded(double low, double from, double to, double high, double fine, double growth);
// `count` equal cells from 0 to `length`.
Edges equal(double length, int count);

// Share of each cell, adding up to 1.
using Weights = std::vector<double>;

struct Ground {
  Edges x, y, z;  // z down from the surface; every side but the surface passes no heat
  bool periodic_x = false;
  double conductivity = 1;        // W/(m K)
  double heat_capacity = 1;       // J/(m3 K)
  double surface_resistance = 0;  // m2 K/W, between the surface and what stays at 0
  std::size_t cells() const { return (x.size() - 1) * (y.size() - 1) * (z.size() - 1); }
  std::size_t cell(std::size_t i, std::size_t j, std::size_t k) const {
    return (k * (y.size() - 1) + j) * (x.size() - 1) + i;
  }
};

struct Rise {
  double t = 0;  // s
  double mean = 0;
};

// `heat` W from t = 0, spread as `given`; the mean by `read` at steps that double every `steps` of them, from
// the first of `first` s until past `last` s.
std::vector<Rise> warm(const Ground& ground, double heat, const Weights& given, const Weights& read,
                       double first, double last, int steps);
// Between the steps, linear in ln t.
double at(const std::vector<Rise>& rises, double t);

// A disc of radius r about (y, z) in a section (one cell along x), by samples.
Weights disc(const Ground& ground, double y, double z, double radius);
// Its rim, linear between the cells' middles.
Weights rim(const Ground& ground, double y, double z, double radius);

struct Spread {
  double along = 0, down = 0;  // m, standard deviations in the plan (x, y) and in z
};
// Points of equal share, each spread as a Gaussian cut to the cells; periodic along x where the ground is.
Weights smeared(const Ground& ground, const std::vector<std::array<double, 3>>& points,
                const std::vector<double>& shares, Spread spread);

}  // namespace underlawn::finite_volumes
