// SPDX-License-Identifier: GPL-3.0-or-later
// Finds other ways to lay a loop on a thread of its own, with progress, until done or stopped.
#pragma once

#include <memory>
#include <optional>

#include "plan/ways.h"
#include "window/long_work.h"

namespace underlawn {

// The ways together with the plan they are of.
struct WaysAnswer {
  Plan plan;
  std::vector<Way> ways;
  std::optional<Trouble> refusal;  // where a library failed
};

class WaysService : public LongWork {
  Q_OBJECT

 public:
  using LongWork::LongWork;

  void start(Plan plan);  // begins and returns at once; nothing where one runs already
  std::shared_ptr<const WaysAnswer> newest() const { return newest_; }  // null before the first

 private:
  std::shared_ptr<const WaysAnswer> newest_;
};

}  // namespace underlawn
