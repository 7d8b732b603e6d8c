// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace underlawn {

// Opens the window, on the plan at `plan_path` unless that is empty, and runs until it is closed. Makes the
// QApplication itself; a display must be there. Gives the exit status.
int run_window(int& argc, char** argv, QString plan_path);

}  // namespace underlawn
