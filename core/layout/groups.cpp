// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/groups.h"

#include "base/say.h"
#include "layout/calm.h"
#include "layout/header_groups.h"
#include "layout/join_more.h"
#include "layout/parted.h"
#include "layout/supply_coil.h"

namespace underlawn {

namespace {

constexpr std::size_t kFirstTried = 3;  // places of the first group
constexpr std::size_t kLaterTried = 4;  // arrangements of another that are joined up
constexpr double kOn = 1e-3;            // m
constexpr int kSharesTried = 3;
constexpr std::size_t kFieldsParted = 4;
constexpr std::size_t kSharesShown = 6;

std::vector<Polyline> lines_of(const std::vector<Segment>& trenches) {
  std::vector<Polyline> lines;
  lines.reserve(trenches.size());
  for (const Segment& t : trenches) lines.push_back({t.a, t.b});
  return lines;
}

Point middle_of(const std::vector<Segment>& trenches) {
  Point sum{};
  for (const Segment& t : trenches) sum = sum + 0.5 * (t.a + t.b);
  return (1.0 / static_cast<double>(trenches.size())) * sum;
}

void append(Whole& to, const Whole& group) {
  to.field.insert(to.field.end(), group.field.begin(), group.field.end());
  Connection& c = to.connection;
  if (group.connection.run.line.size() > 1) c.header.legs.push_back(group.connection.run.line);
  const auto& legs = group.connection.header.legs;
  c.header.legs.insert(c.header.legs.end(), legs.begin(), legs.end());
  c.joined += group.connection.joined;
  c.cost += group.connection.cost;
  to.cost += group.cost;
}

class GroupPlacer {
 public:
  GroupPlacer(const Site& drawn, const Setting& s, const Coil& coil, const std::stop_token& stop)
      : drawn_(drawn), setting_(s), coil_(coil), stop_(stop) {}

  Grouped place() {
    search_one_by_one();
    // Groups that leave each other no room are parts of one field, close together where they must.
    if (!header_is_held(setting_.wishes, 0))
      for (bool apart : {true, false})
        if (!has_all() && !stop_.stop_requested()) part_fields(apart);
    try_as_shown();
    best_.fits = std::max(most_, best_.whole.count());
    return std::move(best_);
  }

 private:
  int wanted() const { return setting_.wishes.circuits; }
  int groups() const { return std::min(setting_.wishes.groups, wanted()); }

  bool has_all() const {
    return static_cast<int>(best_.sizes.size()) >= groups() && best_.whole.count() >= wanted();
  }

  void search_one_by_one() {
    int first_more = 0;
    for (int i = 0; i < kSharesTried && !stop_.stop_requested(); ++i) {
      try_shares(first_more);
      const int missing = wanted() - best_.whole.count();
      if (missing <= 0 || best_.sizes.empty()) break;
      first_more += missing;
    }
  }

  // One group after another, each with its share of what is left.
  void try_shares(int first_more) {
    const int groups = setting_.wishes.groups;
    const int first = std::min(wanted(), (wanted() + groups - 1) / groups + first_more);
    for (const Whole& start : options({}, first, kFirstTried, 1)) {
      if (stop_.stop_requested()) return;
      Grouped all{start, {start.field.size()}, 0};
      for (int left = groups - 1; left > 0; --left) {
        const int missing = wanted() - all.whole.count();
        if (missing <= 0) break;
        const auto next = options(all.whole, (missing + left - 1) / left, 1, groups - left + 1);
        if (next.empty()) break;
        append(all.whole, next.front());
        all.sizes.push_back(next.front().field.size());
      }
      consider(std::move(all));
    }
  }

  void consider(Grouped all) {
    finish(all);
    if (better_grouped(all)) best_ = std::move(all);
  }

  void part_fields(bool apart) {
    const Keeping keeping = setting_.keeping();
    for (const Arrangement& field : fields(apart)) {
      const auto all = field.trenches.size(), count = static_cast<std::size_t>(groups());
      if (stop_.stop_requested() || all < count || static_cast<int>(all) < best_.whole.count()) continue;
      std::vector<std::size_t> sizes;
      for (std::size_t i = 0; i < count; ++i) sizes.push_back(all / count + (i < all % count ? 1 : 0));
      for (const Parted& groups : parted(keeping, field, sizes, apart))
        if (auto made = joined_up(groups)) consider(std::move(*made));
    }
  }

  // What was last shown, parted into groups in every likely way: which trench was of which is not known.
  void try_as_shown() {
    for (const auto& sizes :
         shares(setting_.wishes.kept.size(), static_cast<std::size_t>(groups()), kSharesShown)) {
      if (stop_.stop_requested()) return;
      for (bool straight : {true, false})
        if (const Parted shown = as_shown(sizes, straight); !shown.empty())
          if (auto made = joined_up(shown)) consider(std::move(*made));
    }
  }

