// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/longest_rows.h"

#include "layout/row_metres.h"

namespace underlawn {

namespace {

constexpr double kHair = 1e-6;  // m
constexpr int kMostCounted = 60;
constexpr double kLaneStep = 0.5;  // m

std::vector<double> heights_of(const Strips& strips, int heights, bool events) {
  const double spacing = strips.size().spacing;
  const Interval across = strips.across();
  std::vector<double> from, all;
  for (int i = 0; i < heights; ++i) from.push_back(across.low + i * spacing / heights);
  if (events) strips.add_row_events(from);
  for (double e : from) {
    double y = e - std::floor((e - across.low) / spacing) * spacing;
    while (y <= across.high) {
      all.push_back(y);
      y += spacing;
    }
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end(), [](double a, double b) { return b - a < kHair; }), all.end());
  return all;
}

// Rows tried, and for each the first that lies a spacing below it.
struct Tried {
  std::vector<LongRow> rows;
  std::vector<double> metres;
  std::vector<std::size_t> below;  // rows up to here, in number, keep the spacing
};

// A height with where a trench and where a head may lie.
struct OpenRow {
  double y;
  Free free, heads;
};

std::vector<OpenRow> open_rows(const Strips& strips, const LengthBounds& bounds, int heights, bool events) {
  std::vector<OpenRow> rows;
  for (double y : heights_of(strips, heights, events)) {
    OpenRow r{y, strips.stretches(y, bounds.least), {}};
    if (r.free.empty()) continue;
    strips.row_heads(y, r.heads);
    rows.push_back(std::move(r));
  }
  return rows;
}

// `trenches`: of an open row.
template <class Trenches>
Tried tried_rows(const std::vector<OpenRow>& open, double spacing, const Trenches& trenches) {
  Tried tried;
  for (const OpenRow& o : open) {
    LongRow r{o.y, trenches(o)};
    if (r.trenches.empty()) continue;
    tried.metres.push_back(metres_in(r.trenches));
    tried.rows.push_back(std::move(r));
  }
  std::size_t below = 0;
  for (const LongRow& r : tried.rows) {
    while (tried.rows[below].y <= r.y - spacing + kHair) ++below;
    tried.below.push_back(below);
  }
  return tried;
}

LongestRows picked(const Tried& tried, std::vector<std::size_t> rows) {
  LongestRows out;
  std::reverse(rows.begin(), rows.end());
  for (std::size_t i : rows) {
    out.rows.push_back(tried.rows[i]);
    out.metres += tried.metres[i];
    out.count += static_cast<int>(tried.rows[i].trenches.size());
  }
  return out;
}

LongestRows of_any_number(const Tried& tried) {
  const std::size_t n = tried.rows.size();
  std::vector<double> best(n + 1, 0);
  std::vector<char> taken(n + 1, 0);
  for (std::size_t i = 0; i < n; ++i) {
    const double with = best[tried.below[i]] + tried.metres[i];
    taken[i + 1] = with > best[i] + kHair;
    best[i + 1] = taken[i + 1] ? with : best[i];
  }
  std::vector<std::size_t> rows;
  for (std::size_t i = n; i > 0; i = taken[i] ? tried.below[i - 1] : i - 1)
    if (taken[i]) rows.push_back(i - 1);
  return picked(tried, rows);
}

// The longest so many of a row.
void shorten(LongRow& row, int count) {
  while (static_cast<int>(row.trenches.size()) > count)
    row.trenches.erase(std::min_element(
        row.trenches.begin(), row.trenches.end(),
        [](const Interval& l, const Interval& r) { return l.high - l.low < r.high - r.low; }));
}

// best[i][k]: the most metres of k trenches in the first i rows.
LongestRows of_so_many(const Tried& all, int wanted) {
  Tried tried = all;
  for (std::size_t i = 0; i < tried.rows.size(); ++i) {
    shorten(tried.rows[i], wanted);
    tried.metres[i] = metres_in(tried.rows[i].trenches);
  }
  const std::size_t n = tried.rows.size(), wide = static_cast<std::size_t>(wanted) + 1;
  std::vector<double> best((n + 1) * wide, 0);
  std::vector<char> taken((n + 1) * wide, 0);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = 0; k < wide; ++k) {
      double& here = best[(i + 1) * wide + k];
      here = best[i * wide + k];
      const std::size_t in_row = tried.rows[i].trenches.size();
      if (in_row > k) continue;
      const double with = best[tried.below[i] * wide + k - in_row] + tried.metres[i];
      if (with <= here + kHair) continue;
      here = with;
      taken[(i + 1) * wide + k] = 1;
    }
  std::vector<std::size_t> rows;
  std::size_t k = wide - 1;
  for (std::size_t i = n; i > 0;) {
    if (!taken[i * wide + k]) {
      --i;
      continue;
    }
    rows.push_back(i - 1);
    k -= tried.rows[i - 1].trenches.size();
    i = tried.below[i - 1];
  }
  return picked(tried, rows);
}

// One trench with its head at the line, to its left or right.
std::vector<Interval> beside_lane(const OpenRow& r, double x, bool right, const LengthBounds& b) {
  for (const Interval& s : r.free) {
    if (s.low - kHair > x || x > s.high + kHair) continue;
    if (!holds(r.heads, x)) return {};
    const Interval t =
        right ? Interval{x, std::min(s.high, x + b.most)} : Interval{std::max(s.low, x - b.most), x};
    return t.high - t.low >= b.least - kHair ? std::vector{t} : std::vector<Interval>{};
  }
  return {};
}

