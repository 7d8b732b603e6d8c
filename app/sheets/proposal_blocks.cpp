// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/proposal_blocks.h"

#include <QRegularExpression>
#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "field/straight.h"
#include "language/language.h"
#include "plan/usual_terms.h"
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

constexpr double kLeastPoints = 7;      // only many trenches or long names come below 8.5
constexpr double kPictureColumn = 0.4;  // of the page's width

double height_of(const Blocks& blocks, double width) {
  double sum = 0;
  for (const BlockPtr& block : blocks) sum += block->height(width);
  return sum;
}

// Letters as large as one page takes them, down to what is still read.
template <class Make>
Blocks fitting_page(const ProposalPage& page, const Make& make) {
  for (double points = 10; points > kLeastPoints; points -= 0.25)
    if (Blocks blocks = make(points); height_of(blocks, page.width) <= page.height) return blocks;
  return make(kLeastPoints);
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
      laid
          ? QObject::tr(
                "Your lot afterwards. The striped bands are the loop under the grass, its trenches numbered; "
                "dashed outlines are the septic parts. All lie under the ground.")
          : QObject::tr("Your lot.");
  const bool reserve = std::ranges::any_of(
      page.plan.site.features, [](const Feature& f) { return f.kind == FeatureKind::reserve_field; });
  const QString kept =
      reserve ? " " + QObject::tr("The reserve field is ground kept free for a second drain field.")
              : QString();
  return {"", words + kept, picture(page.plan, page.outcome, how)};
}

// Named with when it is: by the crew's calendar where there is one.
Pictures::Picture digging_picture(const ProposalPage& page) {
  LotPicture how;
  how.moment = LotMoment::digging;
  how.names = false;
  how.text = pt(7.5);
  QString words = QObject::tr("Trenches open, the earth beside them, ground walked and driven on.");
  if (const auto most = most_open(page.outcome)) {
    how.at = most->at;
    words = QObject::tr("The evening of day %1, when most is open. Open: %2.")
                .arg(most->day)
                .arg(open_then(page.outcome, most->at));
    if (const QString filled = filled_then(page.outcome, most->at); !filled.isEmpty())
      words += " " + QObject::tr("Filled back: %1.").arg(filled);
  }
  return {QObject::tr("While we dig"), words, picture(page.plan, page.outcome, how)};
}

Pictures::Picture leaving_picture(const ProposalPage& page) {
  LotPicture how;
  how.moment = LotMoment::closed;
  how.names = false;
  how.text = pt(7.5);
  return {
      QObject::tr("When we leave"),
      QObject::tr("The earth is back; all that was dug, heaped or driven on is sown. Grown over, a season "
                  "later, it looks as before."),
      picture(page.plan, page.outcome, how)};
}

QString date_words(const QDate& day) {
  return locale_spoken().toString(day, QObject::tr("dddd, d MMMM yyyy", "a date"));
}

// When it begins and ends, where a day is named.
void add_dates(std::vector<Prose::Line>& days, const ProposalPage& page) {
  const QString start = term(page.plan.proposal.start);
  if (start.isEmpty()) return;
  const QDate day = QDate::fromString(text_of(page.plan.proposal.start).trimmed(), Qt::ISODate);
  const auto last = last_days(page.plan, page.outcome, day);
  if (!last) {
    days.push_back({"", QObject::tr("We would begin:"), start});
    return;
  }
  QString ends = date_words(last->last) + ".";
  if (last->with_rain > last->last)
    ends = QObject::tr("%1; if it rains as long as we keep days for it, %2.")
               .arg(date_words(last->last), date_words(last->with_rain));
  if (const QString off = days_off(page.plan); !off.isEmpty())
    ends += " " + QObject::tr("No work on: %1.").arg(off);
  days.push_back({"", QObject::tr("We would begin:"),
                  date_words(last->first) + ". " + QObject::tr("Last day: %1").arg(ends)});
}

