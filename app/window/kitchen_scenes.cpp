// SPDX-License-Identifier: GPL-3.0-or-later
#include <QObject>
#include <cmath>

#include "base/say.h"
#include "sheets/contents.h"
#include "sheets/ground_cut.h"
#include "sheets/lot_names.h"
#include "sheets/while_dug.h"
#include "window/kitchen_view.h"

namespace underlawn {

namespace {

auto lot(const Plan& plan, const Outcome& outcome, LotPicture how) {
  return [plan, outcome, how](QPainter& painter, const QRectF& area, double text) {
    LotPicture now = how;
    now.text = text;
    paint_named_lot(painter, plan, &outcome, area, now);
  };
}

// With what its colours are.
auto lot_with_key(const Plan& plan, const Outcome& outcome, LotPicture how) {
  return [picture = lot(plan, outcome, how), key = picture_colours(plan, outcome)](
             QPainter& painter, const QRectF& area, double text) {
    const double high = set_picture_key(nullptr, area, key, text);
    picture(painter, area.adjusted(0, 0, 0, -high - 0.4 * text), text);
    set_picture_key(&painter, QRectF(area.left(), area.bottom() - high, area.width(), high), key, text);
  };
}

KitchenScene before(const Plan& plan, const Outcome& outcome) {
  return {
      QObject::tr("Your lot today"),
      {QObject::tr("A little way under this lawn it is warmer than the air in winter and cooler in summer."),
       QObject::tr("We would lay a pipe there and bring that warmth into the house."),
       QObject::tr("It holds %1.").arg(fluid_words(plan, outcome))},
      lot(plan, outcome, {})};
}

std::vector<KitchenScene> digging(const Plan& plan, const Outcome& outcome) {
  std::vector<KitchenScene> scenes;
  for (const WorkDay& day : work_days(outcome)) {
    LotPicture how;
    how.moment = day.moment;
    how.dug = day.dug;
    how.at = day.at;
    scenes.push_back({day.title, {day.sentence}, lot_with_key(plan, outcome, how)});
  }
  if (!scenes.empty()) scenes.front().words << dug_words(plan, outcome);
  return scenes;
}

KitchenScene near(const Plan& plan, const Outcome& outcome) {
  LotPicture how;
  how.moment = LotMoment::after;
  how.loop_below = how.distances = true;
  QStringList words = root_words(plan, outcome);
  const auto most = words.size() + 5;
  for (const Loved& l : loved(plan, outcome)) {
    if (words.size() == most) break;
    words << QObject::tr("%1: the nearest digging is %2 away.")
                 .arg(QString::fromStdString(l.name), family_length(plan, l.distance));
  }
  return {QObject::tr("How near to what you love"), words, lot(plan, outcome, how)};
}

KitchenScene after(const Plan& plan, const Outcome& outcome) {
  LotPicture how;
  how.moment = LotMoment::after;
  return {QObject::tr("Afterwards"),
          {QObject::tr("Grass again, a season after we leave; as planned, the whole loop lies under it."),
           QObject::tr("A drawing tells where the pipe lies, for whoever digs here later.")},
          lot(plan, outcome, how)};
}

KitchenScene ground(const Plan& plan, const Outcome& outcome) {
  return {QObject::tr("Under the grass, through the year"),
          {warmth_words(plan, outcome), ground_cut_words(outcome)},
          [plan, outcome](QPainter& painter, const QRectF& area, double text) {
            paint_ground_cut(painter, plan, outcome, area, text);
          }};
}

constexpr std::size_t kMostWays = 4;  // as many as the proposal compares

// In the proposal's words, of the same figures.
QString pays_back(const FamilyFacts& facts, const OtherWay& other) {
  if (!facts.payback_known) return QObject::tr("not reckoned");
  if (!other.payback) return QObject::tr("not at these prices");
  return QObject::tr("%1 to %2 years")
      .arg(std::floor(other.payback->low + 1e-9))
      .arg(std::ceil(other.payback->high - 1e-9));
}

KitchenScene cost(const Plan& plan, const Outcome& outcome) {
  const FamilyFacts facts = family_facts(plan, outcome);
  KitchenScene scene{
      facts.others.empty() ? QObject::tr("What it costs") : QObject::tr("What it costs and saves"), {}, {}};
  scene.amounts.push_back({money(plan, facts.price), facts.whole_price
                                                         ? QObject::tr("in all: one price")
                                                         : QObject::tr("for the ground loop: one price")});
  if (facts.electricity > 0)
    scene.amounts.push_back({money_range(plan, facts.bill_low, facts.bill_high),
                             QObject::tr("of electricity a year to heat and cool the house")});
  const std::size_t first = scene.amounts.size();
  for (const OtherWay& other : facts.others) {
    if (scene.amounts.size() == first + kMostWays) break;
    scene.amounts.push_back({money_range(plan, other.saves.low, other.saves.high),
                             QObject::tr("saved a year against: %1 (that costs %2 a year, %3 to buy; the "
                                         "loop pays back: %4)")
                                 .arg(other.name, money_range(plan, other.bills.low, other.bills.high),
                                      money(plan, other.first), pays_back(facts, other))});
  }
  for (const PriceChange& change : price_changes(plan, facts))
    scene.words << (change.words.isEmpty() ? change.lead : change.lead + " " + change.words);
  scene.words << spread_words();
  if (facts.payback_known && !facts.others.empty()) scene.words << pays_back_words();
  return scene;
}

// Without a picture: what may go wrong, and who answers.
KitchenScene wrong(const Plan& plan, const Outcome& outcome) {
  KitchenScene scene{QObject::tr("What may go wrong, and what we do then"), {}, {}};
  for (const Risk& risk : risks(plan, outcome)) scene.words << risk.what + " " + risk.answer;
  for (const auto& [name, kept] : {std::pair{QObject::tr("What we answer for"), plan.proposal.guarantee},
                                   std::pair{QObject::tr("Payment:"), plan.proposal.payment}})
    if (const QString said = sheet::text_of(translated(kept)).trimmed(); !said.isEmpty())
      scene.words << (name.endsWith(':') ? name : name + ":") + " " + said;
  return scene;
}

}  // namespace

std::vector<KitchenScene> kitchen_scenes(const Plan& plan, const Outcome& outcome) {
  std::vector<KitchenScene> scenes{before(plan, outcome)};
  if (!outcome.layout.trenches.empty()) {
    for (KitchenScene& day : digging(plan, outcome)) scenes.push_back(std::move(day));
    scenes.push_back(after(plan, outcome));
    if (!loved(plan, outcome).empty()) scenes.push_back(near(plan, outcome));
  } else {
    scenes.front().words = {QObject::tr("Nothing is laid out on it yet.")};
  }
  if (outcome.surroundings) scenes.push_back(ground(plan, outcome));
  if (!outcome.layout.trenches.empty()) {
    scenes.push_back(cost(plan, outcome));
    scenes.push_back(wrong(plan, outcome));
  }
  return scenes;
}

}  // namespace underlawn