  // Each group as it was, or moved aside a little, off those before it; nothing where one has no place.
  // `straight`: joined by straight headers where heads are in line.
  Parted as_shown(const std::vector<std::size_t>& sizes, bool straight) const {
    Parted all;
    Held held = setting_.held;
    auto from = setting_.wishes.kept.begin();
    for (std::size_t size : sizes) {
      Wishes w = wishes_of(static_cast<int>(size), static_cast<int>(all.size()) + 1);
      w.kept.assign(from, from + static_cast<std::ptrdiff_t>(size));
      from += static_cast<std::ptrdiff_t>(size);
      auto found = as_kept({setting_.site, w, held, nullptr, setting_.keeping().slopes}, coil_.trench_length);
      if (found.empty() || found.front().trenches.size() != size) return {};
      Arrangement& group = straight ? found.front() : found.back();
      for (const Polyline& line : lines_of(group.trenches)) held.trenches.push_back(line);
      all.push_back(std::move(group));
    }
    return all;
  }

  // Places of all trenches as one field, as wide as it needs to be.
  std::vector<Arrangement> fields(bool apart) {
    Wishes w = wishes_of(wanted(), 1);
    if (apart)
      w.spacing = spacing_to_part(w, static_cast<std::size_t>(wanted()), static_cast<std::size_t>(groups()));
    const Keeping keeping{setting_.site, w, setting_.held, nullptr, setting_.keeping().slopes};
    Candidates c = candidates_for(keeping, coil_, wanted(), stop_);
    if (!apart) most_ = std::max(most_, c.fits);
    auto found = worth_completing(keeping, c.found, w.aim);
    if (found.size() > kFieldsParted) found.resize(kFieldsParted);
    return found;
  }

  std::optional<Grouped> joined_up(const Parted& groups) const {
    Grouped all;
    for (std::size_t i = 0; i < groups.size(); ++i) {
      Held others;
      for (std::size_t k = 0; k < groups.size(); ++k)
        for (const Polyline& line : lines_of(groups[k].trenches))
          if (k != i) others.trenches.push_back(line);
      const Wishes w = wishes_of(static_cast<int>(groups[i].trenches.size()), static_cast<int>(i) + 1);
      const auto made = joined({groups[i]}, all.whole, conduits_with_held(setting_.conduits, others), w, 1);
      if (made.empty()) return std::nullopt;
      if (i == 0)
        all.whole = made.front();
      else
        append(all.whole, made.front());
      all.sizes.push_back(groups[i].trenches.size());
    }
    return all;
  }

  Wishes wishes_of(int share, int group) const {
    Wishes w = setting_.wishes;
    w.circuits = share;
    w.coil_in_run = false;
    w.header_on = header_line(setting_.wishes, group);
    return w;
  }

  bool better_grouped(const Grouped& all) const {
    if (best_.sizes.size() != all.sizes.size() && setting_.wishes.aim != Aim::mix)
      return all.sizes.size() > best_.sizes.size();
    return better(all.whole, best_.whole, setting_.wishes.aim);
  }

  // The best places of a further group beside those there are.
  std::vector<Whole> options(const Whole& so_far, int share, std::size_t most, int group) {
    const bool first = so_far.field.empty();
    Held held = setting_.held;
    held.apart = lines_of(so_far.field);
    const auto& legs = so_far.connection.header.legs;
    held.conduits.insert(held.conduits.end(), legs.begin(), legs.end());
    if (so_far.connection.run.line.size() > 1) held.conduits.push_back(so_far.connection.run.line);
    const Wishes w = wishes_of(share, group);
    const Keeping keeping{setting_.site, w, held, nullptr, setting_.keeping().slopes};
    Candidates c = candidates_for(keeping, coil_, share, stop_);
    if (first) most_ = std::max(most_, c.fits);
    Held ground;
    ground.trenches = held.apart;
    return joined(worth_completing(keeping, c.found, w.aim), so_far,
                  conduits_with_held(setting_.conduits, ground), w, most);
  }

  std::vector<Whole> joined(const std::vector<Arrangement>& found, const Whole& so_far,
                            const Conduits& conduits, const Wishes& w, std::size_t most) const {
    std::vector<Whole> made;
    for (const Arrangement& a : found) {
      if (stop_.stop_requested() || (!so_far.field.empty() && made.size() >= kLaterTried)) break;
      Whole one = so_far.field.empty() ? joined_to_house(a, conduits) : joined_to(so_far, a, conduits);
      if (one.field.empty()) continue;
      one.cost = one.connection.cost + (a.bearing.drawn ? 0 : kOddBearing) +
                 digging_for_slopes(setting_.keeping(), a.trenches);
      one.measure = one.cost;
      if (!counts_digging(w.aim))
        one.measure = measure_of(drawn_, w, drawn_layout(drawn_, w, coil_, one, {}), setting_.terrain,
                                 one.cost, w.circuits);
      made.push_back(std::move(one));
    }
    std::stable_sort(made.begin(), made.end(),
                     [&](const Whole& l, const Whole& r) { return better(l, r, w.aim); });
    return apart(std::move(made), most);
  }

