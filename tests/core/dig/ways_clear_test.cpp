// SPDX-License-Identifier: GPL-3.0-or-later
// Every way that a machine or a truck is said to take, at the moment it is driven, against every trench open
// and every heap standing then. Distances are measured here, foot by foot; nothing of the search is used.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "dig/dig_ground.h"
#include "dig/dig_order.h"
#include "dig/machine_ways.h"
#include "files/plan_file.h"
#include "plan/solve.h"
#include "support/layout_parts.h"
#include "support/random_lots.h"

namespace underlawn {
namespace {

constexpr double kEdge = 0.6;  // m from a trench's edge to a wheel: 29 CFR 1926.651(j)(2) says 2 ft of spoil
constexpr double kTruckHalf = 1.2955;  // m, half of 102 in: 23 CFR 658.15 (from memory)
constexpr double kHeadOpen =
    1.83;                        // m that stay open at the head of a trench filled early, as the sheet says
constexpr double kWalked = 0.1;  // m from one place on a way to the next

double to_segment(Point p, Point a, Point b) {
  const double dx = b.x - a.x, dy = b.y - a.y, long2 = dx * dx + dy * dy;
  const double t = long2 > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / long2, 0.0, 1.0) : 0.0;
  return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

bool inside(Point p, const Ring& r) {
  bool in = false;
  for (std::size_t i = 0, j = r.size() - 1; i < r.size(); j = i++)
    if ((r[i].y > p.y) != (r[j].y > p.y) &&
        p.x < (r[j].x - r[i].x) * (p.y - r[i].y) / (r[j].y - r[i].y) + r[i].x)
      in = !in;
  return in;
}

double to_ring(Point p, const Ring& r) {
  if (inside(p, r)) return 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < r.size(); ++i)
    least = std::min(least, to_segment(p, r[i], r[(i + 1) % r.size()]));
  return least;
}

double to_rings(const Polyline& way, const std::vector<Ring>& rings) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < way.size(); ++i) {
    const Point a = way[i - 1], b = way[i];
    const int n = 1 + static_cast<int>(std::hypot(b.x - a.x, b.y - a.y) / kWalked);
    for (int k = 0; k <= n; ++k)
      for (const Ring& r : rings)
        least = std::min(least, to_ring({a.x + (b.x - a.x) * k / n, a.y + (b.y - a.y) * k / n}, r));
  }
  return least;
}

// The cut, leg by leg; of its first `metres` only.
std::vector<Ring> cut_of(const Polyline& line, double top, double metres = 1e9) {
  std::vector<Ring> all;
  for (std::size_t i = 1; i < line.size() && metres > 0; ++i) {
    const Point a = line[i - 1];
    const double long_ = std::hypot(line[i].x - a.x, line[i].y - a.y);
    if (long_ <= 0) continue;
    const Point u{(line[i].x - a.x) / long_, (line[i].y - a.y) / long_};
    const double part = std::min(long_, metres);
    const Point b{a.x + part * u.x, a.y + part * u.y}, n{-u.y * top / 2, u.x * top / 2};
    all.push_back(
        {{a.x + n.x, a.y + n.y}, {a.x - n.x, a.y - n.y}, {b.x - n.x, b.y - n.y}, {b.x + n.x, b.y + n.y}});
    metres -= part;
  }
  return all;
}

struct Standing {
  std::vector<Ring> open, heaps;
};

struct Lot {
  const std::vector<DigStep>& steps;

