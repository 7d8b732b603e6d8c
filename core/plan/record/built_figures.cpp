// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/built_figures.h"

#include <algorithm>
#include <array>
#include <set>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr std::array kDug{"trench.",  "header.",        "run.length", "run.shared",
                          "run.pipe", "run.dug_length", "dig.",       "crossing."};

bool is_of_digging(const std::string& key) {
  return std::ranges::any_of(kDug, [&](const char* begins) { return key.starts_with(begins); });
}

// The same number by the same way: one entry serves both.
bool same(const Figure* planned, const Figure& built) {
  return planned != nullptr && planned->value == built.value && planned->from == built.from;
}

// All of the digging, and what differs among all that they came from.
std::set<std::string> wanted(const Figures& planned, const Figures& built) {
  std::set<std::string> keys;
  for (const Figure& f : built.all()) {
    if (!is_of_digging(f.key)) continue;
    for (const Figure* one : built.trace(f.key))
      if (is_of_digging(one->key) || !same(planned.find(one->key), *one)) keys.insert(one->key);
  }
  return keys;
}

}  // namespace

Figures with_built(const Figures& planned, const AsBuiltAnswer& built) {
  Figures all = planned;
  if (!built.loop.changed || built.outcome == nullptr) return all;
  const std::set<std::string> keys = wanted(planned, built.outcome->figures);
  for (Figure f : built.outcome->figures.all()) {
    if (!keys.contains(f.key)) continue;
    f.key = "built." + f.key;
    f.label = say("As built: {}", f.label);
    for (std::string& from : f.from)
      if (keys.contains(from)) from = "built." + from;
    all.add(std::move(f));
  }
  return all;
}

}  // namespace underlawn
