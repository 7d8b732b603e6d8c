// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/built_figures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr std::array kDug{"trench.",  "header.",        "run.length", "run.shared",
                          "run.pipe", "run.dug_length", "dig.",       "crossing."};

bool is_of_digging(const std::string& key) {
  return std::ranges::any_of(kDug, [&](const char* begins) { return key.starts_with(begins); });
}

constexpr double kSame = 1e-9;  // of the value: nearer than that is the last digit's noise

bool differs(const Figure* planned, const Figure& built) {
  return planned == nullptr ||
         std::abs(planned->value - built.value) > kSame * std::max(std::abs(planned->value), 1e-3);
}

// Of the digging what is another than planned and the sums of the earth, and whatever else of that they came
// from.
std::set<std::string> wanted(const Figures& planned, const Figures& built) {
  std::set<std::string> keys;
  for (const Figure& f : built.all()) {
    const bool sum = f.key.starts_with("dig.total.");
    if (!is_of_digging(f.key) || (!sum && !differs(planned.find(f.key), f))) continue;
    keys.insert(f.key);
    for (const Figure* one : built.trace(f.key))
      if (differs(planned.find(one->key), *one)) keys.insert(one->key);
  }
  return keys;
}

// What is another than planned though nothing that it comes from is: somebody measured it.
void tell_measured(Figure& f, const std::set<std::string>& keys) {
  if (f.method == "typed" || f.key.starts_with("dig.") ||
      std::ranges::any_of(f.from, [&](const auto& from) { return keys.contains(from); }))
    return;
  f.method = say("as taped, marked or measured on the job");
  f.source = say("as-built record of this plan");
  f.from.clear();
}

}  // namespace

Figures with_built(const Figures& planned, const AsBuiltAnswer& built) {
  Figures all = planned;
  if (!built.loop.changed || built.outcome == nullptr) return all;
  const std::set<std::string> keys = wanted(planned, built.outcome->figures);
  for (Figure f : built.outcome->figures.all()) {
    if (!keys.contains(f.key)) continue;
    if (differs(planned.find(f.key), f)) tell_measured(f, keys);
    f.key = "built." + f.key;
    f.label = say("As built: {}", f.label);
    for (std::string& from : f.from)
      if (keys.contains(from)) from = "built." + from;
    all.add(std::move(f));
  }
  return all;
}

}  // namespace underlawn
