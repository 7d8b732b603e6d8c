// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/crew_shop.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "dig/cut_once.h"
#include "field/trench.h"
#include "flow/coil_hold.h"

namespace underlawn {

namespace {

struct Bound {
  double time = 0;
  WaitFor what = WaitFor::nothing;
};

// The hands of one station and when each is free.
class Hands {
 public:
  Hands(CrewStation station, int n) : station_(station), free_(static_cast<std::size_t>(std::max(1, n))) {}

  // Gives the task to the hand that is free first, no sooner than every bound.
  double take(std::vector<CrewTask>& tasks, int step, double time, const std::vector<Bound>& bounds,
              bool bedding = false) {
    const auto hand = std::min_element(free_.begin(), free_.end(),
                                       [](const Hand& a, const Hand& b) { return a.until < b.until; });
    Bound last;
    for (const Bound& b : bounds)
      if (b.time > last.time) last = b;
    const double begin = std::max(hand->until, last.time);
    // A hand comes to the lot for its first task: no waiting before that, but for the machine.
    const bool waits = hand->used && last.time > hand->until + 1e-9;
    tasks.push_back({station_, static_cast<int>(hand - free_.begin()) + 1, step, bedding, begin, begin + time,
                     waits ? begin - hand->until : 0, waits ? last.what : WaitFor::nothing});
    *hand = {begin + time, true};
    return begin + time;
  }

 private:
  struct Hand {
    double until = 0;
    bool used = false;
  };
  CrewStation station_;
  std::vector<Hand> free_;
};

// One run through the shop.
struct Shop {
  const CalendarAsk& ask;
  ShopRun run;
  Hands excavators, racks, layers, joiners, testers, loaders;
  std::map<int, std::size_t> step_of;             // by number of the coil trench
  std::vector<double> begun, dug, laid, covered;  // by step; covered < 0: not yet
  std::vector<double> proved;                     // by step, the coil alone under pressure; < 0: not so
  std::vector<double> cast_in;                    // m3 loose that lies in it again
  std::vector<double> sand;                       // m3 still to be brought
  double trucks_until = 0;
  double ready_for_run = 0;  // when every trench that it shares is filled to its floor
  int coils = 0;

  explicit Shop(const CalendarAsk& a)
      : ask(a),
        excavators(CrewStation::digging, a.crew.excavators),
        racks(CrewStation::making, a.crew.racks),
        layers(CrewStation::laying, a.crew.laying_crews),
        joiners(CrewStation::joining, 1),
        testers(CrewStation::testing, 1),
        loaders(CrewStation::filling, 1) {
    const std::size_t n = a.order.steps.size();
    begun.assign(n, 0);
    dug = laid = cast_in = begun;
    covered.assign(n, -1);
    proved = covered;
    for (const DigStep& s : a.order.steps) sand.push_back(s.work.bedding);
    for (std::size_t i = 0; i < n; ++i)
      if (a.order.steps[i].kind == DigKind::trench) step_of[a.order.steps[i].trench] = i;
  }

  const DigStep& step(std::size_t i) const { return ask.order.steps[i]; }
  const Trench* trench(std::size_t i) const {
    for (const Trench& t : ask.layout.trenches)
      if (step(i).kind == DigKind::trench && t.number == step(i).trench) return &t;
    return nullptr;
  }

  // m3 loose for so much compacted.
  double loose_for(double backfill) const {
    return backfill / (1 - ask.ground.shrinkage) * (1 + ask.ground.swell);
  }
  double loose_needed(std::size_t i) const { return loose_for(step(i).work.backfill); }
  // No sooner than trucks bring what was taken away.
  double loading_time(std::size_t i, double loose, double sand_brought) const {
    const double loaded = (loose + sand_brought) / loose_rate(ask.crew.loader);
    return step(i).hauled ? std::max(loaded, loose / truck_rate(ask.crew)) : loaded;
  }
  // Sand and what has not fallen in already.
  double filling_time(std::size_t i) const {
    return loading_time(i, std::max(0.0, loose_needed(i) - cast_in[i]), sand[i]);
  }

  // All trucks serve one step at a time.
  void await_trucks(std::size_t i, std::vector<Bound>& bounds) const {
    if (step(i).hauled) bounds.push_back({trucks_until, WaitFor::trucks});
  }
  // They stay as long as they are loaded or bring earth back.
  void haul(std::size_t i, double begin, double end) {
    if (!step(i).hauled) return;
    trucks_until = end;
    for (int who = 1; who <= ask.crew.trucks; ++who)
      run.tasks.push_back(
          {CrewStation::hauling, who, static_cast<int>(i), false, begin, end, 0, WaitFor::nothing});
  }

  // Before anything falls on a coil of a loop that is not tested yet.
  Bound prove(std::size_t i) {
    if (proved[i] < 0)
      proved[i] = testers.take(run.tasks, static_cast<int>(i), kCoilFilled + kCoilProved,
                               {{laid[i], WaitFor::laying}});
    return {proved[i], WaitFor::proving};
  }

