// SPDX-License-Identifier: GPL-3.0-or-later
// What keys and mouse do while something is drawn or moved: no commands, for they belong to the gesture.
#pragma once

#include <span>

namespace underlawn {

struct GestureKey {
  const char* keys;
  const char* what;
};
std::span<const GestureKey> gesture_keys();  // both to be said by tr()

}  // namespace underlawn