// Days that are like the one before are told together.
BlockPtr days_block(const ProposalPage& page, double points) {
  std::vector<Prose::Line> days;
  const std::vector<WorkDay> all = work_days(page.outcome);
  for (std::size_t i = 0; i < all.size();) {
    std::size_t j = i;
    while (j + 1 < all.size() && all[j + 1].sentence == all[i].sentence) ++j;
    const QString name =
        i == j ? QObject::tr("Day %1.").arg(i + 1) : QObject::tr("Days %1 to %2.").arg(i + 1).arg(j + 1);
    days.push_back({"", name, all[i].sentence});
    i = j + 1;
  }
  const auto most = most_open(page.outcome);
  const auto trenches = page.outcome.layout.trenches.size();
  if (most && trenches > 1)
    days.push_back({"", QObject::tr("Open at once:"),
                    QObject::tr("never more than %1 of the %2 deep trenches, each in whole or in part.")
                        .arg(most->ever)
                        .arg(trenches)});
  add_dates(days, page);
  return std::make_shared<Prose>(QObject::tr("How long it takes"), std::move(days), points);
}

QString short_distance(const Plan& plan, const std::optional<double>& metres) {
  return !metres ? QString("–") : *metres < 0.05 ? QObject::tr("at it") : family_length(plan, *metres);
}

constexpr std::size_t kNearRows = 12;

// House and trees always, of the rest what is nearest; what is left out is named.
std::vector<Loved> told_near(const ProposalPage& page, QStringList& left_out) {
  const auto always = [&](const Loved& l) {
    const Feature* f = find_feature(page.plan.site, l.feature_id);
    return f != nullptr && (f->kind == FeatureKind::tree || f->kind == FeatureKind::house);
  };
  const std::vector<Loved> all = loved(page.plan, page.outcome);
  auto must = static_cast<std::size_t>(std::ranges::count_if(all, always));
  std::size_t others = kNearRows > must ? kNearRows - must : 0;
  std::vector<Loved> told;
  for (const Loved& l : all) {
    if (always(l))
      told.push_back(l);
    else if (others > 0 && others--)
      told.push_back(l);
    else
      left_out << text_of(l.name);
  }
  return told;
}

BlockPtr near_block(const ProposalPage& page) {
  const Plan& plan = page.plan;
  std::vector<Pairs::Row> rows;
  QStringList left_out;
  for (const Loved& l : told_near(page, left_out)) {
    const WhileDug w = while_dug(plan, page.outcome, l);
    const QString note = l.roots > 0 ? QObject::tr("roots %1").arg(family_length(plan, l.roots)) : QString();
    rows.push_back(
        {text_of(l.name),
         note,
         {short_distance(plan, l.distance), short_distance(plan, w.earth), short_distance(plan, w.machine)}});
  }
  if (rows.empty()) return nullptr;
  QString foot = QObject::tr(
      "Trench: from its edge at the floor; to a tree, to its trunk's middle; to the house, from the deep "
      "ones. Earth: from the heaps, while they lie. Machine: from its ways and the trucks', what it digs "
      "along, "
      "and the pipe laid ready.");
  if (!left_out.isEmpty())
    foot += " " + QObject::tr("Farther off and left out: %1.").arg(left_out.join(", "));
  return std::make_shared<Pairs>(
      QObject::tr("How near to what you love"),
      QStringList{QObject::tr("trench", "how near"), QObject::tr("earth", "how near"),
                  QObject::tr("machine", "how near")},
      std::move(rows), root_words(plan, page.outcome), foot);
}

BlockPtr risks_block(const ProposalPage& page, double points) {
  std::vector<Prose::Line> wrong;
  for (const Risk& risk : risks(page.plan, page.outcome)) wrong.push_back({"•", risk.what, risk.answer});
  return std::make_shared<Prose>(QObject::tr("What may go wrong, and what we do then"), std::move(wrong),
                                 points);
}

