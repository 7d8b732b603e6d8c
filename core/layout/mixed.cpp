// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/mixed.h"

#include <cstdint>

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

class IndependentSet {
 public:
  IndependentSet(std::vector<Point> places, const TrenchSize& size)
      : places_(std::move(places)),
        beside_(places_.size()),
        tight_(places_.size(), 0),
        in_(places_.size(), 0) {
    for (std::uint32_t i = 0; i < places_.size(); ++i)
      for (std::uint32_t j = 0; j < i; ++j)
        if (conflict(places_[i], places_[j], size)) {
          beside_[i].push_back(j);
          beside_[j].push_back(i);
        }
    for (auto& b : beside_) std::sort(b.begin(), b.end());
  }

  std::vector<Point> grown(const std::vector<std::uint32_t>& from, int enough) {
    for (std::uint32_t v : from)
      if (!in_[v] && tight_[v] == 0) insert(v);
    improve();
    for (int shake = 0; shake < kShakes && count_ < enough && !places_.empty(); ++shake) {
      const std::vector<char> before = in_;
      const std::vector<int> tight_before = tight_;
      const int count_before = count_;
      force(next() % places_.size());
      if (shake % 8 == 0) force(next() % places_.size());
      improve();
      if (count_ >= count_before) continue;
      in_ = before;
      tight_ = tight_before;
      count_ = count_before;
    }
    std::vector<Point> out;
    for (std::size_t i = 0; i < places_.size(); ++i)
      if (in_[i]) out.push_back(places_[i]);
    return out;
  }

 private:
  std::size_t next() {
    return static_cast<std::size_t>((state_ = state_ * 6364136223846793005u + 1442695040888963407u) >> 33);
  }
  void insert(std::uint32_t v) {
    in_[v] = 1;
    ++count_;
    for (std::uint32_t u : beside_[v]) ++tight_[u];
  }
  void remove(std::uint32_t v) {
    in_[v] = 0;
    --count_;
    for (std::uint32_t u : beside_[v]) --tight_[u];
  }
  void force(std::size_t at) {
    const auto v = static_cast<std::uint32_t>(at);
    if (in_[v]) return;
    for (std::uint32_t u : beside_[v])
      if (in_[u]) remove(u);
    insert(v);
  }
  bool adjacent(std::uint32_t a, std::uint32_t b) const {
    return std::binary_search(beside_[a].begin(), beside_[a].end(), b);
  }

  void improve() {
    for (bool again = true; again;) {
      again = false;
      for (std::uint32_t v = 0; v < places_.size(); ++v)
        if (!in_[v] && tight_[v] == 0) insert(v);
      for (std::uint32_t x = 0; x < places_.size() && !again; ++x) again = in_[x] && two_for(x);
    }
  }

  bool two_for(std::uint32_t x) {
    loose_.clear();
    for (std::uint32_t u : beside_[x])
      if (tight_[u] == 1) loose_.push_back(u);
    for (std::size_t i = 0; i < loose_.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) {
        if (adjacent(loose_[i], loose_[j])) continue;
        remove(x);
        insert(loose_[i]);
        insert(loose_[j]);
        return true;
      }
    return false;
  }

  std::vector<Point> places_;
  std::vector<std::vector<std::uint32_t>> beside_;
  std::vector<int> tight_;  // chosen places each is in conflict with
  std::vector<char> in_;
  std::vector<std::uint32_t> loose_;
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
  for (Point p : all) {
    const bool known = std::any_of(places.begin(), places.end(), [p](Point q) {
      return std::abs(p.x - q.x) < kSamePlaceHere && std::abs(p.y - q.y) < kSamePlaceHere;
    });
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
  return IndependentSet(std::move(places), size).grown(first, enough);
}

}  // namespace underlawn
