// SPDX-License-Identifier: GPL-3.0-or-later
// What a family is told, sentence by sentence.
#include <algorithm>
#include <cmath>

#include "dig/dig_order.h"
#include "field/straight.h"
#include "flow/hydraulics.h"
#include "plan/clearings.h"
#include "plan/usual_terms.h"
#include "sheets/contents.h"
#include "sheets/family_facts.h"
#include "sheets/ground_at.h"

namespace underlawn {

using sheet::shown;
using sheet::text_of;

namespace {

double value(const Outcome& outcome, const char* key) {
  const Figure* f = outcome.figures.find(key);
  return f != nullptr && std::isfinite(f->value) ? f->value : 0;
}

QString antifreeze_words(Fluid fluid) {
  switch (fluid) {
    case Fluid::water:
      return "";
    case Fluid::propylene_glycol:
      return QObject::tr("propylene glycol, an antifreeze of low toxicity");
    case Fluid::ethanol:
      return QObject::tr("ethanol, an alcohol made undrinkable that burns until it is diluted");
    case Fluid::methanol:
      return QObject::tr("methanol, an antifreeze that is poisonous and burns until it is diluted");
    case Fluid::ethylene_glycol:
      return QObject::tr("ethylene glycol, an antifreeze that is poisonous to people and animals");
  }
  return "";
}

constexpr double kEarthTold = 0.5;  // m3

// Loose, as it lies in a heap.
QString earth_volume(const Plan& plan, double cubic_metres) {
  return plan.units == UnitSystem::metric
             ? QString("%1 m³").arg(family_number(cubic_metres))
             : QObject::tr("%1 cubic yards").arg(family_number(cubic_metres / 0.764554857984));
}

QString coil_sides_words(Sides sides) {
  switch (sides) {
    case Sides::stay_out:
      return QObject::tr("Nobody climbs into the deep trenches: the pipe is let down from above.");
    case Sides::slope:
      return QObject::tr("The sides of the deep trenches are laid back, so that people can go in safely.");
    case Sides::shield:
      return QObject::tr("In the deep trenches people lay the pipe inside a steel shield.");
    case Sides::shoring:
      return QObject::tr("In the deep trenches braces hold the sides while people lay the pipe.");
  }
  return "";
}

QString run_sides_words(Sides sides) {
  switch (sides) {
    case Sides::stay_out:
      return QObject::tr("Nobody climbs into the smaller one either; its pipes are joined beside it.");
    case Sides::slope:
      return QObject::tr("Where pipes are joined in the smaller one, its sides are laid back.");
    case Sides::shield:
      return QObject::tr("In the smaller one people join pipes inside a steel shield.");
    case Sides::shoring:
      return QObject::tr("In the smaller one braces hold the sides while pipes are joined.");
  }
  return "";
}

}  // namespace

QString price_words(const Plan& plan, const FamilyFacts& facts) {
  QStringList words;
  words << (facts.whole_price
                ? QObject::tr("%1 is one price for everything on these pages.").arg(money(plan, facts.price))
                : QObject::tr(
                      "%1 is one price for the ground loop on these pages; the heat pump in the house "
                      "is not in it.")
                      .arg(money(plan, facts.price)));
  if (facts.at_most > facts.price)
    words << (facts.incentives > 0 ? QObject::tr("Rain and incentives can take it to %1 at most.")
                                   : QObject::tr("Rain can take it to %1 at most."))
                 .arg(money(plan, facts.at_most));
  words << QObject::tr(
      "Nothing else is charged without your written yes: see “What can change the price”. With that yes, "
      "rock, water or another wish comes on top, at a price that nobody knows beforehand.");
  if (facts.sloped_more > 0)
    words << QObject::tr(
                 "Trench sides laid back, if the soil asks for them, would make it up to %1, without rock, "
                 "water and wishes.")
                 .arg(money(plan, facts.laid_back_in_all));
  return words.join(" ");
}

namespace {

QString rain_change(const Plan& plan, const FamilyFacts& facts) {
  const QString adds =
      facts.rain_days == 1
          ? QObject::tr("Rain adds %1 if it takes a working day, one day at most.")
                .arg(money(plan, facts.rain))
          : QObject::tr("Rain adds %1 for each working day it takes, %2 days at most: up to %3.")
                .arg(money(plan, facts.rain_day))
                .arg(facts.rain_days)
                .arg(money(plan, facts.rain));
  return adds + " " +
         QObject::tr("A day is taken when rain stops the work on your lot; we tell you the same day.");
}

// What it takes besides money.
QString laid_back_more(const Plan& plan, const FamilyFacts& facts) {
  QStringList more;
  if (facts.laid_back_days > 0)
    more << (facts.laid_back_days == 1 ? QObject::tr("1 more working day")
                                       : QObject::tr("%1 more working days").arg(facts.laid_back_days));
  if (facts.laid_back_lawn > 0)
    more << QObject::tr("about %1 more of lawn").arg(family_area(plan, facts.laid_back_lawn));
  return more.isEmpty() ? QString() : QObject::tr("It takes %1.").arg(more.join(QObject::tr(" and "))) + " ";
}

PriceChange laid_back_change(const Plan& plan, const FamilyFacts& facts) {
  return {
      QObject::tr("Trench sides laid back"),
      QObject::tr("only with your written yes: %1 more at most, %2 in all.")
              .arg(money(plan, facts.sloped_more), money(plan, facts.laid_back_in_all)) +
          " " + laid_back_more(plan, facts) +
          QObject::tr(
              "It is needed where the walls of an open trench do not stand, or people must go in and the "
              "soil is not safe: the competent person on the site judges it, and the inspector may ask for "
              "it. Distances on these pages no longer hold then. A test pit before you sign shows the "
              "soil.")};
}

// Where the payment does not tell.
PriceChange refusal() {
  return {QObject::tr("If you say no,"),
          QObject::tr("the work ends there; what is filled in and paid then is agreed in writing before "
                      "you sign.")};
}

}  // namespace

std::vector<PriceChange> price_changes(const Plan& plan, const FamilyFacts& facts) {
  QStringList added;
  if (facts.rain_days > 0) added << rain_change(plan, facts);
  if (facts.incentives > 0)
    added << QObject::tr(
                 "Incentives of %1 are taken off already; what of them you do not receive is added again.")
                 .arg(money(plan, facts.incentives));
  if (facts.at_most > facts.price)
    added << QObject::tr("With this it is %1 at most.").arg(money(plan, facts.at_most));
  std::vector<PriceChange> all{
      {QObject::tr("The price you sign is %1.").arg(money(plan, facts.price)), added.join(" ")}};
  if (facts.sloped_more > 0) all.push_back(laid_back_change(plan, facts));
  all.push_back(
      {QObject::tr("Rock, water, old rubble or another wish"),
       QObject::tr("only with your written yes. Nobody can bound its price beforehand: we stop, show you "
                   "and tell the price first.")});
  if (!tells_of_no(plan.proposal.payment)) all.push_back(refusal());
  return all;
}

QString spread_words() {
  const Spread s = spread_of_need();
  return QObject::tr(
             "Ranges: what your house needs in a usual year lies nine times in ten between %1% less and %2% "
             "more than reckoned; a cold year or other habits come on top.")
      .arg(qRound(100 * s.less))
      .arg(qRound(100 * s.more));
}

QString pays_back_words() {
  return QObject::tr(
      "Pays back: the difference in price by a year's saving, rounded outward to whole years. Not counted: "
      "interest, rising prices, days lost to rain, a machine bought again.");
}

QString sides_words(const Plan& plan) {
  return coil_sides_words(plan.dig.coil_sides) + " " + run_sides_words(plan.dig.run_sides);
}

// How near it comes is told of each thing (while_dug.h).
QString earth_words(const Plan& plan, const Outcome& outcome) {
  if (!outcome.order) return "";
  QStringList words{QObject::tr("The earth lies beside its trench meanwhile.")};
  if (outcome.order->hauled > 0)
    words << (plan.dig.haul == Haul::none
                  ? QObject::tr("Some of it finds no room there; where that goes is agreed with you first.")
                  : QObject::tr("What finds no room is trucked off and brought back."));
  return words.join(" ");
}

QString fluid_words(const Plan& plan, const Outcome& outcome) {
  const Fluid fluid = plan.flow.fluid;
  if (!outcome.flow)
    return fluid == Fluid::water ? QObject::tr("water")
                                 : QObject::tr("water with %1").arg(antifreeze_words(fluid));
  const QString all = family_volume(plan, outcome.flow->volume);
  if (fluid == Fluid::water) return QObject::tr("%1 of water").arg(all);
  return QObject::tr("water with %1 of %2, %3 of this mixture in all")
      .arg(family_volume(plan, outcome.flow->antifreeze.concentrate), antifreeze_words(fluid), all);
}

QString warmth_words(const Plan& plan, const Outcome& outcome) {
  if (outcome.figures.find("heat.electricity") == nullptr)
    return QObject::tr("How warm the house will be is not worked out yet.");
  const double backup = value(outcome, "heat.backup"), needed = value(outcome, "house.heating");
  QStringList words{
      QObject::tr("Your house needs %1 of heat a year (kilowatt-hours, the unit of your electric "
                  "bill). The ground gives %2 of it; electricity for the heat pump the rest.")
          .arg(family_energy(needed), family_energy(value(outcome, "heat.from_ground")))};
  if (backup <= 0.001 * needed) {
    words << QObject::tr(
                 "It needs no other heater in the coldest hours of the year we reckoned with (%1 outside).")
                 .arg(shown(plan, outcome, "weather.coldest"));
    if (outcome.figures.find("house.outdoor_cold") != nullptr &&
        value(outcome, "weather.coldest") > value(outcome, "house.outdoor_cold") + 0.005)
      words << QObject::tr("A day of %1, which its heat loss was worked out for, is not in that year.")
                   .arg(shown(plan, outcome, "house.outdoor_cold"));
  } else {
    words << QObject::tr("In the coldest hours a back-up heater helps with %1 in a year.")
                 .arg(family_energy(backup));
  }
  if (value(outcome, "heat.to_ground") > 0)
    words << QObject::tr("In summer it cools the house and gives %1 back to the ground.")
                 .arg(family_energy(value(outcome, "heat.to_ground")));
  return words.join(" ");
}

QString dug_words(const Plan& plan, const Outcome& outcome) {
  const auto& trenches = outcome.layout.trenches;
  if (trenches.empty()) return QObject::tr("Nothing is laid out on the lot yet.");
  double longest = 0;
  for (const Trench& t : trenches) longest = std::max(longest, length_of(t));
  const QString length = family_length(plan, longest), width = family_length(plan, trenches.front().width),
                depth = family_length(plan, trenches.front().depth);
  QStringList words;
  words << (trenches.size() == 1
                ? QObject::tr("One trench in the lawn, up to %1 long, %2 wide at the floor and %3 deep.")
                      .arg(length, width, depth)
                : QObject::tr(
                      "%1 trenches in the lawn, each up to %2 long, %3 wide at the floor and %4 deep.")
                      .arg(trenches.size())
                      .arg(length, width, depth));
  words << (is_straight(outcome.coil.pattern) ? QObject::tr("Plastic pipe lies along each.")
                                              : QObject::tr("A coil of plastic pipe lies in each."));
  words << (plan.wishes.run_depth > plan.ground.frost_depth
                ? QObject::tr("A smaller one, %1 wide and %2 deep, below the frost, brings two pipes to the "
                              "house, and in through a hole made in its wall.")
                : QObject::tr("A smaller one, %1 wide and %2 deep, brings two pipes to the house, and in "
                              "through a hole made in its wall."))
               .arg(family_length(plan, plan.wishes.run_width), family_length(plan, plan.wishes.run_depth));
  words << sides_words(plan);
  if (plan.dig.coil_sides == Sides::slope)
    words << QObject::tr("Each trench is %1 wide at the grass while it is open.")
                 .arg(shown(plan, outcome, "dig.top_width"));
  words << earth_words(plan, outcome);
  if (const double used = outcome.work ? outcome.work->torn.lawn : 0; used > 0)
    words << QObject::tr("In all about %1 of lawn are used and sown again.").arg(family_area(plan, used));
  words.removeAll("");
  return words.join(" ");
}

bool trees_answered_for(const Plan& plan) {
  const QString words = text_of(plan.proposal.guarantee);
  const auto named = [&words](const QString& name) {
    return !name.isEmpty() && words.contains(name, Qt::CaseInsensitive);
  };
  return named("tree") || named("árbol") || named("arbol") ||
         std::ranges::any_of(plan.site.features, [&](const Feature& f) {
           return f.kind == FeatureKind::tree && named(text_of(f.name));
         });
}

bool answered_for(const Plan& plan) {
  return !text_of(plan.proposal.guarantee).trimmed().isEmpty();
}

namespace {

// What is left over or missing, as the crew's sheet has it; loose, m3.
QString earth_back_words(const Plan& plan, double over) {
  if (over > kEarthTold)
    return QObject::tr(
               "The earth, in layers, pressed down. About %1 are left over: spread or taken away as we "
               "agree, within the price.")
        .arg(earth_volume(plan, over));
  if (over < -kEarthTold)
    return QObject::tr("The earth, in layers, pressed down; about %1 more are brought, within the price.")
        .arg(earth_volume(plan, -over));
  return QObject::tr("The earth, in layers, pressed down.");
}

}  // namespace

std::vector<QString> put_back_words(const Plan& plan, const Outcome& outcome) {
  std::vector<QString> words;
  words.push_back(earth_back_words(plan, outcome.dig.total.surplus_loose));
  words.push_back(QObject::tr(
      "Topsoil, grass seed and straw: green in some weeks if it is watered, a full lawn after a season."));
  if (value(outcome, "cost.pavement_area") > 0)
    words.push_back(QObject::tr("%1 of paving that we cut is made good.")
                        .arg(shown(plan, outcome, "cost.pavement_area")));
  words.push_back(
      QObject::tr("In the first year the ground over a trench usually settles and wants earth and seed once "
                  "more.") +
      " " +
      (answered_for(plan) ? QObject::tr("Who sees to that: “What we answer for”.")
                          : QObject::tr("Who sees to that is agreed in writing before you sign.")));
  words.push_back(
      QObject::tr("As planned, nothing of the loop is seen above the ground. A warning tape lies over the "
                  "pipe, and you get a drawing of where it is: later park nothing heavy there, plant nothing "
                  "with deep roots, and dig only with the drawing."));
  return words;
}

namespace {

QString leak_answer(const Plan& plan, const Outcome& outcome) {
  QStringList words{
      QObject::tr(
          "Each coil is under pressure while its trench is filled; the whole is tested with water alone "
          "before the last joint is covered: come and see the gauge. In use it holds %1. If it leaks "
          "later its pressure falls: have the gauge looked at once a year.")
          .arg(fluid_words(plan, outcome))};
  for (const Loved& l : loved(plan, outcome)) {
    const Feature* f = find_feature(plan.site, l.feature_id);
    if (f == nullptr || f->kind != FeatureKind::well) continue;
    words
        << QObject::tr("Your well is %1 from the nearest pipe trench.").arg(family_length(plan, l.distance));
    break;
  }
  return words.join(" ");
}

}  // namespace

std::vector<Risk> risks(const Plan& plan, const Outcome& outcome) {
  std::vector<Risk> all;
  all.push_back(
      {QObject::tr("A gas or power line is hit."),
       QObject::tr(
           "We have the lines located before we dig and dig by hand near every mark. Show us what only "
           "you know: sprinklers, lights, a propane line, an old well.")});
  all.push_back(
      {QObject::tr("Rain."),
       QObject::tr(
           "The work takes longer. Nobody goes into or near a trench until it has been looked at again.")});
  all.push_back({QObject::tr("The pipe leaks."), leak_answer(plan, outcome)});
  all.push_back(
      {QObject::tr("Children and pets."),
       QObject::tr("An open trench is deadly to fall into. It is fenced day and night; keep everyone out.")});
  all.push_back(
      {QObject::tr("The house needs more than we were told."),
       QObject::tr(
           "The heat and electricity on these pages rest on the heat loss that we were given, by you or by "
           "whoever worked it out. A tenth more takes about a tenth more electricity.")});
  return all;
}

}  // namespace underlawn
