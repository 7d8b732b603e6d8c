// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/exponentials.h"

#include <gtest/gtest.h>

#include <boost/math/special_functions/expint.hpp>
#include <cmath>

#include "thermal/coil_kernel.h"
#include "thermal/step_response.h"

using namespace underlawn;

// It never settles, so it is the hardest: 0.1 %.
TEST(Exponentials, HoldTheInfiniteLineSourceFromAnHourToDecades) {
  const auto line = [](double t) { return boost::math::expint(1, 0.0134 * 0.0134 / (4 * 6e-7 * t)); };
  EXPECT_LT(fit_exponentials(line, 3600, 30 * 8766 * 3600.0, 16).worst_relative_error, 1e-3);
}

TEST(Exponentials, HoldATenthOfAPercentOfAFieldOfCoilsOverDecades) {
  PipesInGround pipes;
  Coil coil;
  coil.loop_diameter = 0.9144;
  coil.pitch = 0.42;
  coil.loops = 70;
  coil.trench_length = coil.return_pipe = 70 * 0.42 + 0.9144;
  coil.loop_pipe = 70 * 2.88;
  for (int i = 0; i < 4; ++i) pipes.coils.push_back({{0, 3.6 * i}, {1, 3.6 * i}, coil, 0, 1.8, 0.01335});
  const StepResponse r = make_step_response(pipes, std::vector<KernelTable>(4, coil_kernel(coil, 0)), 0.1);
  const auto response = [&](double t) { return r(1.4, 6e-7, t); };
  const ExponentialFit twelve = fit_exponentials(response, 3600, 30 * 8766 * 3600.0, 12);
  const ExponentialFit sixteen = fit_exponentials(response, 3600, 30 * 8766 * 3600.0, 16);
  EXPECT_LT(twelve.worst_relative_error, 1.5e-3);
  EXPECT_LT(sixteen.worst_relative_error, 3e-4);
  for (double size : sixteen.sum.size) EXPECT_GT(size, 0);
}
