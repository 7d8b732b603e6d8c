// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/independent_set.h"

#include <bit>

namespace underlawn {

namespace {

constexpr int kShakes = 100;

// No branch: about every other pair is one.
std::uint64_t conflict(Point a, Point b, const TrenchSize& size) {
  const bool along = std::abs(a.x - b.x) < size.pitch() - 2 * kFitSlack;
  const bool across = std::abs(a.y - b.y) < size.spacing - 1e-9;
  return static_cast<std::uint64_t>(along & across);
}

std::size_t lowest(std::size_t word, std::uint64_t bits) {
  return 64 * word + static_cast<std::size_t>(std::countr_zero(bits));
}

}  // namespace

void IndependentSet::Word::add(Bits one_more) {
  Bits carry = ones & one_more;
  ones ^= one_more;
  fours ^= twos & carry;
  twos ^= carry;
}

void IndependentSet::Word::take(Bits one_less) {
  Bits borrow = ~ones & one_less;
  ones ^= one_less;
  fours ^= ~twos & borrow;
  twos ^= borrow;
}

IndependentSet::IndependentSet(std::vector<Point> places, std::size_t unordered, const TrenchSize& size)
    : places_(std::move(places)),
      words_((places_.size() + 63) / 64),
      near_(places_.size() * words_, 0),
      all_(words_, 0),
      loose_(words_, 0),
      now_(words_) {
  std::size_t low = unordered;
  for (std::size_t i = 0; i < places_.size(); ++i) {
    all_[i / 64] |= Bits{1} << i % 64;
    for (std::size_t j = 0; j < std::min(i, unordered); ++j) keep_apart(j, i, size);
    while (low < i && places_[low].y <= places_[i].y - size.spacing) ++low;
    for (std::size_t j = low; j < i; ++j) keep_apart(j, i, size);
  }
}

std::vector<Point> IndependentSet::grown(std::size_t from, int enough) {
  for (std::size_t v = 0; v < from; ++v)
    if ((open(v / 64) >> v % 64 & 1) != 0) insert(v);
  improve();
  std::vector<Word> before;
  for (int shake = 0; shake < kShakes && count_ < enough && !places_.empty(); ++shake) {
    before = now_;
    const int count_before = count_;
    force(random_place());
    if (shake % 8 == 0) force(random_place());
    improve();
    if (count_ >= count_before) continue;
    now_ = before;
    count_ = count_before;
  }
  std::vector<Point> out;
  for (std::size_t i = 0; i < places_.size(); ++i)
    if (is_in(i)) out.push_back(places_[i]);
  return out;
}

void IndependentSet::keep_apart(std::size_t i, std::size_t j, const TrenchSize& size) {
  const Bits apart = conflict(places_[i], places_[j], size);
  near_[i * words_ + j / 64] |= apart << j % 64;
  near_[j * words_ + i / 64] |= apart << i % 64;
}

std::size_t IndependentSet::random_place() {
  random_ = random_ * 6364136223846793005u + 1442695040888963407u;
  return static_cast<std::size_t>(random_ >> 33) % places_.size();
}

void IndependentSet::insert(std::size_t v) {
  now_[v / 64].in |= Bits{1} << v % 64;
  ++count_;
  for (std::size_t w = 0; w < words_; ++w) now_[w].add(near(v)[w]);
}

void IndependentSet::remove(std::size_t v) {
  now_[v / 64].in &= ~(Bits{1} << v % 64);
  --count_;
  for (std::size_t w = 0; w < words_; ++w) now_[w].take(near(v)[w]);
}

void IndependentSet::force(std::size_t v) {
  if (is_in(v)) return;
  for (std::size_t w = 0; w < words_; ++w)
    for (Bits rest = near(v)[w] & now_[w].in; rest != 0; rest &= rest - 1) remove(lowest(w, rest));
  insert(v);
}

void IndependentSet::fill() {
  for (std::size_t w = 0; w < words_; ++w)
    for (Bits rest = open(w); rest != 0; rest = open(w)) insert(lowest(w, rest));
}

void IndependentSet::improve() {
  do fill();
  while (any_two_for_one());
}

bool IndependentSet::any_two_for_one() {
  for (std::size_t w = 0; w < words_; ++w)
    for (Bits rest = now_[w].in; rest != 0; rest &= rest - 1)
      if (two_for(lowest(w, rest))) return true;
  return false;
}

// Of the places that only this one keeps out, two that keep each other none out: the first by the higher one.
bool IndependentSet::two_for(std::size_t one) {
  for (std::size_t w = 0; w < words_; ++w) loose_[w] = near(one)[w] & now_[w].single();
  for (std::size_t w = 0; w < words_; ++w)
    for (Bits rest = loose_[w]; rest != 0; rest &= rest - 1) {
      const std::size_t high = lowest(w, rest);
      for (std::size_t v = 0; v <= w; ++v) {
        Bits below = loose_[v] & ~near(high)[v];
        if (v == w) below &= (Bits{1} << high % 64) - 1;
        if (below == 0) continue;
        remove(one);
        insert(high);
        insert(lowest(v, below));
        return true;
      }
    }
  return false;
}

}  // namespace underlawn
