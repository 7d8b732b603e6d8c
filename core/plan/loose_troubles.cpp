// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <numbers>

#include "base/say.h"
#include "pipe/pipe_size.h"
#include "plan/bounded_number.h"
#include "plan/plan_troubles.h"
#include "plan/record/record_troubles.h"
#include "plane/region.h"
#include "survey/survey_troubles.h"

namespace underlawn {

namespace {

constexpr double kPi = std::numbers::pi;

void check_house_in_lot(std::vector<Trouble>& troubles, const Plan& plan, const Region& lot,
                        const Feature& house) {
  const auto ring = checked_ring(house.points, "");
  if (!ring) return;  // said by check_shape
  const double outside = area(subtract(region_of(*ring), lot));
  if (outside <= 0.01) return;  // m2: a wall drawn along the lot line
  troubles.push_back({"house_outside_lot", display_name(house),
                      say("{} outside the lot line", print_quantity(Quantity::area, outside, plan.units)),
                      say("inside the lot line"), say("Move the house or the lot line.")});
}

void check_houses(std::vector<Trouble>& troubles, const Plan& plan) {
  if (plan.site.lot.empty()) return;
  const auto lot = checked_ring(lot_ring(plan.site), "");
  if (!lot) return;
  const Region inside = region_of(*lot);
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house) check_house_in_lot(troubles, plan, inside, f);
}

void check_dimensions(std::vector<Trouble>& troubles, const Plan& plan) {
  for (std::size_t i = 0; i < plan.dimensions.size(); ++i) {
    const Dimension& d = plan.dimensions[i];
    const std::string name = say("Dimension {}", std::to_string(i + 1));
    const std::size_t before = troubles.size();
    check_places(troubles, plan, {d.from, d.to}, name);
    if (troubles.size() == before)
      check_numbers(troubles, plan,
                    {{say("{} offset", name), Quantity::length, d.offset, -kLargestPlan, kLargestPlan, false,
                      say("Draw it nearer to what it measures."), "dimension offset"}});
  }
}

double off_wall(const Feature& house, Point p) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < house.points.size(); ++i)
    least =
        std::min(least, distance(Segment{house.points[i], house.points[(i + 1) % house.points.size()]}, p));
  return least;
}

void check_entry(std::vector<Trouble>& troubles, const Plan& plan) {
  if (!plan.site.entry) return;
  const EntryPoint& entry = *plan.site.entry;
  const Feature* house = find_feature(plan.site, entry.house_id);
  const std::string advice = say("Set the entry point on a house wall.");
  if (house == nullptr || house->kind != FeatureKind::house) {
    troubles.push_back({"entry_house_missing", say("House of the entry point"),
                        say("id {}", std::to_string(entry.house_id)), say("the id of a house on the plan"),
                        advice});
    return;
  }
  check_numbers(troubles, plan,
                {{say("Entry point distance from the wall of {}", display_name(*house)), Quantity::length,
                  off_wall(*house, entry.at), 0, kEntryReach, false, advice, "entry point distance"}});
}

void check_pipe(std::vector<Trouble>& troubles, const std::string& name, const std::string& thing) {
  auto pipe = find_pipe(name);
  if (pipe) return;
  Trouble t = pipe.error();
  t.thing = thing;
  troubles.push_back(std::move(t));
}

void check_picture(std::vector<Trouble>& troubles, const Plan& plan, const Picture& p) {
  const std::string name = p.name.empty() ? say("Picture") : say("Picture {}", p.name);
  check_places(troubles, plan, {p.at}, name);
  const std::string scale = say("Scale it by two points and the distance between them.");
  check_numbers(
      troubles, plan,
      {{say("{} width", name), Quantity::length, p.width, 0, kLargestPlan, true, scale, "picture width"},
       {say("{} height", name), Quantity::length, p.height, 0, kLargestPlan, true, scale, "picture height"},
       {say("{} turn", name), Quantity::angle, p.turn, -2 * kPi, 2 * kPi, false, say("Turn it again."),
        "picture turn"},
       {say("{} strength", name), Quantity::ratio, p.strength, 0, 1, false,
        say("Enter how strongly it shows."), "picture strength"},
       {say("{} page", name), Quantity::count, static_cast<double>(p.page), 1, 9999, false,
        say("Enter which page of the PDF is shown."), "picture page"}});
}

void check_map_place(std::vector<Trouble>& troubles, const Plan& plan, const MapPlace& place) {
  check_places(troubles, plan, {place.at}, say("Map place"));
  const std::string advice = say("Take the place on the map out, or import the drawing again.");
  constexpr double kDegree = kPi / 180;
  check_numbers(
      troubles, plan,
      {{mark("Latitude"), Quantity::angle, place.latitude * kDegree, -kPi / 2, kPi / 2, false, advice},
       {mark("Longitude"), Quantity::angle, place.longitude * kDegree, -kPi, kPi, false, advice}});
}

}  // namespace

std::vector<Trouble> loose_troubles(const Plan& plan) {
  std::vector<Trouble> troubles;
  check_houses(troubles, plan);
  check_entry(troubles, plan);
  check_pipe(troubles, plan.wishes.pipe, say("Coil pipe"));
  check_pipe(troubles, plan.wishes.header_pipe, say("Header pipe"));
  check_dimensions(troubles, plan);
  for (Trouble& t : loop_test_troubles(plan.test, plan.units)) troubles.push_back(std::move(t));
  for (Trouble& t : survey_troubles(plan.survey, plan.units)) troubles.push_back(std::move(t));
  for (const Picture& p : plan.pictures) check_picture(troubles, plan, p);
  if (plan.map_place) check_map_place(troubles, plan, *plan.map_place);
  if (plan.sheets.scale)
    check_numbers(
        troubles, plan,
        {{mark("Scale of the sheets, 1 :"), Quantity::count, static_cast<double>(*plan.sheets.scale), 1,
          kLargestSheetScale, false, say("Choose one, or the largest that fits.")}});
  for (Trouble& t : record_troubles(plan.record, plan.units)) troubles.push_back(std::move(t));
  for (Trouble& t : as_built_troubles(plan.as_built, plan.units)) troubles.push_back(std::move(t));
  return troubles;
}

}  // namespace underlawn
