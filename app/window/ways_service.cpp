// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/ways_service.h"

#include <exception>

#include "base/say.h"

namespace underlawn {

void WaysService::start(Plan plan) {
  if (busy_) return;
  busy_ = true;
  thread_ = std::jthread([this, plan = std::move(plan)](const std::stop_token& stop) { work(plan, stop); });
  emit busy_changed();
}

void WaysService::stop() {
  thread_.request_stop();
}

void WaysService::work(const Plan& plan, const std::stop_token& stop) {
  const auto tell = [this](double share, const std::string& what) {
    QMetaObject::invokeMethod(
        this, [this, share, what = QString::fromStdString(what)] { emit progressed(share, what); },
        Qt::QueuedConnection);
  };
  auto answer = std::make_shared<WaysAnswer>(WaysAnswer{plan, {}, {}});
  try {
    answer->ways = ways_of(plan, tell, stop);
  } catch (const std::exception& e) {
    answer->refusal =
        Trouble{"ways_failed", say("The comparison"), e.what(), say("something that can be worked out"),
                say("Change the loop a little and try again; the plan itself is kept.")};
  }
  if (stop.stop_requested()) answer = nullptr;
  QMetaObject::invokeMethod(
      this, [this, answer] { finish(answer); }, Qt::QueuedConnection);
}

void WaysService::finish(std::shared_ptr<const WaysAnswer> answer) {
  busy_ = false;
  if (answer) {
    newest_ = std::move(answer);
    emit answered();
  }
  emit busy_changed();
}

}  // namespace underlawn
