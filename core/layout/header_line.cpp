// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/columns.h"

namespace underlawn {

namespace {

constexpr double kGapInColumn = 1;        // m of plain digging
constexpr std::size_t kRoundedUpTo = 40;  // arrangements whose way round their own trenches is looked at

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
  HeaderLines(const Search& s, const Bearing& b, const std::vector<Column>& c)
      : search_(s), bearing_(b), columns_(c) {}

  std::vector<Arrangement> best(std::size_t most) {
    for (const Column& c : columns_) {
      if (c.fits < std::min(search_.wanted, best_count())) continue;
      try_pair(&c, nullptr, c.x);
      try_pair(nullptr, &c, c.x + search_.size.length);
    }
    if (!search_.one_sided) try_facing();
    rank();
    const std::size_t looked_at = std::min(found_.size(), kRoundedUpTo);
    found_.resize(looked_at);
    for (Scored& s : found_) s.estimate += detour(s);
    rank();
    return distinct(most);
  }

 private:
  struct Scored {
    int count;
    double estimate;
    double right_x;  // header line of the right side; the left one lies an end gap to its left
    double left_x;
    Picked picked;
  };

  void rank() {
    std::stable_sort(found_.begin(), found_.end(), [](const Scored& l, const Scored& r) {
      return l.count != r.count ? l.count > r.count : l.estimate < r.estimate;
    });
  }

  // What the way round the trenches themselves adds to the straight guess.
  double detour(const Scored& s) const {
    const Segment line = header_of(s.picked, s.right_x, s.left_x);
    std::vector<Ring> blocks;
    const auto add = [&](const std::vector<double>& rows, double x, double along) {
      if (rows.empty()) return;
      const auto [low, high] = std::minmax_element(rows.begin(), rows.end());
      const double half = search_.size.spacing / 2;
      Ring ring = {{x, *low - half}, {x + along, *low - half}, {x + along, *high + half}, {x, *high + half}};
      for (Point& p : ring) p = rotated(p, bearing_.angle);
      blocks.push_back(std::move(ring));
    };
    const double inset = search_.run_width / 2;
    add(s.picked.right, s.right_x + inset, search_.size.length);
    add(s.picked.left, s.left_x - inset, -search_.size.length);
    return search_.approach.distance_round(line, blocks) - search_.approach.distance_to(line);
  }

  Segment header_of(const Picked& p, double right_x, double left_x) const {
    Interval span{1e9, -1e9};
    widen(span, p.right);
    widen(span, p.left);
    const double x = p.right.size() >= p.left.size() ? right_x : left_x;
    return {rotated({x, span.low}, bearing_.angle), rotated({x, span.high}, bearing_.angle)};
  }

  int best_count() const {
    int most = 0;
    for (const Column& c : columns_) most = std::max(most, c.fits);
    return most;
  }

  void try_facing() {
    const double gap = search_.size.end_gap, length = search_.size.length;
    std::size_t j = 0;
    for (const Column& left : columns_) {
      const double at = left.x + length + gap;
      while (j < columns_.size() && columns_[j].x < at - kFitSlack) ++j;
      if (j == columns_.size()) break;
      if (columns_[j].x > at + 2) continue;  // too wide a header trench to face across
      if (left.fits + columns_[j].fits < search_.wanted && left.fits + columns_[j].fits < best_so_far_)
        continue;
      try_pair(&columns_[j], &left, columns_[j].x);
    }
  }

  using Free = std::vector<Interval>;

  std::vector<Start> starts(const Free& right, const Free& left) const {
    std::vector<Start> all;
    for (const Free* free : {&right, &left}) {
      for (const Interval& i : *free) {
        if (all.size() > 24) break;
        all.push_back({i.low, true});
        all.push_back({i.high, false});
        if (search_.size.spacing * 2 < i.high - i.low) {
          all.push_back({(i.low + i.high) / 2 - search_.size.spacing * (search_.wanted - 1) / 2, true});
        }
      }
    }
    return all;
  }

