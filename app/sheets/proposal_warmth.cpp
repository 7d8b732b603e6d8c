// SPDX-License-Identifier: GPL-3.0-or-later
// The third page: the warmth, what it costs and saves.
#include <cmath>

#include "base/say.h"
#include "sheets/contents.h"
#include "sheets/family_tables.h"
#include "sheets/ground_cut.h"
#include "sheets/proposal_parts.h"

namespace underlawn::sheet {

namespace {

// What no words of these pages are smaller than.
constexpr double kSmall = 9.5;
constexpr double kLitresOfGallon = 3.785411784;
const double kCutText = pt(10.6);  // its smallest letters are 0.9 of it
const double kCutLeast = pt(104), kCutTight = pt(72), kCutMost = pt(220);

BlockPtr price_rows(const ProposalPage& page, const FamilyFacts& facts) {
  const Plan& plan = page.plan;
  std::vector<Amounts::Row> rows;
  QStringList notes;
  if (facts.unit > 0) notes << QObject::tr("%1 of it for the heat pump, fitted").arg(money(plan, facts.unit));
  QStringList lines;
  for (const ExtraLine& line : plan.pricing.terms.extras) lines << text_of(translated(line.item));
  if (!lines.isEmpty()) notes << QObject::tr("with: %1").arg(lines.join(", "));
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

// Ways against which the loop is not paid back within the years that are looked at, or may not be.
QStringList never_words(const Plan& plan, const FamilyFacts& facts) {
  const int years = plan.pricing.running.years.value_or(plan.thermal.years);
  QStringList never, perhaps, words;
  for (const OtherWay& other : facts.others)
    if (other.payback && other.payback->high > years)
      (other.payback->low > years ? never : perhaps) << other.name;
  if (!never.isEmpty())
    words << QObject::tr("Compared with %1 the loop does not pay back within %2 years.")
                 .arg(never.join(", "))
                 .arg(years);
  if (!perhaps.isEmpty())
    words << QObject::tr("Compared with %1 it may not pay back within %2 years.")
                 .arg(perhaps.join(", "))
                 .arg(years);
  return words;
}

// How the years follow from the figures beside them, and what of a year's cost is upkeep.
QString payback_rule(const Plan& plan, const FamilyFacts& facts) {
  QStringList upkeep{QObject::tr("the loop %1").arg(money(plan, facts.upkeep))};
  for (const OtherWay& other : facts.others) upkeep << money(plan, other.upkeep);
  QStringList words{QObject::tr("Upkeep in it a year, from the top: %1.").arg(upkeep.join(", "))};
  if (facts.payback_known) words << pays_back_words();
  words << never_words(plan, facts);
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
  return std::make_shared<Compared>(Compared::Row{QObject::tr("Ways to heat and cool this house"),
                                                  QObject::tr("to buy"), QObject::tr("a year, with upkeep"),
                                                  QObject::tr("saved a year"), QObject::tr("pays back in")},
                                    std::move(rows));
}

// What fuels were told to cost.
QString fuel_words(const Plan& plan) {
  QStringList fuels{
      QObject::tr("electricity at %1 a kWh").arg(price_of_unit(plan, plan.pricing.running.electricity))};
  for (const OtherSystem& other : plan.pricing.running.others) {
    if (other.unit == "kWh") continue;
    const bool gallon = other.unit == "gal", litres = gallon && plan.units == UnitSystem::metric;
    const QString unit = litres ? QObject::tr("liter") : gallon ? QObject::tr("gallon") : text_of(other.unit);
    const QString one =
        QObject::tr("%1 at %2 a %3")
            .arg(text_of(translated(other.fuel)),
                 price_of_unit(plan, litres ? other.price / kLitresOfGallon : other.price), unit);
    if (!fuels.contains(one)) fuels << one;
  }
  return fuels.join(", ");
}

BlockPtr reckoned(const ProposalPage& page, const FamilyFacts& facts) {
  QStringList words{spread_words()};
  if (compared(facts))
    words << QObject::tr("All prices are as %1 entered them by %2: %3, and what the other ways cost.")
                 .arg(or_else(page.plan.title.designer, QObject::tr("the contractor")), plain_date(page.date),
                      fuel_words(page.plan))
          << payback_rule(page.plan, facts);
  else
    words << QObject::tr("At today's price of electricity.");
  if (compared(facts) && !facts.payback_known)
    words << QObject::tr("The heat pump's own price is not in these figures, so no payback is reckoned.");
  return prose("", words.join(" "), kSmall);
}

Pictures::Picture ground_picture(const ProposalPage& page) {
  return {"", ground_cut_words(page.outcome),
          [plan = page.plan, outcome = page.outcome](QPainter& painter, const QRectF& area) {
            paint_ground_cut(painter, plan, outcome, area, kCutText);
          }};
}

// Without the cut, which stands at `place`.
Blocks words_and_costs(const ProposalPage& page) {
  const FamilyFacts& facts = page.facts;
  Blocks blocks{prose(QObject::tr("Warm in winter, cool in summer"), warmth_words(page.plan, page.outcome),
                      page.points),
                price_rows(page, facts)};
  if (compared(facts)) blocks.push_back(comparison_rows(page, facts));
  blocks.push_back(reckoned(page, facts));
  return blocks;
}

// Where there is more to tell than room, a cut too low to be read is left out.
bool has_room_for_cut(const ProposalPage& page, const Blocks& others) {
  const double words = Pictures({ground_picture(page)}, 0).height(page.width);
  return !page.tight || page.height - height_of(others, page.width) - words > kCutTight;
}

}  // namespace

// The cut gets what is left.
std::vector<BlockPtr> proposal_warmth(const ProposalPage& page) {
  Blocks blocks = near_blocks(page, 3);
  const std::size_t cut = blocks.size() + 1;
  for (BlockPtr& block : words_and_costs(page)) blocks.push_back(std::move(block));
  if (page.outcome.surroundings && has_room_for_cut(page, blocks))
    add_pictures(blocks, cut, {ground_picture(page)}, page, page.tight ? kCutTight : kCutLeast, kCutMost);
  return blocks;
}

}  // namespace underlawn::sheet
