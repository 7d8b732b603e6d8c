// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>

#include "base/say.h"
#include "base/wording.h"
#include "cost/price_book.h"
#include "dig/dig_ground.h"
#include "dig/dig_order.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/checks/step_words.h"
#include "plane/strip.h"
#include "site/clearances.h"

namespace underlawn::checks {

namespace {

constexpr double kSpeck = 0.5;   // m2 that are not spoken of
constexpr double kMarks = 0.05;  // the same over gas and electric lines: a mark is no larger

double spoken_of(const Feature& f) {
  const bool perilous =
      f.kind == FeatureKind::utility && (f.utility == UtilityKind::gas || f.utility == UtilityKind::electric);
  return perilous ? kMarks : kSpeck;
}

// The ground beside or over a feature that a heap had better not lie on; nothing for other kinds.
Region guarded(const Site& site, const Feature& f) {
  if (f.kind == FeatureKind::tree && !f.points.empty())
    return buffered(f.points[0], root_zone_radius(site, f));
  if (f.kind == FeatureKind::utility && f.points.size() > 1) return buffered(f.points, kToleranceZone);
  if (f.kind == FeatureKind::house && f.points.size() > 2)
    return grown(region_of(f.points), kSpoilOffWall - kCheckTolerance);
  return {};
}

struct Words {
  std::string title, advice, source;
};

Words words_of(const Feature& f, const std::string& steps, UnitSystem units) {
  if (f.kind == FeatureKind::tree)
    return {say("Spoil of {} lies on the roots of {}", steps, display_name(f)),
            say("Spread it thinner elsewhere or have it trucked off; where it must lie there, put plywood or "
                "mats under it, keep the machine off, and take it away within days."),
            say("weight and cover harm roots: common practice, no source; an arborist's word goes first")};
  if (f.kind == FeatureKind::utility)
    return {say("Spoil of {} lies over {}", steps, display_name(f)),
            say("Have the {} line located and marked first, and ask its owner whether a heap may lie there; "
                "else pile it elsewhere or have it trucked off. Marks must stay visible.",
                utility_name(f.utility)),
            say("tolerance zone of 18 in each side (laonecall.com); state law governs")};
  return {say("Spoil of {} lies against {}", steps, display_name(f)),
          say("Pile it {} off the wall or have it trucked off: it wets and loads the wall, and buries vents "
              "and siding.",
              print_quantity(Quantity::length, kSpoilOffWall, units)),
          say("common practice, no source")};
}

double covered(const DigStep& step, const Region& ground) {
  double sum = 0;
  for (const Ring& ring : step.spoil) sum += area(intersect(region_of(ring), ground));
  return sum;
}

double heap_area(const DigStep& step) {
  double sum = 0;
  for (const Ring& ring : step.spoil) sum += area(ring);
  return sum;
}

// What of the heap would have to go, loose, and what taking it off and bringing it back costs by the truck's
// hour; without a price only the first.
std::string truck_words(const Plan& plan, double loose, bool roots) {
  const std::string volume = print_quantity(Quantity::volume, loose, plan.units);
  const PriceRow truck = row_of(plan.pricing.book, plan.wishes, "truck_hour");
  if (!truck.price || !(plan.crew.truck_load > 0)) return say("That is {} of loose earth.", volume);
  const double hours = 2 * loose / plan.crew.truck_load * plan.crew.truck_trip / 3600;
  const std::string money =
      print_quantity(Quantity::count, std::round(hours * *truck.price / 10) * 10, UnitSystem::metric);
  return roots ? say("Trucking {} of loose earth off and back keeps these roots free, for about {} {}.",
                     volume, money, plan.wishes.prices.currency)
               : say("Trucking {} of loose earth off and back keeps the marks in sight, for about {} {}.",
                     volume, money, plan.wishes.prices.currency);
}

// What stands on the other side of the trench within the width of its heap, where that is met most often: the
// lot's things by their names, else what else is dug.
std::string other_side(const Site& site, const DigOrder& order, const DigStep& step) {
  std::map<std::string, int> met;
  const double first = step.cast - step.heap.width / 2, last = step.cast + step.heap.width / 2;
  const int n = std::max(1, static_cast<int>(length(step.line)));
  for (int k = 0; k <= n; ++k) {
    const PlaceAlong place = place_along(step.line, length(step.line) * k / n);
    const std::size_t leg = std::min(place.leg, step.line.size() - 2);
    const Point out = (step.spoil_left ? -1 : 1) * left_normal(unit(step.line[leg + 1] - step.line[leg]));
    const Segment across{place.at + first * out, place.at + last * out};
    if (const std::string name = blocker_of(site, across); !name.empty()) ++met[name];
    for (const DigStep& other : order.steps)
      if (&other != &step && line_distance({across.a, across.b}, other.line) < other.top / 2)
        ++met[uncapitalised(step_name(other))];
  }
  const auto most = std::max_element(met.begin(), met.end(),
                                     [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == met.end() ? "" : most->first;
}

std::string why_there(const Site& site, const DigOrder& order, const std::vector<const DigStep*>& steps) {
  const std::string name = other_side(site, order, *steps.front());
  if (name.empty()) return "";
  return " " + say("It lies there because {} is in the way on the other side and a heap that keeps off the "
                   "line finds no room on this.",
                   name);
}

}  // namespace

// One finding for each tree, house and utility, over all heaps; measured on the heaps as they come out.
std::vector<Finding> spoil_lies_on(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (outcome.order == nullptr) return findings;
  for (const Feature& f : plan.site.features) {
    const Region ground = guarded(plan.site, f);
    if (ground.empty()) continue;
    std::vector<const DigStep*> steps;
    double sum = 0, loose = 0;
    for (const DigStep& step : outcome.order->steps)
      if (const double m2 = covered(step, ground); m2 > spoken_of(f)) {
        steps.push_back(&step);
        sum += m2;
        loose += step.work.loose * m2 / heap_area(step);
      }
    if (steps.empty()) continue;
    const Words words = words_of(f, steps_named(steps), plan.units);
    Finding made = make_finding("spoil_lies_on", feature_part(f), Severity::warning, words.title);
    set_measure(made, sum, 0, Quantity::area);
    made.advice = words.advice;
    if (f.kind == FeatureKind::utility) made.advice += why_there(plan.site, *outcome.order, steps);
    if (f.kind != FeatureKind::house)
      made.advice += " " + truck_words(plan, loose, f.kind == FeatureKind::tree);
    made.source = words.source;
    for (const DigStep* step : steps) made.places.push_back(step->line);
    findings.push_back(std::move(made));
  }
  return findings;
}

}  // namespace underlawn::checks
