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

SizeAnswer answer_for(const Plan& plan, int draws, const std::function<void(double, const QString&)>& tell,
                      const std::stop_token& stop) {
  SizeAnswer answer{
      plan,
      sized(
          plan, [&](double s, const std::string& w) { tell(kSizingShare * s, QString::fromStdString(w)); },
          stop),
      std::nullopt};
  if (draws > 0 && answer.sizing)
    answer.chance = chance_for(
        plan, draws,
        [&](double s) {
          tell(kSizingShare + (1 - kSizingShare) * s, SizeService::tr("draws of soil and load"));
        },
        stop);
  return answer;
}

}  // namespace

void SizeService::start(Plan plan, int draws) {
  begin([this, plan = std::move(plan), draws](const Tell& tell, const std::stop_token& stop) -> Keep {
    auto answer = std::make_shared<const SizeAnswer>(answer_for(plan, draws, tell, stop));
    return [this, answer] { newest_ = answer; };
  });
}

}  // namespace underlawn