  // Whether the coil trench of step `j` is filled by what is dug at the steps 0 to `now`, or before the last.
  bool filled(std::size_t j, std::size_t now, bool with_last) const {
    if (steps[j].kind != DigKind::trench) return false;
    const auto has = [&](const std::vector<int>& v) {
      return std::count(v.begin(), v.end(), steps[j].trench) > 0;
    };
    for (std::size_t k = 0; k <= now; ++k)
      if ((has(steps[k].into) && (k < now || with_last)) || has(steps[k].filled_first)) return true;
    return false;
  }
  bool heap_gone(std::size_t j, std::size_t now) const {
    for (std::size_t k = 0; k <= now; ++k)
      for (int q : steps[k].filled_first)
        if (steps[j].kind == DigKind::trench && q == steps[j].trench) return true;
    return false;
  }
  void open(Standing& s, std::size_t j, bool is_filled) const {
    Polyline line = steps[j].line;
    if (steps[j].from_end) std::reverse(line.begin(), line.end());
    const auto cut = cut_of(line, steps[j].top, is_filled ? kHeadOpen : 1e9);
    s.open.insert(s.open.end(), cut.begin(), cut.end());
  }
  // As the machine comes to step `i`; with `dug` while it is dug.
  Standing digging(std::size_t i, bool dug) const {
    Standing s;
    for (std::size_t j = 0; j < i + (dug ? 1 : 0); ++j) {
      open(s, j, filled(j, i, dug));
      if (!heap_gone(j, i)) s.heaps.insert(s.heaps.end(), steps[j].spoil.begin(), steps[j].spoil.end());
    }
    return s;
  }
  // As step `i` is filled, those before it being filled.
  Standing filling(std::size_t i) const {
    Standing s;
    for (std::size_t j = i; j < steps.size(); ++j) {
      open(s, j, filled(j, steps.size() - 1, true));
      if (!heap_gone(j, steps.size() - 1))
        s.heaps.insert(s.heaps.end(), steps[j].spoil.begin(), steps[j].spoil.end());
    }
    return s;
  }
};

struct Judged {
  int ways = 0;
};

void judge(const Polyline& way, double half, const Standing& s, const std::string& what, Judged& judged) {
  if (way.size() < 2) return;
  ++judged.ways;
  EXPECT_GT(to_rings(way, s.open), half + kEdge) << what << ", from an open trench";
  EXPECT_GT(to_rings(way, s.heaps), half) << what << ", from a heap";
}

void judge(const DigOrder& order, double machine_half, const std::string& name, Judged& judged) {
  const Lot lot{order.steps};
  for (std::size_t i = 0; i < order.steps.size(); ++i) {
    const DigStep& step = order.steps[i];
    const std::string what = name + ", " + step_name(step);
    judge(step.way, machine_half, lot.digging(i, false), what + ", machine", judged);
    judge(step.truck_way, kTruckHalf, lot.digging(i, true), what + ", truck off", judged);
    judge(step.fill_way, kTruckHalf, lot.filling(i), what + ", truck back", judged);
  }
  if (!order.steps.empty())
    judge(order.way_out, machine_half, lot.digging(order.steps.size() - 1, true), name + ", way out", judged);
}

TEST(WaysClear, OfBothSamplesKeepOffWhatIsOpenAndHeaped) {
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const auto plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn");
    ASSERT_TRUE(plan);
    const Outcome outcome = solve(plan->value);
    ASSERT_NE(outcome.order, nullptr);
    Judged judged;
    judge(*outcome.order, plan->value.dig.excavator.width / 2, name, judged);
    EXPECT_GT(judged.ways, 7);
  }
}

TEST(WaysClear, OfLotsAsPeopleHaveThem) {
  Judged judged;
  for (std::uint64_t seed = 1; seed <= 25; ++seed)
    for (const Haul haul : {Haul::none, Haul::all}) {
      const sample::RandomLot lot = sample::random_lot(seed);
      const Layout layout = make_layout(lot.site, lot.wishes, sample::coil_of(lot.wishes.trench_length));
      Ground ground;
      DigWishes how;
      how.haul = haul;
      const DigPlan dig = make_dig(layout, lot.wishes, ground, {}, how);
      judge(make_dig_order(lot.site, layout, dig, lot.wishes, ground, how), how.excavator.width / 2,
            "lot " + std::to_string(seed), judged);
    }
  EXPECT_GT(judged.ways, 50);
}

