// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace underlawn::cli {

// Rows as columns, each as wide as its widest cell, two blanks between; no blanks at the end of a line.
void tell_table(const std::vector<std::vector<std::string>>& rows, std::ostream& out);

}  // namespace underlawn::cli