  Picked pick(const Free& right, const Free& left, Start start) const {
    const auto rows = [&](const Free& free) {
      return start.up ? stacked_rows(free, search_.size.spacing, start.y, search_.wanted)
                      : hung_rows(free, search_.size.spacing, start.y, search_.wanted);
    };
    std::vector<double> r = rows(right), l = rows(left);
    const double sign = start.up ? 1 : -1;
    Picked p;
    std::size_t i = 0, j = 0;
    while (static_cast<int>(p.right.size() + p.left.size()) < search_.wanted &&
           (i < r.size() || j < l.size())) {
      const bool take_right = j == l.size() || (i < r.size() && sign * r[i] <= sign * l[j]);
      if (take_right)
        p.right.push_back(r[i++]);
      else
        p.left.push_back(l[j++]);
    }
    return p;
  }

  static void widen(Interval& span, const std::vector<double>& rows) {
    for (double y : rows) span = {std::min(span.low, y), std::max(span.high, y)};
  }

  double estimate(const Picked& p, double right_x, double left_x) const {
    Interval span{1e9, -1e9};
    widen(span, p.right);
    widen(span, p.left);
    const std::size_t branches =
        p.right.empty() || p.left.empty() ? 0 : std::min(p.right.size(), p.left.size());
    const double header = span.high - span.low + static_cast<double>(branches) * (right_x - left_x);
    const Segment line = header_of(p, right_x, left_x);
    const auto steps = static_cast<double>(std::max(p.right.size(), p.left.size())) - 1;
    const double gaps = std::max(0.0, (span.high - span.low) / search_.size.spacing - steps - 0.01);
    return header + search_.approach.distance_to(line) + gaps * kGapInColumn +
           (bearing_.drawn ? 0 : kOddBearing);
  }

  void try_pair(const Column* right, const Column* left, double right_x) {
    const double left_x = left != nullptr ? left->x + search_.size.length : right_x;
    Scored best{0, 0, right_x, left_x, {}};
    static const Free none;
    const Free& on_right = right != nullptr ? right->heads_low : none;
    const Free& on_left = left != nullptr ? left->heads_high : none;
    for (const Start& s : starts(on_right, on_left)) {
      Picked p = pick(on_right, on_left, s);
      const int count = static_cast<int>(p.right.size() + p.left.size());
      if (count == 0 || count < best.count) continue;
      const double cost = estimate(p, right_x, left_x);
      if (count == best.count && cost >= best.estimate) continue;
      best = {count, cost, right_x, left_x, std::move(p)};
    }
    if (best.count == 0) return;
    best_so_far_ = std::max(best_so_far_, best.count);
    found_.push_back(std::move(best));
  }

  Arrangement made(const Scored& s) const {
    Arrangement a;
    a.bearing = bearing_;
    a.in_line = true;
    a.estimate = s.estimate;
    const auto add = [&](const std::vector<double>& rows, double x, double along) {
      for (double y : rows)
        a.trenches.push_back({rotated({x, y}, bearing_.angle), rotated({x + along, y}, bearing_.angle)});
    };
    add(s.picked.right, s.right_x, search_.size.length);
    add(s.picked.left, s.left_x, -search_.size.length);
    return a;
  }

  // The best of those that differ by more than a shift of a few metres.
  std::vector<Arrangement> distinct(std::size_t most) const {
    std::vector<Arrangement> out;
    std::vector<const Scored*> kept;
    for (const Scored& s : found_) {
      if (out.size() == most || s.count < found_.front().count) break;
      const bool like = std::any_of(kept.begin(), kept.end(), [&](const Scored* k) {
        return std::abs(k->right_x - s.right_x) < 3 && k->picked.right.size() == s.picked.right.size() &&
               k->picked.left.size() == s.picked.left.size();
      });
      if (like) continue;
      kept.push_back(&s);
      out.push_back(made(s));
    }
    return out;
  }

  const Search& search_;
  const Bearing& bearing_;
  const std::vector<Column>& columns_;
  std::vector<Scored> found_;
  int best_so_far_ = 0;
};

}  // namespace

std::vector<Arrangement> header_lines(const Search& search, const Bearing& bearing,
                                      const std::vector<Column>& columns, std::size_t most) {
  if (columns.empty() || search.wanted < 1) return {};
  return HeaderLines(search, bearing, columns).best(most);
}

}  // namespace underlawn
