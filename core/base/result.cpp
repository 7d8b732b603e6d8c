// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/result.h"

namespace underlawn {

namespace {

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string finding_of(const Trouble& t) {
  if (t.value.empty() && t.bound.empty()) return t.thing;
  if (t.value.empty()) return t.thing + " must be " + t.bound;
  if (t.bound.empty()) return t.thing + " is " + t.value;
  return t.thing + " is " + t.value + "; it must be " + t.bound;
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
