// SPDX-License-Identifier: GPL-3.0-or-later
// Names that only say what a thing is ("House" of a house) are said in the language spoken by display_name();
// any other stays as it was typed.
#pragma once

#include <string>

#include "site/site.h"

namespace underlawn {

// What is kept of a name that was typed: a word for what the thing is, in English; any other as it is.
std::string kept_name(const Feature& f, const std::string& typed);

}  // namespace underlawn
