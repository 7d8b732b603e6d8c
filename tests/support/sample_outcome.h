// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/outcome.h"

namespace underlawn::sample {

// An outcome with something in every field, made by hand: for what only writes outcomes down.
Outcome outcome();

}  // namespace underlawn::sample
