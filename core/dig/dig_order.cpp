// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig_order.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/say.h"
#include "base/wording.h"
#include "dig/cut_once.h"
#include "dig/laydown.h"
#include "dig/machine_ways.h"
#include "dig/order_search.h"
#include "dig/pieces.h"
#include "dig/protection.h"
#include "dig/truck_ways.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kTouching = 0.05;  // m between trenches that meet

bool near(const Box& a, const Box& b, double by) {
  return a.low.x < b.high.x + by && b.low.x < a.high.x + by && a.low.y < b.high.y + by &&
         b.low.y < a.high.y + by;
}

double least_distance(const std::vector<Ring>& rings, const Ring& ring, double reach) {
  double least = reach;
  const Box box = bounds(ring);
  for (const Ring& r : rings)
    if (near(bounds(r), box, reach)) least = std::min(least, area_distance(r, ring));
  return least;
}

bool overlap(const std::vector<Ring>& a, const std::vector<Ring>& b) {
  for (const Ring& ring : b)
    if (least_distance(a, ring, 1) < kSamePlace) return true;
  return false;
}

struct Maker {
  const Site& site;
  const Layout& layout;
  const DigWishes& how;
  double repose;
  DigGround ground;
  MachineWays ways;
  std::vector<SearchPiece> pieces;
  std::vector<Ring> footprints;

  Maker(const Site& s, const Layout& l, const Ground& g, const DigWishes& h, std::vector<DigStep> steps)
      : site(s), layout(l), how(h), repose(g.repose), ground(s), ways(ground, h.excavator, h.spoil_off) {
    for (DigStep& step : steps) {
      footprints.push_back(footprint(step));
      const bool shared = run_comes_over(step.work);
      pieces.push_back({std::move(step), {}, {}, {}, {}, shared});
    }
    lay_bands();
    find_meetings();
    find_ends();
    find_stands();
  }

  std::vector<char> touching(std::size_t piece) const {
    std::vector<char> touches(pieces.size());
    for (std::size_t i = 0; i < pieces.size(); ++i)
      touches[i] = i != piece && near(bounds(footprints[i]), bounds(footprints[piece]), kTouching) &&
                   area_distance(footprints[i], footprints[piece]) < kTouching;
    return touches;
  }

