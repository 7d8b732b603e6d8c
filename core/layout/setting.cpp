// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/setting.h"

#include "base/say.h"
#include "layout/closed_side.h"
#include "layout/costs.h"
#include "layout/given.h"
#include "layout/on_line.h"
#include "layout/run_by.h"

namespace underlawn {

namespace {

constexpr int kMoreThanWanted = 3;
constexpr int kMostCircuits = 1000;

TrenchSize size_of(const Wishes& w, const Coil& coil) {
  return {coil.trench_length, w.trench_width, std::max(w.spacing, w.trench_width), w.end_gap};
}

// One of its length or angle less a half turn, 0..pi.
double half_turn(double angle) {
  const double a = std::fmod(angle, std::numbers::pi);
  return a < 0 ? a + std::numbers::pi : a;
}

constexpr double kAcross = 0.0175;  // rad: a degree

bool is_across(const Segment& header, double angle) {
  return distance(header.a, header.b) > kSamePlace &&
         std::abs(dot(unit(header.b - header.a), direction(angle))) < std::sin(kAcross);
}

bool held_aslant(const Wishes& w) {
  if (w.header_on && !is_across(*w.header_on, *w.direction)) return true;
  return std::any_of(w.group_headers.begin(), w.group_headers.end(), [&w](const GroupHeader& h) {
    return h.group <= w.groups && !is_across(h.on, *w.direction);
  });
}

std::vector<Bearing> bearings_of(const Site& site, const Wishes& w) {
  if (w.direction) return {{half_turn(*w.direction), true}};
  return bearings_to_try(site);
}

}  // namespace

Setting::Setting(const Site& drawn, const Wishes& asked, const Coil& coil, const Region& routable)
    : site(with_closed_sides(drawn, asked)),
      wishes(asked),
      terrain(asked.level_floor ? drawn.heights : std::vector<SpotHeight>{}),
      troubles(closed_side_troubles(drawn, asked)) {
  if (asked.direction && held_aslant(asked))
    troubles.push_back({"direction_against_header", say("direction held for the trenches"),
                        say("not across the header's line"), say("square to the line held for the header"),
                        say("Let the direction or the header go: the trenches lie across the header now.")});
  lock(asked, coil);
  conduits = conduits_with_held(conduits_for(drawn, wishes, routable), held);
  if (!asked.run_by.empty() && drawn.entry) start_run(drawn);
}

void Setting::lock(const Wishes& asked, const Coil& coil) {
  for (std::size_t i = 0; i < asked.locked.size(); ++i) {
    auto made = locked_trench(asked, i, coil);
    if (!made) {
      troubles.push_back(made.error());
      continue;
    }
    made->locked = true;
    held.trenches.push_back(middle_line(*made));
    locked.push_back(std::move(*made));
  }
  if (wishes.aim == Aim::circuits) wishes.circuits = kMostCircuits;
  wishes.circuits = std::max(0, wishes.circuits - static_cast<int>(locked.size()));
}

void Setting::start_run(const Site& drawn) {
  auto start = run_by_places(drawn, wishes, conduits);
  if (!start) {
    troubles.push_back(start.error());
    return;
  }
  held.conduits.push_back(*start);
  conduits.stubs = {std::move(*start)};
}

FieldSearch::FieldSearch(const Keeping& k, const Coil& coil, int wanted, bool one_fewer)
    : keeping_(k),
      length_(coil.trench_length),
      ground_(trench_ground(k.site)),
      for_header_(conduit_ground(k.site)),
      approach_(k.site, k.wishes.run_width),
      search_{ground_,
              for_header_,
              approach_,
              size_of(k.wishes, coil),
              k.wishes.run_width,
              std::min(wanted, kMostCircuits),
              false,
              one_fewer,
              std::min(wanted, kMostCircuits) + kMoreThanWanted},
      bearings_(bearings_of(k.site, k.wishes)) {
  if (k.out_of_reach == nullptr) return;
  for (const Ring& ring : *k.out_of_reach) {
    for_header_.areas.push_back(ring);
    for_header_.area_owner.push_back(-1);
  }
}

Candidates FieldSearch::candidates(const std::stop_token& stop) const {
  if (!keeping_.wishes.header_on) return gather(search_, keeping_, bearings_, stop);
  Candidates all;
  all.fits = most(stop);
  all.found = on_line();
  return all;
}

std::vector<Arrangement> FieldSearch::on_line() const {
  const QuickLegal legal(keeping_.site, keeping_.wishes, keeping_.held.trenches, keeping_.held.conduits);
  return arrangements_on_line(*keeping_.wishes.header_on, legal, keeping_.wishes, length_, search_.wanted,
                              approach_);
}

std::vector<Arrangement> FieldSearch::longest(const LengthBounds& bounds, const std::stop_token& stop) const {
  if (keeping_.wishes.header_on) return {};
  return longest_arrangements(search_, keeping_, bearings_, bounds, stop);
}

int FieldSearch::most(const std::stop_token& stop) const {
  if (!keeping_.wishes.header_on) return most_that_fit(search_, keeping_, bearings_, stop);
  const QuickLegal legal(keeping_.site, keeping_.wishes, keeping_.held.trenches, keeping_.held.conduits);
  const auto found = arrangements_on_line(*keeping_.wishes.header_on, legal, keeping_.wishes, length_,
                                          search_.most, approach_);
  return found.empty() ? 0 : static_cast<int>(found.front().trenches.size());
}

std::vector<RestrictionCost> FieldSearch::costs(const std::vector<Bearing>& best, int fits,
                                                const std::stop_token& stop) const {
  if (keeping_.wishes.header_on) return {};
  return restriction_costs(search_, keeping_, best, bearings_, fits, stop);
}

}  // namespace underlawn
