// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/longest_field.h"

#include "layout/free_lengths.h"
#include "layout/opened_way.h"

namespace underlawn {

namespace {

constexpr double kNearlyAll = 0.995;  // of the metres: no more to be sought for
constexpr int kMostOpened = 12;       // arrangements to which ways are opened

bool is_whole(const Whole& w) {
  return w.unjoined() == 0 && !w.connection.run.line.empty();
}

class Lengthener {
 public:
  Lengthener(const Setting& setting, const Coil& coil, const BestWhole& best_whole,
             const std::stop_token& stop)
      : setting_(setting), keeping_(setting.keeping()), coil_(coil), best_whole_(best_whole), stop_(stop) {}

  LongestField run() {
    const double most = longest_joined();
    const Wishes& w = setting_.wishes;
    const double metres = metres_of(out_.whole), all_most = w.circuits * w.most_length;
    if (!is_whole(out_.whole) || metres < kNearlyAll * most || metres > kNearlyAll * all_most)
      try_one_length_after_another();
    out_.fits = std::max(out_.fits, static_cast<int>(out_.whole.field.size() + setting_.locked.size()));
    return std::move(out_);
  }

 private:
  // m, of the longest there are, joined or not.
  double longest_joined() {
    const LengthBounds bounds{keeping_.wishes.least_length, keeping_.wishes.most_length};
    Coil shortest = coil_;
    shortest.trench_length = bounds.least;
    const FieldSearch field(keeping_, shortest, setting_.wishes.circuits, false);
    const std::vector<Arrangement> longest = field.longest(bounds, stop_);
    const Completer completer(keeping_, coil_, setting_.conduits, stop_);
    double most = 0;
    for (const Arrangement& a : longest) {
      if (stop_.stop_requested()) break;
      const double metres = metres_of(a.trenches);
      most = std::max(most, metres);
      if (is_whole(out_.whole) && metres < metres_of(out_.whole)) continue;
      for (Whole& w : ways_to_join(completer, a)) {
        if (w.field.empty()) continue;
        w.measure = w.cost;
        take_if_longer(std::move(w), {a.bearing});
      }
    }
    return most;
  }

  // Without the trenches that no header reaches, and with ways to them opened.
  std::vector<Whole> ways_to_join(const Completer& completer, const Arrangement& a) {
    std::vector<Whole> all = {joined_alone(keeping_, completer, a)};
    const Whole& plain = all.front();
    if ((plain.field.size() == a.trenches.size() && is_whole(plain)) || opened_++ >= kMostOpened) return all;
    const double had = is_whole(out_.whole) ? metres_of(out_.whole) : 0;
    if (auto w = with_ways_opened(keeping_, setting_.conduits, completer, a, had))
      all.push_back(std::move(*w));
    return all;
  }

  void try_one_length_after_another() {
    const int wanted = setting_.wishes.circuits, locked = static_cast<int>(setting_.locked.size());
    for (double length : lengths_to_seek(keeping_, coil_, wanted, stop_)) {
      Coil coil = coil_;
      coil.trench_length = length;
      Candidates candidates = candidates_for(keeping_, coil, wanted, stop_);
      if (stop_.stop_requested()) return;
      const Completer completer(keeping_, coil, setting_.conduits, stop_);
      take_if_longer(joined_alone(completer, best_whole_.of(std::move(candidates.found), coil)),
                     candidates.bearings);
      out_.fits = std::max(out_.fits, locked + candidates.fits);
    }
  }

  void take_if_longer(Whole w, const std::vector<Bearing>& bearings) {
    draw_out(keeping_, w);
    if (!more_metres(w, out_.whole)) return;
    out_.whole = std::move(w);
    out_.bearings = bearings;
  }

  const Setting& setting_;
  const Keeping keeping_;
  const Coil& coil_;
  const BestWhole& best_whole_;
  const std::stop_token& stop_;
  LongestField out_;
  int opened_ = 0;
};

}  // namespace

LongestField longest_field(const Setting& setting, const Coil& coil, const BestWhole& best_whole,
                           const std::stop_token& stop) {
  return Lengthener(setting, coil, best_whole, stop).run();
}

}  // namespace underlawn
