// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/console.h"

namespace underlawn::cli {

void Console::complain(const std::string& what, const std::string& message) const {
  err << "underlawn: " << what << (what.empty() ? "" : ": ") << message << "\n";
}

void Console::complain(const std::string& what, const std::vector<Trouble>& troubles) const {
  for (const Trouble& t : troubles) complain(what, t.message());
}

}  // namespace underlawn::cli
