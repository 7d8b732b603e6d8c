// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/pair_kernels.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "thermal/coil_kernel.h"

using namespace underlawn;

namespace {

PipesInGround small_field() {
  Coil coil;
  coil.loop_diameter = 0.9144;
  coil.pitch = 0.5;
  coil.loops = 20;
  coil.trench_length = coil.return_pipe = 20 * 0.5 + 0.9144;
  coil.loop_pipe = 20 * loop_length(0.9144, 0.5);
  PipesInGround out;
  for (int i = 0; i < 3; ++i)
    out.coils.push_back({{0, 3.5 * i}, {10.9, 3.5 * i + 0.2}, coil, 0.4, 1.8, 0.0133});
  out.pipes.push_back({{{-0.2, 0}, {-0.4, 7}}, 1.5, 0.021});
  out.pipes.push_back({{{-0.5, 0}, {-0.7, 7}}, 1.5, 0.021});
  return out;
}

// From nothing and with the kept pairs: the same to the last bit.
void expect_same(const PipesInGround& pipes, PairKernels& kept) {
  const std::vector<KernelTable> self(pipes.coils.size(), coil_kernel(small_field().coils[0].coil, 0.4));
  const StepResponse with = make_step_response(pipes, self, 0.1, kept);
  const StepResponse without = make_step_response(pipes, self, 0.1);
  for (double t = 3600; t < 1e9; t *= 3) EXPECT_EQ(with(1.4, 6e-7, t), without(1.4, 6e-7, t)) << t;
}

}  // namespace

TEST(PairKernels, KeptOnesAnswerAsNewOnesWhateverChanges) {
  PairKernels kept;
  PipesInGround pipes = small_field();
  expect_same(pipes, kept);
  pipes.coils[1].head.y += 0.3;
  expect_same(pipes, kept);
  for (CoilInGround& c : pipes.coils) c.depth = 1.2;
  expect_same(pipes, kept);
  pipes.coils[0].return_offset = -0.4;
  expect_same(pipes, kept);
  std::swap(pipes.coils[0], pipes.coils[2]);
  std::swap(pipes.pipes[0], pipes.pipes[1]);
  expect_same(pipes, kept);
  pipes.coils.erase(pipes.coils.begin());
  pipes.pipes.push_back({{{-1, 3}, {-9, 4}}, 1.5, 0.021});
  expect_same(pipes, kept);
  pipes.coils[0].coil.loops = 12.4;
  expect_same(pipes, kept);
  pipes.pipes.push_back(pipes.pipes.back());  // one on top of the other
  expect_same(pipes, kept);
  expect_same(small_field(), kept);
}
