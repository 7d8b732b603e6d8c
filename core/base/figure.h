// SPDX-License-Identifier: GPL-3.0-or-later
// Every number that a person sees is a Figure: it can say which formula, inputs and published source it came
// from.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"

namespace underlawn {

struct Figure {
  std::string key;    // "dig.bank_volume", "trench.3.pitch"; dots group, unique in a set
  std::string label;  // "Excavated volume, vertical sides"
  double value = 0;   // SI
  Quantity quantity = Quantity::count;
  std::string method;  // the formula in words or symbols, written where it is coded; "typed" for an input
  std::string source;  // published source, "common practice, no source", or "" for plain arithmetic
  std::vector<std::string>
      from;  // keys of the figures it was computed from, in the order the formula names them

  bool operator==(const Figure&) const = default;
};

// Figures in the order they were added. Keys are unique: adding a key again is a programming error (asserts).
class Figures {
 public:
  void add(Figure f);
  const Figure* find(std::string_view key) const;
  const Figure& at(std::string_view key) const;  // the key must exist
  const std::vector<Figure>& all() const { return figures_; }
  // Everything that `key` was computed from, itself first, depth first, each once: how it came about.
  std::vector<const Figure*> trace(std::string_view key) const;
  bool operator==(const Figures&) const = default;

 private:
  std::vector<Figure> figures_;
  std::map<std::string, std::size_t, std::less<>> places_;  // of each key in figures_
};

// Key with its unit suffix, as written to machine-readable results: "dig.bank_volume" ->
// "dig.bank_volume_m3".
std::string key_with_unit(const Figure& f);

}  // namespace underlawn
