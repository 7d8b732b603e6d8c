// SPDX-License-Identifier: GPL-3.0-or-later
// Finds what would bring missing circuits, on a thread of its own, with progress, until done or stopped.
#pragma once

#include <memory>
#include <optional>

#include "plan/remedies.h"
#include "window/long_work.h"

namespace underlawn {

// The remedies together with the plan they are of.
struct RemedyAnswer {
  Plan plan;
  std::vector<MoreRoom> remedies;
  std::optional<Trouble> refusal;  // where a library failed
};

class RemedyService : public LongWork {
  Q_OBJECT

 public:
  using LongWork::LongWork;

  void start(Plan plan);  // begins and returns at once; nothing where one runs already
  std::shared_ptr<const RemedyAnswer> newest() const { return newest_; }  // null before the first

 private:
  std::shared_ptr<const RemedyAnswer> newest_;
};

}  // namespace underlawn
