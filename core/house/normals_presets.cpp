// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "house/weather.h"

namespace underlawn {

const std::vector<MonthlyNormals>& normals_presets() {
  static const std::vector<MonthlyNormals> presets = {
      {mark("Subarctic (typical numbers of our own, not a station)"),
       {-22, -18, -11, 0, 10, 15, 17, 14, 8, -3, -14, -19},
       {9, 10, 12, 11, 12, 11, 10, 10, 9, 8, 8, 9}},
      {mark("Cold continental (typical numbers of our own, not a station)"),
       {-10, -7, 0, 8, 15, 20, 23, 21, 17, 9, 1, -7},
       {10, 10, 10, 11, 12, 11, 11, 11, 11, 11, 9, 9}},
      {mark("Cool continental (typical numbers of our own, not a station)"),
       {-3, -2, 4, 9, 15, 20, 23, 22, 18, 12, 5, 0},
       {8, 8, 9, 11, 11, 11, 11, 11, 11, 10, 8, 7}},
      {mark("Cool maritime (typical numbers of our own, not a station)"),
       {4, 4, 6, 9, 13, 16, 18, 18, 15, 11, 7, 4},
       {5, 6, 7, 9, 9, 9, 9, 9, 8, 7, 5, 5}},
      {mark("High and dry (typical numbers of our own, not a station)"),
       {0, 1, 5, 9, 14, 20, 24, 22, 18, 11, 4, -1},
       {15, 15, 16, 16, 16, 17, 17, 17, 17, 16, 15, 15}},
      {mark("Mixed humid (typical numbers of our own, not a station)"),
       {2, 3, 8, 13, 18, 23, 26, 25, 21, 15, 9, 4},
       {9, 10, 11, 12, 11, 11, 11, 11, 11, 11, 10, 9}},
      {mark("Hot humid (typical numbers of our own, not a station)"),
       {12, 14, 17, 21, 25, 28, 29, 29, 27, 22, 17, 13},
       {11, 11, 11, 11, 10, 10, 10, 11, 11, 12, 11, 11}},
      {mark("Hot dry (typical numbers of our own, not a station)"),
       {13, 15, 18, 22, 27, 32, 35, 34, 31, 25, 18, 13},
       {13, 13, 14, 15, 15, 15, 13, 12, 13, 14, 14, 13}}};
  return presets;
}

}  // namespace underlawn
