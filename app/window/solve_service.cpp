// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/solve_service.h"

#include <QTimer>
#include <exception>

#include "base/say.h"
#include "plan/fingerprint.h"
#include "plan/solve.h"

namespace underlawn {

namespace {

// How long a solve may still run once a newer plan waits. Long enough for most lots, so that a steady drag is
// answered on its way; short enough not to be felt.
constexpr int kGrace = 120;  // ms

Outcome failed(const Plan& plan, const char* why) {
  Outcome outcome;
  outcome.fingerprint = fingerprint(plan);
  outcome.troubles.push_back({"solve_failed", say("the solver"), why, say("a plan it can work out"),
                              say("Undo the last change; the plan itself is kept.")});
  return outcome;
}

Outcome solved(Solver& solver, const Plan& plan, const std::stop_token& stop) {
  try {
    return solver.solve(plan, stop);
  } catch (const std::exception& e) {
    return failed(plan, e.what());
  }
}

}  // namespace

SolveService::SolveService(QObject* parent) : QObject(parent) {
  thread_ = std::jthread([this](const std::stop_token& quit) { work(quit); });
}

SolveService::~SolveService() {
  thread_.request_stop();
  {
    const std::lock_guard lock(mutex_);
    running_.request_stop();
  }
  wake_.notify_all();
  thread_.join();
}

void SolveService::request(Plan plan) {
  std::stop_source older{std::nostopstate};
  {
    const std::lock_guard lock(mutex_);
    if (!waiting_ && at_work_) older = running_;
    waiting_ = std::move(plan);
  }
  wake_.notify_all();
  if (older.stop_possible()) QTimer::singleShot(kGrace, this, [older]() mutable { older.request_stop(); });
  emit busy_changed();
}

bool SolveService::busy() const {
  const std::lock_guard lock(mutex_);
  return waiting_ || at_work_ || fresh_;
}

std::optional<Plan> SolveService::wait_for_plan(const std::stop_token& quit) {
  std::unique_lock lock(mutex_);
  if (!wake_.wait(lock, quit, [this] { return waiting_.has_value(); })) return std::nullopt;
  at_work_ = true;
  running_ = std::stop_source();
  return std::exchange(waiting_, std::nullopt);
}

void SolveService::work(const std::stop_token& quit) {
  Solver solver;
  while (auto plan = wait_for_plan(quit)) {
    const std::stop_token stop = running_.get_token();
    auto answer = std::make_shared<Answer>();
    answer->outcome = solved(solver, *plan, stop);
    answer->plan = std::move(*plan);
    hand_over(stop.stop_requested() ? nullptr : std::move(answer));
  }
}

// A stopped solve hands over nothing: its outcome is only part of the answer.
void SolveService::hand_over(std::shared_ptr<const Answer> answer) {
  const std::lock_guard lock(mutex_);
  at_work_ = false;
  if (!answer) return;
  const bool told = fresh_ != nullptr;  // a call is under way already and will find the newer answer
  fresh_ = std::move(answer);
  if (!told) QMetaObject::invokeMethod(this, &SolveService::take_over, Qt::QueuedConnection);
}

void SolveService::take_over() {
  {
    const std::lock_guard lock(mutex_);
    newest_ = std::exchange(fresh_, nullptr);
  }
  emit answered();
  emit busy_changed();
}

}  // namespace underlawn
