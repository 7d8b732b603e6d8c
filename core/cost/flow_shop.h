// SPDX-License-Identifier: GPL-3.0-or-later
// Two stations that every job passes, one after the other, in one order at both: Johnson 1954, with a set-up
// at the second that needs nothing of the first, so that the two race each other.
//
//   first   [--1--][--2--][--3--]
//   second  [set-up 1][1][set-up 2][2]..     job k starts at the second when it has left the first, and the
//                                            second has done job k-1 and set up for k
#pragma once

#include <vector>

namespace underlawn {

struct ShopJob {
  double first = 0;   // s at the first station
  double set_up = 0;  // s at the second before the job itself is needed there
  double second = 0;  // s at the second
  bool operator==(const ShopJob&) const = default;
};

struct ShopStay {
  double left_first = 0;     // s, from the start of all
  double begins_second = 0;  // s
  double left_second = 0;    // s
  double second_waited = 0;  // s that the second stood, set up, with the job not there
  bool operator==(const ShopStay&) const = default;
};

// As early as can be in the order given. Times are not below 0.
std::vector<ShopStay> pass_shop(const std::vector<ShopJob>& jobs);

// s until the last job has left the second station; 0 for none.
double makespan(const std::vector<ShopJob>& jobs);

}  // namespace underlawn
