// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/history.h"

namespace underlawn {

namespace {

std::size_t drawn_points(const Plan& plan) {
  std::size_t n = plan.site.lot.size();
  for (const Feature& f : plan.site.features) n += f.points.size();
  return n;
}

}  // namespace

History::History(Plan plan) {
  reset(std::move(plan));
}

const Plan& History::plan() const {
  return entries_[at_].plan;
}

bool History::commit(Plan plan, std::string what) {
  if (plan == this->plan()) return false;
  entries_.erase(entries_.begin() + static_cast<std::ptrdiff_t>(at_) + 1, entries_.end());
  entries_.push_back({std::move(what), std::move(plan)});
  at_ = entries_.size() - 1;
  forget_oldest();
  return true;
}

void History::forget_oldest() {
  std::size_t keep = 0;
  std::size_t points = 0;
  for (auto e = entries_.rbegin(); e != entries_.rend() && keep < kMostEntries; ++e, ++keep) {
    points += drawn_points(e->plan);
    if (points > kMostHistoryPoints && keep >= 2) break;
  }
  const std::size_t drop = entries_.size() - keep;
  entries_.erase(entries_.begin(), entries_.begin() + static_cast<std::ptrdiff_t>(drop));
  at_ -= drop;
}

bool History::can_undo() const {
  return at_ > 0;
}
bool History::can_redo() const {
  return at_ + 1 < entries_.size();
}
std::string History::undo_name() const {
  return can_undo() ? entries_[at_].what : std::string();
}
std::string History::redo_name() const {
  return can_redo() ? entries_[at_ + 1].what : std::string();
}

void History::undo() {
  if (can_undo()) --at_;
}

void History::redo() {
  if (can_redo()) ++at_;
}

void History::mark_saved() {
  saved_ = plan();
}
void History::mark_unsaved() {
  saved_.reset();
}
bool History::modified() const {
  return !saved_ || *saved_ != plan();
}

void History::reset(Plan plan) {
  entries_.clear();
  entries_.push_back({std::string(), std::move(plan)});
  at_ = 0;
  mark_saved();
}

}  // namespace underlawn
