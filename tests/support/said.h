// SPDX-License-Identifier: GPL-3.0-or-later
// Looks for words that were written without being handed to a translator.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "base/result.h"
#include "base/say.h"

namespace underlawn::test {

// Texts come to it while the marking language is spoken; what it finds are words outside all brackets, each
// once: not what stands in quotation marks, not keys and columns (“loop.depth”, “time_s”), not `allowed`.
class Listener {
 public:
  explicit Listener(std::set<std::string> allowed);
  void hear(std::string text);
  void hear(const Trouble& trouble) { hear(trouble.message()); }
  void hear(const std::vector<Trouble>& troubles) {
    for (const Trouble& t : troubles) hear(t);
  }
  template <class T>
  void hear(const Result<T>& result) {
    if (!result) hear(result.error());
  }
  template <class T>
  void hear(const Result<WithRemarks<T>>& result) {
    if (!result) return hear(result.error());
    hear(result->remarks);
  }
  const std::vector<std::string>& unsaid() const { return unsaid_; }  // each with the text it was met in
  int heard() const { return heard_; }

 private:
  SpeakHere here_;
  std::set<std::string> allowed_;
  std::set<std::string> met_;
  std::vector<std::string> unsaid_;
  int heard_ = 0;
};

// Symbols of units, which are the same in both languages.
std::set<std::string> units_and(std::set<std::string> more = {});

}  // namespace underlawn::test
