// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace underlawn {

// Runs work(0) to work(n - 1), each once and in no order, on the machine's processors; the calling thread
// takes part. What they write must lie apart, so that the answer does not depend on who did what. `work` must
// not throw.
template <class Work>
void in_parallel(std::size_t n, const Work& work) {
  std::atomic<std::size_t> next = 0;
  const auto take = [&] {
    for (std::size_t i = next++; i < n; i = next++) work(i);
  };
  const std::size_t hands = std::min<std::size_t>(n, std::max(1u, std::thread::hardware_concurrency()));
  std::vector<std::jthread> others;
  for (std::size_t i = 1; i < hands; ++i) others.emplace_back(take);
  take();
}

}  // namespace underlawn
