// SPDX-License-Identifier: GPL-3.0-or-later
// Where machines may drive when they keep as well off walls, tanks and drain fields as there is room.
#pragma once

#include <map>

#include "dig/dig_ground.h"

namespace underlawn {

// Not for several threads at once: what was asked for once is remembered.
class RoomBeside {
 public:
  // `ground`: where the machine's middle may be at all; `width` of it, m.
  RoomBeside(const DigGround& lot, Region ground, double width);

  // What `taken` leaves where it keeps all that is asked off everything.
  Region widest(const Region& taken) const;
  // The same where nothing that is asked leaves a way from one to any of the others: all give way alike, in
  // quarters, and those that need not have all of theirs again, what asks most first; where
  // that for the way before leaves one too, that. Nothing where none of that helps.
  Region widest_way(const Region& taken, Point from, const std::vector<Point>& to) const;

 private:
  using Shares = std::vector<int>;  // quarters of what is asked, by thing
  const Region& at(const Shares& shares) const;
  Region joining(const Shares& shares, const Region& taken, Point from, const std::vector<Point>& to) const;

  std::vector<DigGround::Beside> beside_;
  Region ground_;
  double width_;
  mutable std::map<Shares, Region> known_;
  mutable Shares last_;
};

// The part of the region that holds the first and any of the others; nothing where none does. An end outside
// is taken for the nearest place inside.
Region part_joining(const Region& region, Point from, const std::vector<Point>& to);

}  // namespace underlawn
