// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/long_work.h"

namespace underlawn {

void LongWork::begin(std::function<Keep(const Tell&, const std::stop_token&)> work) {
  if (busy_) return;
  busy_ = true;
  thread_ = std::jthread([this, work = std::move(work)](const std::stop_token& stop) {
    const Tell tell = [this](double share, const QString& what) {
      QMetaObject::invokeMethod(
          this, [this, share, what] { emit progressed(share, what); }, Qt::QueuedConnection);
    };
    Keep keep = work(tell, stop);
    if (stop.stop_requested()) keep = nullptr;
    QMetaObject::invokeMethod(
        this, [this, keep = std::move(keep)] { finish(keep); }, Qt::QueuedConnection);
  });
  emit busy_changed();
}

void LongWork::stop() {
  thread_.request_stop();
}

void LongWork::finish(const Keep& keep) {
  busy_ = false;
  if (keep) {
    keep();
    emit answered();
  }
  emit busy_changed();
}

}  // namespace underlawn
