// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/picture_edits.h"

#include <cmath>
#include <numbers>

#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kLeastSize = 0.001;  // m

bool sound(const Picture& p) {
  const auto size = [](double v) { return v >= kLeastSize && v <= kLargestPlan; };
  return std::abs(p.at.x) <= kLargestPlan && std::abs(p.at.y) <= kLargestPlan && size(p.width) &&
         size(p.height) && std::isfinite(p.turn) && p.strength >= 0 && p.strength <= 1 && p.page >= 1;
}

double within_a_turn(double radians) {
  return std::remainder(radians, 2 * std::numbers::pi);
}

// With all that pointer and keys could change as it was before.
Picture as_locked(const Picture& before, Picture after) {
  after.at = before.at;
  after.width = before.width;
  after.height = before.height;
  after.turn = before.turn;
  after.page = before.page;
  return after;
}

bool has(const Plan& plan, int index) {
  return index >= 0 && index < static_cast<int>(plan.pictures.size());
}

}  // namespace

Picture moved(Picture picture, Point by) {
  picture.at = picture.at + by;
  return picture;
}

Picture turned(Picture picture, Point about, double radians) {
  picture.at = about + rotated(picture.at - about, radians);
  picture.turn = within_a_turn(picture.turn + radians);
  return picture;
}

std::optional<Picture> scaled(Picture picture, Point a, Point b, double metres) {
  const double now = distance(a, b);
  if (!(now > 0) || !(metres > 0) || !std::isfinite(metres)) return std::nullopt;
  const double by = metres / now;
  picture.at = a + by * (picture.at - a);
  picture.width *= by;
  picture.height *= by;
  if (!sound(picture)) return std::nullopt;
  return picture;
}

std::optional<Picture> aligned(Picture picture, Point a, Point b, double bearing, double north) {
  if (!(distance(a, b) > 0) || !std::isfinite(bearing)) return std::nullopt;
  const double now = std::atan2(b.y - a.y, b.x - a.x);
  return turned(std::move(picture), a, north - bearing - now);
}

namespace edit {

Plan with_picture(Plan plan, int index, Picture picture) {
  if (!has(plan, index)) return plan;
  Picture& there = plan.pictures[static_cast<std::size_t>(index)];
  if (there.locked) picture = as_locked(there, std::move(picture));
  if (sound(picture)) there = std::move(picture);
  return plan;
}

Plan with_new_picture(Plan plan, Picture picture) {
  std::size_t text = picture.data.text().size();
  for (const Picture& p : plan.pictures) text += p.data.text().size();
  const bool room =
      plan.pictures.size() < static_cast<std::size_t>(kMostPictures) && text <= kMostPictureText;
  if (room && sound(picture)) plan.pictures.push_back(std::move(picture));
  return plan;
}

Plan without_picture(Plan plan, int index) {
  if (has(plan, index)) plan.pictures.erase(plan.pictures.begin() + index);
  return plan;
}

}  // namespace edit
}  // namespace underlawn
