// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/dated_crew.h"

#include <boost/algorithm/string/trim.hpp>

#include "dig/dates.h"

namespace underlawn {

CrewWishes dated_crew(const Plan& plan) {
  CrewWishes crew = plan.crew;
  const std::string named = boost::algorithm::trim_copy(plan.proposal.start);
  if (crew.start.empty() && day_number(named)) crew.start = named;
  return crew;
}

}  // namespace underlawn
