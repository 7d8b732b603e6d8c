// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/order_search.h"

#include <algorithm>
#include <set>

namespace underlawn {

namespace {

// Weights in metres of the machine's way. They only rank: a heap without room outweighs every trench that has
// to be filled early, and so on.
constexpr double kNoRoom = 1e7;
constexpr double kNowhereToStand = 1e5;
constexpr double kFilledFirst = 2e3;  // by the loader, out of its own heap
constexpr double kFilledInto = 1e3;
constexpr double kDear = 5;            // a square metre of pavement or roots under spoil
constexpr double kOverLine = 20;       // a square metre over a buried line, whose marks it hides
constexpr double kOutOfNumber = 0.05;  // prefers trenches in the order of their numbers among equals

enum class Mark : char { undug, open, filled };

struct State {
  std::vector<Chosen> done;
  std::vector<Mark> marks;        // by piece
  std::vector<signed char> heap;  // side of the heap that stands, -1 none
  std::optional<Point> at;
  double cost = 0;
};

// Header and run stay open until the test, and so does the coil trench that the run's pipes lie in.
bool can_be_filled(const SearchPiece& p) {
  return p.step.kind == DigKind::trench && !p.shared;
}

// What has to be done before the heap can lie there; nothing where it cannot.
struct Needs {
  std::vector<int> into, filled_first;
};

std::optional<Needs> needs_of(const std::vector<SearchPiece>& all, const State& s, int piece, int side) {
  const HeapMeets& meets = all[static_cast<std::size_t>(piece)].meets[static_cast<std::size_t>(side)];
  Needs needs;
  for (int other : meets.trenches) {
    const Mark mark = s.marks[static_cast<std::size_t>(other)];
    if (mark == Mark::undug || !can_be_filled(all[static_cast<std::size_t>(other)])) return std::nullopt;
    if (mark == Mark::open) needs.into.push_back(other);
  }
  for (const auto& [other, its_side] : meets.heaps) {
    const auto o = static_cast<std::size_t>(other);
    if (s.heap[o] != its_side) continue;
    // What falls into that trench does not pile up beside it.
    if (std::find(needs.into.begin(), needs.into.end(), other) != needs.into.end()) continue;
    if (s.marks[o] != Mark::open || !can_be_filled(all[o])) return std::nullopt;
    needs.filled_first.push_back(other);
  }
  return needs;
}

bool has(const std::vector<int>& list, int value) {
  return std::find(list.begin(), list.end(), value) != list.end();
}

// Whether the machine stands over `open` as it digs `piece`, whichever end it begins at.
bool always_over(const SearchPiece& piece, int open) {
  return has(piece.stands_over[0], open) && has(piece.stands_over[1], open);
}

// Open pieces that the machine stands over. What cannot be helped is counted as soon as it is so: when the
// one that will be stood over is dug first.
int stood_over(const std::vector<SearchPiece>& all, const State& s, const Chosen& c) {
  int over = 0;
  const SearchPiece& p = all[static_cast<std::size_t>(c.piece)];
  for (int q : p.stands_over[c.against ? 1 : 0])
    over += s.marks[static_cast<std::size_t>(q)] != Mark::undug && !always_over(p, q);
  for (std::size_t q = 0; q < all.size(); ++q)
    over += s.marks[q] == Mark::undug && static_cast<int>(q) != c.piece && always_over(all[q], c.piece);
  return over;
}

double step_cost(const std::vector<SearchPiece>& all, const State& s, const Chosen& c) {
  const SearchPiece& p = all[static_cast<std::size_t>(c.piece)];
  const std::size_t left = all.size() - s.done.size();
  const Point begin = c.against ? p.step.line.back() : p.step.line.front();
  double cost = s.at ? distance(*s.at, begin) : 0;
  if (c.side >= 0) {
    const SpoilBand& band = p.bands[static_cast<std::size_t>(c.side)];
    cost += kDear * band.dear + kOverLine * band.over_lines;
  }
  cost += kFilledInto * static_cast<double>(c.into.size());
  cost += kFilledFirst * static_cast<double>(c.filled_first.size());
  if (!p.room_to_end[c.against ? 1 : 0]) cost += kNowhereToStand;
  cost += kNowhereToStand * stood_over(all, s, c);
  return cost + kOutOfNumber * p.step.trench * static_cast<double>(left) / 1000;
}

State after(const std::vector<SearchPiece>& all, const State& s, const Chosen& c, double cost) {
  State next = s;
  const SearchPiece& p = all[static_cast<std::size_t>(c.piece)];
  next.done.push_back(c);
  next.marks[static_cast<std::size_t>(c.piece)] = Mark::open;
  next.heap[static_cast<std::size_t>(c.piece)] = static_cast<signed char>(c.side);
  for (int q : c.into) next.marks[static_cast<std::size_t>(q)] = Mark::filled;
  for (int q : c.filled_first) {
    next.marks[static_cast<std::size_t>(q)] = Mark::filled;
    next.heap[static_cast<std::size_t>(q)] = -1;
  }
  next.at = c.against ? p.step.line.front() : p.step.line.back();
  next.cost = s.cost + cost;
  return next;
}

// A step that could follow a state of the beam.
struct Next {
  std::size_t state = 0;
  Chosen chosen;
  double cost = 0;  // of the step

