// SPDX-License-Identifier: GPL-3.0-or-later
// What the ground remembers of the heat taken from it, hour by hour.
#pragma once

#include <array>

#include "thermal/exponentials.h"

namespace underlawn {

inline constexpr int kMostTerms = 16;  // exponentials a simulation takes

// Each exponential forgets at its own rate and learns each hour's heat. Lanes are added in a fixed order, so
// every machine gives the same bits.
class GroundMemory {
 public:
  // At most kMostTerms terms; `pipe` m share the heat.
  GroundMemory(const ExponentialSum& sum, double pipe);

  // Fall of the wall at the end of the coming hour from the hours before it, K.
  double fall() const { return fall_; }
  // What an hour's heat does to the wall at its end, K/W.
  double one_hour() const { return one_hour_; }

  // The coming hour is over: it took q W. What is waited for, the next fall, is one multiplication away;
  // the terms catch up meanwhile.
  void learn(double q) {
    fall_ = ahead_ + next_hour_ * q;
    const Lanes heat = {q, q};
    Lanes even{}, odd{};
    for (int i = 0; i < kLanes; i += 2) {
      idle_[i] = keep_[i] * (idle_[i] + gain_[i] * heat);
      idle_[i + 1] = keep_[i + 1] * (idle_[i + 1] + gain_[i + 1] * heat);
      even += idle_[i];
      odd += idle_[i + 1];
    }
    even += odd;
    ahead_ = even[0] + even[1];
  }

 private:
  typedef double Lanes __attribute__((vector_size(16)));
  static constexpr int kLanes = kMostTerms / 2;
  std::array<Lanes, kLanes> keep_{};  // share of a fall that is left an hour later
  std::array<Lanes, kLanes> gain_{};  // K/W: what an hour's heat does to the end of the next
  std::array<Lanes, kLanes> idle_{};  // K: fall at the end of the coming hour but one, were the coming idle
  double one_hour_ = 0;
  double next_hour_ = 0;  // K/W, sum of gain_
  double fall_ = 0;
  double ahead_ = 0;  // sum of idle_
};

}  // namespace underlawn
