// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/exponentials.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace underlawn {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

std::vector<double> log_spaced(double first, double last, int count) {
  std::vector<double> out(count);
  for (int i = 0; i < count; ++i)
    out[i] = first * std::pow(last / first, count > 1 ? i / (count - 1.0) : 0.0);
  return out;
}

// Least squares over the columns in `in`; zero elsewhere.
VectorXd solve_passive(const MatrixXd& a, const VectorXd& b, const std::vector<int>& in) {
  MatrixXd some(a.rows(), in.size());
  for (std::size_t i = 0; i < in.size(); ++i) some.col(i) = a.col(in[i]);
  const VectorXd z = some.colPivHouseholderQr().solve(b);
  VectorXd x = VectorXd::Zero(a.cols());
  for (std::size_t i = 0; i < in.size(); ++i) x[in[i]] = z[i];
  return x;
}

// One step back towards feasibility: moves from x towards z until a passive entry meets zero, and drops it.
void step_back(VectorXd& x, const VectorXd& z, std::vector<int>& passive) {
  double alpha = 1;
  for (int i : passive)
    if (z[i] <= 0) alpha = std::min(alpha, x[i] / (x[i] - z[i]));
  x += alpha * (z - x);
  std::erase_if(passive, [&](int i) { return x[i] <= 1e-14; });
  for (int i = 0; i < x.size(); ++i)
    if (std::find(passive.begin(), passive.end(), i) == passive.end()) x[i] = 0;
}

VectorXd non_negative_least_squares(const MatrixXd& a, const VectorXd& b) {
  VectorXd x = VectorXd::Zero(a.cols());
  std::vector<int> passive;
  for (int round = 0; round < 20 * a.cols(); ++round) {
    const VectorXd gain = a.transpose() * (b - a * x);
    int best = -1;
    for (int i = 0; i < gain.size(); ++i)
      if (std::find(passive.begin(), passive.end(), i) == passive.end() && gain[i] > 1e-11 &&
          (best < 0 || gain[i] > gain[best]))
        best = i;
    if (best < 0) break;
    passive.push_back(best);
    for (int inner = 0; inner < 3 * a.cols(); ++inner) {
      const VectorXd z = solve_passive(a, b, passive);
      const bool feasible = std::all_of(passive.begin(), passive.end(), [&](int i) { return z[i] > 0; });
      if (feasible) {
        x = z;
        break;
      }
      step_back(x, z, passive);
      if (passive.empty()) break;
    }
  }
  return x;
}

}  // namespace

double ExponentialSum::operator()(double t) const {
  double sum = 0;
  for (std::size_t i = 0; i < size.size(); ++i) sum -= size[i] * std::expm1(-t / tau[i]);
  return sum;
}

ExponentialFit fit_exponentials(const std::function<double(double)>& response, double first, double last,
                                int terms) {
  const std::vector<double> times = log_spaced(first, last, 8 * terms);
  const std::vector<double> taus = log_spaced(first / 7, 0.6 * last, terms);
  MatrixXd a(times.size(), terms);
  std::vector<double> exact(times.size());
  for (std::size_t row = 0; row < times.size(); ++row) {
    exact[row] = response(times[row]);
    for (int col = 0; col < terms; ++col) a(row, col) = -std::expm1(-times[row] / taus[col]) / exact[row];
  }
  const VectorXd x = non_negative_least_squares(a, VectorXd::Ones(times.size()));
  ExponentialFit fit;
  for (int i = 0; i < terms; ++i)
    if (x[i] > 0) {
      fit.sum.size.push_back(x[i]);
      fit.sum.tau.push_back(taus[i]);
    }
  for (std::size_t row = 0; row < times.size(); ++row)
    fit.worst_relative_error =
        std::max(fit.worst_relative_error, std::abs(fit.sum(times[row]) / exact[row] - 1));
  return fit;
}

}  // namespace underlawn
