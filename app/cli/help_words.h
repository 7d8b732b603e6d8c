// SPDX-License-Identifier: GPL-3.0-or-later
// What help and man page both say.
#pragma once

#include <string_view>
#include <utility>

#include "base/say.h"

namespace underlawn::cli {

inline constexpr std::string_view kPurpose =
    mark("plan buried coils of a ground heat-exchange loop on a house lot");

inline constexpr std::string_view kWindow = mark(
    "Without a verb, opens the window, on PLAN if one is named. Where there is no display, says so and does "
    "what "
    "“solve” does.");

inline constexpr std::pair<std::string_view, std::string_view> kGeneral[] = {
    {"--help", mark("Print this. Behind a verb, print that verb's.")},
    {"--version", mark("Print the version.")},
    {"--language CODE", mark("Before everything else: en or es. Sheets have an option of their own.")},
    {"--man", mark("Print the man page, for man(1).")},
};

inline constexpr std::pair<std::string_view, std::string_view> kExits[] = {
    {"0", mark("Done.")},
    {"1", mark("Unaccepted errors remain, or the plan cannot be solved, or a strict resave would change the "
               "file.")},
    {"2", mark("The command line is not understood.")},
    {"3", mark("A file could not be read, or is no plan.")},
    {"4", mark("A file could not be written.")},
};

inline constexpr std::string_view kCaution = mark(
    "Results help a trained designer and replace none. Local codes govern. Have utilities located before any "
    "digging. "
    "Trenches kill: protective systems and a competent person are the law (in the United States 29 CFR 1926 "
    "Subpart P).");

}  // namespace underlawn::cli
