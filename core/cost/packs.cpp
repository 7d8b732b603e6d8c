// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/packs.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

constexpr double kManyPacks = 1e6;
constexpr int kMostLooks = 20'000;
constexpr double kSame = 1e-9;  // relative: rounding of units is no need for one more

int packs_for(double needed, double pack) {
  return static_cast<int>(std::ceil(std::max(0.0, needed / pack - kSame)));
}

// Largest first; those of one size at the lower price, what is cut off for the buyer left out.
std::vector<Pack> falling(std::vector<Pack> packs) {
  std::erase_if(packs, [](const Pack& p) { return !(p.amount > 0); });
  std::ranges::sort(packs, [](const Pack& a, const Pack& b) {
    return a.amount != b.amount ? a.amount > b.amount : a.price < b.price;
  });
  const auto twice =
      std::ranges::unique(packs, [](const Pack& a, const Pack& b) { return a.amount == b.amount; });
  packs.erase(twice.begin(), twice.end());
  return packs;
}

// Tries every count of each size, largest first, as long as that is quick; the smallest makes up the rest.
class Cover {
 public:
  Cover(double needed, std::vector<Pack> packs) : needed_(needed), packs_(std::move(packs)) {
    counts_.assign(packs_.size(), 0);
    look(0, needed);
  }
  const std::vector<int>& best() const { return best_; }

 private:
  void look(std::size_t at, double left) {
    if (++looks_ > kMostLooks && !best_.empty()) return;
    const int all = packs_for(left, packs_[at].amount);
    if (at + 1 == packs_.size()) return take(at, all);
    for (int n = all; n >= 0; --n) {
      counts_[at] = n;
      const double rest = left - n * packs_[at].amount;
      if (rest <= needed_ * kSame)
        take(at, n);
      else
        look(at + 1, rest);
    }
    counts_[at] = 0;
  }
  void take(std::size_t at, int count) {
    counts_[at] = count;
    std::fill(counts_.begin() + static_cast<std::ptrdiff_t>(at) + 1, counts_.end(), 0);
    Taken now;
    for (std::size_t i = 0; i < counts_.size(); ++i) {
      now.paid += counts_[i] * packs_[i].amount * packs_[i].price;
      now.amount += counts_[i] * packs_[i].amount;
      now.packs += counts_[i];
    }
    if (!best_.empty() && !better(now)) return;
    best_ = counts_;
    taken_ = now;
  }

  struct Taken {
    double paid = 0, amount = 0;
    int packs = 0;
  };
  // Cheaper; of equals less; of equals fewer.
  bool better(const Taken& now) const {
    const double same = kSame * taken_.paid, alike = kSame * taken_.amount;
    if (std::abs(now.paid - taken_.paid) > same) return now.paid < taken_.paid;
    if (std::abs(now.amount - taken_.amount) > alike) return now.amount < taken_.amount;
    return now.packs < taken_.packs;
  }

  double needed_;
  std::vector<Pack> packs_;
  std::vector<int> counts_, best_;
  Taken taken_;
  int looks_ = 0;
};

void add(Bought& b, const Pack& pack, double count) {
  if (!(count > 0)) return;
  b.packs.push_back({pack.amount, static_cast<int>(std::min(2e9, count))});
  b.amount += pack.amount * count;
  b.paid += pack.amount * count * pack.price;
}

}  // namespace

Bought buy(double needed, const std::vector<Pack>& packs, double price) {
  if (!(needed > 0)) return {};
  const std::vector<Pack> sizes = falling(packs);
  Bought b;
  if (sizes.empty()) {
    b.amount = needed;
    b.paid = needed * price;
  } else if (needed / sizes.front().amount > kManyPacks) {
    add(b, sizes.front(), std::ceil(needed / sizes.front().amount));
  } else {
    const std::vector<int> best = Cover(needed, sizes).best();
    for (std::size_t i = 0; i < sizes.size(); ++i) add(b, sizes[i], best[i]);
  }
  for (const Pack& p : packs)
    if (p.amount == 0 && needed * p.price < b.paid * (1 - kSame))
      b = {{{0, 1}}, needed, 0, 0, {}, needed * p.price};
  return b;
}

}  // namespace underlawn
