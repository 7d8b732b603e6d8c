// SPDX-License-Identifier: GPL-3.0-or-later
// Undo is the plan before.
#pragma once

#include <deque>
#include <optional>
#include <string>

#include "plan/kept_plan.h"

namespace underlawn {

// A day of editing is a few thousand gestures. An entry of a lot with thirty things takes 2 to 4 kB, since it
// shares what it did not change; one that reads another weather file takes 70 kB.
inline constexpr int kMostEntries = 20'000;
inline constexpr std::size_t kMostHistoryBytes =
    128'000'000;  // over all entries; one step back is always kept

class History {
 public:
  explicit History(Plan plan);  // counts as saved
  const Plan& plan() const { return now_; }
  // One gesture, one entry. A plan equal to the present one makes no entry and returns false.
  bool commit(Plan plan, std::string what);
  bool can_undo() const { return at_ > 0; }
  bool can_redo() const { return at_ + 1 < entries_.size(); }
  std::string undo_name() const;  // what would be undone; empty when nothing
  std::string redo_name() const;
  void undo();  // without anything to undo: nothing happens
  void redo();
  void mark_saved() { saved_ = now_; }
  void mark_unsaved() { saved_.reset(); }  // the present plan is on no disk: recovered after a crash
  bool modified() const { return !saved_ || *saved_ != now_; }
  void reset(Plan plan);  // a newly opened plan
  // Whether entries went because there were more than are kept: undo then ends before the beginning.
  bool has_forgotten() const { return forgotten_; }
  std::size_t bytes() const { return bytes_; }  // that the entries take, about

 private:
  struct Entry {
    std::string what;  // that led to this plan
    KeptPlan plan;
    std::size_t bytes = 0;
  };
  void add(std::string what);
  void forget_oldest();

  std::deque<Entry> entries_;  // the oldest first
  std::size_t at_ = 0;
  std::size_t bytes_ = 0;
  bool forgotten_ = false;
  Plan now_;
  std::optional<Plan> saved_;
};

}  // namespace underlawn
