// SPDX-License-Identifier: GPL-3.0-or-later
// What one call of a deed names: bearings, angles and lengths, each with what the words round it make of it.
#pragma once

#include "survey/deed_pieces.h"

namespace underlawn::deed {

enum class Meaning {
  way,          // bearing of a straight course
  chord_way,    // bearing of a curve's chord
  tangent_way,  // bearing in which a curve begins
  centre_way,   // bearing of a curve's centre from its beginning
  distance,
  radius,
  arc,
  chord,
  delta,
  curve_degree,  // central angle of 100 ft of arc
  unknown,
};

struct Item {
  enum class Kind { bearing, angle, length } kind = Kind::length;
  Meaning meaning = Meaning::unknown;
  double value = 0;   // rad or m
  bool unit = false;  // a length's unit was written
  bool due = false;
  bool doubtful = false;
  std::string wrong;             // of a bearing or an angle
  double unit_metres = 0;        // of a length's unit
  std::size_t from = 0, to = 0;  // tokens
};

struct CallItems {
  std::vector<Item> items;
  bool curve_words = false;          // it speaks of a curve
  std::size_t first_curve_word = 0;  // token
  std::optional<bool> left;
  std::optional<double> hollow_side;  // azimuth
  bool tangent = false, not_tangent = false;
  bool to_beginning = false;
};

// Of tokens from..to. `bare`: metres of a number without a unit.
CallItems items_of(const Tokens& tokens, std::size_t from, std::size_t to, double bare);

// Where the description of the next curve begins: "... to the beginning of a curve to the left having ...".
// `to` where it does not.
std::size_t next_curve_at(const Tokens& tokens, std::size_t from, std::size_t to);

}  // namespace underlawn::deed
