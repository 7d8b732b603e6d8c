// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/document.h"

#include <QFileInfo>

#include "files/plan_file.h"
#include "plan/dimensions.h"
#include "plan/keeping.h"

namespace underlawn {

Document::Document(QObject* parent) : QObject(parent), history_(Plan{}) {
  connect(&solver_, &SolveService::answered, this, &Document::take_answer);
  solver_.request(plan());
}

const Outcome* Document::outcome() const {
  return answer_ ? &answer_->outcome : nullptr;
}

const Plan* Document::outcome_plan() const {
  return answer_ ? &answer_->plan : nullptr;
}

void Document::when_current(std::function<void()> then) {
  if (!stale_) return then();
  waiting_.push_back(std::move(then));
}

void Document::take_answer() {
  answer_ = solver_.newest();
  stale_ = !(answer_->plan == plan());
  emit outcome_changed();
  if (stale_) return;
  for (const auto& then : std::exchange(waiting_, {})) then();
}

void Document::changed() {
  stale_ = !answer_ || !(answer_->plan == plan());
  // Asked for even where the last answer fits, so that a solve of the plan in between is not shown after it.
  solver_.request(plan());
  emit plan_changed();
  emit outcome_changed();
}

// All frames of a gesture are held to the drawing that it began with, so that each depends on nothing but
// where the pointer is.
Plan Document::kept_calm(Plan plan) {
  const bool current = answer_ && answer_->plan == committed();
  if (!shown_) shown_ = current ? answer_->outcome.layout : Layout{};
  plan = edit::with_dimensions_following(committed(), std::move(plan));
  return keeping(committed(), std::move(plan), *shown_);
}

void Document::commit(Plan plan, QString what) {
  plan = kept_calm(std::move(plan));
  shown_.reset();
  const bool previewed = std::exchange(preview_, std::nullopt).has_value();
  const bool kept = history_.commit(std::move(plan), what.toStdString());
  if (kept || previewed) changed();
  if (kept) emit history_changed();
}

void Document::preview(std::optional<Plan> plan) {
  if (!plan && !preview_) return;
  std::optional<Plan> next = plan ? std::optional(kept_calm(std::move(*plan))) : std::nullopt;
  if (next && next == preview_) return;  // the pointer moved, what it holds did not
  preview_ = std::move(next);
  if (!preview_) shown_.reset();
  changed();
}

QString Document::undo_name() const {
  return QString::fromStdString(history_.undo_name());
}

QString Document::redo_name() const {
  return QString::fromStdString(history_.redo_name());
}

void Document::undo() {
  preview_.reset();
  shown_.reset();
  history_.undo();
  changed();
  emit history_changed();
}

void Document::redo() {
  preview_.reset();
  shown_.reset();
  history_.redo();
  changed();
  emit history_changed();
}

QString Document::display_name() const {
  const QString project = QString::fromStdString(plan().title.project).simplified();
  if (!project.isEmpty()) return project;
  return path_.isEmpty() ? tr("Untitled plan") : QFileInfo(path_).completeBaseName();
}

void Document::replace(Plan plan, QString path) {
  preview_.reset();
  shown_.reset();
  history_.reset(std::move(plan));
  path_ = std::move(path);
  changed();
  emit history_changed();
  emit path_changed();
  emit replaced();
}

void Document::start_new() {
  Plan fresh;
  fresh.units = plan().units;
  replace(std::move(fresh), {});
}

Result<std::vector<Trouble>> Document::open(QString path) {
  auto loaded = load_plan(path.toStdString());
  if (!loaded) return refuse(loaded.error());
  replace(std::move(loaded->value), QFileInfo(path).absoluteFilePath());
  if (!loaded->remarks.empty()) {  // saving would lose what was left out: say that it is not saved as it is
    history_.mark_unsaved();
    emit history_changed();
  }
  return std::move(loaded->remarks);
}

Result<void> Document::save() {
  return save_as(path_);
}

Result<void> Document::save_as(QString path) {
  if (auto saved = save_plan(committed(), path.toStdString()); !saved) return saved;
  path_ = QFileInfo(path).absoluteFilePath();
  history_.mark_saved();
  emit saved();  // the history is the same: what is half drawn on it goes on
  emit path_changed();
  return {};
}

void Document::recover(Plan plan, QString path) {
  replace(std::move(plan), std::move(path));
  history_.mark_unsaved();
  emit history_changed();
}

}  // namespace underlawn