// What the ways keep off buildings, septic tanks and drain fields beside their width (common practice, no
// source for how far), or what a finding says that is left.
constexpr double kOffWall = 0.6, kOffSeptic = 1.5;

double asked_off(FeatureKind kind) {
  if (kind == FeatureKind::house) return kOffWall;
  return kind == FeatureKind::septic_tank || kind == FeatureKind::drain_field ? kOffSeptic : 0;
}

double left_beside(const DigOrder& order, double machine_half, const Ring& thing) {
  double left = to_rings(order.way_out, {thing}) - machine_half;
  for (const DigStep& step : order.steps) {
    left = std::min(left, to_rings(step.way, {thing}) - machine_half);
    left = std::min(left, to_rings(step.truck_way, {thing}) - kTruckHalf);
    left = std::min(left, to_rings(step.fill_way, {thing}) - kTruckHalf);
  }
  return left;
}

TEST(WaysClear, KeepOffWallsAndTanksOrAFindingSaysWhatIsLeft) {
  int said = 0, kept = 0;
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const auto plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn");
    ASSERT_TRUE(plan);
    const Outcome outcome = solve(plan->value);
    for (const Feature& f : plan->value.site.features) {
      const double asked = asked_off(f.kind);
      if (!(asked > 0)) continue;
      const double left = left_beside(*outcome.order, plan->value.dig.excavator.width / 2, f.points);
      const std::string key = "way_tight/feature-" + std::to_string(f.id);
      const auto found = std::find_if(outcome.findings.begin(), outcome.findings.end(),
                                      [&](const Finding& o) { return o.key == key; });
      if (left < asked - 0.01) {
        ASSERT_NE(found, outcome.findings.end()) << name << ", " << f.name << ": " << left;
        EXPECT_NEAR(found->measured, left, 0.01) << name << ", " << f.name;
        EXPECT_GT(left, 0.1) << name << ", " << f.name;
        ++said;
      } else {
        EXPECT_EQ(found, outcome.findings.end()) << name << ", " << f.name;
        ++kept;
      }
    }
  }
  EXPECT_GT(kept, 2);
  EXPECT_GT(said, 0);
}

Feature crafted_area(FeatureKind kind, Ring ring) {
  Feature f;
  f.kind = kind;
  f.points = std::move(ring);
  return f;
}

TEST(WaysClear, AGapTooNarrowIsSharedAndAWideOneIsNot) {
  const auto left = [](double apart, double& wall, double& tank) {
    DigGround lot{[&] {
      Site site;
      site.lot = {{{0, 0}}, {{60, 0}}, {{60, 40}}, {{0, 40}}};
      site.features = {
          crafted_area(FeatureKind::house, {{0, 15}, {28, 15}, {28, 25}, {0, 25}}),
          crafted_area(FeatureKind::septic_tank, {{28 + apart, 1}, {60, 1}, {60, 39}, {28 + apart, 39}})};
      return site;
    }()};
    Machine machine;
    machine.width = 2;
    machine.reach = 5;
    const Polyline way = MachineWays(lot, machine, 0.6).way({10, 5}, {{10, 35}}, {});
    wall = way.empty() ? -1 : to_rings(way, {lot.beside[0].area[0].outer}) - 1;
    tank = way.empty() ? -1 : to_rings(way, {lot.beside[1].area[0].outer}) - 1;
  };
  double wall = 0, tank = 0;
  left(2 + 0.6 + 1.5 + 0.1, wall, tank);  // room for all that is asked
  EXPECT_GT(wall, kOffWall - 0.01);
  EXPECT_GT(tank, kOffSeptic - 0.01);
  left(2 + 0.6 + 1.5 - 0.5, wall, tank);  // three quarters of it
  EXPECT_GT(wall, 0.75 * kOffWall - 0.01);
  EXPECT_GT(tank, 0.75 * kOffSeptic - 0.01);
  left(2 + 0.4, wall, tank);  // hardly its own width with air
  EXPECT_GT(wall, 0.14);
  EXPECT_GT(tank, 0.14);
  left(2 + 0.2, wall, tank);  // not that
  EXPECT_LT(wall, 0);
}

