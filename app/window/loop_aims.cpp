// SPDX-License-Identifier: GPL-3.0-or-later
// What best means, what is held while the rest is arranged, and what things cost.
#include <QCheckBox>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>
#include <numbers>

#include "plan/keeping.h"
#include "window/loop_panel.h"
#include "window/wall_list.h"

namespace underlawn {

namespace {

// A price of `per` metres, square metres or cubic metres.
Form::Bound<double> price(double Prices::*which, const QString& what, double per = 1) {
  return {[=](const Plan& p) { return per * p.wishes.prices.*which; },
          [=](Plan& p, double value) { p.wishes.prices.*which = value / per; }, what};
}

constexpr double kFoot = 0.3048;
constexpr double kYard = 3 * kFoot;

bool has_aim(const Plan& p, Aim aim) {
  return p.wishes.aim == aim;
}

// Clockwise from north, 0 to half a turn: a trench has no front.
double bearing(const Plan& p, double direction) {
  constexpr double half = std::numbers::pi;
  const double turned = std::fmod(p.site.north - direction, half);
  return turned < 0 ? turned + half : turned;
}

QString what_aim_means(const Plan& p) {
  switch (p.wishes.aim) {
    case Aim::digging:
      return Form::tr("The circuits asked for, with the least trench, header and run to dig.");
    case Aim::circuits:
      return Form::tr("As many circuits as the lot takes, however many are asked for.");
    case Aim::metres:
      return Form::tr("The most trench in all; each may be as long as its place allows.");
    case Aim::lawn:
      return Form::tr("The circuits asked for, with the least lawn torn up.");
    case Aim::cost:
      return Form::tr("The circuits asked for, at the least price by the list below.");
    case Aim::trees:
      return Form::tr("The circuits asked for, as far from the trunks of trees as they can be.");
    case Aim::mix:
      return Form::tr(
          "The least sum of the prices below and of what you hold a circuit and a tree's peace to "
          "be worth; circuits that do not pay are left out.");
  }
  return {};
}

}  // namespace

void LoopPanel::add_aim() {
  section(tr("What best means"));
  choice(tr("Aim"),
         {tr("Least digging"), tr("Most circuits"), tr("Most trench"), tr("Least lawn"), tr("Least cost"),
          tr("Furthest from trees"), tr("My own mix")},
         bound_to<int>(tr("What best means"), &Plan::wishes, &Wishes::aim));
  note(what_aim_means);
  number(tr("Shortest trench"), Quantity::length,
         bound_to(tr("Shortest trench"), &Plan::wishes, &Wishes::least_length));
  only_when([](const Plan& p) { return has_aim(p, Aim::metres); });
  number(tr("Longest trench"), Quantity::length,
         bound_to(tr("Longest trench"), &Plan::wishes, &Wishes::most_length));
  only_when([](const Plan& p) { return has_aim(p, Aim::metres); });
  const auto mixed = [](const Plan& p) { return has_aim(p, Aim::mix); };
  number(tr("A circuit is worth"), Quantity::money,
         price(&Prices::missing_circuit, tr("Worth of a circuit")));
  only_when(mixed);
  const QString nearer = tr("Worth of distance from a tree");
  number(tr("A metre from a tree"), Quantity::money, price(&Prices::near_tree, nearer));
  only_when([mixed](const Plan& p) { return mixed(p) && p.units == UnitSystem::metric; });
  number(tr("A foot from a tree"), Quantity::money, price(&Prices::near_tree, nearer, kFoot));
  only_when([mixed](const Plan& p) { return mixed(p) && p.units == UnitSystem::us; });
  number(tr("Trees count within"), Quantity::length,
         price(&Prices::tree_distance, tr("Distance from trees")));
  only_when(mixed);
}

void LoopPanel::add_held() {
  section(tr("Held while the rest is arranged"));
  number(
      tr("Groups"), Quantity::count,
      {[](const Plan& p) { return p.wishes.groups; },
       [](Plan& p, double v) { p.wishes.groups = static_cast<int>(std::lround(std::clamp(v, -1e6, 1e6))); },
       tr("Groups")})
      ->edit()
      ->setToolTip(tr("Fields of trenches, each with a header of its own"));
  check(tr("One direction"), {[](const Plan& p) { return p.wishes.direction.has_value(); },
                              [this](Plan& p, bool on) {
                                const Outcome* now = document_.outcome();
                                p.wishes.direction.reset();
                                if (on) p.wishes.direction = now != nullptr ? now->layout.direction : 0.0;
                              },
                              tr("Hold the direction")});
  number(tr("Bearing"), Quantity::angle,
         {[](const Plan& p) { return bearing(p, p.wishes.direction.value_or(0)); },
          [](Plan& p, double v) { p.wishes.direction = p.site.north - v; }, tr("Direction of the trenches")});
  only_when([](const Plan& p) { return p.wishes.direction.has_value(); });
  auto* walls = new WallList(document_);
  row(tr("No trench beyond"), walls);
  on_refresh([walls] { walls->refresh(); });
  add_releases();
}

void LoopPanel::add_releases() {
  auto* all = new QPushButton(tr("Release all that is locked"));
  auto* afresh = new QPushButton(tr("Arrange afresh"));
  afresh->setToolTip(tr("Forgets where the trenches lay: of equal arrangements the first is taken"));
  connect(all, &QPushButton::clicked, this, [this] {
    Plan plan = document_.committed();
    plan.wishes.locked.clear();
    plan.wishes.header_on.reset();
    plan.wishes.group_headers.clear();
    plan.wishes.run_by.clear();
    document_.commit(std::move(plan), tr("Release all"));
  });
  connect(afresh, &QPushButton::clicked, this, [this] {
    Plan plan = document_.committed();
    forget_shown(plan.wishes);
    document_.commit(std::move(plan), tr("Arrange afresh"));
  });
  note([](const Plan& p) {
    const auto n = static_cast<int>(p.wishes.locked.size());
    const QString held =
        n == 0   ? tr("No trench is locked. Drag one on the drawing, or press K on it, and it stays.")
        : n == 1 ? tr("1 trench locked.")
                 : tr("%1 trenches locked.").arg(n);
    const bool line_held = p.wishes.header_on || !p.wishes.group_headers.empty();
    QStringList sentences{held};
    if (line_held) sentences << tr("The header's line is held.");
    if (!p.wishes.run_by.empty()) sentences << tr("The run is led.");
    return sentences.join(' ');
  });
  wide(all);
  only_when([](const Plan& p) {
    const Wishes& w = p.wishes;
    return !w.locked.empty() || w.header_on || !w.group_headers.empty() || !w.run_by.empty();
  });
  wide(afresh);
  only_when([](const Plan& p) { return !p.wishes.kept.empty() || !p.wishes.kept_run.empty(); });
}

void LoopPanel::add_prices() {
  section(tr("Prices"));
  text(tr("Currency"),
       {[](const Plan& p) { return QString::fromStdString(p.wishes.prices.currency); },
        [](Plan& p, const QString& t) { p.wishes.prices.currency = t.trimmed().toStdString(); },
        tr("Currency")});
  money(tr("Digging, per m³"), tr("Digging, per yd³"), kYard * kYard * kYard, &Prices::digging);
  money(tr("Crossing dug by hand"), {}, 1, &Prices::hand_crossing);
  money(tr("Pavement, per m²"), tr("Pavement, per ft²"), kFoot * kFoot, &Prices::pavement);
  money(tr("Lawn, per m²"), tr("Lawn, per ft²"), kFoot * kFoot, &Prices::lawn);
  money(tr("Bedding, per m³"), tr("Bedding, per yd³"), kYard * kYard * kYard, &Prices::bedding);
  money(tr("Coil pipe, per m"), tr("Coil pipe, per ft"), kFoot, &Prices::coil_pipe);
  money(tr("Header pipe, per m"), tr("Header pipe, per ft"), kFoot, &Prices::header_pipe);
  money(tr("Fused joint"), {}, 1, &Prices::joint);
  money(tr("Crew and machine, a day"), {}, 1, &Prices::crew_day);
  note([](const Plan&) { return tr("Round figures of our own to begin with, no source: enter yours."); });
}

// One price in the plan's own measure; without `us` it is the same in both.
void LoopPanel::money(const QString& metric, const QString& us, double per_us, double Prices::*which) {
  number(metric, Quantity::money, price(which, metric));
  if (us.isEmpty()) return;
  only_when([](const Plan& p) { return p.units == UnitSystem::metric; });
  number(us, Quantity::money, price(which, us, per_us));
  only_when([](const Plan& p) { return p.units == UnitSystem::us; });
}

}  // namespace underlawn
