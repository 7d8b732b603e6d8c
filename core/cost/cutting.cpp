// SPDX-License-Identifier: GPL-3.0-or-later
// Which pieces are cut from which roll: a small cutting-stock problem with rolls of several sizes and prices,
// solved by branch and bound over the pieces, longest first.
#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <optional>

#include "cost/packs.h"

namespace underlawn {

namespace {

constexpr double kManyRolls = 2000;          // cut piece by piece
constexpr std::size_t kMostSteps = 500'000;  // bins looked at
constexpr double kSame = 1e-9;               // relative
constexpr double kDearest = std::numeric_limits<double>::infinity();

bool fits(double length, double pack) {
  return length <= pack * (1 + kSame);
}

struct Piece {
  double length = 0;
  int of = 0;  // place in what was asked
};

// What is sold, and what a length out of it costs at the least.
class Shop {
 public:
  explicit Shop(const std::vector<Pack>& packs) {
    for (const Pack& p : packs) {
      least_price_ = std::min(least_price_, p.price);
      if (p.amount > 0)
        rolls_.push_back(p);
      else
        to_length_ = std::min(to_length_.value_or(p.price), p.price);
    }
    std::ranges::stable_sort(rolls_, [](const Pack& a, const Pack& b) {
      const double x = a.amount * a.price, y = b.amount * b.price;
      return x != y ? x < y : a.amount < b.amount;
    });
    for (const Pack& p : rolls_) longest_ = std::max(longest_, p.amount);
  }
  // Units; without rolls any length is cut.
  double longest() const { return rolls_.empty() ? kDearest : longest_; }
  double least_price() const { return least_price_; }

  // The cheapest roll that holds so much.
  const Pack* roll_for(double length) const {
    for (const Pack& p : rolls_)
      if (fits(length, p.amount)) return &p;
    return nullptr;
  }
  bool is_cut_to_length(double length, std::size_t pieces) const {
    if (!to_length_ || pieces != 1) return false;
    const Pack* roll = roll_for(length);
    return roll == nullptr || length * *to_length_ < roll->amount * roll->price * (1 - kSame);
  }
  double cost(double length, std::size_t pieces) const {
    if (is_cut_to_length(length, pieces)) return length * *to_length_;
    const Pack* roll = roll_for(length);
    return roll != nullptr ? roll->amount * roll->price : kDearest;
  }

 private:
  std::vector<Pack> rolls_;  // cheapest first
  std::optional<double> to_length_;
  double longest_ = 0, least_price_ = kDearest;
};

struct Bin {
  double used = 0;
  std::vector<int> pieces;  // places in the sorted list
  double cost = 0;
};

class Cutting {
 public:
  Cutting(const Shop& shop, const std::vector<Piece>& pieces) : shop_(shop), pieces_(pieces) {
    for (const Piece& p : pieces) rest_ += p.length;
    place(0, 0);
  }
  const std::vector<Bin>& best() const { return best_; }

 private:
  // Every bin will cost what it costs now, and what its cost would not pay for at the best price is paid for.
  double at_least() const {
    const double price = shop_.least_price();
    double sum = 0, paid_for = 0;
    for (const Bin& b : bins_) {
      sum += b.cost;
      if (price > 0) paid_for += b.cost / price - b.used;
    }
    return sum + price * std::max(0.0, rest_ - paid_for);
  }

  bool hopeless() {
    if (best_.empty()) return false;
    steps_ += 1 + bins_.size();
    return steps_ > kMostSteps || at_least() >= best_cost_ * (1 - kSame);
  }

  // Of pieces of one length the later goes into no earlier bin: their exchange changes nothing.
  void place(std::size_t at, std::size_t first_bin) {
    if (hopeless()) return;
    if (at == pieces_.size()) return take();
    rest_ -= pieces_[at].length;
    for (std::size_t i : order(first_bin)) put_into(at, i);
    bins_.emplace_back();
    put_into(at, bins_.size() - 1);
    bins_.pop_back();
    rest_ += pieces_[at].length;
  }

