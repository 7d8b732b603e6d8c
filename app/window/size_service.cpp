// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/size_service.h"

#include <exception>

#include "base/say.h"
#include "plan/solve.h"

namespace underlawn {

namespace {

constexpr double kSizingShare = 0.8;  // of the progress; the chance is the rest

Result<LoopSizing> sized(const Plan& plan, const SizingProgress& progress, const std::stop_token& stop) {
  try {
    return size_loop(plan, progress, stop);
  } catch (const std::exception& e) {
    return refuse({"sizing_failed", say("The sizing"), e.what(), say("something that can be worked out"),
                   say("Change the loop a little and try again; the plan itself is kept.")});
  }
}

std::optional<Chance> chance_for(const Plan& plan, int draws, const std::function<void(double)>& progress,
                                 const std::stop_token& stop) {
  const Outcome outcome = solve(plan, stop);
  if (stop.stop_requested() || outcome.temperatures == nullptr) return std::nullopt;
  auto found = chance_of_holding(plan, outcome, {draws, 1, {}}, progress, stop);
  return found ? std::optional(*found) : std::nullopt;
}

}  // namespace

void SizeService::start(Plan plan, int draws) {
  if (busy_) return;
  busy_ = true;
  thread_ = std::jthread(
      [this, plan = std::move(plan), draws](const std::stop_token& stop) { work(plan, draws, stop); });
  emit busy_changed();
}

void SizeService::stop() {
  thread_.request_stop();
}

void SizeService::work(const Plan& plan, int draws, const std::stop_token& stop) {
  const auto tell = [this](double share, const QString& what) {
    QMetaObject::invokeMethod(
        this, [this, share, what] { emit progressed(share, what); }, Qt::QueuedConnection);
  };
  auto answer = std::make_shared<SizeAnswer>(SizeAnswer{
      plan,
      sized(
          plan, [&](double s, const std::string& w) { tell(kSizingShare * s, QString::fromStdString(w)); },
          stop),
      std::nullopt});
  if (draws > 0 && answer->sizing)
    answer->chance = chance_for(
        plan, draws,
        [&](double s) { tell(kSizingShare + (1 - kSizingShare) * s, tr("draws of soil and load")); }, stop);
  if (stop.stop_requested()) answer = nullptr;
  QMetaObject::invokeMethod(
      this, [this, answer] { finish(answer); }, Qt::QueuedConnection);
}

void SizeService::finish(std::shared_ptr<const SizeAnswer> answer) {
  busy_ = false;
  if (answer) {
    newest_ = std::move(answer);
    emit answered();
  }
  emit busy_changed();
}

}  // namespace underlawn