  // Sand over the coil; where the run's pipes come above it, earth up to their floor as well.
  double bed(std::size_t i) {
    std::vector<Bound> bounds = {prove(i)};
    const EarthWork& w = step(i).work;
    const double loose = loose_for(w.under_run);
    if (loose > 0) await_trucks(i, bounds);
    const double time = loading_time(i, loose, w.bedding - w.run_bedding);
    const double end = loaders.take(run.tasks, static_cast<int>(i), time, bounds, true);
    if (loose > 0) haul(i, end - time, end);
    sand[i] = w.run_bedding;
    cast_in[i] += loose;
    return end;
  }
  double fill(std::size_t i, Bound bound) {
    std::vector<Bound> bounds = {bound};
    await_trucks(i, bounds);
    const double time = filling_time(i);
    const double end = loaders.take(run.tasks, static_cast<int>(i), time, bounds);
    haul(i, end - time, end);
    cast_in[i] = loose_needed(i);
    sand[i] = 0;
    return end;
  }

  double fill_early(std::size_t i) {
    covered[i] = fill(i, prove(i));
    return covered[i];
  }

  void dig(std::size_t i) {
    std::vector<Bound> bounds;
    std::vector<std::size_t> into;
    for (int q : step(i).into)
      if (const auto at = step_of.find(q); at != step_of.end()) {
        into.push_back(at->second);
        bounds.push_back({bed(at->second), WaitFor::laying});
      }
    for (int q : step(i).filled_first)
      if (const auto at = step_of.find(q); at != step_of.end())
        bounds.push_back({fill_early(at->second), WaitFor::filling});
    await_trucks(i, bounds);
    const double time = digging_time(step(i), ask);
    dug[i] = excavators.take(run.tasks, static_cast<int>(i), time, bounds);
    begun[i] = dug[i] - time;
    haul(i, begun[i], dug[i]);
    run.dug = std::max(run.dug, dug[i]);
    for (std::size_t q : into) {
      covered[q] = dug[i];
      cast_in[q] += step(i).work.loose / static_cast<double>(into.size());
    }
  }

  void make_and_lay(std::size_t i) {
    const Trench* t = trench(i);
    if (t == nullptr) return;
    double made = 0;
    if (++coils > ask.crew.coils_ready) {
      const double rate = is_straight(t->coil.pattern) ? ask.crew.straight_making : ask.crew.coil_making;
      made = racks.take(run.tasks, static_cast<int>(i), t->coil.coil_length * rate, {});
    }
    laid[i] = layers.take(run.tasks, static_cast<int>(i), step(i).work.length * ask.crew.coil_laying,
                          {{dug[i], WaitFor::trench}, {made, WaitFor::coil}});
    run.laid = std::max(run.laid, laid[i]);
    if (run_comes_over(step(i).work)) ready_for_run = std::max(ready_for_run, bed(i));
  }

  void join_and_test() {
    const double pipe = (ask.layout.header.length + ask.layout.run.length) * ask.crew.header_laying;
    const double joints = ask.joints * ask.crew.joint_making / std::max(1, ask.crew.joiners);
    run.joined =
        joiners.take(run.tasks, -1, pipe + joints,
                     {{std::max(run.dug, run.laid), WaitFor::last_trench}, {ready_for_run, WaitFor::laying}});
    const double test = ask.crew.test_filling + ask.test, day = ask.crew.day_length;
    const double into_day = run.joined - std::floor(run.joined / day + 1e-9) * day;
    const bool morning = into_day > 1e-6 && into_day + test > day + 1e-6;
    const Bound bound =
        morning ? Bound{run.joined - into_day + day, WaitFor::morning} : Bound{run.joined, WaitFor::joints};
    run.tested = testers.take(run.tasks, -1, test, {bound});
  }

  void fill_in() {
    run.filled = run.tested;
    for (std::size_t i = 0; i < ask.order.steps.size(); ++i) {
      const bool early = covered[i] >= 0;
      run.open.push_back({static_cast<int>(i), begun[i], covered[i], 0, early});
      if (early && filling_time(i) < 60) continue;  // nothing to speak of is left
      const double end = fill(i, {run.tested, WaitFor::test});
      if (!early) run.open.back().to = end;
      run.filled = std::max(run.filled, end);
    }
  }
};

}  // namespace

double hand_time(const DigStep& step, const Site& site, const Layout& layout, const CrewWishes& crew) {
  int met = 0;
  for (int i : step.crossings) {
    const Feature* f = find_feature(site, layout.crossings[static_cast<std::size_t>(i)].feature_id);
    met += f != nullptr && f->kind == FeatureKind::utility;
  }
  return met * crew.hand_crossing;
}

double digging_time(const DigStep& step, const CalendarAsk& ask) {
  double time = step.trencher ? step.work.length * ask.crew.trencher
                              : step.work.bank / bank_rate(ask.how.excavator, ask.ground.swell);
  if (step.hauled) time = std::max(time, step.work.loose / truck_rate(ask.crew));
  return time + hand_time(step, ask.site, ask.layout, ask.crew);
}

ShopRun run_shop(const CalendarAsk& ask) {
  Shop shop(ask);
  for (std::size_t i = 0; i < ask.order.steps.size(); ++i) {
    shop.dig(i);
    shop.make_and_lay(i);
  }
  shop.join_and_test();
  shop.fill_in();
  return std::move(shop.run);
}

}  // namespace underlawn
