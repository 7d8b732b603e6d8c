// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/packs.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

namespace underlawn {

namespace {

constexpr double kManyPacks = 1e6;
constexpr double kManyRolls = 2000;  // cut piece by piece
constexpr int kMostLooks = 20'000;
constexpr double kSame = 1e-9;  // relative: rounding of units is no need for one more

int packs_for(double needed, double pack) {
  return static_cast<int>(std::ceil(std::max(0.0, needed / pack - kSame)));
}

std::vector<double> falling(std::vector<double> packs) {
  std::sort(packs.rbegin(), packs.rend());
  packs.erase(std::unique(packs.begin(), packs.end()), packs.end());
  return packs;
}

// Tries every count of each size, largest first, as long as that is quick; the smallest makes up the rest.
class Cover {
 public:
  Cover(double needed, std::vector<double> packs) : needed_(needed), packs_(std::move(packs)) {
    counts_.assign(packs_.size(), 0);
    look(0, needed);
  }
  const std::vector<int>& best() const { return best_; }

 private:
  void look(std::size_t at, double left) {
    if (++looks_ > kMostLooks && !best_.empty()) return;
    const int all = packs_for(left, packs_[at]);
    if (at + 1 == packs_.size()) return take(at, all, left);
    for (int n = all; n >= 0; --n) {
      counts_[at] = n;
      const double rest = left - n * packs_[at];
      if (rest <= needed_ * kSame)
        take(at, n, left);
      else
        look(at + 1, rest);
    }
    counts_[at] = 0;
  }
  void take(std::size_t at, int count, double left) {
    counts_[at] = count;
    std::fill(counts_.begin() + static_cast<std::ptrdiff_t>(at) + 1, counts_.end(), 0);
    const double over = count * packs_[at] - left;
    int packs = 0;
    for (int n : counts_) packs += n;
    if (!best_.empty() &&
        (over > over_ + needed_ * kSame || (over > over_ - needed_ * kSame && packs >= packs_taken_)))
      return;
    best_ = counts_;
    over_ = over;
    packs_taken_ = packs;
  }

  double needed_;
  std::vector<double> packs_;
  std::vector<int> counts_, best_;
  double over_ = 0;
  int packs_taken_ = 0, looks_ = 0;
};

Bought bought_of(const std::map<double, int, std::greater<>>& counts) {
  Bought b;
  for (const auto& [pack, count] : counts) {
    if (count == 0) continue;
    b.packs.push_back({pack, count});
    b.amount += pack * count;
  }
  return b;
}

// Every roll starts at `longest`; when all is cut each shrinks to the least that holds what came out of it.
std::map<double, int, std::greater<>> cut_from(const std::vector<double>& pieces, double longest,
                                               const std::vector<double>& packs) {
  std::vector<double> used;
  for (double piece : pieces) {
    int best = -1;
    for (std::size_t i = 0; i < used.size(); ++i)
      if (used[i] + piece <= longest * (1 + kSame) &&
          (best < 0 || used[i] > used[static_cast<std::size_t>(best)]))
        best = static_cast<int>(i);
    if (best < 0)
      used.push_back(piece);
    else
      used[static_cast<std::size_t>(best)] += piece;
  }
  std::map<double, int, std::greater<>> counts;
  for (double length : used) {
    double least = packs.front();
    for (double pack : packs)
      if (pack * (1 + kSame) >= length) least = pack;
    ++counts[least];
  }
  return counts;
}

}  // namespace

Bought buy(double needed, const std::vector<double>& packs) {
  if (!(needed > 0)) return {};
  if (packs.empty()) return {{}, needed, 0, 0};
  const std::vector<double> sizes = falling(packs);
  std::map<double, int, std::greater<>> counts;
  if (needed / sizes.front() > kManyPacks) {
    Bought much;
    much.amount = std::ceil(needed / sizes.front()) * sizes.front();
    much.packs = {{sizes.front(), static_cast<int>(std::min(2e9, std::ceil(needed / sizes.front())))}};
    return much;
  }
  const std::vector<int> best = Cover(needed, sizes).best();
  for (std::size_t i = 0; i < sizes.size(); ++i) counts[sizes[i]] = best[i];
  return bought_of(counts);
}

Bought cut(std::vector<double> pieces, const std::vector<double>& packs) {
  std::erase_if(pieces, [](double p) { return !(p > 0); });
  double needed = 0;
  for (double p : pieces) needed += p;
  if (packs.empty() || pieces.empty()) return buy(needed, packs);
  const std::vector<double> sizes = falling(packs);
  if (needed / sizes.front() > kManyRolls || pieces.size() > kManyRolls) return buy(needed, packs);
  int joins = 0, cut_short = 0;
  std::vector<double> whole;
  for (double piece : pieces) {
    const double longest = sizes.front();
    cut_short += piece > longest * (1 + kSame);
    for (; piece > longest * (1 + kSame); piece -= longest, ++joins) whole.push_back(longest);
    whole.push_back(piece);
  }
  std::sort(whole.rbegin(), whole.rend());
  Bought best;
  for (double longest : sizes) {
    if (whole.front() > longest * (1 + kSame)) break;
    Bought now = bought_of(cut_from(whole, longest, sizes));
    if (best.packs.empty() || now.amount < best.amount * (1 - kSame)) best = std::move(now);
  }
  best.joins = joins;
  best.cut_short = cut_short;
  return best;
}

}  // namespace underlawn
