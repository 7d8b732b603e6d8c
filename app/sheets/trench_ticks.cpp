// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/trench_ticks.h"

#include <algorithm>

#include "plan/coil_watch.h"
#include "plan/figures/groups.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

double tape_down(double depth) {
  return 0.25 * depth;
}

Item who_goes_in(const Plan& plan) {
  switch (plan.dig.coil_sides) {
    case Sides::stay_out:
      return {
          "!", QObject::tr("Nobody goes in, at any time."),
          QObject::tr("All is done from the edge, spoil and machine back from it. Must anybody go in: stop; "
                      "the competent person's protective system comes first, local code governs.")};
    case Sides::slope:
      return {"!", QObject::tr("In only where the sides are laid back as below"),
              QObject::tr("and after the competent person's look that day. A ladder near everyone. Spoil and "
                          "machine back from the edge.")};
    case Sides::shield:
    case Sides::shoring:
      break;
  }
  return {"!",
          plan.dig.coil_sides == Sides::shield ? QObject::tr("In only inside the shield")
                                               : QObject::tr("In only between the shores"),
          QObject::tr("and after the competent person's look that day. A ladder near everyone. Spoil and "
                      "machine back from the edge.")};
}

namespace {

class Ticks {
 public:
  Ticks(const Plan& plan, const Outcome& outcome, int trench)
      : plan_(plan), outcome_(outcome), out_(plan.dig.coil_sides == Sides::stay_out) {
    const std::vector<int> early = coils_covered_early(outcome);
    early_ = std::find(early.begin(), early.end(), trench) != early.end();
    shared_ = outcome.figures.find(figures::trench_key(trench) + ".run_floor") != nullptr;
    for (const Trench& t : outcome.layout.trenches)
      if (t.number == trench) depth_ = t.depth;
  }

  QStringList all() {
    laid();
    if (early_) {
      covered_early();
    } else {
      tested();
      covered();
    }
    return std::move(ticks_);
  }

 private:
  void laid() {
    ticks_ << QObject::tr("staked and checked")
           << (out_ ? QObject::tr("dug, floor levelled by the bucket")
                    : QObject::tr("dug, floor level and clean"));
    const bool flat = outcome_.coil.pattern == CoilPattern::flat_coil;
    ticks_ << (flat ? QObject::tr("half of the sand on the floor") : QObject::tr("sand on the floor"))
           << (out_ ? QObject::tr("coil let down, tagged, ends led over the step")
                    : QObject::tr("coil laid, tied, tagged"));
  }

  void covered_early() {
    ticks_
        << QObject::tr("coil alone under pressure: %1; gauge ______").arg(coil_watch_words(plan_, outcome_))
        << ties() << filled_early()
        << QObject::tr("gauge ______ when covered; its machine's driver reads it, from the edge");
    if (shared_)
      ticks_ << (out_ ? QObject::tr("run's pipes let down and bedded from the edge")
                      : QObject::tr("run's pipes laid and bedded"));
    else
      ticks_ << tape();
    tested();
    ticks_ << (shared_ ? tape() : QObject::tr("head: ties of the joints taken, then sand, tape and fill"));
  }

  QString filled_early() const {
    return shared_ ? QObject::tr("sand over the coil, filled to the run's floor")
                   : QObject::tr("sand over the coil, filled up to %1 below the ground, the head left open")
                         .arg(shown_length(plan_, tape_down(depth_)));
  }

  void tested() { ticks_ << QObject::tr("joined; whole loop tested before a joint is covered"); }

  void covered() {
    ticks_ << ties()
           << QObject::tr("sand over the coil, filled up to %1 below the ground")
                  .arg(shown_length(plan_, tape_down(depth_)))
           << tape();
  }

  static QString ties() { return QObject::tr("as-built tapes and photo taken"); }
  static QString tape() { return QObject::tr("warning tape laid from above, filled"); }

  const Plan& plan_;
  const Outcome& outcome_;
  bool out_, early_ = false, shared_ = false;
  double depth_ = 0;
  QStringList ticks_;
};

}  // namespace

QStringList trench_ticks(const Plan& plan, const Outcome& outcome, int trench) {
  return Ticks(plan, outcome, trench).all();
}

}  // namespace underlawn::sheet
