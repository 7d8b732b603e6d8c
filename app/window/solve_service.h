// SPDX-License-Identifier: GPL-3.0-or-later
// Solves plans on a thread of its own, so that the pointer never waits. The newest request wins: one that
// waits is replaced, one that runs is stopped. Nothing queues up, so memory stays flat however fast requests
// come.
#pragma once

#include <QObject>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// An outcome together with the plan it is of, so that nobody takes it for another plan's.
struct Answer {
  Plan plan;
  Outcome outcome;
};

class SolveService : public QObject {
  Q_OBJECT

 public:
  explicit SolveService(QObject* parent = nullptr);
  ~SolveService() override;  // stops what runs and waits for it

  // Asks for `plan`'s outcome and returns at once. A solve that has hardly begun may finish first, so that a
  // drag shows something on its way; it is handed out as the answer of its own plan, never of this one.
  void request(Plan plan);
  bool busy() const;                                                // an asked-for answer is still to come
  std::shared_ptr<const Answer> newest() const { return newest_; }  // null before the first

 signals:
  void answered();  // newest() is new
  void busy_changed();

 private:
  void work(const std::stop_token& quit);
  std::optional<Plan> wait_for_plan(const std::stop_token& quit);
  void hand_over(std::shared_ptr<const Answer> answer);
  void take_over();

  mutable std::mutex mutex_;
  std::condition_variable_any wake_;
  std::optional<Plan> waiting_;                 // guarded
  std::shared_ptr<const Answer> fresh_;         // guarded: made, not yet taken over by the window's thread
  std::stop_source running_{std::nostopstate};  // guarded
  bool at_work_ = false;                        // guarded
  std::shared_ptr<const Answer> newest_;        // of the window's thread
  std::jthread thread_;                         // last: it uses all of the above
};

}  // namespace underlawn
