// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing from one process to another: read apart, so that a file that breaks the reader breaks nothing
// else.
#pragma once

#include <string>
#include <string_view>

#include "exchange/drawing.h"

namespace underlawn {

std::string drawing_to_json(const Drawing& drawing);
// Gives back what drawing_to_json wrote; refuses anything else.
Result<Drawing> drawing_from_json(std::string_view text);

std::string trouble_to_json(const Trouble& trouble);

}  // namespace underlawn
