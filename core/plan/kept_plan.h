// SPDX-License-Identifier: GPL-3.0-or-later
// A plan kept for later, which shares with the one before whatever the two have in common: of a gesture that
// moves one tree only that tree is new.
#pragma once

#include <memory>
#include <vector>

#include "plan/plan.h"

namespace underlawn {

class KeptPlan {
 public:
  KeptPlan() = default;
  // `before` may be empty. A part that Plan gets later is kept with `rest`, shared where nothing of that
  // changed.
  KeptPlan(const Plan& plan, const KeptPlan& before);

  Plan plan() const;  // equal to the one it was made of
  // Bytes that it does not share with the one before, about: what is in vectors and texts is counted, what
  // the allocator adds is not.
  std::size_t own_bytes() const { return own_bytes_; }

 private:
  std::shared_ptr<const Plan> rest_;  // without the parts below
  std::shared_ptr<const Site> site_;  // without its features
  std::vector<std::shared_ptr<const Feature>> features_;
  std::shared_ptr<const Wishes> wishes_;
  std::shared_ptr<const ThermalWishes> thermal_;
  std::shared_ptr<const FlowWishes> flow_;
  std::size_t own_bytes_ = 0;
};

}  // namespace underlawn
