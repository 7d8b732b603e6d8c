// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/best_whole.h"

#include "layout/calm.h"
#include "layout/kept_run.h"

namespace underlawn {

namespace {

constexpr std::size_t kShifted = 3;  // bends shifted: any of these may turn out the best
constexpr int kRounds = 2;           // of guesses, where no way leads from them to the house
constexpr double kGuessedOver = 2;   // m that a guess of the digging may be above it

bool is_joined(const Whole& w) {
  return !w.connection.run.line.empty() && w.unjoined() == 0;
}

}  // namespace

Whole BestWhole::of(std::vector<Arrangement> found, const Coil& coil) const {
  const Keeping keeping = setting_.keeping();
  const Completer completer(keeping, coil, setting_.conduits, stop_);
  Won won;
  for (Arrangement& kept : as_kept(keeping, coil.trench_length)) found.push_back(std::move(kept));
  // The best guesses as a rule; more of them where those shut themselves off from the house.
  for (int round = 0; round < kRounds && !found.empty() && !stop_.stop_requested(); ++round) {
    complete_all(completer, worth_completing(keeping, found, wishes_.aim), won);
    if (setting_.conduits.stubs.empty() || won.empty() || is_joined(won.front()->whole)) break;
  }
  if (won.empty()) return {};
  Joined* of = won.front().get();
  Whole best = of->whole;
  for (const auto& j : won) {
    if (stop_.stop_requested()) break;
    Whole shifted = weighed(completer, *j, true);
    if (!better(shifted, best, wishes_.aim)) continue;
    best = std::move(shifted);
    of = j.get();
  }
  return with_run_kept(completer, *of, std::move(best));
}

Whole BestWhole::with_run_kept(const Completer& completer, Joined& joined, Whole best) const {
  const Polyline& run = best.connection.run.line;
  if (run.empty() || wishes_.kept_run.empty() || lies_as_kept(run, wishes_.kept_run)) return best;
  Whole kept = completer.complete_by_kept_run(joined.arrangement, joined.joiner);
  if (kept.connection.run.line.empty() || kept.unjoined() > best.unjoined() || kept.count() != best.count())
    return best;
  kept = measured_whole(std::move(kept));
  const double worth = counts_digging(wishes_.aim) ? kKeptRunWorth : kKeptRunShare * std::abs(best.measure);
  return kept.measure <= best.measure + worth ? kept : best;
}

void BestWhole::complete_all(const Completer& completer, std::vector<Arrangement> worth, Won& won) const {
  const Whole none;
  for (Arrangement& a : worth) {
    if (stop_.stop_requested()) return;
    const Whole& best = won.empty() ? none : won.front()->whole;
    if (cannot_win(a, best)) continue;
    if (wishes_.aim != Aim::mix && static_cast<int>(a.trenches.size()) + 1 < best.count()) continue;
    auto joined = std::make_unique<Joined>(std::move(a), completer);
    joined->whole = weighed(completer, *joined, false);
    if (joined->whole.count() > setting_.wishes.circuits) continue;
    keep(won, std::move(joined));
  }
}

// In its place, behind equals that were found first.
void BestWhole::keep(Won& won, std::unique_ptr<Joined> joined) const {
  const auto worse = std::find_if(
      won.begin(), won.end(), [&](const auto& j) { return better(joined->whole, j->whole, wishes_.aim); });
  if (won.size() == kShifted && worse == won.end()) return;
  won.insert(worse, std::move(joined));
  if (won.size() > kShifted) won.pop_back();
}

Whole BestWhole::weighed(const Completer& completer, Joined& joined, bool shift) const {
  return measured_whole(completer.complete(joined.arrangement, joined.joiner, shift));
}

Whole BestWhole::measured_whole(Whole w) const {
  w.measure = counts_digging(wishes_.aim) ? w.cost : measured(w);
  w.measure -= calm_worth(wishes_, w);
  return w;
}

// By the guess of its digging, which falls short of it as a rule.
bool BestWhole::cannot_win(const Arrangement& a, const Whole& best) const {
  return counts_digging(wishes_.aim) && best.field.size() == a.trenches.size() && is_joined(best) &&
         a.estimate - kGuessedOver - kLikenessWorth * likeness(a.trenches, wishes_.kept) >=
             best.digging - calm_worth(wishes_, best);
}

double BestWhole::measured(const Whole& w) const {
  return measure_of(site_, wishes_, drawn_layout(site_, wishes_, coil_, w, setting_.locked), setting_.terrain,
                    w.cost, wishes_.circuits);
}

}  // namespace underlawn
