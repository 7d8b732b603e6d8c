// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes a loop on a thread of its own, with progress, until done or stopped.
#pragma once

#include <memory>
#include <optional>

#include "plan/sizing/chance.h"
#include "plan/sizing/size_loop.h"
#include "window/long_work.h"

namespace underlawn {

// A sizing together with the plan it is of.
struct SizeAnswer {
  Plan plan;
  Result<LoopSizing> sizing;
  std::optional<Chance> chance;  // none where nothing is laid, or none was asked for
};

class SizeService : public LongWork {
  Q_OBJECT

 public:
  using LongWork::LongWork;

  // Begins and returns at once; nothing where one runs already. `draws` 0: no chance.
  void start(Plan plan, int draws);
  std::shared_ptr<const SizeAnswer> newest() const { return newest_; }  // null before the first

 private:
  std::shared_ptr<const SizeAnswer> newest_;
};

}  // namespace underlawn