// What both sides sign: the price, all that may be added to it, and on whose word. The owners are named as
// such, for the pages' "we" is the contractor.
QStringList agreed_words(const ProposalPage& page) {
  const Plan& plan = page.plan;
  const FamilyFacts facts = family_facts(plan, page.outcome);
  QStringList agreed{
      QObject::tr(
          "Owners and contractor agree that the loop is built for %1 as these %2 pages and the dig plan "
          "%3 of %4, handed over with them, say.")
          .arg(money(plan, facts.price))
          .arg(page.pages)
          .arg(text_of(page.outcome.fingerprint),
               locale_spoken().toString(page.date, QObject::tr("d MMMM yyyy", "a date")))};
  if (facts.at_most > facts.price)
    agreed << (facts.incentives > 0
                   ? QObject::tr("Rain and incentives not received add to it, to %1 at most.")
                   : QObject::tr("Days lost to rain add to it, to %1 at most."))
                  .arg(money(plan, facts.at_most));
  agreed << (facts.sloped_more > 0
                 ? QObject::tr(
                       "Trench sides laid back add %1 more at most, %2 in all, and rock or another wish "
                       "what is told then: each only with the owners' written yes.")
                       .arg(money(plan, facts.sloped_more), money(plan, facts.laid_back_in_all))
                 : QObject::tr(
                       "Rock or another wish adds what is told then, only with the owners' written yes."));
  if (plan.proposal.payment == kUsualPayment)
    agreed << QObject::tr("If the owners say no, the work ends as said under “Payment”.");
  agreed << QObject::tr("Where the permit or local codes ask for more than these pages, they hold.");
  return agreed;
}

// What is agreed, with the lines to sign on; where nobody said who answers for what, nothing to sign.
void add_signature(Blocks& blocks, const ProposalPage& page, double points) {
  const Plan& plan = page.plan;
  const QString guarantee = text_of(plan.proposal.guarantee).trimmed();
  blocks.push_back(prose(
      QObject::tr("What we answer for"),
      or_else(
          plan.proposal.guarantee,
          QObject::tr("To be agreed in writing before you sign: who answers for the pipe, the joints, the "
                      "lawn and what we damage, and for how long. These pages have lines to sign on once "
                      "that is said.")),
      points));
  if (const QString payment = term(plan.proposal.payment); !payment.isEmpty())
    blocks.push_back(std::make_shared<Prose>(
        "", std::vector<Prose::Line>{{"", QObject::tr("Payment:"), payment}}, points));
  if (guarantee.isEmpty()) return;
  QStringList agreed = agreed_words(page);
  const QString validity = term(plan.proposal.validity);
  if (!validity.isEmpty()) agreed << QObject::tr("This offer stands for %1.").arg(validity);
  QStringList owners = owners_of(text_of(plan.title.owner));
  if (owners.isEmpty()) owners << QObject::tr("Owner");
  blocks.push_back(std::make_shared<SignHere>(agreed.join(" "), owners,
                                              or_else(plan.title.designer, QObject::tr("Contractor"))));
}

BlockPtr changes_block(const ProposalPage& page, double points) {
  std::vector<Prose::Line> lines;
  for (const PriceChange& change : price_changes(page.plan, page.outcome))
    lines.push_back({"•", change.lead, change.words});
  return std::make_shared<Prose>(QObject::tr("What can change the price"), std::move(lines), points);
}

Blocks last_page(const ProposalPage& page, double points) {
  Blocks blocks{risks_block(page, points), changes_block(page, points)};
  add_signature(blocks, page, points);
  return blocks;
}

// The pictures of the work under one another, and beside them what happens day by day and what is put back.
Blocks lot_blocks(const ProposalPage& page, double points) {
  std::vector<Prose::Line> back;
  for (const QString& words : put_back_words(page.plan, page.outcome)) back.push_back({"•", "", words});
  Blocks blocks{prose(QObject::tr("What is dug"), dug_words(page.plan, page.outcome), points)};
  const BlockPtr key = std::make_shared<PictureKey>(picture_colours(page.plan, page.outcome));
  const Blocks words{days_block(page, points),
                     std::make_shared<Prose>(QObject::tr("What we put back"), std::move(back), points)};
  const double left = kPictureColumn * page.width,
               room = page.height - height_of(blocks, page.width) - key->height(page.width) - pt(2);
  std::vector<Pictures::Picture> pictures{digging_picture(page), leaving_picture(page)};
  double captions = 0;
  for (const Pictures::Picture& one : pictures) captions += Pictures({one}, 0).height(left);
  const double high = std::min((room - captions) / 2, picture_height(page.plan, left, pt(300)));
  Blocks column;
  for (Pictures::Picture& one : pictures)
    column.push_back(std::make_shared<Pictures>(std::vector{std::move(one)}, std::max(high, pt(90))));
  blocks.push_back(key);
  blocks.push_back(std::make_shared<Beside>(std::move(column), words, left));
  return blocks;
}

