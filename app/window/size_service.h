// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes a loop on a thread of its own, with progress, until done or stopped.
#pragma once

#include <QObject>
#include <memory>
#include <optional>
#include <thread>

#include "plan/sizing/chance.h"
#include "plan/sizing/size_loop.h"

namespace underlawn {

// A sizing together with the plan it is of.
struct SizeAnswer {
  Plan plan;
  Result<LoopSizing> sizing;
  std::optional<Chance> chance;  // none where nothing is laid, or none was asked for
};

class SizeService : public QObject {
  Q_OBJECT

 public:
  explicit SizeService(QObject* parent = nullptr) : QObject(parent) {}
  ~SizeService() override { thread_ = {}; }  // stops what runs and waits for it

  // Begins and returns at once; nothing where one runs already. `draws` 0: no chance.
  void start(Plan plan, int draws);
  void stop();
  bool busy() const { return busy_; }
  std::shared_ptr<const SizeAnswer> newest() const { return newest_; }  // null before the first

 signals:
  void busy_changed();
  void progressed(double share, const QString& what);  // 0..1
  void answered();                                     // newest() is new; a stopped run answers nothing

 private:
  void work(const Plan& plan, int draws, const std::stop_token& stop);
  void finish(std::shared_ptr<const SizeAnswer> answer);

  bool busy_ = false;
  std::shared_ptr<const SizeAnswer> newest_;
  std::jthread thread_;
};

}  // namespace underlawn
