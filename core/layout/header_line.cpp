// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/columns.h"
#include "layout/in_steps.h"
#include "layout/rows.h"

namespace underlawn {

namespace {

constexpr double kGapInColumn = 1;        // m of plain digging
constexpr std::size_t kRoundedUpTo = 40;  // arrangements whose way round their own trenches is looked at
constexpr double kNotWorthRouting = 15;   // m dearer than another at a guess

struct Picked {
  std::vector<double> right;  // rows of trenches that run from the header line towards +x
  std::vector<double> left;   // and of those that run towards -x
};

// Heights at which a stack may start: ends of the free intervals, and centred on where the house lies.
struct Start {
  double y;
  bool up;
};

class HeaderLines {
 public:
  HeaderLines(const Strips& s, const Bearing& b, const std::vector<Column>& c, const HeaderLineWish& wish)
      : size_(s.size()),
        run_width_(s.search().run_width),
        turn_(s.turn()),
        bearing_(b),
        columns_(c),
        wish_(wish),
        approach_(s.search().approach.turned(b.angle)),
        dearest_(wish.dearest) {}

  std::vector<Arrangement> best() {
    for (const Column& c : columns_) best_so_far_ = std::max({best_so_far_, c.fits_low, c.fits_high});
    best_so_far_ = std::min(best_so_far_, wish_.wanted);
    for (const Column& c : columns_) {
      add_pair(&c, nullptr, c.x);
      add_pair(nullptr, &c, c.x + size_.length);
    }
    if (!wish_.one_sided) add_facing();
    try_pairs();
    std::vector<Arrangement> out;
    for (const Scored* s : distinct(rounded_up(most_trenches()))) out.push_back(made(*s));
    return out;
  }

 private:
  // Columns on either side of a header line, one of them at least.
  struct Pair {
    const Column* right;
    const Column* left;
    double right_x;
    double bound;       // no estimate is below it
    std::size_t order;  // as they were found
    FreeView on_right() const { return right != nullptr ? right->heads_low : FreeView(); }
    FreeView on_left() const { return left != nullptr ? left->heads_high : FreeView(); }
  };
  static bool dearer(const Pair& l, const Pair& r) {
    return l.bound != r.bound ? l.bound > r.bound : l.order > r.order;
  }

  struct Scored {
    int count;
    double estimate;
    std::size_t order;
    double right_x;  // header line of the right side; the left one lies an end gap to its left
    double left_x;
    Picked picked;
  };

  static bool before(const Scored* l, const Scored* r) {
    return l->estimate != r->estimate ? l->estimate < r->estimate : l->order < r->order;
  }

  // Those of the highest count, best guess first.
  std::vector<Scored*> most_trenches() {
    int most = 0;
    for (const Scored& s : found_) most = std::max(most, s.count);
    std::vector<Scored*> out;
    for (Scored& s : found_)
      if (s.count == most) out.push_back(&s);
    std::sort(out.begin(), out.end(), before);
    out.resize(std::min(out.size(), kRoundedUpTo));
    return out;
  }

  // With the way round their own trenches, best first: as many as may be among those asked for.
  std::vector<Scored*> rounded_up(const std::vector<Scored*>& guessed) const {
    std::vector<Scored*> out;
    double enough = kAnyPrice;
    for (Scored* s : guessed) {
      if (s->estimate > enough) break;
      s->estimate = in_steps(s->estimate + detour(*s));
      if (s->estimate > enough) continue;
      out.insert(std::upper_bound(out.begin(), out.end(), s, before), s);
      const auto chosen = distinct(out);
      if (chosen.size() == wish_.most) enough = chosen.back()->estimate;
    }
    return out;
  }

  // What the way round the trenches themselves adds to the straight guess.
  double detour(const Scored& s) const {
    const Segment line = header_of(s.picked, s.right_x, s.left_x);
    std::vector<Ring> blocks;
    const auto add = [&](const std::vector<double>& rows, double x, double along) {
      if (rows.empty()) return;
      const auto [low, high] = std::minmax_element(rows.begin(), rows.end());
      const double half = size_.spacing / 2;
      blocks.push_back(
          {{x, *low - half}, {x + along, *low - half}, {x + along, *high + half}, {x, *high + half}});
    };
    const double inset = run_width_ / 2;
    add(s.picked.right, s.right_x + inset, size_.length);
    add(s.picked.left, s.left_x - inset, -size_.length);
    return approach_.distance_round(line, blocks) - approach_.distance_to(line);
  }

