// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "cli/verb.h"

namespace underlawn::cli {

// To the file of --out, whose name is then said, or to standard output.
Exit put(const std::string& text, const Arguments& arguments, const Console& console);

}  // namespace underlawn::cli
