// SPDX-License-Identifier: GPL-3.0-or-later
// One long piece of work on a thread of its own, with progress, until done or stopped.
#pragma once

#include <QObject>
#include <functional>
#include <thread>

namespace underlawn {

class LongWork : public QObject {
  Q_OBJECT

 public:
  explicit LongWork(QObject* parent = nullptr) : QObject(parent) {}
  ~LongWork() override { thread_ = {}; }  // stops what runs and waits for it

  void stop();
  bool busy() const { return busy_; }

 signals:
  void busy_changed();
  void progressed(double share, const QString& what);  // 0..1
  void answered();                                     // a stopped run answers nothing

 protected:
  using Tell = std::function<void(double share, const QString& what)>;
  using Keep = std::function<void()>;  // puts the answer where it is asked for; run on this object's thread

  // Begins `work` and returns at once; nothing where one runs already. `work` is called on the other thread.
  void begin(std::function<Keep(const Tell&, const std::stop_token&)> work);

 private:
  void finish(const Keep& keep);

  bool busy_ = false;
  std::jthread thread_;
};

}  // namespace underlawn
