// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/proposal_blocks.h"

#include <cmath>

#include "sheets/contents.h"
#include "sheets/family_blocks.h"
#include "sheets/family_facts.h"
#include "sheets/ground_cut.h"

namespace underlawn::sheet {

namespace {

QString or_else(const std::string& text, const QString& usual) {
  const QString own = text_of(text).trimmed();
  return own.isEmpty() ? usual : own;
}

// Of the lot as it is drawn, so that pictures have no empty margins: height for a width.
double picture_height(const Plan& plan, double width, double most) {
  const Ring lot = lot_ring(plan.site);
  if (lot.size() < 3) return std::min(0.6 * width, most);
  const Box box = bounds(lot);
  const double aspect = (box.high.y - box.low.y) / std::max(box.high.x - box.low.x, 0.1);
  return std::clamp(width * aspect, 0.35 * width, most);
}

auto picture(const Plan& plan, const Outcome& outcome, LotPicture how) {
  return [plan, outcome, how](QPainter& painter, const QRectF& area) {
    paint_lot_picture(painter, plan, &outcome, area, how);
  };
}

QString days_words(const FamilyFacts& facts) {
  return facts.days == 1 ? QObject::tr("1 day") : QObject::tr("%1 days").arg(facts.days);
}

QString rain_words(const FamilyFacts& facts) {
  return facts.rain_days == 1 ? QObject::tr("the higher figure with a day of rain")
                              : QObject::tr("the higher figure with %1 days of rain").arg(facts.rain_days);
}

}  // namespace

std::vector<BlockPtr> proposal_opening(const Plan& plan, const Outcome& outcome, double width) {
  const FamilyFacts facts = family_facts(plan, outcome);
  std::vector<BlockPtr> blocks;
  const QString owner = text_of(plan.title.owner).trimmed();
  const QString usual = QObject::tr(
      "A few feet under your lawn the ground is warmer than the air in winter and cooler in summer. We would "
      "lay a "
      "long pipe there, fill it with water and a little antifreeze, and let a heat pump in the house draw "
      "its heat "
      "from it. These pages tell what that means for your lot: what is dug and where, how long it takes, "
      "what you "
      "see afterwards, what it costs and saves, and what may go wrong.");
  blocks.push_back(std::make_shared<Prose>(
      "",
      std::vector<Prose::Line>{{"", owner.isEmpty() ? QString() : QObject::tr("For %1").arg(owner),
                                or_else(plan.proposal.opening, usual)}},
      12));
  LotPicture how;
  how.moment = LotMoment::after;
  how.loop_below = true;
  how.text = pt(9);
  const double high = picture_height(plan, width, pt(330));
  blocks.push_back(std::make_shared<Pictures>(
      std::vector<Pictures::Picture>{{"",
                                      facts.laid
                                          ? QObject::tr("Your lot afterwards. The dashed lines are what lies "
                                                        "under the grass; nobody will see it.")
                                          : QObject::tr("Your lot."),
                                      picture(plan, outcome, how)}},
      high));
  if (!facts.laid) {
    blocks.push_back(std::make_shared<Prose>(
        QObject::tr("Not laid out yet"),
        std::vector<Prose::Line>{
            {"", "",
             QObject::tr("The loop does not fit the lot as drawn, so there is nothing to propose yet.")}}));
    return blocks;
  }
  std::vector<Tiles::Tile> tiles{
      {QString::number(outcome.layout.trenches.size()),
       outcome.layout.trenches.size() == 1 ? QObject::tr("trench in the lawn, %1 deep")
                                                 .arg(family_length(plan, outcome.layout.trenches[0].depth))
                                           : QObject::tr("trenches in the lawn, %1 deep")
                                                 .arg(family_length(plan, outcome.layout.trenches[0].depth))},
      {days_words(facts), QObject::tr("of work on your lot, from the first bucket to the sown lawn")},
      {money_range(plan, facts.price, facts.price_high),
       facts.whole_price ? QObject::tr("in all, with what weather may add")
                         : QObject::tr("for the ground loop, with what weather may add")}};
  if (facts.electricity > 0)
    tiles.push_back({money_range(plan, facts.bill_low, facts.bill_high),
                     QObject::tr("of electricity a year to heat and cool the house")});
  blocks.push_back(std::make_shared<Tiles>(std::move(tiles)));
  return blocks;
}

std::vector<BlockPtr> proposal_lot(const Plan& plan, const Outcome& outcome, double width) {
  std::vector<BlockPtr> blocks;
  LotPicture before, digging, after;
  before.text = digging.text = after.text = pt(6.6);
  digging.moment = LotMoment::digging;
  digging.names = false;
  after.moment = LotMoment::after;
  const double one = (width - pt(24)) / 3,
               high = picture_height(plan, one, pt(185));  // what is told below is on the same page
  blocks.push_back(std::make_shared<Pictures>(
      std::vector<Pictures::Picture>{
          {QObject::tr("Before"), QObject::tr("Your lot as it is."), picture(plan, outcome, before)},
          {QObject::tr("While we dig"),
           QObject::tr("Trenches open, the earth beside them, ground walked and driven on. At no time is "
                       "more open than "
                       "must be."),
           picture(plan, outcome, digging)},
          {QObject::tr("After"), QObject::tr("Grass again. Nothing of it is to be seen."),
           picture(plan, outcome, after)}},
      high));
  blocks.push_back(std::make_shared<Prose>(QObject::tr("What is dug"),
                                           std::vector<Prose::Line>{{"", "", dug_words(plan, outcome)}}));
  std::vector<Prose::Line> days;
  std::vector<WorkDay> all = work_days(plan, outcome);
  // Days that are like the one before are told together.
  for (std::size_t i = 0; i < all.size();) {
    std::size_t j = i;
    while (j + 1 < all.size() && all[j + 1].sentence == all[i].sentence) ++j;
    const QString name =
        i == j ? QObject::tr("Day %1").arg(i + 1) : QObject::tr("Days %1 to %2").arg(i + 1).arg(j + 1);
    days.push_back({"", "", name + ": " + all[i].sentence});
    i = j + 1;
  }
  const QString start = text_of(plan.proposal.start).trimmed();
  if (!start.isEmpty()) days.push_back({"", "", QObject::tr("We would begin: %1.").arg(start)});
  blocks.push_back(std::make_shared<Prose>(QObject::tr("How long it takes"), std::move(days), 10.5));
  std::vector<Prose::Line> back;
  for (const QString& words : put_back_words(plan, outcome)) back.push_back({"•", "", words});
  blocks.push_back(std::make_shared<Prose>(QObject::tr("What we put back"), std::move(back), 10.5));
  return blocks;
}

std::vector<BlockPtr> proposal_warmth(const Plan& plan, const Outcome& outcome, double width) {
  std::vector<BlockPtr> blocks;
  const std::vector<Loved> near = loved(plan, outcome);
  if (!near.empty()) {
    std::vector<Amounts::Row> rows;
    for (std::size_t i = 0; i < near.size() && i < 7; ++i)
      rows.push_back({text_of(near[i].name),
                      near[i].kept > 0
                          ? QObject::tr("we keep at least %1 off").arg(family_length(plan, near[i].kept))
                          : "",
                      QObject::tr("%1 away").arg(family_length(plan, near[i].distance))});
    blocks.push_back(std::make_shared<Amounts>(QObject::tr("How near to what you love"), std::move(rows)));
    blocks.push_back(std::make_shared<Prose>(
        "",
        std::vector<Prose::Line>{
            {"", "",
             QObject::tr("Measured from the edge of the nearest trench at its floor; to a tree, "
                         "from the middle of its trunk.")}},
        9.5));
  }
  blocks.push_back(std::make_shared<Prose>(QObject::tr("Warm in winter, cool in summer"),
                                           std::vector<Prose::Line>{{"", "", warmth_words(plan, outcome)}}));
  if (outcome.surroundings)
    blocks.push_back(std::make_shared<Pictures>(
        std::vector<Pictures::Picture>{
            {"",
             QObject::tr("A cut through your ground in the four seasons, without the loop: at the pipe (the "
                         "row of dots) "
                         "it is warmer than the air in winter and cooler in summer."),
             [plan, outcome](QPainter& painter, const QRectF& area) {
               paint_ground_cut(painter, plan, outcome, area, pt(8));
             }}},
        std::min(pt(190), 0.42 * width)));
  return blocks;
}

std::vector<BlockPtr> proposal_agreement(const Plan& plan, const Outcome& outcome) {
  const FamilyFacts facts = family_facts(plan, outcome);
  std::vector<BlockPtr> blocks;
  std::vector<Amounts::Row> rows;
  rows.push_back({facts.whole_price ? QObject::tr("Price in all")
                                    : QObject::tr("The ground loop: digging, pipe, joints, sand, lawn"),
                  facts.rain_days > 0 ? rain_words(facts) : QString(),
                  money_range(plan, facts.price, facts.price_high), true});
  if (facts.incentives > 0)
    rows.push_back({QObject::tr("Incentives, taken off already"), QObject::tr("as far as you receive them"),
                    money(plan, facts.incentives)});
  if (facts.electricity > 0) {
    rows.push_back({QObject::tr("Electricity a year, heating and cooling"),
                    QObject::tr("%1, nine years in ten between %2 and %3")
                        .arg(family_energy(facts.electricity), family_energy(facts.electricity_low),
                             family_energy(facts.electricity_high)),
                    money_range(plan, facts.bill_low, facts.bill_high)});
  }
  for (const OtherWay& other : facts.others)
    rows.push_back(
        {QObject::tr("Saved a year against: %1").arg(other.name),
         other.saved <= 0 ? QObject::tr("it costs more than that way")
         : other.years    ? QObject::tr("the difference in price is back after about %1 years")
                             .arg(*other.years, 0, 'f', 0)
                       : QObject::tr("the difference in price does not come back within the years looked at"),
         money(plan, other.saved)});
  blocks.push_back(std::make_shared<Amounts>(QObject::tr("What it costs and saves"), std::move(rows)));
  blocks.push_back(std::make_shared<Prose>(
      "",
      std::vector<Prose::Line>{
          {"", "",
           QObject::tr(
               "Reckoned from the drawing and from the heat your house is said to need, at today's prices. "
               "The "
               "house's need is known within about a tenth; that is what the ranges hold. Weather and habits "
               "change a single year more than that.")}},
      9.5));
  std::vector<Prose::Line> wrong;
  for (const Risk& risk : risks(plan, outcome)) wrong.push_back({"•", risk.what, risk.answer});
  blocks.push_back(
      std::make_shared<Prose>(QObject::tr("What may go wrong, and who answers"), std::move(wrong), 10.5));
  blocks.push_back(std::make_shared<Prose>(
      QObject::tr("What we answer for"),
      std::vector<Prose::Line>{
          {"", "",
           or_else(
               plan.proposal.guarantee,
               QObject::tr(
                   "To be agreed in writing before you sign: who answers for the pipe, the joints, the lawn "
                   "and what we damage, and for how long. Do not sign while this line stands here."))}},
      10.5));
  if (const QString payment = text_of(plan.proposal.payment).trimmed(); !payment.isEmpty())
    blocks.push_back(
        std::make_shared<Prose>(QObject::tr("Payment"), std::vector<Prose::Line>{{"", "", payment}}, 10.5));
  const QString validity = text_of(plan.proposal.validity).trimmed();
  QString agreed =
      QObject::tr(
          "We agree that the loop is built as these pages and the plan %1 say; the permit and local "
          "codes come first.")
          .arg(text_of(outcome.fingerprint));
  if (!validity.isEmpty()) agreed += " " + QObject::tr("This offer stands for %1.").arg(validity);
  blocks.push_back(std::make_shared<SignHere>(agreed, or_else(plan.title.owner, QObject::tr("Owner")),
                                              or_else(plan.title.designer, QObject::tr("Contractor"))));
  return blocks;
}

}  // namespace underlawn::sheet
