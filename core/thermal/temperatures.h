// SPDX-License-Identifier: GPL-3.0-or-later
// The thermal stage: from a laid field to the water temperatures of decades.
#pragma once

#include <map>
#include <stop_token>
#include <string>
#include <vector>

#include "base/result.h"
#include "layout/layout.h"
#include "thermal/kernel_nodes.h"
#include "thermal/pair_kernels.h"
#include "thermal/simulate.h"
#include "thermal/thermal_wishes.h"

namespace underlawn {

// What is asked of the loop, with its numbers checked. Each trouble names a field of ThermalWishes.
std::vector<Trouble> thermal_troubles(const ThermalWishes& wishes);

// What the laid pipes' kernels are, kept while the rest of the field moves: the dear part of the stage.
class KernelShelf {
 public:
  // coil_kernel of a coil shape.
  const KernelTable& of(const Coil& coil, double return_offset);

  PairKernels pairs;

 private:
  struct Kept {
    Coil coil;
    double return_offset = 0;
    KernelTable table;
  };
  std::vector<Kept> kept_;  // a handful, oldest dropped
};

struct Temperatures {
  double pipe = 0;  // m that exchange heat: coils, header and run
  double fluid_resistance =
      0;                // m K/W, wall and film, at the coldest entering temperature, mean over the coils
  double reynolds = 0;  // in a coil, at design flow and the coldest allowed temperature
  double response_hour = 0, response_month = 0, response_ten_years = 0;  // m K/W
  double fit_error = 0;  // worst relative error of the exponentials
  Simulation simulation;
  HouseYear house;
  std::vector<double> ground;     // deg C, undisturbed at pipe depth, by hour
  std::vector<double> outdoor;    // deg C, by hour
  std::vector<Trouble> troubles;  // why nothing is here
};

// Empty simulation and a trouble where the field has no pipe or the wishes are unsound.
Temperatures solve_temperatures(const Layout& layout, const Wishes& wishes, const ThermalWishes& thermal,
                                KernelShelf& shelf, std::stop_token stop = {});

}  // namespace underlawn
