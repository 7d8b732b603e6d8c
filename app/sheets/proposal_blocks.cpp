// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/proposal_blocks.h"

#include <QRegularExpression>
#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "field/straight.h"
#include "language/language.h"
#include "sheets/contents.h"
#include "sheets/family_blocks.h"
#include "sheets/family_facts.h"
#include "sheets/family_tables.h"
#include "sheets/ground_cut.h"
#include "sheets/while_dug.h"

namespace underlawn::sheet {

namespace {

// As it was typed; a usual term or a day in the language of the sheet.
QString term(const std::string& kept) {
  const QString text = text_of(kept).trimmed();
  if (const QDate day = QDate::fromString(text, Qt::ISODate); day.isValid())
    return locale_spoken().toString(day, QObject::tr("dddd, d MMMM yyyy", "a date"));
  return text_of(translated(text.toStdString()));
}

QString or_else(const std::string& text, const QString& usual) {
  const QString own = term(text);
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

using Blocks = std::vector<BlockPtr>;

double height_of(const Blocks& blocks, double width) {
  double sum = 0;
  for (const BlockPtr& block : blocks) sum += block->height(width);
  return sum;
}

BlockPtr prose(const QString& heading, const QString& text, double points = 10.5) {
  return std::make_shared<Prose>(heading, std::vector<Prose::Line>{{"", "", text}}, points);
}

// Puts the pictures at their place, as high as the page has room for, between `least` and `most`.
void add_pictures(Blocks& blocks, std::size_t place, std::vector<Pictures::Picture> pictures,
                  const ProposalPage& page, double least, double most) {
  const double words = Pictures(pictures, 0).height(page.width);
  const double left = page.height - height_of(blocks, page.width) - words - pt(2);
  blocks.insert(
      blocks.begin() + static_cast<std::ptrdiff_t>(place),
      std::make_shared<Pictures>(std::move(pictures), std::clamp(left, least, std::max(least, most))));
}

// Whether something is put beside the loop's costs, so that the pages may speak of saving.
bool compared(const FamilyFacts& facts) {
  return !facts.others.empty();
}

QString usual_opening(const ProposalPage& page, const FamilyFacts& facts) {
  const QString fluid = page.plan.flow.fluid == Fluid::water ? QObject::tr("with water")
                                                             : QObject::tr("with water and an antifreeze");
  const QString loop =
      is_straight(page.plan.wishes.pattern)
          ? QObject::tr(
                "We would lay a long plastic pipe there (the loop), fill it %1, and let a heat pump in "
                "the house draw its heat from it.")
                .arg(fluid)
          : QObject::tr(
                "We would lay a long plastic pipe there, wound into coils like a spring pressed flat "
                "(all of it together is the loop), fill it %1, and let a heat pump in the house draw "
                "its heat from it.")
                .arg(fluid);
  const QString pages =
      compared(facts)
          ? QObject::tr(
                "These pages tell what is dug and where, how long it takes, what you see afterwards, "
                "what it costs and saves, and what may go wrong.")
          : QObject::tr(
                "These pages tell what is dug and where, how long it takes, what you see afterwards, "
                "what it costs, and what may go wrong.");
  return QStringList{
      QObject::tr("A little way under your lawn the ground is warmer than the air in winter and "
                  "cooler in summer."),
      loop, pages}
      .join(" ");
}

BlockPtr opening_words(const ProposalPage& page, const FamilyFacts& facts) {
  std::vector<Prose::Line> lines;
  const QString owner = text_of(page.plan.title.owner).trimmed();
  if (!owner.isEmpty()) lines.push_back({"", QObject::tr("For %1").arg(owner), ""});
  lines.push_back({"", "", or_else(page.plan.proposal.opening, usual_opening(page, facts))});
  return std::make_shared<Prose>("", std::move(lines), 11.5);
}

BlockPtr tiles(const ProposalPage& page, const FamilyFacts& facts) {
  const auto& trenches = page.outcome.layout.trenches;
  const QString depth = family_length(page.plan, trenches[0].depth);
  std::vector<Tiles::Tile> all{
      {QString::number(trenches.size()), trenches.size() == 1
                                             ? QObject::tr("trench in the lawn, %1 deep").arg(depth)
                                             : QObject::tr("trenches in the lawn, %1 deep").arg(depth)},
      {days_words(facts), QObject::tr("of work on your lot, from the first digging to the sown lawn")},
      {money(page.plan, facts.price),
       facts.whole_price ? QObject::tr("in all: one price") : QObject::tr("for the ground loop: one price")}};
  if (facts.electricity > 0)
    all.push_back({money_range(page.plan, facts.bill_low, facts.bill_high),
                   QObject::tr("of electricity a year to heat and cool the house")});
  return std::make_shared<Tiles>(std::move(all));
}

Pictures::Picture loop_picture(const ProposalPage& page, bool laid) {
  LotPicture how;
  how.moment = LotMoment::after;
  how.loop_below = how.frame = true;
  how.text = pt(9.5);
  const QString words =
      laid ? QObject::tr(
                 "Your lot afterwards. The striped bands are the loop under the grass; dashed outlines are "
                 "the septic parts. Both lie under the ground.")
           : QObject::tr("Your lot.");
  return {"", words, picture(page.plan, page.outcome, how)};
}

// Named with when it is: by the crew's calendar where there is one.
Pictures::Picture digging_picture(const ProposalPage& page, int days) {
  LotPicture how;
  how.moment = LotMoment::digging;
  how.names = false;
  how.text = pt(6.6);
  QString words = QObject::tr("Trenches open, the earth beside them, ground walked and driven on.");
  const auto most = most_open(page.outcome);
  const auto all = static_cast<int>(page.outcome.layout.trenches.size());
  if (most) {
    how.at = most->at;
    words = most->trenches < all
                ? QObject::tr(
                      "Day %1 of %2, when most is open: %3 of the %4 deep trenches. The others are not "
                      "begun or already filled.")
                      .arg(most->day)
                      .arg(days)
                      .arg(most->trenches)
                      .arg(all)
                : QObject::tr("Day %1 of %2, when most is open: all of the deep trenches (%3).")
                      .arg(most->day)
                      .arg(days)
                      .arg(all);
  }
  return {QObject::tr("While we dig"), words, picture(page.plan, page.outcome, how)};
}

std::vector<Pictures::Picture> three_pictures(const ProposalPage& page, int days) {
  LotPicture before, leaving;
  before.names = leaving.names = false;
  before.text = leaving.text = pt(6.6);
  leaving.moment = LotMoment::closed;
  return {{QObject::tr("Before"),
           QObject::tr("Your lot as it is, and as it is again when the grass has grown: a "
                       "season later."),
           picture(page.plan, page.outcome, before)},
          digging_picture(page, days),
          {QObject::tr("When we leave"), QObject::tr("The earth is back, sown with grass and under straw."),
           picture(page.plan, page.outcome, leaving)}};
}

// Days that are like the one before are told together.
BlockPtr days_block(const ProposalPage& page) {
  std::vector<Prose::Line> days;
  const std::vector<WorkDay> all = work_days(page.plan, page.outcome);
  for (std::size_t i = 0; i < all.size();) {
    std::size_t j = i;
    while (j + 1 < all.size() && all[j + 1].sentence == all[i].sentence) ++j;
    const QString name =
        i == j ? QObject::tr("Day %1:").arg(i + 1) : QObject::tr("Days %1 to %2:").arg(i + 1).arg(j + 1);
    days.push_back({"", name, all[i].sentence});
    i = j + 1;
  }
  const QString start = term(page.plan.proposal.start);
  if (!start.isEmpty()) days.push_back({"", QObject::tr("We would begin:"), start});
  return std::make_shared<Prose>(QObject::tr("How long it takes"), std::move(days), 10);
}

QString short_distance(const Plan& plan, const std::optional<double>& metres) {
  return !metres ? QString("–") : *metres < 0.05 ? QObject::tr("at it") : family_length(plan, *metres);
}

BlockPtr near_block(const ProposalPage& page) {
  const Plan& plan = page.plan;
  std::vector<Pairs::Row> rows;
  for (const Loved& l : loved(plan, page.outcome)) {
    if (rows.size() == 10) break;
    const WhileDug w = while_dug(plan, page.outcome, l);
    const QString note = l.roots > 0 ? QObject::tr("roots %1").arg(family_length(plan, l.roots)) : QString();
    rows.push_back(
        {text_of(l.name),
         note,
         {short_distance(plan, l.distance), short_distance(plan, w.earth), short_distance(plan, w.machine)}});
  }
  if (rows.empty()) return nullptr;
  return std::make_shared<Pairs>(
      QObject::tr("How near to what you love"),
      QStringList{QObject::tr("trench", "how near"), QObject::tr("earth", "how near"),
                  QObject::tr("machine", "how near")},
      std::move(rows), root_words(plan, page.outcome),
      QObject::tr(
          "Trench: from its edge at the floor; to a tree, to its trunk's middle; to the house, from the deep "
          "ones. Earth: from the heaps, while they lie. Machine: from its ways, what it digs along, and the "
          "pipe "
          "laid ready."));
}

BlockPtr risks_block(const ProposalPage& page) {
  std::vector<Prose::Line> wrong;
  for (const Risk& risk : risks(page.plan, page.outcome)) wrong.push_back({"•", risk.what, risk.answer});
  return std::make_shared<Prose>(QObject::tr("What may go wrong, and who answers"), std::move(wrong), 10);
}

// What is agreed, with the lines to sign on; where nobody said who answers for what, nothing to sign.
void add_signature(Blocks& blocks, const ProposalPage& page) {
  const Plan& plan = page.plan;
  const QString guarantee = text_of(plan.proposal.guarantee).trimmed();
  blocks.push_back(prose(
      QObject::tr("What we answer for"),
      or_else(
          plan.proposal.guarantee,
          QObject::tr("To be agreed in writing before you sign: who answers for the pipe, the joints, the "
                      "lawn and what we damage, and for how long. These pages have lines to sign on once "
                      "that is said.")),
      10));
  if (const QString payment = term(plan.proposal.payment); !payment.isEmpty())
    blocks.push_back(
        std::make_shared<Prose>("", std::vector<Prose::Line>{{"", QObject::tr("Payment:"), payment}}, 10));
  if (guarantee.isEmpty()) return;
  const FamilyFacts facts = family_facts(plan, page.outcome);
  QStringList agreed{
      QObject::tr("We agree that the loop is built for %1 as these %2 pages and the plan %3 of %4 say.")
          .arg(money(plan, facts.price))
          .arg(page.pages)
          .arg(text_of(page.outcome.fingerprint),
               locale_spoken().toString(page.date, QObject::tr("d MMMM yyyy", "a date")))};
  if (facts.at_most > facts.price)
    agreed << QObject::tr(
                  "Only what is named under “What can change the price” changes it, and to %1 at most.")
                  .arg(money(plan, facts.at_most));
  agreed << QObject::tr(
      "Nothing more is charged without our written yes; the permit and local codes come first.");
  const QString validity = term(plan.proposal.validity);
  if (!validity.isEmpty()) agreed << QObject::tr("This offer stands for %1.").arg(validity);
  QStringList owners = owners_of(text_of(plan.title.owner));
  if (owners.isEmpty()) owners << QObject::tr("Owner");
  blocks.push_back(std::make_shared<SignHere>(agreed.join(" "), owners,
                                              or_else(plan.title.designer, QObject::tr("Contractor"))));
}

BlockPtr changes_block(const ProposalPage& page) {
  std::vector<Prose::Line> lines;
  for (const PriceChange& change : price_changes(page.plan, page.outcome))
    lines.push_back({"•", change.lead, change.words});
  return std::make_shared<Prose>(QObject::tr("What can change the price"), std::move(lines), 10);
}

Blocks last_page(const ProposalPage& page) {
  Blocks blocks{risks_block(page), changes_block(page)};
  add_signature(blocks, page);
  return blocks;
}

// Beside the risks where the last page has room, else before the heat.
bool near_is_last(const ProposalPage& page) {
  const BlockPtr near = near_block(page);
  return near != nullptr && height_of(last_page(page), page.width) + near->height(page.width) < page.height;
}

// ---- what it costs ----

BlockPtr price_rows(const ProposalPage& page, const FamilyFacts& facts) {
  const Plan& plan = page.plan;
  std::vector<Amounts::Row> rows;
  QStringList notes;
  if (facts.unit > 0)
    notes << QObject::tr("%1 of it for the heat pump and what belongs to it in the house")
                 .arg(money(plan, facts.unit));
  rows.push_back({facts.whole_price ? QObject::tr("Price in all")
                                    : QObject::tr("The ground loop: digging, pipe, joints, sand, lawn"),
                  notes.join("; "), money(plan, facts.price), true});
  if (facts.incentives > 0)
    rows.push_back({QObject::tr("Incentives, taken off already"), QObject::tr("as far as you receive them"),
                    money(plan, facts.incentives)});
  if (facts.electricity > 0)
    rows.push_back({QObject::tr("Electricity a year, heating and cooling"),
                    QObject::tr("%1, nine times in ten between %2 and %3")
                        .arg(family_energy(facts.electricity), family_energy(facts.electricity_low),
                             family_energy(facts.electricity_high)),
                    money_range(plan, facts.bill_low, facts.bill_high)});
  return std::make_shared<Amounts>(
      compared(facts) ? QObject::tr("What it costs and saves") : QObject::tr("What it costs"),
      std::move(rows));
}

QString payback_words(const FamilyFacts& facts, const OtherWay& other) {
  if (!facts.payback_known) return QObject::tr("not reckoned");
  if (!other.payback) return QObject::tr("not in %1 years").arg(facts.years);
  const int soon = static_cast<int>(std::floor(other.payback->low)),
            late = static_cast<int>(std::ceil(other.payback->high));
  return late > facts.years ? QObject::tr("%1 years or more").arg(soon)
                            : QObject::tr("%1 to %2 years").arg(soon).arg(late);
}

BlockPtr comparison_rows(const ProposalPage& page, const FamilyFacts& facts) {
  const Plan& plan = page.plan;
  std::vector<Compared::Row> rows{
      {facts.payback_known ? QObject::tr("The ground loop") : QObject::tr("The ground loop, no heat pump"),
       money(plan, facts.price),
       money_range(plan, facts.bill_low + facts.upkeep, facts.bill_high + facts.upkeep), "", ""}};
  for (const OtherWay& other : facts.others) {
    if (rows.size() == 5) break;
    rows.push_back({other.name, money(plan, other.first),
                    money_range(plan, other.bills.low, other.bills.high),
                    money_range(plan, other.saves.low, other.saves.high), payback_words(facts, other)});
  }
  return std::make_shared<Compared>(
      Compared::Row{QObject::tr("Ways to heat and cool this house"), QObject::tr("to buy"),
                    QObject::tr("a year, with upkeep"), QObject::tr("the loop saves a year"),
                    QObject::tr("has paid for itself after")},
      std::move(rows));
}

// What fuels were told to cost.
QString fuel_words(const Plan& plan) {
  QStringList fuels{
      QObject::tr("electricity at %1 a kWh").arg(price_of_unit(plan, plan.pricing.running.electricity))};
  for (const OtherSystem& other : plan.pricing.running.others) {
    if (other.unit == "kWh") continue;
    const QString one =
        QObject::tr("%1 at %2 a %3")
            .arg(text_of(translated(other.fuel)), price_of_unit(plan, other.price), text_of(other.unit));
    if (!fuels.contains(one)) fuels << one;
  }
  return fuels.join(", ");
}

BlockPtr reckoned(const ProposalPage& page, const FamilyFacts& facts) {
  QStringList words{spread_words()};
  if (compared(facts))
    words << QObject::tr("Today's prices, as entered for you by hand: %1; those of the other ways too.")
                 .arg(fuel_words(page.plan));
  else
    words << QObject::tr("At today's price of electricity.");
  if (compared(facts) && !facts.payback_known)
    words << QObject::tr("The heat pump's own price is not in these figures, so no payback is reckoned.");
  return prose("", words.join(" "), 9);
}

}  // namespace

QStringList owners_of(const QString& owner) {
  static const QRegularExpression between("\\s*(?:,|&|\\band\\b|\\by\\b)\\s*");
  QStringList all = owner.trimmed().split(between, Qt::SkipEmptyParts);
  if (all.isEmpty()) return all;
  // A given name alone has the family name of the last.
  const QStringList last = all.back().split(' ', Qt::SkipEmptyParts);
  for (QString& name : all)
    if (!name.contains(' ') && last.size() == 2) name += " " + last.back();
  return all;
}

std::vector<BlockPtr> proposal_opening(const ProposalPage& page) {
  const FamilyFacts facts = family_facts(page.plan, page.outcome);
  Blocks blocks{opening_words(page, facts)};
  if (facts.laid) {
    blocks.push_back(tiles(page, facts));
    blocks.push_back(std::make_shared<Prose>(
        "", std::vector<Prose::Line>{{"", QObject::tr("The price."), price_words(page.plan, page.outcome)}},
        10.5));
  } else {
    blocks.push_back(
        prose(QObject::tr("Not laid out yet"),
              QObject::tr("The loop does not fit the lot as drawn, so there is nothing to propose yet.")));
  }
  add_pictures(blocks, 1, {loop_picture(page, facts.laid)}, page, pt(180),
               picture_height(page.plan, page.width, pt(340)));
  return blocks;
}

std::vector<BlockPtr> proposal_lot(const ProposalPage& page) {
  const FamilyFacts facts = family_facts(page.plan, page.outcome);
  std::vector<Prose::Line> back;
  for (const QString& words : put_back_words(page.plan, page.outcome)) back.push_back({"•", "", words});
  Blocks blocks{std::make_shared<PictureKey>(picture_colours(page.plan, page.outcome)),
                prose(QObject::tr("What is dug"), dug_words(page.plan, page.outcome), 10), days_block(page),
                std::make_shared<Prose>(QObject::tr("What we put back"), std::move(back), 10)};
  const double one = (page.width - pt(24)) / 3;
  add_pictures(blocks, 0, three_pictures(page, facts.days), page, pt(70),
               picture_height(page.plan, one, pt(230)));
  return blocks;
}

std::vector<BlockPtr> proposal_warmth(const ProposalPage& page) {
  const FamilyFacts facts = family_facts(page.plan, page.outcome);
  Blocks blocks;
  if (!near_is_last(page))
    if (BlockPtr near = near_block(page)) blocks.push_back(near);
  blocks.push_back(
      prose(QObject::tr("Warm in winter, cool in summer"), warmth_words(page.plan, page.outcome), 10));
  const std::size_t place = blocks.size();
  blocks.push_back(price_rows(page, facts));
  if (compared(facts)) blocks.push_back(comparison_rows(page, facts));
  blocks.push_back(reckoned(page, facts));
  if (page.outcome.surroundings)
    add_pictures(blocks, place,
                 {{"", ground_cut_words(page.outcome),
                   [plan = page.plan, outcome = page.outcome](QPainter& painter, const QRectF& area) {
                     paint_ground_cut(painter, plan, outcome, area, pt(8.5));
                   }}},
                 page, pt(60), pt(220));
  return blocks;
}

std::vector<BlockPtr> proposal_agreement(const ProposalPage& page) {
  Blocks blocks;
  if (near_is_last(page)) blocks.push_back(near_block(page));
  for (BlockPtr& block : last_page(page)) blocks.push_back(std::move(block));
  return blocks;
}

}  // namespace underlawn::sheet
