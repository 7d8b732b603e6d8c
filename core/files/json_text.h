// SPDX-License-Identifier: GPL-3.0-or-later
// JSON as our files have it: laid out for `diff`, and read with bounds and with messages that say line and
// column.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

using Json = nlohmann::ordered_json;

inline constexpr std::size_t kLargestFile = 64u << 20;  // bytes
inline constexpr int kDeepestNesting = 32;              // arrays and objects within one another
inline constexpr std::size_t kMostValues = 6'000'000;   // numbers, texts, arrays, objects in one file

inline constexpr std::size_t kMostKeys = 1000;  // of one object: finding a key takes time with each

// Objects over several lines, one key a line, except within an array: there each element stands on a line of
// its own. Arrays of plain values stand on one line. Numbers are the shortest that read back the same; text
// that is not valid UTF-8 gets U+FFFD. Ends with a line feed.
std::string json_to_text(const Json& json);

// Refuses what is not JSON (with line and column), is nested too deep or has too many values. Bytes that are
// not UTF-8 become U+FFFD with a remark; of a key that is there twice the last counts, with a remark. `thing`
// is named in messages: "the plan".
Result<WithRemarks<Json>> json_from_text(std::string_view text, std::string_view thing);

}  // namespace underlawn
