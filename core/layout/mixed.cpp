// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/mixed.h"

#include <bit>
#include <cstdint>
#include <optional>

namespace underlawn {

namespace {

constexpr std::size_t kMostPlaces = 700;
constexpr int kShakes = 100;
constexpr double kSamePlaceHere = 0.01;  // m

bool conflict(Point a, Point b, const TrenchSize& size) {
  return std::abs(a.x - b.x) < size.pitch() - 2 * kFitSlack && std::abs(a.y - b.y) < size.spacing - 1e-9;
}

// From both ends of every interval inward by whole pitches.
void add_justified(const Free& free, double pitch, std::vector<double>& out) {
  for (const Interval& i : free)
    for (int k = 0; i.low + k * pitch <= i.high + 1e-9; ++k) {
      out.push_back(i.low + k * pitch);
      out.push_back(std::max(i.low, i.high - k * pitch));
    }
}

// One bit a place.
class Bits {
 public:
  explicit Bits(std::size_t size) : words_((size + 63) / 64, 0) {}
  void set(std::size_t i) { words_[i / 64] |= std::uint64_t{1} << i % 64; }
  void clear(std::size_t i) { words_[i / 64] &= ~(std::uint64_t{1} << i % 64); }
  std::uint64_t word(std::size_t w) const { return words_[w]; }
  void both(const Bits& a, const Bits& b) {
    for (std::size_t w = 0; w < words_.size(); ++w) words_[w] = a.words_[w] & b.words_[w];
  }
  std::size_t words() const { return words_.size(); }

 private:
  std::vector<std::uint64_t> words_;
};

class IndependentSet {
 public:
  // But for the first so many, the places come by their height.
  IndependentSet(std::vector<Point> places, std::size_t unordered, const TrenchSize& size)
      : places_(std::move(places)),
        beside_(places_.size()),
        near_(places_.size(), Bits(places_.size())),
        single_(places_.size()),
        loose_(places_.size()),
        tight_(places_.size(), 0),
        in_(places_.size(), 0) {
    std::uint32_t low = static_cast<std::uint32_t>(unordered);
    for (std::uint32_t i = 0; i < places_.size(); ++i) {
      for (std::uint32_t j = 0; j < std::min<std::size_t>(i, unordered); ++j) keep_apart(j, i, size);
      while (low < i && places_[low].y <= places_[i].y - size.spacing) ++low;
      for (std::uint32_t j = low; j < i; ++j) keep_apart(j, i, size);
    }
  }

  std::vector<Point> grown(const std::vector<std::uint32_t>& from, int enough) {
    for (std::uint32_t v : from)
      if (!in_[v] && tight_[v] == 0) insert(v);
    improve();
    for (int shake = 0; shake < kShakes && count_ < enough && !places_.empty(); ++shake) {
      const std::vector<char> before = in_;
      const std::vector<int> tight_before = tight_;
      const Bits single_before = single_;
      const int count_before = count_;
      force(next() % places_.size());
      if (shake % 8 == 0) force(next() % places_.size());
      improve();
      if (count_ >= count_before) continue;
      in_ = before;
      tight_ = tight_before;
      single_ = single_before;
      count_ = count_before;
    }
    std::vector<Point> out;
    for (std::size_t i = 0; i < places_.size(); ++i)
      if (in_[i]) out.push_back(places_[i]);
    return out;
  }

 private:
  void keep_apart(std::uint32_t j, std::uint32_t i, const TrenchSize& size) {
    if (!conflict(places_[i], places_[j], size)) return;
    beside_[i].push_back(j);
    beside_[j].push_back(i);
    near_[i].set(j);
    near_[j].set(i);
  }
  std::size_t next() {
    return static_cast<std::size_t>((state_ = state_ * 6364136223846793005u + 1442695040888963407u) >> 33);
  }
  void insert(std::uint32_t v) {
    in_[v] = 1;
    ++count_;
    for (std::uint32_t u : beside_[v]) count_conflict(u, 1);
  }
  void remove(std::uint32_t v) {
    in_[v] = 0;
    --count_;
    for (std::uint32_t u : beside_[v]) count_conflict(u, -1);
  }
  void count_conflict(std::uint32_t u, int more) {
    tight_[u] += more;
    if (tight_[u] == 1)
      single_.set(u);
    else
      single_.clear(u);
  }
  void force(std::size_t at) {
    const auto v = static_cast<std::uint32_t>(at);
    if (in_[v]) return;
    for (std::uint32_t u : beside_[v])
      if (in_[u]) remove(u);
    insert(v);
  }
  void improve() {
    for (bool again = true; again;) {
      again = false;
      for (std::uint32_t v = 0; v < places_.size(); ++v)
        if (!in_[v] && tight_[v] == 0) insert(v);
      for (std::uint32_t x = 0; x < places_.size() && !again; ++x) again = in_[x] && two_for(x);
    }
  }

