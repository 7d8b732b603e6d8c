// SPDX-License-Identifier: GPL-3.0-or-later
// Of many arrangements the one that is best when it is joined up.
#pragma once

#include <memory>

#include "layout/aim.h"

namespace underlawn {

class BestWhole {
 public:
  // As drawn and asked for, and what follows from it.
  BestWhole(const Site& drawn, const Wishes& asked, const Coil& coil, const Setting& setting,
            const std::stop_token& stop)
      : site_(drawn), wishes_(asked), coil_(coil), setting_(setting), stop_(stop) {}

  // Of arrangements of trenches of the coil's length.
  Whole of(std::vector<Arrangement> found, const Coil& coil) const;

 private:
  struct Joined {
    Joined(Arrangement a, const Completer& completer)
        : arrangement(std::move(a)), joiner(completer.joiner_of(arrangement)) {}
    Arrangement arrangement;
    Joiner joiner;
    Whole whole;
  };
  using Won = std::vector<std::unique_ptr<Joined>>;  // the best few, best first
  void complete_all(const Completer& completer, std::vector<Arrangement> worth, Won& won) const;
  void keep(Won& won, std::unique_ptr<Joined> joined) const;
  Whole weighed(const Completer& completer, Joined& joined, bool shift) const;
  Whole measured_whole(Whole whole) const;
  // By the run last shown, where that costs little more.
  Whole with_run_kept(const Completer& completer, Joined& joined, Whole best) const;
  bool cannot_win(const Arrangement& arrangement, const Whole& best) const;
  double measured(const Whole& whole) const;

  const Site& site_;
  const Wishes& wishes_;
  const Coil& coil_;
  const Setting& setting_;
  const std::stop_token& stop_;
};

}  // namespace underlawn