  // Those that lie somewhere else, not a little to one side.
  std::vector<Whole> apart(std::vector<Whole> made, std::size_t most) const {
    std::vector<Whole> kept;
    for (Whole& w : made) {
      const bool alike = std::any_of(kept.begin(), kept.end(), [&](const Whole& k) {
        return distance(middle_of(k.field), middle_of(w.field)) < coil_.trench_length / 2;
      });
      if (alike || kept.size() >= most) continue;
      kept.push_back(std::move(w));
    }
    return kept;
  }

  Whole joined_to_house(const Arrangement& a, const Conduits& conduits) const {
    Whole w;
    w.field = a.trenches;
    w.angle = a.bearing.angle;
    w.connection = Joiner(conduits, a).join();
    drop_illegal_lines(drawn_, setting_.wishes, w);
    return w;
  }

  Whole joined_to(const Whole& so_far, const Arrangement& a, Conduits conduits) const {
    Whole best;
    for (Point from : starts(so_far, middle_of(a.trenches))) {
      Whole w;
      w.field = a.trenches;
      w.angle = a.bearing.angle;
      conduits.stubs = {{from, from}};
      w.connection = Joiner(conduits, a).join();
      Polyline& line = w.connection.run.line;
      if (line.size() > 2) line.erase(line.begin());
      if (line.size() < 2) continue;
      if (best.field.empty() || w.connection.cost < best.connection.cost - kOn) best = std::move(w);
    }
    return best;
  }

  static std::vector<Point> starts(const Whole& so_far, Point toward) {
    std::vector<Point> all;
    const Connection& c = so_far.connection;
    if (!c.run.line.empty()) all.push_back(c.run.line.back());
    for (const Polyline& leg : c.header.legs) {
      all.push_back(leg.front());
      all.push_back(leg.back());
    }
    if (all.empty()) all.push_back(so_far.field.front().a);
    std::stable_sort(all.begin(), all.end(),
                     [toward](Point l, Point r) { return distance(l, toward) < distance(r, toward); });
    all.erase(std::unique(all.begin(), all.end(), [](Point l, Point r) { return distance(l, r) < kOn; }),
              all.end());
    if (all.size() > 3) all.resize(3);
    return all;
  }

  // Locked heads joined, everything proved, the coil that is missing put in the run, the whole measured.
  void finish(Grouped& all) const {
    Whole& w = all.whole;
    const Wishes& wishes = setting_.wishes;
    w.locked = setting_.held.trenches;
    Held field;
    field.trenches = lines_of(w.field);
    std::vector<Point> heads;
    for (const Polyline& t : w.locked) heads.push_back(t.front());
    join_more(conduits_with_held(setting_.conduits, field), w.field.front().a, heads, w.connection);
    square_up_crossings(drawn_, wishes, w);
    drop_illegal_lines(drawn_, wishes, w);
    w.cost += kFitting * tight_turns(wishes, w.connection);
    std::vector<Segment> lying = w.field;
    for (const Segment& leg : legs_of(w.locked)) lying.push_back(leg);
    if (wishes.coil_in_run && w.connection.run.line.size() > 1 && w.count() < wishes.circuits)
      w.in_run = coil_in_run(setting_.site, wishes, w.connection.run, w.connection.header, lying,
                             coil_.trench_length);
    w.measure =
        measure_of(drawn_, wishes, drawn_layout(drawn_, wishes, coil_, w, setting_.locked), setting_.terrain,
                   w.cost, wishes.circuits + static_cast<int>(setting_.locked.size()));
    w.measure -= calm_worth(wishes, w);
  }

  const Site& drawn_;
  const Setting& setting_;
  const Coil& coil_;
  std::stop_token stop_;
  Grouped best_;
  int most_ = 0;
};

}  // namespace

Grouped place_groups(const Site& drawn, const Setting& setting, const Coil& coil,
                     const std::stop_token& stop) {
  return GroupPlacer(drawn, setting, coil, stop).place();
}

Trouble groups_missing(int made, int asked) {
  return {
      "groups_missing", say("groups of trenches"), std::to_string(made), std::to_string(asked),
      say("Ask for fewer groups, shorter trenches or a closer spacing, or lessen a setback or clearance.")};
}

}  // namespace underlawn
