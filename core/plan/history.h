// SPDX-License-Identifier: GPL-3.0-or-later
// Undo is the plan before.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/plan.h"

namespace underlawn {

class History {
 public:
  explicit History(Plan plan);
  const Plan& plan() const;
  // One gesture, one entry. A plan equal to the present one makes no entry and returns false.
  bool commit(Plan plan, std::string what);
  bool can_undo() const;
  bool can_redo() const;
  std::string undo_name() const;  // what would be undone
  std::string redo_name() const;
  void undo();
  void redo();
  void mark_saved();
  bool modified() const;          // differs from the saved plan
  void reset(Plan plan);          // a newly opened plan

 private:
  struct Entry {
    std::string what;
    Plan plan;
  };
  std::vector<Entry> entries_;  // bounded: the oldest go first beyond kMostEntries
  std::size_t at_ = 0;
  std::optional<Plan> saved_;
};

inline constexpr int kMostEntries = 500;

}  // namespace underlawn
