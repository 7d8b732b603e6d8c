// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/surveyed.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "plan/edits.h"
#include "plan/stake_out.h"
#include "plane/region.h"
#include "site/clearances.h"
#include "survey/earth.h"

namespace underlawn {

namespace {

std::optional<Trouble> no_lot_of(const SurveyedDeed& s) {
  if (!s.reading.refusals.empty()) return s.reading.refusals.front().trouble;
  if (s.traverse.ring.size() < 3 || !s.traverse.comes_back)
    return Trouble{"deed_open", say("the deed's boundary"),
                   say("{} courses", std::to_string(s.traverse.legs.size() - s.traverse.ties)),
                   say("at least three that come back to their beginning"),
                   say("Go on with the next course.")};
  const auto ring = checked_ring(s.traverse.ring, say("the deed's boundary"));
  return ring ? std::nullopt : std::optional(ring.error());
}

Point middle_of_lot(const Site& site) {
  if (site.lot.empty()) return {};
  const Box box = bounds(lot_ring(site));
  return 0.5 * (box.low + box.high);
}

double setback_of(const Plan& plan) {
  return plan.site.lot.empty() ? kDefaultSetback : plan.site.lot.front().setback;
}

struct Middle {
  double a = 0, b = 0;
  int count = 0;
};

// Of the first and last of each: middle of the box, so that many points in one place do not weigh more.
template <class A, class B>
Middle middle_of(const std::vector<Sighting>& points, SightingMethod method, A first, B second) {
  double low[2] = {1e300, 1e300}, high[2] = {-1e300, -1e300};
  Middle m;
  for (const Sighting& s : points) {
    if (s.method != method) continue;
    const double at[2] = {first(s), second(s)};
    for (int i = 0; i < 2; ++i) {
      low[i] = std::min(low[i], at[i]);
      high[i] = std::max(high[i], at[i]);
    }
    ++m.count;
  }
  if (m.count == 0) return m;
  m.a = (low[0] + high[0]) / 2;
  m.b = (low[1] + high[1]) / 2;
  return m;
}

double rounded_to(double value, double step) {
  return std::round(value / step) * step;
}

void tie_down(Plan& plan, const std::vector<Sighting>& points) {
  const Middle earth = middle_of(
      points, SightingMethod::latitude_longitude, [](const Sighting& s) { return s.latitude; },
      [](const Sighting& s) { return s.longitude; });
  if (earth.count > 0 && !plan.map_place)
    plan.map_place = MapPlace{rounded_to(earth.a, 1e-7), rounded_to(earth.b, 1e-7), middle_of_lot(plan.site)};
  const Middle grid = middle_of(
      points, SightingMethod::east_north, [](const Sighting& s) { return s.east; },
      [](const Sighting& s) { return s.north; });
  if (grid.count > 0 && !plan.survey.grid)
    plan.survey.grid = GridTie{rounded_to(grid.a, 0.01), rounded_to(grid.b, 0.01), middle_of_lot(plan.site)};
}

std::optional<std::vector<Point>> places_of(const Plan& plan, const std::vector<std::size_t>& indices) {
  const auto placed = placed_notebook(plan);
  std::vector<Point> points;
  for (std::size_t i : indices) {
    if (i >= placed.size() || !placed[i].at) return std::nullopt;
    points.push_back(*placed[i].at);
  }
  return points;
}

}  // namespace

SurveyedDeed surveyed_deed(const Deed& deed, const Plan& plan) {
  SurveyedDeed s;
  s.reading = read_deed(deed.text, plan.units);
  s.traverse = run_traverse(s.reading.courses, deed, plan.site.north);
  s.no_lot = no_lot_of(s);
  return s;
}

std::vector<KnownPoint> known_points(const Site& site) {
  std::vector<KnownPoint> known;
  for (std::size_t i = 0; i < site.lot.size(); ++i)
    known.push_back({"lot " + std::to_string(i + 1), site.lot[i].at});
  for (const HouseCorner& c : house_corners(site)) known.push_back({"house " + c.tag, c.at});
  return known;
}

std::vector<PlacedSighting> placed_notebook(const Plan& plan) {
  if (plan.survey.notebook.empty()) return {};
  return place_notebook(plan.survey, {known_points(plan.site), plan.map_place, plan.site.north, plan.units});
}

namespace edit {

Plan with_lot_by_deed(Plan plan, const Deed& deed) {
  const SurveyedDeed s = surveyed_deed(deed, plan);
  if (s.no_lot) return plan;
  plan.survey.deed = deed;
  const double setback = setback_of(plan);
  return with_lot(std::move(plan), s.traverse.ring, setback);
}

Plan with_sighting(Plan plan, Sighting sighting) {
  auto& notebook = plan.survey.notebook;
  if (notebook.size() >= kMostSightings) return plan;
  sighting.name = sighting.name.empty() ? next_name(notebook) : free_name(notebook, sighting.name);
  notebook.push_back(std::move(sighting));
  return plan;
}

Plan with_sighting_at(Plan plan, std::size_t index, Sighting sighting) {
  auto& notebook = plan.survey.notebook;
  if (index >= notebook.size()) return plan;
  const std::string before = notebook[index].name;
  if (sighting.name != before) {
    std::vector<Sighting> others = notebook;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(index));
    sighting.name = sighting.name.empty() ? before : free_name(others, sighting.name);
    for (Sighting& s : notebook) {
      if (s.from == before) s.from = sighting.name;
      if (s.to == before) s.to = sighting.name;
    }
  }
  notebook[index] = std::move(sighting);
  return plan;
}

Plan without_sighting(Plan plan, std::size_t index) {
  auto& notebook = plan.survey.notebook;
  if (index < notebook.size()) notebook.erase(notebook.begin() + static_cast<std::ptrdiff_t>(index));
  return plan;
}

Plan with_field_points(Plan plan, std::vector<Sighting> points) {
  tie_down(plan, points);
  auto& notebook = plan.survey.notebook;
  points.resize(std::min(points.size(), kMostSightings - std::min(kMostSightings, notebook.size())));
  name_freely(notebook, points);
  notebook.insert(notebook.end(), std::make_move_iterator(points.begin()),
                  std::make_move_iterator(points.end()));
  return plan;
}

Plan with_pinned(Plan plan, std::size_t index, Point there) {
  const auto placed = placed_notebook(plan);
  if (index >= placed.size() || !placed[index].at) return plan;
  const Point by = there - *placed[index].at;
  const SightingMethod method = plan.survey.notebook[index].method;
  if (method == SightingMethod::latitude_longitude && plan.map_place)
    plan.map_place->at = plan.map_place->at + by;
  if (method == SightingMethod::east_north) {
    if (!plan.survey.grid) plan.survey.grid = GridTie{};
    plan.survey.grid->at = plan.survey.grid->at + by;
  }
  return plan;
}

Plan with_feature_of(Plan plan, const std::vector<std::size_t>& indices, Feature feature) {
  auto points = places_of(plan, indices);
  if (!points) return plan;
  feature.points = std::move(*points);
  return with_feature(std::move(plan), std::move(feature));
}

Plan with_lot_of(Plan plan, const std::vector<std::size_t>& indices) {
  const auto points = places_of(plan, indices);
  if (!points) return plan;
  const double setback = setback_of(plan);
  return with_lot(std::move(plan), *points, setback);
}

}  // namespace edit

}  // namespace underlawn
