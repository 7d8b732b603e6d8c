// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/independent_set.h"

#include <algorithm>
#include <bit>
#include <cmath>

namespace underlawn {

namespace {

constexpr int kShakes = 100;

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
    while (low < i && places_[low].y <= places_[i].y - size.spacing) ++low;
    keep_apart(i, 0, std::min(i, unordered), size);
    keep_apart(i, low, i, size);
  }
  for (std::size_t i = 0; i < places_.size(); ++i) mirror(i);
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

// No branch on the pairs: about every other one keeps itself apart.
void IndependentSet::keep_apart(std::size_t i, std::size_t from, std::size_t to, const TrenchSize& size) {
  const Point at = places_[i];
  const double along = size.pitch() - 2 * kFitSlack, across = size.spacing - 1e-9;
  for (std::size_t j = from; j < to;) {
    Bits bits = 0;
    const std::size_t word = j / 64, end = std::min(to, 64 * (word + 1));
    for (; j < end; ++j) {
      const Point p = places_[j];
      const auto apart =
          static_cast<Bits>(std::abs(p.x - at.x) < along) & static_cast<Bits>(std::abs(p.y - at.y) < across);
      bits |= apart << j % 64;
    }
    near_[i * words_ + word] |= bits;
  }
}

// To those that it keeps out of what was found of it: they come before it.
void IndependentSet::mirror(std::size_t i) {
  for (std::size_t w = 0; w <= i / 64; ++w) {
    Bits before = near(i)[w];
    if (w == i / 64) before &= (Bits{1} << i % 64) - 1;
    for (; before != 0; before &= before - 1) near_[lowest(w, before) * words_ + i / 64] |= Bits{1} << i % 64;
  }
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
