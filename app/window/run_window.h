// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

namespace underlawn {

// Opens the window, on the plan at `plan_path` unless that is empty, and runs until it is closed. Makes the
// QApplication itself; a display must be there. Gives the exit status.
// `language` is a code of language/language.h; empty: as was chosen in the window, or as the system is.
int run_window(int& argc, char** argv, QString plan_path, const std::string& language = "");

}  // namespace underlawn
