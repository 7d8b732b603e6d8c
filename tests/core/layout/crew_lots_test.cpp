// SPDX-License-Identifier: GPL-3.0-or-later
// What a crew expects, over random lots and the samples, by a judge of its own.
#include <gtest/gtest.h>

#include <cstdlib>
#include <iostream>
#include <numbers>

#include "core/layout/crew_judge.h"
#include "files/plan_file.h"
#include "flow/hydraulics.h"
#include "pipe/pipe_size.h"
#include "plan/checks/rules.h"
#include "plan/solve.h"
#include "site/clearances.h"
#include "support/random_lots.h"
#include "support/run_reference.h"

namespace underlawn {
namespace {

// UNDERLAWN_CREW_LOTS=1000 looks at as many; CI at 80.
int lots_asked() {
  const char* asked = std::getenv("UNDERLAWN_CREW_LOTS");
  return asked != nullptr ? std::max(1, std::atoi(asked)) : 80;
}

struct Laid {
  std::string name;
  Site site;
  Wishes wishes;
  Layout layout;
};

Laid lot(std::uint64_t seed, CoilPattern pattern, int groups) {
  const sample::RandomLot r = sample::random_lot(seed);
  Laid l{"seed " + std::to_string(seed), r.site, r.wishes, {}};
  l.wishes.pattern = pattern;
  l.wishes.groups = groups;
  if (pattern == CoilPattern::upright_coil) l.wishes.trench_width = usual_trench_width(pattern);
  Coil coil;
  coil.pattern = pattern;
  coil.trench_length = l.wishes.trench_length;
  coil.coil_length = 8 * l.wishes.trench_length;  // as 800 ft in 100 ft of trench
  l.layout = make_layout(l.site, l.wishes, coil);
  return l;
}

std::vector<Laid> samples() {
  std::vector<Laid> all;
  for (const char* name : {"alder-lane", "kestrel-bend"})
    for (int groups : {1, 2})
      for (CoilPattern pattern : {CoilPattern::flat_coil, CoilPattern::upright_coil}) {
        Plan plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn")->value;
        plan.wishes.groups = groups;
        plan.wishes.pattern = pattern;
        plan.wishes.trench_width = usual_trench_width(pattern);
        const Outcome o = solve(plan);
        all.push_back({name, plan.site, plan.wishes, o.layout});
      }
  return all;
}

template <class Visit>
void each_lot(const Visit& visit) {
  for (int i = 0; i < lots_asked(); ++i) {
    const Laid l = lot(static_cast<std::uint64_t>(i),
                       i % 2 == 0 ? CoilPattern::flat_coil : CoilPattern::upright_coil, 1 + i / 2 % 2);
    if (!l.layout.trenches.empty() && !l.layout.run.line.empty()) visit(l);
  }
}

std::vector<Polyline> conduits(const Layout& l) {
  std::vector<Polyline> all = l.header.legs;
  all.push_back(l.run.line);
  return all;
}

struct Heads {
  int places = 0, in_line = 0, side_by_side = 0, one_place = 0;
  double trench = 0, spanning = 0, worst = 0;
};

void look_at_heads(const Laid& l, Heads& h) {
  for (const judge::HeaderPlace& p : judge::header_places(l.layout)) {
    if (p.circuits < 2 || !l.layout.troubles.empty()) continue;
    ++h.places;
    h.in_line += p.off_line < 2e-3;
    h.side_by_side += p.side_by_side();
    h.one_place += p.unjoined == 0;
    h.trench += p.trench;
    h.spanning += p.spanning;
    h.worst = std::max(h.worst, p.trench - p.spanning);
    if (!p.side_by_side() || p.unjoined > 0 || p.trench > 1.1 * p.spanning + 2)
      std::cout << l.name << " (" << p.circuits << " circuits): off line " << p.off_line << " m, aslant "
                << p.aslant << " m, " << p.unjoined << " unjoined, " << p.trench << " m of trench, tree "
                << p.spanning << " m\n";
  }
}

TEST(CrewLots, HeadsLieSideBySideAndAllJointsInOneOpenTrench) {
  Heads h;
  each_lot([&](const Laid& l) { look_at_heads(l, h); });
  for (const Laid& l : samples()) look_at_heads(l, h);
  std::cout << h.places << " headers: " << h.in_line << " with heads in line, " << h.side_by_side
            << " with nothing aslant, " << h.one_place << " one place, " << h.trench
            << " m of trench against " << h.spanning << " m, worst " << h.worst << " m more\n";
  EXPECT_GT(h.places, lots_asked() / 4);
  EXPECT_EQ(h.one_place, h.places);
  // A header across the heads has no more trench between its joints than they are apart; what stands in its
  // way, and heads on both sides of it, may add a seventh. Bounds of our own.
  EXPECT_LE(h.trench, 1.15 * h.spanning);
  EXPECT_GE(h.in_line, 0.9 * h.places);
}

// Coils of one field are cut to one length. What a circuit has of its own between the header's tees differs
// by the header's last stretch; what that may do is asked of the flows: (most - least)/mean at most 10 %,
// common practice, no source, by the network of pipes.
TEST(CrewLots, CircuitsAreEqualOrNearlySo) {
  int all = 0;
  int uneven = 0;
  double worst_own = 0, worst_flow = 0, sum_own = 0, sum_flow = 0;
  const auto look = [&](const Laid& l) {
    if (!l.layout.troubles.empty()) return;
    const auto pipes = judge::circuit_pipes(l.layout);
    if (pipes.size() < 2) return;
    const auto flow = solve_flow(l.layout, l.wishes, FlowWishes{});
    ASSERT_TRUE(flow) << l.name << ": " << flow.error().code;
    ++all;
    EXPECT_LE(judge::spread(pipes, &judge::CircuitPipe::coil), 1e-6) << l.name;
    const double own = judge::spread(pipes, &judge::CircuitPipe::own);
    uneven += flow->design.imbalance > 0.1;
    if (flow->design.imbalance > 0.1)
      std::cout << l.name << ": flows differ by " << 100 * flow->design.imbalance << " %\n";
    worst_own = std::max(worst_own, own);
    worst_flow = std::max(worst_flow, flow->design.imbalance);
    sum_own += own;
    sum_flow += flow->design.imbalance;
  };
  each_lot(look);
  for (const Laid& l : samples()) look(l);
  std::cout << all << " loops: coil and own header pipe differ by " << 100 * sum_own / all
            << " % in the mean, " << 100 * worst_own << " % at most; flows by " << 100 * sum_flow / all
            << " and " << 100 * worst_flow << " %\n";
  EXPECT_GT(all, lots_asked() / 4);
  EXPECT_LE(sum_own / all, 0.1);
  EXPECT_LE(uneven, all / 50);  // where no sizes of the header hold it, a finding says so
}

TEST(CrewLots, NoBendIsTighterThanThePipeAllows) {
  int all = 0, lots = 0, tight = 0;
  each_lot([&](const Laid& l) {
    const auto pipe = find_pipe(l.wishes.header_pipe);
    // Published: 25 outside diameters, DR 11.
    int here = 0;
    for (const Polyline& line : conduits(l.layout)) {
      all += static_cast<int>(line.size()) - 2;
      here +=
          judge::tight_bends(line, l.wishes.run_width, pipe->outside_diameter, 25 * pipe->outside_diameter);
    }
    tight += here;
    lots += here > 0;
    if (here > 0) std::cout << l.name << ": " << here << " tight in " << l.wishes.run_width << " m\n";
  });
  std::cout << all << " bends, " << tight << " tight on " << lots << " lots\n";
  EXPECT_GT(all, lots_asked() / 2);
  EXPECT_LE(tight, 0.1 * all);  // where there is no other way an elbow is laid; a bound of our own
}

TEST(CrewLots, NothingIsDugUnderADrainFieldOrThroughARootZone) {
  int fields = 0, trees = 0;
  const auto look = [&](const Laid& l) {
    for (const Feature& f : l.site.features) {
      const bool field = f.kind == FeatureKind::drain_field || f.kind == FeatureKind::reserve_field;
      if (!field && f.kind != FeatureKind::tree) continue;
      (field ? fields : trees) += 1;
      // 1.5 ft of radius for every inch of trunk, unless the site says otherwise.
      const double root = root_zone_radius(l.site, f) + l.wishes.run_width / 2 - 2e-3;
      for (const Polyline& line : conduits(l.layout)) {
        const double metres = judge::metres_in(line, [&](Point p) {
          return field ? judge::in_ring(f.points, p)
                       : std::hypot(p.x - f.points[0].x, p.y - f.points[0].y) < root;
        });
        EXPECT_EQ(metres, 0) << l.name << ", feature " << f.id;
      }
    }
  };
  each_lot(look);
  for (const Laid& l : samples()) look(l);
  EXPECT_GT(fields, 0);
  EXPECT_GT(trees, 0);
}

const Feature* house_of(const Site& site) {
  for (const Feature& f : site.features)
    if (site.entry && f.id == site.entry->house_id) return &f;
  return nullptr;
}

// Nearer to the wall than the clearance, half the trench and a metre.
double beside_footing(const Laid& l, const Feature& house, const Polyline& line) {
  const double reach = run_clearance(l.site, house) + l.wishes.run_width / 2 + 1;
  return judge::metres_in(line, [&](Point p) { return judge::to_ring(house.points, p) < reach - 2e-3; });
}

TEST(CrewLots, TheRunLiesAlongTheFootingNoFartherThanTheCheapestWay) {
  int runs = 0, longer = 0;
  double ours = 0, theirs = 0;
  each_lot([&](const Laid& l) {
    const Feature* house = house_of(l.site);
    if (house == nullptr || l.layout.run.line.size() < 3 || !l.layout.groups.empty()) return;
    const Polyline run(l.layout.run.line.begin() + 1, l.layout.run.line.end());
    const sample::RunReference reference(l.site, l.wishes, l.layout);
    const auto best = reference.best(run.front(), run.back(), reference.cost(run) + 1);
    if (!best) return;
    ++runs;
    const double here = beside_footing(l, *house, run), there = beside_footing(l, *house, best->line);
    ours += here;
    theirs += there;
    longer += here > there + 0.5;
    if (here > there + 0.5)
      std::cout << l.name << ": " << here << " m beside the footing, cheapest way " << there << " m, costs "
                << reference.cost(run) << " and " << best->cost << '\n';
  });
  std::cout << runs << " runs: " << ours << " m beside a footing, cheapest ways " << theirs << " m, "
            << longer << " longer\n";
}

struct Square {
  int crossings = 0, square = 0, could = 0;
};

double angle_of(Point a, Point b, Point c, Point d) {
  const double t = std::atan2(b.y - a.y, b.x - a.x) - std::atan2(d.y - c.y, d.x - c.x);
  return std::abs(std::asin(std::sin(t)));
}

bool meets(Point a, Point b, Point c, Point d) {
  const auto side = [](Point p, Point q, Point r) {
    return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

// The run with what lies between two of its corners replaced by a stretch of two metres square over the
// utility: the cheapest that may be dug.
double cheapest_square(const sample::RunReference& ref, const Polyline& run, std::size_t leg, Point c,
                       Point d, double at_most) {
  const double long_ = std::hypot(d.x - c.x, d.y - c.y);
  const Point e{(d.x - c.x) / long_, (d.y - c.y) / long_};
  const Point n{-e.y, e.x};
  const Point a = run[leg], b = run[leg + 1];
  const double side = (b.x - a.x) * n.x + (b.y - a.y) * n.y > 0 ? 1 : -1;
  double least = at_most;
  for (double s = 0; s <= long_; s += 0.25) {
    const Point q{c.x + s * e.x, c.y + s * e.y};
    const Point in{q.x - side * n.x, q.y - side * n.y}, out{q.x + side * n.x, q.y + side * n.y};
    for (std::size_t i = 0; i <= leg; ++i)
      for (std::size_t j = leg + 1; j < run.size(); ++j) {
        Polyline way(run.begin(), run.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        way.push_back(in);
        way.push_back(out);
        way.insert(way.end(), run.begin() + static_cast<std::ptrdiff_t>(j), run.end());
        double bound = static_cast<double>(way.size()) - 2;
        for (std::size_t k = 1; k < way.size(); ++k)
          bound += std::hypot(way[k].x - way[k - 1].x, way[k].y - way[k - 1].y);
        if (bound >= least) continue;
        const double cost = ref.cost(way);
        if (cost < least && ref.free(way, 2e-3)) least = cost;
      }
  }
  return least;
}

TEST(CrewLots, TheRunCrossesUtilitiesSquarelyWhereThatCostsNoMore) {
  Square sum;
  each_lot([&](const Laid& l) {
    if (l.layout.run.line.size() < 3 || !l.layout.groups.empty()) return;
    const Polyline run(l.layout.run.line.begin() + 1, l.layout.run.line.end());
    std::optional<sample::RunReference> reference;
    for (const Feature& f : l.site.features) {
      if (f.kind != FeatureKind::utility) continue;
      for (std::size_t k = 1; k < f.points.size(); ++k)
        for (std::size_t i = 0; i + 1 < run.size(); ++i) {
          const Point c = f.points[k - 1], d = f.points[k];
          if (!meets(run[i], run[i + 1], c, d)) continue;
          ++sum.crossings;
          const double angle = angle_of(run[i], run[i + 1], c, d) * 180 / std::numbers::pi;
          sum.square += angle >= 75;
          if (angle >= 75) continue;
          if (!reference) reference.emplace(l.site, l.wishes, l.layout);
          const double cost = reference->cost(run), square = cheapest_square(*reference, run, i, c, d, cost);
          if (square > cost * 0.995) continue;
          ++sum.could;
          std::cout << l.name << ": feature " << f.id << " at " << angle << " degrees for " << cost
                    << " m, square for " << square << " m\n";
        }
    }
  });
  std::cout << sum.crossings << " crossings, " << sum.square << " within 15 degrees of square, " << sum.could
            << " that could be for less\n";
  EXPECT_GT(sum.crossings, 0);
  // Square to the one of two that lie close together it slants over the other.
  EXPECT_LE(sum.could, sum.crossings / 10);
}

// 12 in between lines that cross: common practice, no source.
TEST(CrewLots, ACrossingWithoutRoomAboveOrBelowIsAFinding) {
  int crossings = 0, clear = 0, too_near = 0;
  each_lot([&](const Laid& l) {
    Plan plan;
    plan.site = l.site;
    plan.wishes = l.wishes;
    Outcome outcome;
    outcome.layout = l.layout;
    for (Feature& f : plan.site.features) f.depth = 0.45 + 0.3 * (f.id % 7);
    const auto findings = checks::utility_depth_conflict(plan, outcome);
    for (const Feature& f : plan.site.features) {
      if (f.kind != FeatureKind::utility) continue;
      bool crossed = false;
      for (const Polyline& line : conduits(l.layout))
        for (std::size_t i = 1; i < line.size(); ++i)
          for (std::size_t k = 1; k < f.points.size(); ++k)
            crossed = crossed || meets(line[i - 1], line[i], f.points[k - 1], f.points[k]);
      crossings += crossed;
      const bool near = crossed && std::abs(plan.wishes.run_depth - f.depth) < 12 * 0.0254;
      const bool said = std::any_of(findings.begin(), findings.end(), [&](const Finding& one) {
        return one.key.find(std::to_string(f.id)) != std::string::npos;
      });
      EXPECT_EQ(said, near) << l.name << ", feature " << f.id << " at " << f.depth << " m";
      (near ? too_near : clear) += crossed;
    }
  });
  std::cout << crossings << " utilities crossed: " << clear << " clear, " << too_near
            << " too near and said\n";
  EXPECT_GT(clear, 0);
  EXPECT_GT(too_near, 0);
}

}  // namespace
}  // namespace underlawn
