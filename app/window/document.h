// SPDX-License-Identifier: GPL-3.0-or-later
// The plan that is open: its past, its file, and what follows from it, kept current by itself.
#pragma once

#include <QObject>
#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "plan/history.h"
#include "window/solve_service.h"

namespace underlawn {

class Document : public QObject {
  Q_OBJECT

 public:
  explicit Document(QObject* parent = nullptr);

  // What is to be drawn: the previewed plan during a gesture, else the committed one.
  const Plan& plan() const { return preview_ ? *preview_ : history_.plan(); }
  const Plan& committed() const { return history_.plan(); }

  // The newest outcome there is, null before the first; and the plan it is of. While stale() that is not
  // plan(). Both stay where they are until the next outcome_changed.
  const Outcome* outcome() const;
  const Plan* outcome_plan() const;
  bool stale() const { return stale_; }
  // Calls `then` once, as soon as the outcome is that of plan(); at once where it already is.
  void when_current(std::function<void()> then);

  // One gesture, one entry; ends a preview. A plan equal to the present one makes no entry.
  void commit(Plan plan, QString what);
  // Shows and solves `plan` without keeping it; nullopt takes it back without a trace.
  void preview(std::optional<Plan> plan);
  bool previewing() const { return preview_.has_value(); }

  bool can_undo() const { return history_.can_undo(); }
  bool can_redo() const { return history_.can_redo(); }
  QString undo_name() const;
  QString redo_name() const;
  void undo();
  void redo();

  QString path() const { return path_; }  // empty: never saved
  QString display_name() const;           // project, file name or "Untitled plan"
  bool modified() const { return history_.modified(); }
  bool has_forgotten() const { return history_.has_forgotten(); }  // the oldest changes, to be undone

  void start_new();                                 // an empty plan in the units of the last one
  Result<std::vector<Trouble>> open(QString path);  // remarks: what the file held and had to be left out
  Result<void> save();                              // to path(), which must not be empty
  Result<void> save_as(QString path);
  // A plan that was kept aside: shown as not saved, with the file it belongs to.
  void recover(Plan plan, QString path);

 signals:
  void plan_changed();     // plan() is another
  void outcome_changed();  // outcome() or stale()
  void history_changed();  // undo, redo, modified()
  void path_changed();
  void saved();     // to path()
  void replaced();  // another plan altogether was opened: look at all of it

 private:
  Plan kept_calm(Plan plan);
  void changed();
  void take_answer();
  void replace(Plan plan, QString path);

  History history_;
  std::optional<Plan> preview_;
  std::optional<Layout> shown_;  // while a gesture lasts: as it was drawn when that began
  QString path_;
  SolveService solver_;
  std::shared_ptr<const Answer> answer_;
  bool stale_ = true;
  std::vector<std::function<void()>> waiting_;
};

}  // namespace underlawn
