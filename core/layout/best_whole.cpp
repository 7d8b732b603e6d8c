// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/best_whole.h"

#include "layout/calm.h"

namespace underlawn {

namespace {

constexpr std::size_t kShifted = 3;  // bends shifted: any of these may turn out the best
constexpr double kGuessedOver = 2;   // m that a guess of the digging may be above it

}  // namespace

Whole BestWhole::of(std::vector<Arrangement> found, const Coil& coil) const {
  const Keeping keeping = setting_.keeping();
  const Completer completer(keeping, coil, setting_.conduits, stop_);
  Whole best;
  std::vector<Joined> won;  // the best few, best first
  for (Arrangement& kept : as_kept(keeping, coil.trench_length)) found.push_back(std::move(kept));
  for (const Arrangement& a : worth_completing(keeping, std::move(found), wishes_.aim)) {
    if (stop_.stop_requested()) break;
    if (cannot_win(a, best)) continue;
    if (wishes_.aim != Aim::mix && static_cast<int>(a.trenches.size()) + 1 < best.count()) continue;
    Whole w = weighed(completer, a, false);
    if (w.count() > keeping.wishes.circuits) continue;
    keep(won, {a, std::move(w)});
    best = won.front().whole;
  }
  for (const Joined& j : won) {
    if (stop_.stop_requested()) break;
    Whole shifted = weighed(completer, j.arrangement, true);
    if (better(shifted, best, wishes_.aim)) best = std::move(shifted);
  }
  return best;
}

// In its place, behind equals that were found first.
void BestWhole::keep(std::vector<Joined>& won, Joined joined) const {
  const auto worse = std::find_if(
      won.begin(), won.end(), [&](const Joined& j) { return better(joined.whole, j.whole, wishes_.aim); });
  if (won.size() == kShifted && worse == won.end()) return;
  won.insert(worse, std::move(joined));
  if (won.size() > kShifted) won.pop_back();
}

Whole BestWhole::weighed(const Completer& completer, const Arrangement& a, bool shift) const {
  Whole w = completer.complete(a, shift);
  w.measure = counts_digging(wishes_.aim) ? w.cost : measured(w);
  w.measure -= calm_worth(w);
  return w;
}

// By the guess of its digging, which falls short of it as a rule.
bool BestWhole::cannot_win(const Arrangement& a, const Whole& best) const {
  return counts_digging(wishes_.aim) && best.field.size() == a.trenches.size() &&
         !best.connection.run.line.empty() && best.unjoined() == 0 &&
         a.estimate - kGuessedOver - kLikenessWorth * likeness(a.trenches, wishes_.kept) >=
             best.digging - calm_worth(best);
}

// What lying near the trenches last shown takes off the measure.
double BestWhole::calm_worth(const Whole& w) const {
  const double most = counts_digging(wishes_.aim) ? kLikenessWorth : kLikenessShare * std::abs(w.measure);
  return most * likeness(w.field, wishes_.kept);
}

double BestWhole::measured(const Whole& w) const {
  return measure_of(site_, wishes_, drawn_layout(site_, wishes_, coil_, w, setting_.locked), setting_.terrain,
                    w.cost, wishes_.circuits);
}

}  // namespace underlawn