  void lay_bands() {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const std::vector<char> touches = touching(i);
      std::vector<const DigStep*> others;
      for (std::size_t j = 0; j < pieces.size(); ++j)
        if (touches[j] || (j != i && pieces[j].step.kind != DigKind::trench))
          others.push_back(&pieces[j].step);
      const std::vector<Ring> heads = heads_near(i);
      for (int side : {0, 1})
        pieces[i].bands[static_cast<std::size_t>(side)] = spoil_band(
            pieces[i].step, side == 0 ? 1 : -1, others, heads, ground, site, repose, how.spoil_off);
    }
  }

  // Openings that stay at the heads of trenches beside it.
  std::vector<Ring> heads_near(std::size_t piece) const {
    const double reach =
        how.spoil_off +
        2 * spoil_heap(pieces[piece].step.work.loose, pieces[piece].step.work.length, repose).width;
    std::vector<Ring> heads;
    for (std::size_t j = 0; j < pieces.size(); ++j)
      if (j != piece && pieces[j].step.kind == DigKind::trench)
        if (Ring head = head_opening(pieces[j].step, repose);
            near(bounds(head), bounds(footprints[piece]), reach))
          heads.push_back(std::move(head));
    return heads;
  }

  void find_meetings() {
    for (std::size_t i = 0; i < pieces.size(); ++i)
      for (std::size_t side = 0; side < 2; ++side) {
        const SpoilBand& band = pieces[i].bands[side];
        if (!band.fits) continue;
        HeapMeets& meets = pieces[i].meets[side];
        for (std::size_t j = 0; j < pieces.size(); ++j) {
          if (j == i) continue;
          if (least_distance(band.rings, footprints[j], how.spoil_off + 1) < how.spoil_off - 2 * kSamePlace)
            meets.trenches.push_back(static_cast<int>(j));
          for (int other : {0, 1})
            if (overlap(band.rings, pieces[j].bands[static_cast<std::size_t>(other)].rings))
              meets.heaps.emplace_back(static_cast<int>(j), other);
        }
      }
  }

  void find_ends() {
    for (SearchPiece& p : pieces)
      for (bool against : {false, true}) {
        Polyline line = p.step.line;
        if (against) std::reverse(line.begin(), line.end());
        p.room_to_end[against ? 1 : 0] = ways.stand_at_end(p.step, line, 0, {}).has_value();
      }
  }

  // The machine stands behind where it digs, and beyond the end at the last: over whatever meets the line
  // farther on than where it first stands.
  void find_stands() {
    const double behind = 0.5 * how.excavator.reach;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const std::vector<char> touches = touching(i);
      const double long_ = length(pieces[i].step.line);
      for (std::size_t j = 0; j < pieces.size(); ++j) {
        if (!touches[j]) continue;
        double first = long_, last = 0;
        const int n = std::max(1, static_cast<int>(long_ / 0.25));
        for (int k = 0; k <= n; ++k) {
          const Point p = place_along(pieces[i].step.line, long_ * k / n).at;
          if (line_area_distance({p, p}, footprints[j]) > 0.3) continue;
          first = std::min(first, long_ * k / n);
          last = std::max(last, long_ * k / n);
        }
        if (last > behind) pieces[i].stands_over[0].push_back(static_cast<int>(j));
        if (long_ - first > behind) pieces[i].stands_over[1].push_back(static_cast<int>(j));
      }
    }
  }

  std::string no_room(std::size_t piece) const;
  DigStep step_of(const Chosen& chosen) const;
};

std::vector<std::string> names_of(const std::vector<SearchPiece>& pieces, const std::vector<int>& which) {
  std::vector<std::string> names;
  for (int i : which) {
    std::string name = uncapitalised(step_name(pieces[static_cast<std::size_t>(i)].step));
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
  }
  return names;
}

std::string first_four(const std::vector<std::string>& names) {
  return names.size() > 4 ? say("{} and others", joined({names.begin(), names.begin() + 4}))
                          : joined_and(names);
}

// What each side says: what stands there, or what the heap would fall on.
std::string Maker::no_room(std::size_t piece) const {
  std::vector<std::string> reasons;
  for (std::size_t side = 0; side < 2; ++side) {
    const SpoilBand& band = pieces[piece].bands[side];
    std::string why = band.blocked_by;
    if (band.fits) {
      std::vector<int> met = pieces[piece].meets[side].trenches;
      for (const auto& heap : pieces[piece].meets[side].heaps) met.push_back(heap.first);
      why = first_four(names_of(pieces, met));
    }
    if (!why.empty() && std::find(reasons.begin(), reasons.end(), why) == reasons.end())
      reasons.push_back(std::move(why));
  }
  return first_four(reasons);
}

DigStep Maker::step_of(const Chosen& chosen) const {
  const auto i = static_cast<std::size_t>(chosen.piece);
  DigStep step = pieces[i].step;
  step.from_end = chosen.against;
  if (chosen.against) std::reverse(step.line.begin(), step.line.end());
  step.deep_enough = step.trencher || step.depth <= how.excavator.depth + kSamePlace;
  for (int q : chosen.into) step.into.push_back(pieces[static_cast<std::size_t>(q)].step.trench);
  for (int q : chosen.filled_first)
    step.filled_first.push_back(pieces[static_cast<std::size_t>(q)].step.trench);
  if (chosen.side < 0) {
    step.hauled = true;
    if (how.haul != Haul::all) step.no_room = no_room(i);
    return step;
  }
  const SpoilBand& band = pieces[i].bands[static_cast<std::size_t>(chosen.side)];
  step.spoil_left = (chosen.side == 0) != chosen.against;
  step.heap = band.heap;
  step.spoil = band.rings;
  step.spoil_dear = band.dear;
  step.cast = step.top / 2 + how.spoil_off + band.heap.width / 2;
  step.cast_reached = step.trencher || step.cast <= how.excavator.reach;
  return step;
}

