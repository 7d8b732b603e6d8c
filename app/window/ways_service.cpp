// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/ways_service.h"

#include <exception>

#include "base/say.h"

namespace underlawn {

namespace {

WaysAnswer answer_for(const Plan& plan, const std::function<void(double, const std::string&)>& tell,
                      const std::stop_token& stop) {
  WaysAnswer answer{plan, {}, {}};
  try {
    answer.ways = ways_of(plan, tell, stop);
  } catch (const std::exception& e) {
    answer.refusal =
        Trouble{"ways_failed", say("The comparison"), e.what(), say("something that can be worked out"),
                say("Change the loop a little and try again; the plan itself is kept.")};
  }
  return answer;
}

}  // namespace

void WaysService::start(Plan plan) {
  begin([this, plan = std::move(plan)](const Tell& tell, const std::stop_token& stop) -> Keep {
    const auto said = [&](double share, const std::string& what) {
      tell(share, QString::fromStdString(what));
    };
    auto answer = std::make_shared<const WaysAnswer>(answer_for(plan, said, stop));
    return [this, answer] { newest_ = answer; };
  });
}

}  // namespace underlawn
