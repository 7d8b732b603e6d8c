// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/kept_plan.h"

#include <algorithm>

namespace underlawn {

namespace {

template <class T>
std::size_t bytes(const std::vector<T>& all) {
  return all.size() * sizeof(T);
}

std::size_t bytes_of(const Feature& f) {
  return sizeof f + bytes(f.points) + f.name.size() + f.note.size();
}
std::size_t bytes_of(const Site& s) {
  return sizeof s + bytes(s.lot) + bytes(s.rules) + bytes(s.heights);
}
std::size_t bytes_of(const Wishes& w) {
  std::size_t sum =
      sizeof w + bytes(w.given) + bytes(w.locked) + bytes(w.run_by) + bytes(w.kept) + bytes(w.kept_run);
  for (const auto* list : {&w.given, &w.locked})
    for (const GivenTrench& t : *list) sum += bytes(t.bends);
  return sum;
}
std::size_t bytes_of(const ThermalWishes& t) {
  return sizeof t + bytes(t.weather_file.outdoor) + bytes(t.hours.heating) + bytes(t.hours.cooling) +
         bytes(t.hours.ground);
}
std::size_t bytes_of(const FlowWishes& f) {
  return sizeof f;
}
std::size_t bytes_of(const Plan& rest) {
  return sizeof rest + bytes(rest.dimensions) + bytes(rest.accepted) + bytes(rest.test.readings) +
         bytes(rest.pictures) + rest.survey.deed.text.size();
}

// The part as it was kept before where it is the same, else one of its own.
template <class T>
std::shared_ptr<const T> kept(const T& part, const std::shared_ptr<const T>& before, std::size_t& own) {
  if (before && *before == part) return before;
  own += bytes_of(part);
  return std::make_shared<const T>(part);
}

template <class T>
T without(T& from) {
  return std::exchange(from, T{});
}

}  // namespace

KeptPlan::KeptPlan(const Plan& whole, const KeptPlan& before) {
  Plan rest = whole;
  Site site = without(rest.site);
  const std::vector<Feature> features = without(site.features);
  wishes_ = kept(without(rest.wishes), before.wishes_, own_bytes_);
  thermal_ = kept(without(rest.thermal), before.thermal_, own_bytes_);
  flow_ = kept(without(rest.flow), before.flow_, own_bytes_);
  site_ = kept(site, before.site_, own_bytes_);
  rest_ = kept(rest, before.rest_, own_bytes_);
  own_bytes_ += sizeof *this + features.size() * sizeof(features_[0]);
  features_.reserve(features.size());
  // Features are sorted by id, so that the same one is found where the last search ended or a little on.
  auto at = before.features_.begin();
  for (const Feature& f : features) {
    while (at != before.features_.end() && (*at)->id < f.id) ++at;
    features_.push_back(kept(f, at == before.features_.end() ? nullptr : *at, own_bytes_));
  }
}

Plan KeptPlan::plan() const {
  Plan plan = *rest_;
  plan.site = *site_;
  plan.site.features.reserve(features_.size());
  for (const auto& f : features_) plan.site.features.push_back(*f);
  plan.wishes = *wishes_;
  plan.thermal = *thermal_;
  plan.flow = *flow_;
  return plan;
}

}  // namespace underlawn
