// SPDX-License-Identifier: GPL-3.0-or-later
// Finds other ways to lay a loop on a thread of its own, with progress, until done or stopped.
#pragma once

#include <QObject>
#include <memory>
#include <optional>
#include <thread>

#include "plan/ways.h"

namespace underlawn {

// The ways together with the plan they are of.
struct WaysAnswer {
  Plan plan;
  std::vector<Way> ways;
  std::optional<Trouble> refusal;  // where a library failed
};

class WaysService : public QObject {
  Q_OBJECT

 public:
  explicit WaysService(QObject* parent = nullptr) : QObject(parent) {}
  ~WaysService() override { thread_ = {}; }  // stops what runs and waits for it

  void start(Plan plan);  // begins and returns at once; nothing where one runs already
  void stop();
  bool busy() const { return busy_; }
  std::shared_ptr<const WaysAnswer> newest() const { return newest_; }  // null before the first

 signals:
  void busy_changed();
  void progressed(double share, const QString& what);  // 0..1
  void answered();                                     // newest() is new; a stopped run answers nothing

 private:
  void work(const Plan& plan, const std::stop_token& stop);
  void finish(std::shared_ptr<const WaysAnswer> answer);

  bool busy_ = false;
  std::shared_ptr<const WaysAnswer> newest_;
  std::jthread thread_;
};

}  // namespace underlawn
