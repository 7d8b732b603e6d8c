// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/history.h"

namespace underlawn {

History::History(Plan plan) {
  reset(std::move(plan));
}

void History::add(std::string what) {
  KeptPlan kept(now_, entries_.empty() ? KeptPlan{} : entries_.back().plan);
  const std::size_t bytes = sizeof(Entry) + what.size() + kept.own_bytes();
  bytes_ += bytes;
  entries_.push_back({std::move(what), std::move(kept), bytes});
  at_ = entries_.size() - 1;
}

bool History::commit(Plan plan, std::string what) {
  if (plan == now_) return false;
  while (entries_.size() > at_ + 1) {
    bytes_ -= entries_.back().bytes;
    entries_.pop_back();
  }
  now_ = std::move(plan);
  add(std::move(what));
  forget_oldest();
  return true;
}

// What the oldest entry shares with the next stays as long as that one does, so that the sum is a little more
// than what is given free.
void History::forget_oldest() {
  while (entries_.size() > 2 &&
         (entries_.size() > static_cast<std::size_t>(kMostEntries) || bytes_ > kMostHistoryBytes)) {
    bytes_ -= entries_.front().bytes;
    entries_.pop_front();
    --at_;
    forgotten_ = true;
  }
}

std::string History::undo_name() const {
  return can_undo() ? entries_[at_].what : std::string();
}
std::string History::redo_name() const {
  return can_redo() ? entries_[at_ + 1].what : std::string();
}

void History::undo() {
  if (can_undo()) now_ = entries_[--at_].plan.plan();
}

void History::redo() {
  if (can_redo()) now_ = entries_[++at_].plan.plan();
}

void History::reset(Plan plan) {
  entries_.clear();
  bytes_ = 0;
  forgotten_ = false;
  now_ = std::move(plan);
  add({});
  mark_saved();
}

}  // namespace underlawn