  double total(const std::vector<State>& beam) const { return beam[state].cost + cost; }
};

void try_side(const std::vector<SearchPiece>& all, const State& s, std::size_t state, Chosen c, double extra,
              std::vector<Next>& out) {
  for (bool against : {true, false}) {
    c.against = against;
    out.push_back({state, c, extra + step_cost(all, s, c)});
  }
}

void expand(const std::vector<SearchPiece>& all, const State& s, std::size_t state, const SearchAsk& ask,
            std::vector<Next>& out) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (s.marks[i] != Mark::undug) continue;
    const int piece = static_cast<int>(i);
    bool placed = false;
    for (int side : {0, 1}) {
      if (ask.haul_all || !all[i].bands[static_cast<std::size_t>(side)].fits) continue;
      const auto needs = needs_of(all, s, piece, side);
      if (!needs) continue;
      placed = true;
      try_side(all, s, state, {piece, side, false, needs->into, needs->filled_first}, 0, out);
    }
    if (!placed) try_side(all, s, state, {piece, -1, false, {}, {}}, ask.haul_all ? 0 : kNoRoom, out);
  }
}

std::size_t beam_width(std::size_t pieces) {
  return pieces <= 10 ? 250 : pieces <= 16 ? 60 : pieces <= 40 ? 12 : 3;
}

// What lies open and heaped; how it came about no longer matters.
std::string picture_of(const State& s) {
  std::string picture;
  for (std::size_t i = 0; i < s.marks.size(); ++i)
    picture += static_cast<char>(1 + 4 * static_cast<int>(s.marks[i]) + s.heap[i]);
  return picture;
}

// The best of those with different pictures.
std::vector<State> kept(const std::vector<SearchPiece>& all, const std::vector<State>& beam,
                        const std::vector<Next>& next, std::size_t width) {
  std::vector<State> states;
  std::set<std::string> seen;
  for (const Next& n : next) {
    if (states.size() == width) break;
    State s = after(all, beam[n.state], n.chosen, n.cost);
    if (seen.insert(picture_of(s)).second) states.push_back(std::move(s));
  }
  return states;
}

}  // namespace

std::vector<Chosen> find_order(const std::vector<SearchPiece>& pieces, const SearchAsk& ask) {
  const std::size_t width = beam_width(pieces.size());
  State start;
  start.marks.assign(pieces.size(), Mark::undug);
  start.heap.assign(pieces.size(), -1);
  start.at = ask.from;
  std::vector<State> beam = {start};
  for (std::size_t step = 0; step < pieces.size(); ++step) {
    std::vector<Next> next;
    for (std::size_t i = 0; i < beam.size(); ++i) expand(pieces, beam[i], i, ask, next);
    std::stable_sort(next.begin(), next.end(),
                     [&](const Next& a, const Next& b) { return a.total(beam) < b.total(beam); });
    beam = kept(pieces, beam, next, width);
  }
  return beam.empty() ? std::vector<Chosen>{} : beam.front().done;
}

}  // namespace underlawn
