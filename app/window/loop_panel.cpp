// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/loop_panel.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QToolButton>
#include <cmath>

#include "cost/price_book.h"
#include "field/straight.h"
#include "window/pipe_choice.h"

namespace underlawn {

namespace {

Form::Bound<double> wish(double Wishes::*field, const QString& what) {
  return bound_to(what, &Plan::wishes, field);
}

// Another size comes with its price.
Form::Bound<int> pipe(std::string Wishes::*field, decltype(set_coil_pipe)* set, const QString& what) {
  return {[field](const Plan& p) { return index_of_pipe(p.wishes.*field); },
          [set](Plan& p, int i) {
            set(p.pricing.book, p.wishes, pipe_sizes()[static_cast<std::size_t>(i)].name);
          },
          what};
}

double solved(const Coil& coil, CoilUnknown which) {
  switch (which) {
    case CoilUnknown::pitch:
      return coil.pitch;
    case CoilUnknown::coil_length:
      return coil.coil_length;
    case CoilUnknown::trench_length:
      return coil.trench_length;
  }
  return 0;
}

double& wished(Wishes& wishes, CoilUnknown which) {
  switch (which) {
    case CoilUnknown::coil_length:
      return wishes.coil_length;
    case CoilUnknown::trench_length:
      return wishes.trench_length;
    case CoilUnknown::pitch:
      break;
  }
  return wishes.pitch;
}

bool has_loops(const Plan& plan) {
  return !is_straight(plan.wishes.pattern);
}

// A trench of the width usual for one pattern becomes as wide as is usual for the other.
void choose_pattern(Plan& plan, int index) {
  Wishes& w = plan.wishes;
  const auto chosen = static_cast<CoilPattern>(index);
  if (std::abs(w.trench_width - usual_trench_width(w.pattern)) < 1e-9)
    w.trench_width = usual_trench_width(chosen);
  w.pattern = chosen;
}

}  // namespace

LoopPanel::LoopPanel(Document& document, QWidget* parent) : Form(document, parent), document_(document) {
  add_coil();
  add_trenches();
  add_floors();
  add_run();
  add_aim();
  add_held();
  add_prices();
  end();
  follow_outcome();
  refresh();
}

void LoopPanel::add_coil() {
  section(tr("Coils"));
  number(
      tr("Circuits"), Quantity::count,
      {[](const Plan& p) { return p.wishes.circuits; },
       [](Plan& p, double v) { p.wishes.circuits = static_cast<int>(std::lround(std::clamp(v, -1e6, 1e6))); },
       tr("Circuits")});
  choice(
      tr("Pattern"),
      {tr("Flat coil"), tr("Upright coil"), tr("Single pipe, return above it"), tr("Two pipes"),
       tr("Four pipes, two levels"), tr("Six pipes, three levels")},
      {[](const Plan& p) { return static_cast<int>(p.wishes.pattern); }, choose_pattern, tr("Coil pattern")});
  choice(tr("Pipe"), pipe_names(), pipe(&Wishes::pipe, set_coil_pipe, tr("Coil pipe")));
  number(tr("Loop diameter"), Quantity::length, wish(&Wishes::loop_diameter, tr("Loop diameter")));
  only_when(has_loops);
  add_one_of_three(tr("Trench length"), CoilUnknown::trench_length, &Wishes::trench_length);
  add_one_of_three(tr("Coil length"), CoilUnknown::coil_length, &Wishes::coil_length);
  add_one_of_three(tr("Pitch"), CoilUnknown::pitch, &Wishes::pitch);
  only_when(has_loops);
  note([](const Plan& p) {
    return has_loops(p) ? tr("Two of these three are typed, the one marked = follows. The coil length counts "
                             "the return pipe.")
                        : tr("One of these two is typed, the one marked = follows. The coil length is all "
                             "pipe in one trench, out and back.");
  });
  add_pattern();
}

void LoopPanel::add_pattern() {
  number(tr("Levels apart"), Quantity::length, wish(&Wishes::level_distance, tr("Distance of levels")));
  only_when([](const Plan& p) { return pipe_levels(p.wishes.pattern) > 1; });
  number(tr("Sides apart"), Quantity::length, wish(&Wishes::side_distance, tr("Distance of sides")));
  only_when([](const Plan& p) { return pipe_sides(p.wishes.pattern) > 1; });
  check(tr("Return pipe on top of the loops, not on the floor"),
        {[](const Plan& p) { return p.wishes.return_on_top; },
         [](Plan& p, bool on) { p.wishes.return_on_top = on; }, tr("Place of the return pipe")});
  only_when([](const Plan& p) { return p.wishes.pattern == CoilPattern::upright_coil; });
}

void LoopPanel::add_one_of_three(const QString& label, CoilUnknown which, double Wishes::*field) {
  QuantityField* entry = number(label, Quantity::length, wish(field, label));
  auto* follow = new QToolButton;
  follow->setObjectName("follow");
  follow->setText("=");
  follow->setCheckable(true);
  follow->setFocusPolicy(Qt::StrongFocus);
  follow->setToolTip(tr("%1 follows from the other two").arg(label));
  follow->setAccessibleName(follow->toolTip());
  beside(follow);
  connect(follow, &QToolButton::clicked, this, [this, which] { let_follow(which); });
  on_refresh([this, entry, follow, which] {
    const Plan& plan = document_.plan();
    const bool follows = follows_in(plan.wishes.pattern, plan.wishes.unknown) == which;
    follow->setChecked(follows);
    entry->set_read_only(follows);
    const Outcome* outcome = document_.outcome();
    if (!follows || outcome == nullptr) return;
    const double value = solved(outcome->coil, which);
    if (value > 0)
      entry->show_value(value, plan.units);
    else
      entry->show_text(tr("no answer"));
  });
}

// What followed so far is kept as typed, so that the loop stays as it is.
void LoopPanel::let_follow(CoilUnknown which) {
  Plan plan = document_.committed();
  const CoilUnknown before = follows_in(plan.wishes.pattern, plan.wishes.unknown);
  if (before != which && document_.outcome() != nullptr && !document_.stale()) {
    const double value = solved(document_.outcome()->coil, before);
    if (value > 0) wished(plan.wishes, before) = value;
  }
  plan.wishes.unknown = which;
  document_.commit(std::move(plan), tr("What follows"));
  refresh();
}

void LoopPanel::add_trenches() {
  section(tr("Coil trenches"));
  number(tr("Width"), Quantity::length, wish(&Wishes::trench_width, tr("Trench width")));
  number(tr("Depth"), Quantity::length, wish(&Wishes::trench_depth, tr("Trench depth")));
  number(tr("Least spacing"), Quantity::length, wish(&Wishes::spacing, tr("Trench spacing")))
      ->edit()
      ->setToolTip(tr("Between the middle lines of trenches side by side"));
  number(tr("Gap at ends"), Quantity::length, wish(&Wishes::end_gap, tr("Gap at trench ends")))
      ->edit()
      ->setToolTip(tr("Between floors of trenches that lie end to end or in different directions"));
  number(tr("Bedding"), Quantity::length, wish(&Wishes::bedding, tr("Bedding")))
      ->edit()
      ->setToolTip(tr("Sand round the pipe"));
}

void LoopPanel::add_floors() {
  check(tr("Trench floors level"), bound_to<bool>(tr("Level floors"), &Plan::wishes, &Wishes::level_floor));
  only_when([](const Plan& p) { return !p.site.heights.empty(); });
  note([](const Plan& p) {
    return p.wishes.level_floor
               ? tr("Dug to the depth where the ground is lowest, deeper elsewhere: trenches "
                    "turn along the contour where that saves digging.")
               : tr("Floors follow the ground at the depth asked for.");
  });
  only_when([](const Plan& p) { return !p.site.heights.empty(); });
}

void LoopPanel::add_run() {
  section(tr("Header and supply run"));
  choice(tr("Pipe"), pipe_names(), pipe(&Wishes::header_pipe, set_header_pipe, tr("Header pipe")));
  note([](const Plan&) {
    return tr("Flow designs the sizes of run and header; of this one only the wall (DR) counts then.");
  });
  only_when([](const Plan& p) { return p.flow.run_size.empty() || p.flow.header_sizes.empty(); });
  number(tr("Width"), Quantity::length, wish(&Wishes::run_width, tr("Run width")));
  number(tr("Depth"), Quantity::length, wish(&Wishes::run_depth, tr("Run depth")));
  check(tr("A coil in the supply trench if long enough"),
        {[](const Plan& p) { return p.wishes.coil_in_run; },
         [](Plan& p, bool on) { p.wishes.coil_in_run = on; }, tr("Coil in the run")});
}

}  // namespace underlawn
