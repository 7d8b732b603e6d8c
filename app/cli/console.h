// SPDX-License-Identifier: GPL-3.0-or-later
// Where a verb speaks: results to `out`, trouble to `err`, and what it says to the shell.
#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "base/result.h"

namespace underlawn::cli {

enum class Exit {
  ok = 0,
  errors_remain = 1,  // also: the plan cannot be solved, or a strict resave would change it
  usage = 2,
  not_read = 3,
  not_written = 4,
};

struct Console {
  std::ostream& out;
  std::ostream& err;

  // "underlawn: what: message", where `what` may be empty.
  void complain(const std::string& what, const std::string& message) const;
  void complain(const std::string& what, const std::vector<Trouble>& troubles) const;
};

}  // namespace underlawn::cli
