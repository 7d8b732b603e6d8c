// SPDX-License-Identifier: GPL-3.0-or-later
// What the record says about itself, line by line.
#pragma once

#include <string>

namespace underlawn {

enum class Tone { open, good, doubt, bad };  // open: nothing recorded yet

struct RecordLine {
  std::string key;  // "flush.1.drop"
  Tone tone = Tone::open;
  std::string title;  // "Flushing 1, pressure drop"
  std::string words;  // with the reason
  std::string source;
  bool operator==(const RecordLine&) const = default;
};

}  // namespace underlawn