  Segment header_of(const Picked& p, double right_x, double left_x) const {
    Interval span{1e9, -1e9};
    widen(span, p.right);
    widen(span, p.left);
    const double x = p.right.size() >= p.left.size() ? right_x : left_x;
    return {{x, span.low}, {x, span.high}};
  }

  void add_facing() {
    std::size_t j = 0;
    for (const Column& left : columns_) {
      const double at = left.x + size_.length + size_.end_gap;
      while (j < columns_.size() && columns_[j].x < at - kFitSlack) ++j;
      if (j == columns_.size()) break;
      if (columns_[j].x > at + kFaceAcross) continue;  // too wide a header trench to face across
      add_pair(&columns_[j], &left, columns_[j].x);
    }
  }

  // What may be cheapest first: its price shuts out most of the others unlooked at.
  void try_pairs() {
    std::make_heap(pairs_.begin(), pairs_.end(), dearer);
    for (auto end = pairs_.end(); end != pairs_.begin() && pairs_.front().bound < dearest_; --end) {
      std::pop_heap(pairs_.begin(), end, dearer);
      try_pair(*(end - 1));
    }
  }

  void starts(FreeView right, FreeView left) {
    starts_.clear();
    for (FreeView free : {right, left}) {
      for (const Interval& i : free) {
        if (starts_.size() > 24) break;
        starts_.push_back({i.low, true});
        starts_.push_back({i.high, false});
        if (size_.spacing * 2 < i.high - i.low)
          starts_.push_back({(i.low + i.high) / 2 - size_.spacing * (wish_.wanted - 1) / 2, true});
      }
    }
  }

  void rows_from(const Start& start, FreeView free, std::vector<double>& out) const {
    out.clear();
    start.up ? stack_rows(free, size_.spacing, start.y, wish_.wanted, out)
             : hang_rows(free, size_.spacing, start.y, wish_.wanted, out);
  }

  void pick(FreeView right, FreeView left, Start start, Picked& p) {
    rows_from(start, right, p.right);
    rows_from(start, left, p.left);
    if (p.right.empty() || p.left.empty()) return;
    // Of both, those nearest the start: so many of either.
    const double sign = start.up ? 1 : -1;
    std::size_t i = 0, j = 0;
    while (static_cast<int>(i + j) < wish_.wanted && (i < p.right.size() || j < p.left.size())) {
      const bool take_right =
          j == p.left.size() || (i < p.right.size() && sign * p.right[i] <= sign * p.left[j]);
      take_right ? ++i : ++j;
    }
    p.right.resize(i);
    p.left.resize(j);
  }

  // Rows come in order, up or down.
  static void widen(Interval& span, const std::vector<double>& rows) {
    if (rows.empty()) return;
    span = {std::min({span.low, rows.front(), rows.back()}),
            std::max({span.high, rows.front(), rows.back()})};
  }

  // Or something not below `enough`, where it is clear that it is not.
  double estimate(const Picked& p, double right_x, double left_x, double enough) const {
    Interval span{1e9, -1e9};
    widen(span, p.right);
    widen(span, p.left);
    const std::size_t branches =
        p.right.empty() || p.left.empty() ? 0 : std::min(p.right.size(), p.left.size());
    const double header = span.high - span.low + static_cast<double>(branches) * (right_x - left_x);
    const Segment line = header_of(p, right_x, left_x);
    const auto steps = static_cast<double>(std::max(p.right.size(), p.left.size())) - 1;
    const double gaps = std::max(0.0, (span.high - span.low) / size_.spacing - steps - 0.01);
    const double beside = header + gaps * kGapInColumn + (bearing_.drawn ? 0 : kOddBearing);
    const double least = beside + approach_.at_least_to(line.a.x, line.a.y, line.b.y);
    return least >= enough ? least : in_steps(beside + approach_.distance_to(line));
  }

