// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/pipe_size.h"

#include <algorithm>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr double kInch = 0.0254;  // m, exactly

struct Nominal {
  std::string_view name;
  double outside;     // in, ASTM D3035
  double wall_dr[3];  // in, minimum wall at DR 9, 11, 13.5; thinner walls are outside diameter / DR
};

// Walls as printed for D3035 pipe at interstateplastic.com/public/hdpe.
constexpr Nominal kNominals[] = {
    {"3/4 in", 1.050, {0.117, 0.095, 0.078}},   {"1 in", 1.315, {0.146, 0.120, 0.097}},
    {"1-1/4 in", 1.660, {0.184, 0.151, 0.123}}, {"1-1/2 in", 1.900, {0.211, 0.173, 0.141}},
    {"2 in", 2.375, {0.264, 0.216, 0.176}},     {"3 in", 3.500, {0.389, 0.318, 0.259}},
};
constexpr double kRatios[] = {9, 11, 13.5, 15.5, 17};
constexpr std::string_view kRatioNames[] = {"9", "11", "13.5", "15.5", "17"};
constexpr double kLeastWall = 0.062;  // in, the least by 49 CFR 192.123(c); D3035 (from memory) the same

double minimum_wall(const Nominal& n, std::size_t ratio) {
  return ratio < 3 ? n.wall_dr[ratio] : std::max(kLeastWall, n.outside / kRatios[ratio]);
}

PipeSize make(const Nominal& n, std::size_t ratio) {
  PipeSize size;
  size.nominal = n.name;
  size.name = size.nominal + " DR " + std::string(kRatioNames[ratio]);
  size.dr = kRatios[ratio];
  size.outside_diameter = n.outside * kInch;
  size.minimum_wall = minimum_wall(n, ratio) * kInch;
  return size;
}

std::vector<PipeSize> make_all() {
  std::vector<PipeSize> all;
  for (const Nominal& n : kNominals)
    for (std::size_t ratio = 0; ratio < std::size(kRatios); ++ratio) all.push_back(make(n, ratio));
  return all;
}

std::string all_names() {
  std::string names;
  for (const PipeSize& size : pipe_sizes()) names += (names.empty() ? "" : ", ") + size.name;
  return names;
}

}  // namespace

// PPI Handbook of PE Pipe, minimum bend in an open-cut trench, and makers' tables: 20 (some 25) for DR 9, 25
// for DR 11 and 13.5, 27 for DR 17 and 21. The larger of a range is taken, and 27 already for DR 15.5.
double PipeSize::least_bend_radius() const {
  return (dr <= 13.5 ? 25 : 27) * outside_diameter;
}

const std::vector<PipeSize>& pipe_sizes() {
  static const std::vector<PipeSize> sizes = make_all();
  return sizes;
}

Result<PipeSize> find_pipe(std::string_view name) {
  for (const PipeSize& size : pipe_sizes())
    if (size.name == name) return size;
  return refuse({"pipe_unknown", say("pipe"), "\"" + std::string(name.substr(0, 60)) + "\"",
                 say("one of {}", all_names()), say("Choose a pipe from the list.")});
}

}  // namespace underlawn
