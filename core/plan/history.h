// SPDX-License-Identifier: GPL-3.0-or-later
// Undo is the plan before.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/plan.h"

namespace underlawn {

inline constexpr int kMostEntries = 500;
// Drawn points kept over all entries together (16 bytes each), so that a plan traced with very many points
// does not fill the memory with its past. One step back is always kept.
inline constexpr std::size_t kMostHistoryPoints = 4'000'000;

class History {
 public:
  explicit History(Plan plan);  // counts as saved
  const Plan& plan() const;
  // One gesture, one entry. A plan equal to the present one makes no entry and returns false.
  bool commit(Plan plan, std::string what);
  bool can_undo() const;
  bool can_redo() const;
  std::string undo_name() const;  // what would be undone; empty when nothing
  std::string redo_name() const;
  void undo();  // without anything to undo: nothing happens
  void redo();
  void mark_saved();
  void mark_unsaved();    // the present plan is on no disk: recovered after a crash
  bool modified() const;  // differs from the saved plan
  void reset(Plan plan);  // a newly opened plan

 private:
  struct Entry {
    std::string what;  // that led to this plan
    Plan plan;
  };
  void forget_oldest();

  std::vector<Entry> entries_;  // bounded: the oldest go first beyond kMostEntries
  std::size_t at_ = 0;
  std::optional<Plan> saved_;
};

}  // namespace underlawn
