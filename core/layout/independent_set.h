// SPDX-License-Identifier: GPL-3.0-or-later
// Many places of which no two keep each other out, by iterated local search: swaps of one for two (Andrade,
// Resende and Werneck, "Fast local search for the maximum independent set problem", J. Heuristics 18, 2012).
#pragma once

#include <cstdint>
#include <vector>

#include "layout/trench_size.h"
#include "plane/point.h"

namespace underlawn {

// Of trenches of one direction and size. Every set of places is one bit a place, in words of 64.
class IndependentSet {
 public:
  // Lower ends of middle lines in the turned plane; but for the first so many they come by their height.
  IndependentSet(std::vector<Point> places, std::size_t unordered, const TrenchSize& size);

  // At least as many as the first `from` places where those keep each other none out. Stops at `enough`.
  // Deterministic.
  std::vector<Point> grown(std::size_t from, int enough);

 private:
  using Bits = std::uint64_t;
  struct Word {
    Bits in = 0;                         // chosen
    Bits ones = 0, twos = 0, fours = 0;  // by how many chosen places it is kept out, 4 at most, in binary
    Bits kept_out() const { return ones | twos | fours; }
    Bits single() const { return ones & ~(twos | fours); }
    void add(Bits one_more);
    void take(Bits one_less);
  };

  const Bits* near(std::size_t place) const { return &near_[place * words_]; }
  void keep_apart(std::size_t i, std::size_t from, std::size_t to, const TrenchSize& size);
  void mirror(std::size_t i);
  bool is_in(std::size_t place) const { return (now_[place / 64].in >> place % 64 & 1) != 0; }
  Bits open(std::size_t word) const { return all_[word] & ~(now_[word].in | now_[word].kept_out()); }
  void insert(std::size_t place);
  void remove(std::size_t place);
  void force(std::size_t place);
  void fill();
  void improve();
  bool any_two_for_one();
  bool two_for(std::size_t one);
  std::size_t random_place();

  std::vector<Point> places_;
  std::size_t words_;
  std::vector<Bits> near_;   // for each place those that keep it out
  std::vector<Bits> all_;    // every place
  std::vector<Bits> loose_;  // used again and again
  std::vector<Word> now_;
  int count_ = 0;  // chosen
  std::uint64_t random_ = 1;
};

}  // namespace underlawn