// What lies open and heaped while a step is dug.
class Yard {
 public:
  explicit Yard(double repose) : repose_(repose) {}
  void dug(const DigStep& step) {
    for (int q : step.into) open_[q] = heads_[q];
    make_room(step);
    if (step.kind == DigKind::trench) heads_[step.trench] = head_opening(step, repose_);
    const int key = step.kind == DigKind::trench ? step.trench : -(++others_);
    open_[key] = footprint(step);
    heaps_[key] = step.spoil;
    keys_.push_back(key);
  }
  // The step of that place in the order, after the test.
  void filled(std::size_t step) {
    open_.erase(keys_[step]);
    heaps_.erase(keys_[step]);
  }
  void make_room(const DigStep& step) {
    for (int q : step.filled_first) {
      open_[q] = heads_[q];
      heaps_.erase(q);
    }
  }
  MachineWays::Standing standing() const {
    MachineWays::Standing s;
    for (const auto& [key, ring] : open_) s.trenches.push_back(ring);
    for (const auto& [key, rings] : heaps_) s.heaps.insert(s.heaps.end(), rings.begin(), rings.end());
    return s;
  }

 private:
  double repose_;
  std::map<int, Ring> open_, heads_;  // heads: what stays open of coil trenches filled early
  std::map<int, std::vector<Ring>> heaps_;
  std::vector<int> keys_;  // of what was dug, in order
  int others_ = 0;
};

void turn_round(DigStep& step) {
  std::reverse(step.line.begin(), step.line.end());
  step.from_end = !step.from_end;
  step.spoil_left = !step.spoil_left;
}

// The way to where the step begins, and where the machine stands after it.
struct Approach {
  Polyline way;
  bool reached = false;
  std::optional<Point> stand;
};

Approach approach(const MachineWays& ways, const DigStep& step, const std::optional<Point>& from,
                  const Yard& yard) {
  Approach a;
  if (from) a.way = ways.way(*from, ways.stands_to_begin(step.line), yard.standing());
  a.reached = !from || a.way.size() > 1;
  const int away = step.spoil.empty() ? 0 : step.spoil_left ? -1 : 1;
  Yard after = yard;
  after.dug(step);
  a.stand = ways.stand_at_end(step, step.line, away, after.standing());
  return a;
}

bool stands_off(const SearchPiece& piece, bool against, const std::vector<char>& dug) {
  for (int q : piece.stands_over[against ? 1 : 0])
    if (dug[static_cast<std::size_t>(q)]) return false;
  return true;
}

// Of the trucks that bring spoil back, as the loader fills in step by step in the order of digging.
void find_fill_ways(const TruckWays& trucks, Yard yard, DigOrder& order) {
  for (std::size_t i = 0; i < order.steps.size(); ++i) {
    DigStep& step = order.steps[i];
    if (step.hauled) step.fill_way = trucks.way(*order.access, step, yard.standing());
    yard.filled(i);
  }
}

