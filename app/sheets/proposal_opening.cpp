// SPDX-License-Identifier: GPL-3.0-or-later
// The first page: what it is, where it lies, how much, how long.
#include <QRegularExpression>
#include <algorithm>

#include "field/straight.h"
#include "sheets/contents.h"
#include "sheets/proposal_parts.h"

namespace underlawn::sheet {

namespace {

constexpr double kTold = 10.5;  // points; this page has room

QString days_words(const FamilyFacts& facts) {
  return facts.days == 1 ? QObject::tr("1 day") : QObject::tr("%1 days").arg(facts.days);
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

// "Ines and Tom Varga", the word between them in the language of the sheet.
QString joined_owners(QString owner) {
  static const QRegularExpression between("\\s+(?:and|y|&)\\s+");
  return owner.replace(between, QObject::tr(" and "));
}

BlockPtr opening_words(const ProposalPage& page, const FamilyFacts& facts) {
  std::vector<Prose::Line> lines;
  const QString owner = text_of(page.plan.title.owner).trimmed();
  if (!owner.isEmpty()) lines.push_back({"", QObject::tr("For %1").arg(joined_owners(owner)), ""});
  lines.push_back({"", "", or_else(page.plan.proposal.opening, usual_opening(page, facts))});
  return std::make_shared<Prose>("", std::move(lines), 11.5);
}

BlockPtr tiles(const ProposalPage& page, const FamilyFacts& facts) {
  const auto& trenches = page.outcome.layout.trenches;
  const QString depth = family_length(page.plan, trenches[0].depth);
  std::vector<Tiles::Tile> all{
      {QString::number(trenches.size()), trenches.size() == 1
                                             ? QObject::tr("trench in the lawn, %1 deep").arg(depth)
                                             : QObject::tr("trenches in the lawn, each %1 deep").arg(depth)},
      {days_words(facts), QObject::tr("of work on your lot, from the first digging to the sown lawn")},
      {money(page.plan, facts.price),
       facts.whole_price ? QObject::tr("in all: one price") : QObject::tr("for the ground loop: one price")}};
  if (facts.electricity > 0)
    all.push_back({money_range(page.plan, facts.bill_low, facts.bill_high),
                   QObject::tr("of electricity a year to heat and cool the house")});
  return std::make_shared<Tiles>(std::move(all));
}

LotPicture loop_look() {
  LotPicture how;
  how.moment = LotMoment::after;
  how.loop_below = how.frame = true;
  how.text = pt(10);
  return how;
}

Pictures::Picture loop_picture(const ProposalPage& page, bool laid) {
  const QString words =
      laid ? QObject::tr(
                 "Your lot afterwards. Striped: the trenches with the loop under the grass, numbered; white: "
                 "the smaller trench. Dashed: the septic parts, under the ground too.")
           : QObject::tr("Your lot.");
  const bool reserve = std::ranges::any_of(
      page.plan.site.features, [](const Feature& f) { return f.kind == FeatureKind::reserve_field; });
  const QString kept =
      reserve ? " " + QObject::tr("The reserve field is ground kept free for a second drain field.")
              : QString();
  return lot_picture(page, "", words + kept, loop_look());
}

}  // namespace

std::vector<BlockPtr> proposal_opening(const ProposalPage& page) {
  const FamilyFacts& facts = page.facts;
  Blocks blocks{opening_words(page, facts)};
  if (facts.laid) {
    blocks.push_back(tiles(page, facts));
    blocks.push_back(std::make_shared<Prose>(
        "",
        std::vector<Prose::Line>{
            {"", QObject::tr("The price."), price_words(page.plan, facts)},
            {"", QObject::tr("The heat pump."),
             QObject::tr("When it is fitted, and how the house is heated until it runs, is agreed with you "
                         "before we begin.")}},
        kTold));
  } else {
    blocks.push_back(prose(
        QObject::tr("Not laid out yet"),
        QObject::tr("The loop does not fit the lot as drawn, so there is nothing to propose yet."), kTold));
  }
  add_pictures(blocks, 1, {loop_picture(page, facts.laid)}, page, pt(180),
               picture_height(page, loop_look(), page.width, pt(390)));
  return blocks;
}

}  // namespace underlawn::sheet