  // Fullest first, of equals one.
  std::vector<std::size_t> order(std::size_t first_bin) const {
    std::vector<std::size_t> all;
    for (std::size_t i = first_bin; i < bins_.size(); ++i) all.push_back(i);
    std::ranges::stable_sort(all,
                             [&](std::size_t a, std::size_t b) { return bins_[a].used > bins_[b].used; });
    const auto twice = std::ranges::unique(all, [&](std::size_t a, std::size_t b) {
      return bins_[a].used == bins_[b].used && bins_[a].pieces.size() == bins_[b].pieces.size();
    });
    all.erase(twice.begin(), twice.end());
    return all;
  }

  void put_into(std::size_t at, std::size_t i) {
    const Bin before = bins_[i];
    const double length = pieces_[at].length;
    if (!before.pieces.empty() && !fits(before.used + length, shop_.longest())) return;
    bins_[i].used += length;
    bins_[i].pieces.push_back(static_cast<int>(at));
    bins_[i].cost = shop_.cost(bins_[i].used, bins_[i].pieces.size());
    const bool again = at + 1 < pieces_.size() && pieces_[at + 1].length == length;
    if (bins_[i].cost < kDearest) place(at + 1, again ? i : 0);
    bins_[i] = before;
  }

  void take() {
    best_ = bins_;
    best_cost_ = 0;
    for (const Bin& b : bins_) best_cost_ += b.cost;
  }

  const Shop& shop_;
  const std::vector<Piece>& pieces_;
  double rest_ = 0;  // units not placed yet
  std::vector<Bin> bins_, best_;
  double best_cost_ = 0;
  std::size_t steps_ = 0;
};

Roll roll_of(const Shop& shop, const Bin& bin, const std::vector<Piece>& pieces) {
  Roll roll;
  roll.to_length = shop.is_cut_to_length(bin.used, bin.pieces.size());
  roll.length = roll.to_length ? bin.used : shop.roll_for(bin.used)->amount;
  for (int piece : bin.pieces) roll.pieces.push_back(pieces[static_cast<std::size_t>(piece)].of);
  roll.left = std::max(0.0, roll.length - bin.used);
  return roll;
}

Bought bought_of(const Shop& shop, const std::vector<Bin>& bins, const std::vector<Piece>& pieces) {
  Bought b;
  std::map<double, int, std::greater<>> counts;
  for (const Bin& bin : bins) {
    b.rolls.push_back(roll_of(shop, bin, pieces));
    b.amount += b.rolls.back().length;
    b.paid += bin.cost;
    ++counts[b.rolls.back().to_length ? 0 : b.rolls.back().length];
  }
  std::ranges::stable_sort(b.rolls, [](const Roll& a, const Roll& c) {
    return a.to_length != c.to_length ? c.to_length : a.length > c.length;
  });
  for (const auto& [pack, count] : counts) b.packs.push_back({pack, count});
  return b;
}

}  // namespace

Bought cut(const std::vector<double>& pieces, const std::vector<Pack>& packs, double price) {
  double needed = 0;
  std::size_t count = 0;
  for (double p : pieces)
    if (p > 0) needed += p, ++count;
  if (packs.empty() || count == 0) return buy(needed, packs, price);
  const Shop shop(packs);
  const double longest = shop.longest();
  if (needed / longest > kManyRolls || count > kManyRolls) return buy(needed, packs, price);
  std::vector<Piece> whole;
  int joins = 0, cut_short = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    double left = pieces[i];
    if (!(left > 0)) continue;
    cut_short += !fits(left, longest);
    for (; !fits(left, longest); left -= longest, ++joins) whole.push_back({longest, static_cast<int>(i)});
    whole.push_back({left, static_cast<int>(i)});
  }
  std::ranges::stable_sort(whole, [](const Piece& a, const Piece& b) { return a.length > b.length; });
  Bought made = bought_of(shop, Cutting(shop, whole).best(), whole);
  made.joins = joins;
  made.cut_short = cut_short;
  return made;
}

}  // namespace underlawn
