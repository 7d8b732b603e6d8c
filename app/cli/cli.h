// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace underlawn::cli {

// The program: does what the words say, in a window or without one, and gives the exit status.
int run_program(int& argc, char** argv);

}  // namespace underlawn::cli
