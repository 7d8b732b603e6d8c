// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/result.h"

#include "base/say.h"
#include "base/wording.h"

namespace underlawn {

namespace {

std::string finding_of(const Trouble& t) {
  if (t.value.empty() && t.bound.empty()) return t.thing;
  if (t.value.empty()) return say("{} must be {}", t.thing, t.bound);
  if (t.bound.empty()) return say("{} is {}", t.thing, t.value);
  return say("{} is {}; it must be {}", t.thing, t.value, t.bound);
}

bool ends_a_sentence(const std::string& text) {
  return text.empty() || text.back() == '.' || text.back() == '!' || text.back() == '?';
}

}  // namespace

std::string Trouble::message() const {
  std::string text = capitalised(finding_of(*this));
  if (!ends_a_sentence(text)) text += '.';
  if (!text.empty() && !advice.empty()) text += ' ';
  return text + advice;
}

}  // namespace underlawn
