// SPDX-License-Identifier: GPL-3.0-or-later
// What help and man page both say.
#pragma once

#include <string_view>
#include <utility>

namespace underlawn::cli {

inline constexpr std::string_view kPurpose =
    "plan buried coils of a ground heat-exchange loop on a house lot";

inline constexpr std::string_view kWindow =
    "Without a verb, opens the window, on PLAN if one is named. Where there is no display, says so and does "
    "what "
    "“solve” does.";

inline constexpr std::pair<std::string_view, std::string_view> kGeneral[] = {
    {"--help", "Print this. Behind a verb, print that verb's."},
    {"--version", "Print the version."},
    {"--man", "Print the man page, for man(1)."},
};

inline constexpr std::pair<std::string_view, std::string_view> kExits[] = {
    {"0", "Done."},
    {"1",
     "Unaccepted errors remain, or the plan cannot be solved, or a strict resave would change the file."},
    {"2", "The command line is not understood."},
    {"3", "A file could not be read, or is no plan."},
    {"4", "A file could not be written."},
};

inline constexpr std::string_view kCaution =
    "Results help a trained designer and replace none. Local codes govern. Have utilities located before any "
    "digging. "
    "Trenches kill: protective systems and a competent person are the law (in the United States 29 CFR 1926 "
    "Subpart P).";

}  // namespace underlawn::cli