void keep_longest(LongestRows& all, int wanted) {
  while (all.count > wanted) {
    const auto shortest = std::min_element(
        all.rows.begin(), all.rows.end(),
        [](const LongRow& l, const LongRow& r) { return metres_in(l.trenches) < metres_in(r.trenches); });
    all.metres -= metres_in(shortest->trenches);
    all.rows.erase(shortest);
    --all.count;
  }
}

LongestRows longest_by_lane(const Strips& strips, const std::vector<OpenRow>& open, const LengthBounds& b,
                            int wanted) {
  const double spacing = strips.size().spacing, gap = strips.size().end_gap;
  LongestRows best;
  double x = strips.along().low;
  while (x <= strips.along().high) {
    LongestRows all;
    for (bool right : {false, true}) {
      const double at = right ? x + gap : x;
      LongestRows side = of_any_number(
          tried_rows(open, spacing, [&](const OpenRow& r) { return beside_lane(r, at, right, b); }));
      all.rows.insert(all.rows.end(), side.rows.begin(), side.rows.end());
      all.metres += side.metres;
      all.count += side.count;
    }
    if (all.count > wanted) keep_longest(all, wanted);
    if (all.metres > best.metres + kHair) {
      best = std::move(all);
      best.lane = x;
    }
    x += kLaneStep;
  }
  return best;
}

// Where the gap between the two trenches of a row may begin, so that they stay as long together.
std::optional<Interval> split_of(const LongRow& r, const LengthBounds& b, double gap) {
  if (r.trenches.size() != 2) return std::nullopt;
  const double low = r.trenches[0].low, high = r.trenches[1].high;
  if (r.trenches[1].low - r.trenches[0].high > gap + kHair) return std::nullopt;
  const Interval at{std::max(low + b.least, high - gap - b.most),
                    std::min(low + b.most, high - gap - b.least)};
  if (at.low > at.high) return std::nullopt;
  return at;
}

// The place that most of them share.
double common_place(const Free& splits) {
  double best = splits.front().low;
  int most = 0;
  for (const Interval& s : splits)
    for (double at : {s.low, (s.low + s.high) / 2, s.high}) {
      const auto here = static_cast<int>(std::count_if(splits.begin(), splits.end(), [at](const Interval& o) {
        return o.low - kHair <= at && at <= o.high + kHair;
      }));
      if (here > most) most = here, best = at;
    }
  return best;
}

class Arranger {
 public:
  Arranger(const Strips& strips, const LengthBounds& bounds) : strips_(strips), bounds_(bounds) {}

  std::vector<Segment> flat(LongestRows rows) {
    const double gap = strips_.size().end_gap;
    Free splits;
    for (const LongRow& r : rows.rows)
      if (const auto s = split_of(r, bounds_, gap)) splits.push_back(*s);
    if (!splits.empty()) middle_ = common_place(splits);
    if (rows.lane) middle_ = rows.lane;
    for (LongRow& r : rows.rows) {
      strips_.row_heads(r.y, heads_);
      if (const auto s = split_of(r, bounds_, gap)) move_split(r, std::clamp(*middle_, s->low, s->high), gap);
      for (const Interval& t : r.trenches) add(r, t);
    }
    return std::move(out_);
  }

 private:
  void move_split(LongRow& r, double at, double gap) const {
    if (!holds(heads_, at) || !holds(heads_, at + gap)) return;
    r.trenches[0].high = at;
    r.trenches[1].low = at + gap;
  }

  void add(const LongRow& r, const Interval& t) {
    const bool low = holds(heads_, t.low), high = holds(heads_, t.high);
    if (!low && !high) return;
    bool head_low = low;
    if (middle_) head_low = std::abs(t.low - *middle_) < std::abs(t.high - *middle_);
    if (!low || !high) head_low = low;
    const Segment s{{t.low, r.y}, {t.high, r.y}};
    out_.push_back(head_low ? s : Segment{s.b, s.a});
  }

  const Strips& strips_;
  LengthBounds bounds_;
  std::optional<double> middle_;
  Free heads_;
  std::vector<Segment> out_;
};

// All heads of trenches that point one way on one line.
bool heads_in_line(const std::vector<Segment>& flat) {
  for (bool right : {true, false}) {
    std::optional<double> x;
    for (const Segment& t : flat) {
      if ((t.b.x > t.a.x) != right) continue;
      if (x && std::abs(*x - t.a.x) > 1e-3) return false;
      x = t.a.x;
    }
  }
  return true;
}

}  // namespace

LongestRows longest_rows(const Strips& strips, const LengthBounds& bounds, int wanted, int heights,
                         bool events, HeadsAt heads) {
  const std::vector<OpenRow> open = open_rows(strips, bounds, heights, events);
  if (heads == HeadsAt::lane) return longest_by_lane(strips, open, bounds, wanted);
  const RowMetres row(bounds, strips.size().end_gap, heads);
  const Tried tried = tried_rows(open, strips.size().spacing,
                                 [&](const OpenRow& r) { return row.best(r.free, r.heads, wanted); });
  LongestRows all = of_any_number(tried);
  if (all.count <= wanted || wanted > kMostCounted) return all;
  return of_so_many(tried, wanted);
}

Arrangement arranged(const Strips& strips, const Bearing& bearing, const LongestRows& rows,
                     const LengthBounds& bounds) {
  Arrangement a;
  a.bearing = bearing;
  const std::vector<Segment> flat = Arranger(strips, bounds).flat(rows);
  a.in_line = heads_in_line(flat);
  for (const Segment& t : flat) a.trenches.push_back({strips.turn().back(t.a), strips.turn().back(t.b)});
  return a;
}

}  // namespace underlawn
