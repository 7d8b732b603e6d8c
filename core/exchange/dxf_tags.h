// SPDX-License-Identifier: GPL-3.0-or-later
// A DXF file as pairs of group code and value, from its text or its binary form (Autodesk, DXF Reference,
// "DXF Format": ASCII and binary DXF files). Reads on behind damage.
#pragma once

#include <deque>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

struct DxfTag {
  int code = 0;
  std::string_view value;  // into the bytes that were read, or into DxfTags::made
};

struct DxfTags {
  std::vector<DxfTag> tags;
  bool binary = false;
  long damages = 0;       // places where the order of codes and values was lost, and found again
  long first_damage = 0;  // line, or byte of a binary file
  bool ended = false;     // its end mark was there
  std::shared_ptr<std::deque<std::string>> made;  // the numbers of a binary file as texts
};

inline constexpr std::size_t kMostDxfTags = 12'000'000;

// `bytes` must outlive what is given back. Refuses what is no DXF at all, and more than kMostDxfTags.
Result<DxfTags> dxf_tags(std::string_view bytes);

}  // namespace underlawn
