// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/row_metres.h"

namespace underlawn {

namespace {

constexpr double kHair = 1e-6;  // m
constexpr int kMostInStretch = 60;

std::optional<double> lowest_in(const Free& free, Interval within) {
  for (const Interval& i : free)
    if (i.high >= within.low) {
      const double at = std::max(i.low, within.low);
      return at <= within.high ? std::optional(at) : std::nullopt;
    }
  return std::nullopt;
}

std::optional<double> highest_in(const Free& free, Interval within) {
  for (auto i = free.rbegin(); i != free.rend(); ++i)
    if (i->low <= within.high) {
      const double at = std::min(i->high, within.high);
      return at >= within.low ? std::optional(at) : std::nullopt;
    }
  return std::nullopt;
}

}  // namespace

double metres_in(const std::vector<Interval>& trenches) {
  double sum = 0;
  for (const Interval& t : trenches) sum += t.high - t.low;
  return sum;
}

bool holds(const Free& free, double at) {
  return std::any_of(free.begin(), free.end(),
                     [at](const Interval& i) { return i.low - kHair <= at && at <= i.high + kHair; });
}

// The head is as far out as a header lets it.
std::vector<Interval> RowMetres::one(Interval s, const Free& heads) const {
  Interval best{0, 0};
  const auto take = [&](Interval t) {
    if (t.high - t.low > best.high - best.low + kHair) best = t;
  };
  const auto low = lowest_in(heads, s), high = highest_in(heads, s);
  if (at_ != HeadsAt::high)
    for (const auto& from : {low, high})
      if (from) take({*from, std::min(s.high, *from + bounds_.most)});
  if (at_ != HeadsAt::low)
    for (const auto& from : {low, high})
      if (from) take({std::max(s.low, *from - bounds_.most), *from});
  if (best.high - best.low < bounds_.least - kHair) return {};
  return {best};
}

// As equal as may be, side by side from the low end; one whose ends no header reaches gives way as far as it
// must.
std::vector<Interval> RowMetres::several(Interval s, const Free& heads, int count) const {
  const double room = s.high - s.low - (count - 1) * gap_;
  const double each = std::min(bounds_.most, room / count);
  const double spare = std::max(0.0, room - count * each);
  std::vector<Interval> out;
  double at = s.low;
  for (int i = 0; i < count; ++i) {
    const bool last = i + 1 == count;
    // What is left over lies behind the first, where it lets its head out.
    const Interval place{at, last ? s.high : at + each + (i == 0 ? spare : 0)};
    Interval t{place.low, std::min(place.high, place.low + each)};
    if (last) t = {std::max(place.low, place.high - each), place.high};
    if (holds(heads, t.low) || holds(heads, t.high))
      out.push_back(t);
    else
      for (const Interval& shorter : one(place, heads)) out.push_back(shorter);
    at = place.high + gap_;
  }
  return out;
}

std::vector<Interval> RowMetres::in_stretch(Interval s, const Free& heads, int wanted) const {
  if (wanted < 1 || s.high - s.low < bounds_.least - kHair) return {};
  std::vector<Interval> best = one(s, heads);
  for (int k = 2; k <= std::min(wanted, kMostInStretch); ++k) {
    const double room = s.high - s.low - (k - 1) * gap_;
    if (room < k * bounds_.least - kHair) break;
    if (std::min(room, k * bounds_.most) <= metres_in(best) + kHair) continue;
    std::vector<Interval> more = several(s, heads, k);
    if (metres_in(more) > metres_in(best) + kHair) best = std::move(more);
  }
  return best;
}

// Stretches nearer than the gap: the one or the other of two gives way.
std::vector<Interval> RowMetres::best(const Free& stretches, const Free& heads, int wanted) const {
  if (stretches.empty() || wanted < 1) return {};
  const Free before(stretches.begin(), stretches.end() - 1);
  const Interval last = stretches.back();
  const auto with = [&](const Free& first, Interval s) {
    std::vector<Interval> all = best(first, heads, wanted);
    for (const Interval& t : in_stretch(s, heads, wanted - static_cast<int>(all.size()))) all.push_back(t);
    return all;
  };
  const double close = before.empty() ? 0 : gap_ - (last.low - before.back().high);
  if (close <= 0) return with(before, last);
  Free shorter = before;
  shorter.back().high -= close;
  if (shorter.back().high - shorter.back().low < bounds_.least) shorter.pop_back();
  std::vector<Interval> a = with(shorter, last), b = with(before, {last.low + close, last.high});
  return metres_in(a) >= metres_in(b) ? a : b;
}

}  // namespace underlawn
