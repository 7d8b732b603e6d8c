// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace underlawn::cli {

// From here on this process may use so much time of the processor and so much memory, and no more: a drawing
// file from elsewhere can be made to use up all there is. Beyond the time it ends with status 3 and says so.
void bound_this_process();

inline constexpr int kMostReadingSeconds = 60;

}  // namespace underlawn::cli
