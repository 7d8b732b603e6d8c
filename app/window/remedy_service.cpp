// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/remedy_service.h"

#include <exception>

#include "base/say.h"

namespace underlawn {

namespace {

RemedyAnswer answer_for(const Plan& plan, const WaysProgress& tell, const std::stop_token& stop) {
  RemedyAnswer answer{plan, {}, {}};
  try {
    answer.remedies = remedies_of(plan, tell, stop);
  } catch (const std::exception& e) {
    answer.refusal = Trouble{"remedies_failed", say("The search for more room"), e.what(),
                             say("something that can be worked out"),
                             say("Change the loop a little and try again; the plan itself is kept.")};
  }
  return answer;
}

}  // namespace

void RemedyService::start(Plan plan) {
  begin([this, plan = std::move(plan)](const Tell& tell, const std::stop_token& stop) -> Keep {
    const auto said = [&](double share, const std::string& what) {
      tell(share, QString::fromStdString(what));
    };
    auto answer = std::make_shared<const RemedyAnswer>(answer_for(plan, said, stop));
    return [this, answer] { newest_ = answer; };
  });
}

}  // namespace underlawn
