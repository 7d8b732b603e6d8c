// SPDX-License-Identifier: GPL-3.0-or-later
// Work too long for the window's thread: one piece at a time, and of those that wait only the newest.
#pragma once

#include <QObject>
#include <exception>
#include <functional>
#include <memory>
#include <optional>
#include <thread>
#include <utility>

#include "base/result.h"
#include "base/say.h"

namespace underlawn {

// T is a Result.
template <class T>
class Background {
 public:
  using Work = std::function<T()>;
  using Done = std::function<void(T)>;

  ~Background() {
    if (thread_.joinable()) thread_.join();
  }
  // `work` runs elsewhere and must hold what it needs; `done` is called in the thread that starts it, unless
  // newer work came meanwhile.
  void start(Work work, Done done) {
    waiting_ = {std::move(work), std::move(done)};
    if (!running_) next();
  }
  bool busy() const { return running_; }

 private:
  void next() {
    auto [work, done] = *std::exchange(waiting_, std::nullopt);
    running_ = true;
    if (thread_.joinable()) thread_.join();
    thread_ = std::thread([this, work = std::move(work), done = std::move(done)] {
      auto made = std::make_shared<T>(made_by(work));
      QMetaObject::invokeMethod(
          &home_, [this, made, done] { take(*made, done); }, Qt::QueuedConnection);
    });
  }
  // An exception of a library becomes a refusal here, or it would end the program.
  static T made_by(const Work& work) {
    try {
      return work();
    } catch (const std::exception& e) {
      return refuse({"work_failed", say("What was to be worked out"), e.what(), say("no such failure"),
                     say("Change what was asked and try again; the plan is as it was.")});
    }
  }
  void take(T& made, const Done& done) {
    running_ = false;
    if (waiting_) return next();
    done(std::move(made));
  }

  QObject home_;  // lives where the work is started; what comes after its end is dropped
  std::optional<std::pair<Work, Done>> waiting_;
  bool running_ = false;
  std::thread thread_;
};

}  // namespace underlawn
