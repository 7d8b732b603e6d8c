// SPDX-License-Identifier: GPL-3.0-or-later
// Help and man page, made from the table of verbs.
#pragma once

#include <string>

#include "cli/verb.h"

namespace underlawn::cli {

std::string version_text();
std::string help_text();
std::string help_text(const Verb& verb);

// In troff, for man(1); packaging/underlawn.1 is what this gives.
std::string man_page();

}  // namespace underlawn::cli
