// SPDX-License-Identifier: GPL-3.0-or-later
// The thermal stage: from a laid field to the water temperatures of decades.
#pragma once

#include <stop_token>
#include <string>
#include <vector>

#include "base/result.h"
#include "layout/layout.h"
#include "thermal/circulation.h"
#include "thermal/kernel_nodes.h"
#include "thermal/pair_kernels.h"
#include "thermal/simulate.h"
#include "thermal/step_response.h"
#include "thermal/surroundings.h"

namespace underlawn {

// What the laid pipes' kernels are, kept while the rest of the field moves: the dear part of the stage.
class KernelShelf {
 public:
  // coil_kernel of a coil shape.
  const KernelTable& of(const Coil& coil, double return_offset);
  // The same of a coil that may bend with its trench.
  const KernelTable& of(const CoilInGround& coil);
  // upright_kernel of a coil shape at its depth.
  const KernelTable& of(const UprightInGround& coil, double image_raise);
  // As make_step_response takes them.
  std::vector<KernelTable> all_of(const PipesInGround& pipes, double image_raise);

  PairKernels pairs;

 private:
  struct Kept {
    Coil coil;
    double return_offset = 0;
    KernelTable table;
  };
  struct KeptBent {
    CoilInGround coil;
    KernelTable table;
  };
  struct KeptUpright {
    UprightInGround coil;
    double image_raise = 0;
    KernelTable table;
  };
  std::vector<Kept> kept_;  // a handful, oldest dropped
  std::vector<KeptBent> bent_;
  std::vector<KeptUpright> upright_;
};

struct Temperatures {
  double pipe = 0;  // m that exchange heat: coils, header and run
  Circulation circulation;
  double response_hour = 0, response_month = 0, response_ten_years = 0;  // m K/W
  double fit_error = 0;        // worst of the exponentials, relative
  double depth = 0;            // m, mean over the pipe
  std::vector<double> ground;  // deg C, undisturbed at the pipes' depths, by hour
  Simulation simulation;
  int years = 0;
};

// k R(t) needs only the geometry; `image_raise` as in make_step_response.
StepResponse step_response_of(const PipesInGround& pipes, double image_raise, KernelShelf& shelf);

// The field must have pipe, and the circulation a flow. Asked to stop, the years done so far.
Temperatures solve_temperatures(const PipesInGround& pipes, const Surroundings& surroundings,
                                const ThermalWishes& wishes, const Circulation& circulation,
                                KernelShelf& shelf, std::stop_token stop = {});
// The same with a response that is kept while soil, house or climate change.
Temperatures solve_temperatures(const PipesInGround& pipes, const StepResponse& response,
                                const Surroundings& surroundings, const ThermalWishes& wishes,
                                const Circulation& circulation, std::stop_token stop = {});

}  // namespace underlawn