  // Never more than any estimate for the pair.
  double at_least(FreeView right, FreeView left, double x, int count) const {
    Interval span{1e9, -1e9};
    for (FreeView free : {right, left})
      if (!free.empty()) span = {std::min(span.low, free.front().low), std::max(span.high, free.back().high)};
    const int rows = right.empty() || left.empty() ? count : (count + 1) / 2;
    return (rows - 1) * size_.spacing + approach_.at_least_to(x, span.low, span.high) +
           (bearing_.drawn ? 0 : kOddBearing);
  }

  void add_pair(const Column* right, const Column* left, double right_x) {
    Pair p{right, left, right_x, 0, pairs_.size()};
    const int least = could_hold(p);
    if (least == 0 || least < best_so_far_) return;
    p.bound = at_least(p.on_right(), p.on_left(), right_x, least);
    if (left != nullptr)
      p.bound = std::min(p.bound, at_least(p.on_right(), p.on_left(), left->x + size_.length, least));
    if (p.bound < dearest_) pairs_.push_back(p);
  }

  int could_hold(const Pair& p) const {
    const int both =
        (p.right != nullptr ? p.right->fits_low : 0) + (p.left != nullptr ? p.left->fits_high : 0);
    return std::min(both, wish_.wanted);
  }

  void try_pair(const Pair& p) {
    if (could_hold(p) < best_so_far_) return;
    const double left_x = p.left != nullptr ? p.left->x + size_.length : p.right_x;
    Scored best{0, 0, p.order, p.right_x, left_x, {}};
    starts(p.on_right(), p.on_left());
    for (const Start& s : starts_) {
      pick(p.on_right(), p.on_left(), s, picked_);
      const int count = static_cast<int>(picked_.right.size() + picked_.left.size());
      if (count == 0 || count < best.count) continue;
      const double enough = count > best.count ? 1e9 : best.estimate;
      const double cost = estimate(picked_, p.right_x, left_x, enough);
      if (count == best.count && cost >= best.estimate) continue;
      best.count = count;
      best.estimate = cost;
      std::swap(best.picked, picked_);
    }
    if (best.count == 0 || best.estimate >= wish_.dearest) return;
    best_so_far_ = std::max(best_so_far_, best.count);
    if (best.count == wish_.wanted) dearest_ = std::min(dearest_, best.estimate + kNotWorthRouting);
    found_.push_back(std::move(best));
  }

  Arrangement made(const Scored& s) const {
    Arrangement a;
    a.bearing = bearing_;
    a.in_line = true;
    a.estimate = s.estimate;
    const auto add = [&](const std::vector<double>& rows, double x, double along) {
      for (double y : rows) a.trenches.push_back({turn_.back({x, y}), turn_.back({x + along, y})});
    };
    add(s.picked.right, s.right_x, size_.length);
    add(s.picked.left, s.left_x, -size_.length);
    return a;
  }

  // The best of those that differ by more than a shift of a few metres.
  std::vector<const Scored*> distinct(const std::vector<Scored*>& ranked) const {
    std::vector<const Scored*> kept;
    for (const Scored* s : ranked) {
      if (kept.size() == wish_.most) break;
      const bool like = std::any_of(kept.begin(), kept.end(), [&](const Scored* k) {
        return std::abs(k->right_x - s->right_x) < 3 && k->picked.right.size() == s->picked.right.size() &&
               k->picked.left.size() == s->picked.left.size();
      });
      if (!like) kept.push_back(s);
    }
    return kept;
  }

  const TrenchSize& size_;
  double run_width_;
  Turn turn_;
  const Bearing& bearing_;
  const std::vector<Column>& columns_;
  HeaderLineWish wish_;
  Approach approach_;  // in the turned plane
  double dearest_;     // estimates from here on are not looked into
  std::vector<Pair> pairs_;
  std::vector<Scored> found_;
  int best_so_far_ = 0;
  std::vector<Start> starts_;  // used again and again
  Picked picked_;
};

}  // namespace

std::vector<Arrangement> header_lines(const Strips& strips, const Bearing& bearing, const Columns& columns,
                                      const HeaderLineWish& wish) {
  if (columns.all().empty() || wish.wanted < 1) return {};
  return HeaderLines(strips, bearing, columns.all(), wish).best();
}

}  // namespace underlawn