  // Of the places that only x keeps out, two that keep each other none out: the first by the higher one.
  bool two_for(std::uint32_t x) {
    loose_.both(near_[x], single_);
    for (std::size_t w = 0; w < loose_.words(); ++w)
      for (std::uint64_t rest = loose_.word(w); rest != 0; rest &= rest - 1) {
        const auto high = static_cast<std::uint32_t>(64 * w) + first_bit(rest);
        if (const auto low = loose_below(high)) {
          remove(x);
          insert(high);
          insert(*low);
          return true;
        }
      }
    return false;
  }

  std::optional<std::uint32_t> loose_below(std::uint32_t high) const {
    for (std::size_t w = 0; w <= high / 64; ++w) {
      std::uint64_t open = loose_.word(w) & ~near_[high].word(w);
      if (w == high / 64) open &= (std::uint64_t{1} << high % 64) - 1;
      if (open != 0) return static_cast<std::uint32_t>(64 * w) + first_bit(open);
    }
    return std::nullopt;
  }
  static std::uint32_t first_bit(std::uint64_t word) {
    return static_cast<std::uint32_t>(std::countr_zero(word));
  }

  std::vector<Point> places_;
  std::vector<std::vector<std::uint32_t>> beside_;  // in order
  std::vector<Bits> near_;                          // the same
  Bits single_;                                     // in conflict with one chosen place
  Bits loose_;
  std::vector<int> tight_;  // chosen places each is in conflict with
  std::vector<char> in_;
  int count_ = 0;
  std::uint64_t state_ = 1;
};

}  // namespace

std::vector<Point> mixed_places(const Strips& strips, const std::vector<Column>& columns,
                                const std::vector<PackedRow>& rows, std::vector<Point> from, int enough) {
  const TrenchSize& size = strips.size();
  std::vector<Point> all;
  std::vector<double> at;
  for (const PackedRow& r : rows) {
    at.clear();
    add_justified(r.places, size.pitch(), at);
    for (double x : at) all.push_back({x, r.y});
  }
  for (const Column& c : columns) {
    at.clear();
    add_justified(c.free, size.spacing, at);
    for (double y : at) all.push_back({c.x, y});
  }
  std::sort(all.begin(), all.end(), [](Point a, Point b) { return a.y != b.y ? a.y < b.y : a.x < b.x; });
  std::vector<Point> places = from;
  const auto given = static_cast<std::ptrdiff_t>(from.size());
  for (Point p : all) {
    const auto same = [p](Point q) {
      return std::abs(p.x - q.x) < kSamePlaceHere && std::abs(p.y - q.y) < kSamePlaceHere;
    };
    bool known = std::any_of(places.begin(), places.begin() + given, same);
    // The others come by their height.
    for (auto q = places.end(); !known && q != places.begin() + given && p.y - (q - 1)->y < kSamePlaceHere;
         --q)
      known = same(*(q - 1));
    if (!known) places.push_back(p);
  }
  if (places.size() > kMostPlaces) {
    std::vector<Point> thinned(places.begin(), places.begin() + static_cast<std::ptrdiff_t>(from.size()));
    const std::size_t step = places.size() / kMostPlaces + 1;
    for (std::size_t i = from.size(); i < places.size(); i += step) thinned.push_back(places[i]);
    places = std::move(thinned);
  }
  std::vector<std::uint32_t> first(from.size());
  for (std::uint32_t i = 0; i < first.size(); ++i) first[i] = i;
  return IndependentSet(std::move(places), from.size(), size).grown(first, enough);
}

}  // namespace underlawn