constexpr double kZone = 0.4572;  // m, 18 in each side of a marked line: laonecall.com

// m2 of heaps within the zone, square by square.
double hidden(const DigOrder& order, const Polyline& line) {
  constexpr double kSquare = 0.1;
  double sum = 0;
  for (const DigStep& step : order.steps)
    for (const Ring& heap : step.spoil) {
      double x0 = 1e9, x1 = -1e9, y0 = 1e9, y1 = -1e9;
      for (Point p : heap) {
        x0 = std::min(x0, p.x), x1 = std::max(x1, p.x);
        y0 = std::min(y0, p.y), y1 = std::max(y1, p.y);
      }
      for (double x = x0 + kSquare / 2; x < x1; x += kSquare)
        for (double y = y0 + kSquare / 2; y < y1; y += kSquare) {
          double away = 1e9;
          for (std::size_t i = 1; i < line.size(); ++i)
            away = std::min(away, to_segment({x, y}, line[i - 1], line[i]));
          if (away < kZone && inside({x, y}, heap)) sum += kSquare * kSquare;
        }
    }
  return sum;
}

TEST(HeapsClear, HideNoMarkOfALineOrAFindingSaysWhyAndWhatItCosts) {
  int lines = 0, hides = 0;
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const auto plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn");
    ASSERT_TRUE(plan);
    const Outcome outcome = solve(plan->value);
    for (const Feature& f : plan->value.site.features) {
      if (f.kind != FeatureKind::utility) continue;
      ++lines;
      const double m2 = hidden(*outcome.order, f.points);
      if (f.utility == UtilityKind::gas || f.utility == UtilityKind::electric) {
        EXPECT_LT(m2, 0.1) << name << ": " << f.name << " has room to be seen in both samples";
      }
      if (m2 < 0.6) continue;
      ++hides;
      const std::string key = "spoil_lies_on/feature-" + std::to_string(f.id);
      const auto found = std::find_if(outcome.findings.begin(), outcome.findings.end(),
                                      [&](const Finding& o) { return o.key == key; });
      ASSERT_NE(found, outcome.findings.end()) << name << ": " << f.name;
      EXPECT_NEAR(found->measured, m2, 0.1 * m2);
      EXPECT_NE(found->advice.find("on the other side"), std::string::npos) << found->advice;
      EXPECT_NE(found->advice.find("Trucking"), std::string::npos) << found->advice;
    }
  }
  EXPECT_GT(lines, 8);
  EXPECT_GT(hides, 0);
}

// Earth that runs on down its own slope of `repose` from the edge of a heap to a floor `depth` below ends
// that much farther: the heads of trenches under a heap stay free.
TEST(WaysClear, NoHeapLiesWhereItRunsIntoAHeadThatStaysOpen) {
  int into = 0;
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const auto plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn");
    ASSERT_TRUE(plan);
    const Outcome outcome = solve(plan->value);
    for (const DigStep& heaped : outcome.order->steps)
      for (const DigStep& head : outcome.order->steps) {
        if (head.kind != DigKind::trench || head.trench == heaped.trench) continue;
        into += std::count(heaped.into.begin(), heaped.into.end(), head.trench) > 0;
        Polyline line = head.line;
        if (head.from_end) std::reverse(line.begin(), line.end());
        const double free = kHeadOpen - 0.01 + head.depth / std::tan(plan->value.ground.repose);
        for (const Ring& cut : cut_of(line, head.top, free))
          for (const Ring& heap : heaped.spoil)
            EXPECT_GT(to_rings({cut[0], cut[1], cut[2], cut[3], cut[0]}, {heap}), 0)
                << name << ", heap of " << step_name(heaped) << " over the head of " << step_name(head);
      }
  }
  EXPECT_GT(into, 4);
}

}  // namespace
}  // namespace underlawn