// Beside the risks where the last page has room, else before the heat.
bool near_is_last(const ProposalPage& page) {
  const BlockPtr near = near_block(page);
  return near != nullptr &&
         height_of(last_page(page, 10), page.width) + near->height(page.width) < page.height;
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

// As divided from the printed figures, to whole years that hold the range.
QString payback_words(const FamilyFacts& facts, const OtherWay& other) {
  if (!facts.payback_known) return QObject::tr("not reckoned");
  if (!other.payback) return QObject::tr("not at these prices");
  return QObject::tr("%1 to %2 years")
      .arg(std::floor(other.payback->low + 1e-9))
      .arg(std::ceil(other.payback->high - 1e-9));
}

// How the years follow from the figures beside them, and what of a year's cost is upkeep.
QString payback_rule(const Plan& plan, const FamilyFacts& facts) {
  QStringList upkeep{QObject::tr("the loop %1").arg(money(plan, facts.upkeep))};
  for (const OtherWay& other : facts.others) upkeep << other.name + " " + money(plan, other.upkeep);
  QStringList words{QObject::tr("Upkeep in it a year: %1.").arg(upkeep.join(", "))};
  if (facts.payback_known)
    words << QObject::tr(
        "Paid for itself: what the loop costs more to buy, divided by what it saves a year; no "
        "interest, rising prices, days of rain or second machine is in it.");
  return words.join(" ");
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

BlockPtr reckoned(const ProposalPage& page, const FamilyFacts& facts, double points) {
  QStringList words{spread_words()};
  if (compared(facts))
    words << QObject::tr("Today's prices, as entered for you by hand: %1; those of the other ways too.")
                 .arg(fuel_words(page.plan))
          << payback_rule(page.plan, facts);
  else
    words << QObject::tr("At today's price of electricity.");
  if (compared(facts) && !facts.payback_known)
    words << QObject::tr("The heat pump's own price is not in these figures, so no payback is reckoned.");
  return prose("", words.join(" "), points);
}

// The cut gets what is left, where that is enough to read it.
Blocks warmth_blocks(const ProposalPage& page, double points) {
  const FamilyFacts facts = family_facts(page.plan, page.outcome);
  Blocks blocks;
  if (!near_is_last(page))
    if (BlockPtr near = near_block(page)) blocks.push_back(near);
  blocks.push_back(
      prose(QObject::tr("Warm in winter, cool in summer"), warmth_words(page.plan, page.outcome), points));
  const std::size_t place = blocks.size();
  blocks.push_back(price_rows(page, facts));
  if (compared(facts)) blocks.push_back(comparison_rows(page, facts));
  blocks.push_back(reckoned(page, facts, points - 1));
  if (page.outcome.surroundings)
    add_pictures(blocks, place,
                 {{"", ground_cut_words(page.outcome),
                   [plan = page.plan, outcome = page.outcome](QPainter& painter, const QRectF& area) {
                     paint_ground_cut(painter, plan, outcome, area, pt(8));
                   }}},
                 page, pt(84), pt(220));
  return blocks;
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
  return fitting_page(page, [&](double points) { return lot_blocks(page, points); });
}

std::vector<BlockPtr> proposal_warmth(const ProposalPage& page) {
  return fitting_page(page, [&](double points) { return warmth_blocks(page, points); });
}

std::vector<BlockPtr> proposal_agreement(const ProposalPage& page) {
  return fitting_page(page, [&](double points) {
    Blocks blocks;
    if (near_is_last(page)) blocks.push_back(near_block(page));
    for (BlockPtr& block : last_page(page, points)) blocks.push_back(std::move(block));
    return blocks;
  });
}

}  // namespace underlawn::sheet