// Ways with what then lies open; a trench that cannot be come to from one end is tried from the other.
void find_ways(const Maker& maker, const std::vector<Chosen>& chosen, DigOrder& order) {
  Yard yard(maker.repose);
  std::optional<TruckWays> trucks;  // made ready only where they come
  if (order.access && order.hauled > 0) trucks.emplace(maker.ground, maker.how);
  std::optional<Point> at = order.access;
  std::vector<char> dug(maker.pieces.size());
  for (std::size_t i = 0; i < order.steps.size(); ++i) {
    DigStep& step = order.steps[i];
    const SearchPiece& piece = maker.pieces[static_cast<std::size_t>(chosen[i].piece)];
    yard.make_room(step);
    Approach a = approach(maker.ways, step, at, yard);
    bool off = stands_off(piece, step.from_end, dug);
    if (!a.reached || !a.stand || !off) {
      DigStep other = step;
      turn_round(other);
      const Approach b = approach(maker.ways, other, at, yard);
      const bool other_off = stands_off(piece, other.from_end, dug);
      const auto worth = [](const Approach& x, bool is_off) {
        return 2 * x.reached + x.stand.has_value() + is_off;
      };
      if (worth(b, other_off) > worth(a, off)) {
        a = b;
        step = other;
        off = other_off;
      }
    }
    step.way = a.way;
    step.reached = a.reached;
    step.room_to_end = a.stand.has_value() && off;
    at = a.stand ? *a.stand : step.line.back();
    yard.dug(step);
    if (step.hauled && trucks) step.truck_way = trucks->way(*order.access, step, yard.standing());
    dug[static_cast<std::size_t>(chosen[i].piece)] = 1;
  }
  if (order.access && at && !order.steps.empty()) {
    order.way_out = maker.ways.way(*order.access, {*at}, yard.standing());
    std::reverse(order.way_out.begin(), order.way_out.end());
  }
  if (trucks) find_fill_ways(*trucks, std::move(yard), order);
}

void add_ladders(const Layout& layout, DigStep& step) {
  if (is_entered(step.sides))
    for (double at : ladder_places(length(step.line), step.depth))
      step.ladders.push_back(place_along(step.line, at).at);
  const Conduit conduit = step.kind == DigKind::header ? Conduit::header : Conduit::run;
  if (step.kind == DigKind::trench) return;
  for (std::size_t i = 0; i < layout.crossings.size(); ++i) {
    const Crossing& c = layout.crossings[i];
    if (c.conduit == conduit && line_distance({c.at, c.at}, step.line) < 0.1)
      step.crossings.push_back(static_cast<int>(i));
  }
}

}  // namespace

double head_uncast(double depth, double repose) {
  return kHeadOpen + (repose > 0 ? depth / std::tan(repose) : 0);
}

Ring head_opening(const DigStep& step, double repose) {
  Polyline line = step.line;
  if (step.from_end) std::reverse(line.begin(), line.end());
  const double open = std::min(head_uncast(step.depth, repose), length(line));
  return strip_along({line.front(), place_along(line, open).at}, step.top);
}

std::string step_name(const DigStep& step) {
  if (step.kind == DigKind::trench) return say("Trench {}", std::to_string(step.trench));
  if (step.kind == DigKind::header) return step.part > 0 ? say("Header, part {}", step.part) : say("Header");
  return step.part > 0 ? say("Supply run, part {}", step.part) : say("Supply run");
}

bool DigOrder::complete() const {
  return std::all_of(steps.begin(), steps.end(), [](const DigStep& s) {
    return s.no_room.empty() && s.reached && s.room_to_end && s.deep_enough && s.cast_reached;
  });
}

double hauled_loose(const DigOrder& order) {
  double sum = 0;
  for (const DigStep& step : order.steps)
    if (step.hauled) sum += step.work.loose;
  return sum;
}

DigOrder make_dig_order(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes,
                        const Ground& ground, const DigWishes& how) {
  DigOrder order;
  if (layout.trenches.empty() || dig.trenches.size() != layout.trenches.size() || site.lot.size() < 3)
    return order;
  Maker maker(site, layout, ground, how, pieces_of(layout, dig, wishes, how));
  order.access = access_of(site, how.access, order.over_drive);
  const auto chosen = find_order(maker.pieces, {order.access, how.haul == Haul::all});
  for (const Chosen& c : chosen) {
    order.steps.push_back(maker.step_of(c));
    if (how.haul == Haul::needed) order.steps.back().no_room.clear();
    add_ladders(layout, order.steps.back());
    order.filled_early += static_cast<int>(c.into.size() + c.filled_first.size());
    order.hauled += c.side < 0;
  }
  find_ways(maker, chosen, order);
  find_laydown(maker.ground, layout, how, order);
  return order;
}

}  // namespace underlawn
