// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/taping.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "base/typed_text.h"
#include "plan/tape.h"
#include "plane/region.h"

namespace underlawn {

namespace {

struct Fixing {
  Point a, b;
  double first = 0, second = 0;  // m
};

class Finder {
 public:
  Finder(const std::vector<HouseCorner>& corners, const BuiltPoint& built, const std::string& thing,
         UnitSystem units)
      : corners_(corners), built_(built), thing_(thing), units_(units) {}

  Result<TapedPlace> find() const {
    if (built_.tapes.size() < 2) return marked();
    const auto fix = fixing();
    if (!fix) return refuse(fix.error());
    const Point here = crossing(*fix, built_.left), there = crossing(*fix, !built_.left);
    TapedPlace place{here, true, cut_angle(here, fix->a, fix->b), expected_error(here, fix->a, fix->b), {}};
    if (place.cut < kFlattestCut) return refuse(flat(place.cut));
    for (std::size_t i = 2; i < built_.tapes.size(); ++i) {
      const auto check = checked(built_.tapes[i], place, there);
      if (!check) return refuse(check.error());
      place.checks.push_back(*check);
    }
    return place;
  }

 private:
  std::string shown(double m) const { return print_quantity(Quantity::length, m, units_, Fineness::fine); }

  Result<TapedPlace> marked() const {
    if (built_.at) return TapedPlace{*built_.at, false, 0, 0, {}};
    return refuse({"tapes_missing", say("Tapes to {}", thing_), std::to_string(built_.tapes.size()),
                   say("two from house corners"),
                   say("Tape it from one more corner, or mark it on the drawing.")});
  }

  Result<Point> corner(const std::string& tag) const {
    for (const HouseCorner& c : corners_)
      if (c.tag == tag) return c.at;
    std::string all;
    for (const HouseCorner& c : corners_) all += (all.empty() ? "" : ", ") + c.tag;
    return refuse({"tape_corner_unknown", say("House corner taped from to {}", thing_), in_quotes(tag),
                   all.empty() ? say("a corner of a house, but none is drawn") : say("one of {}", all),
                   say("Corners are lettered on the drawing and on the dig sheet.")});
  }

  Result<Fixing> fixing() const {
    const Tape &one = built_.tapes[0], &two = built_.tapes[1];
    const auto a = corner(one.corner), b = corner(two.corner);
    if (!a) return refuse(a.error());
    if (!b) return refuse(b.error());
    if (distance(*a, *b) < kSameStake)
      return refuse({"tape_corner_twice", say("Both tapes to {}", thing_), say("from corner {}", one.corner),
                     say("from two corners"), say("Tape it from a second corner.")});
    const Fixing fix{*a, *b, one.length, two.length};
    if (auto trouble = apart(fix, one, two)) return refuse(*trouble);
    return fix;
  }

  // Tapes that miss one another by no more than they err are taken to touch.
  std::optional<Trouble> apart(const Fixing& fix, const Tape& one, const Tape& two) const {
    const double base = distance(fix.a, fix.b), slack = tape_error(fix.first) + tape_error(fix.second);
    const std::string pair = say("{} and {}", one.corner, two.corner);
    if (!(fix.first > 0 && fix.second > 0 && fix.first < 1e4 && fix.second < 1e4))
      return Trouble{"tape_no_length", say("Tapes to {} from {}", thing_, pair),
                     say("{} and {}", shown(fix.first), shown(fix.second)), say("lengths above 0"),
                     say("Enter them again.")};
    if (fix.first + fix.second < base - slack)
      return Trouble{"tapes_do_not_meet", say("Tapes to {} from {} together", thing_, pair),
                     shown(fix.first + fix.second), say("at least {}, from corner to corner", shown(base)),
                     say("Read both tapes again: they are too short to meet.")};
    const double more = std::abs(fix.first - fix.second);
    if (more > base + slack)
      return Trouble{"tapes_do_not_meet", say("Difference of the tapes to {} from {}", thing_, pair),
                     shown(more), say("at most {}, from corner to corner", shown(base)),
                     say("Read both tapes again: one is too long, or they are from other corners.")};
    return std::nullopt;
  }

  static Point crossing(const Fixing& f, bool left) {
    const double base = distance(f.a, f.b);
    const double along = (f.first * f.first - f.second * f.second + base * base) / (2 * base);
    const double off = std::sqrt(std::max(0.0, f.first * f.first - along * along));
    const Point ahead = unit(f.b - f.a);
    return f.a + along * ahead + (left ? off : -off) * left_normal(ahead);
  }

  Trouble flat(double cut) const {
    const auto degrees = [this](double a) { return print_quantity(Quantity::angle, a, units_); };
    return {"tapes_cut_flat", say("Angle at which the tapes to {} cut", thing_), degrees(cut),
            say("at least {}, or the side and the place cannot be told", degrees(kFlattestCut)),
            say("Tape it from two corners that see it at a wider angle.")};
  }

  Result<TapeCheck> checked(const Tape& tape, const TapedPlace& place, Point other_side) const {
    const auto from = corner(tape.corner);
    if (!from) return refuse(from.error());
    const double off = tape.length - distance(*from, place.at);
    const double most = most_residual(tape.length, place.error);
    if (std::abs(off) <= most) return TapeCheck{tape.corner, tape.length, off};
    const bool mirrored = std::abs(tape.length - distance(*from, other_side)) <= most;
    return refuse({"check_tape_off", say("Check tape from {} to {}", tape.corner, thing_),
                   off > 0 ? say("{} too long", shown(off)) : say("{} too short", shown(-off)),
                   say("within {}", shown(most)),
                   mirrored ? say("It fits on the other side of the line {}–{}: choose that side.",
                                  built_.tapes[0].corner, built_.tapes[1].corner)
                            : say("One of the tapes was misread: tape it again.")});
  }

  const std::vector<HouseCorner>& corners_;
  const BuiltPoint& built_;
  const std::string& thing_;
  UnitSystem units_;
};

}  // namespace

double most_residual(double check_length, double error) {
  return std::max(0.05, 3 * std::hypot(tape_error(check_length), error));
}

Result<TapedPlace> place_of(const std::vector<HouseCorner>& corners, const BuiltPoint& built,
                            const std::string& thing, UnitSystem units) {
  return Finder(corners, built, thing, units).find();
}

BuiltPoint on_likely_side(const std::vector<HouseCorner>& corners, BuiltPoint built,
                          const Polyline& planned) {
  BuiltPoint other = built;
  other.left = !built.left;
  const auto here = place_of(corners, built, ""), there = place_of(corners, other, "");
  if (!there || (here && planned.empty())) return built;
  if (!here) return other;
  return line_distance(planned, {there->at}) < line_distance(planned, {here->at}) ? other : built;
}

BuiltPoint taped_from(const Tie& tie) {
  BuiltPoint p;
  p.tapes = {{tie.first, tie.first_distance}, {tie.second, tie.second_distance}};
  p.left = tie.left_of_base;
  return p;
}

}  // namespace underlawn
