// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/figure.h"

#include <cassert>
#include <set>

namespace underlawn {

void Figures::add(Figure f) {
  [[maybe_unused]] const bool fresh = places_.emplace(f.key, figures_.size()).second;
  assert(fresh && !f.key.empty());
  figures_.push_back(std::move(f));
}

const Figure* Figures::find(std::string_view key) const {
  const auto place = places_.find(key);
  return place == places_.end() ? nullptr : &figures_[place->second];
}

const Figure& Figures::at(std::string_view key) const {
  const Figure* f = find(key);
  assert(f != nullptr);
  return *f;
}

// A stack instead of recursion, so that not even a circle of `from` keys can run away.
std::vector<const Figure*> Figures::trace(std::string_view key) const {
  std::vector<const Figure*> seen;
  std::set<std::string_view> known;
  std::vector<std::string_view> waiting = {key};
  while (!waiting.empty()) {
    const std::string_view next = waiting.back();
    waiting.pop_back();
    const Figure* f = find(next);
    if (f == nullptr || !known.insert(f->key).second) continue;
    seen.push_back(f);
    for (auto from = f->from.rbegin(); from != f->from.rend(); ++from) waiting.push_back(*from);
  }
  return seen;
}

std::string key_with_unit(const Figure& f) {
  return f.key + std::string(key_suffix(f.quantity));
}

}  // namespace underlawn
