// SPDX-License-Identifier: GPL-3.0-or-later
// The last page: what may go wrong, what can change the price, who answers; where it is signed.
#include <QRegularExpression>
#include <cmath>

#include "plan/usual_terms.h"
#include "sheets/contents.h"
#include "sheets/proposal_parts.h"

namespace underlawn::sheet {

namespace {

BlockPtr risks_block(const ProposalPage& page) {
  std::vector<Prose::Line> wrong;
  for (const Risk& risk : risks(page.plan, page.outcome)) wrong.push_back({"•", risk.what, risk.answer});
  return std::make_shared<Prose>(QObject::tr("What may go wrong, and what we do then"), std::move(wrong),
                                 page.points);
}

// What both sides sign: the price, all that may be added to it, and on whose word. The owners are named as
// such, for the pages' "we" is the contractor.
QStringList agreed_words(const ProposalPage& page) {
  const Plan& plan = page.plan;
  const FamilyFacts& facts = page.facts;
  const bool one = owners_of(text_of(plan.title.owner)).size() < 2;
  QStringList agreed{
      QObject::tr(
          "%1 and contractor agree that the loop is built for %2 as described on these %3 pages and in the "
          "dig plan %4 of %5, which is handed over with them.")
          .arg(one ? QObject::tr("Owner") : QObject::tr("Owners"), money(plan, facts.price))
          .arg(page.pages)
          .arg(text_of(page.outcome.fingerprint), plain_date(page.date))};
  if (facts.at_most > facts.price)
    agreed << (facts.incentives > 0
                   ? QObject::tr("Rain and incentives not received add to it, to %1 at most.")
                   : QObject::tr("Days lost to rain add to it, to %1 at most."))
                  .arg(money(plan, facts.at_most));
  if (facts.sloped_more > 0)
    agreed << QObject::tr("Trench sides laid back add %1 more at most, %2 in all.")
                  .arg(money(plan, facts.sloped_more), money(plan, facts.laid_back_in_all));
  agreed << QObject::tr("Rock, water or another wish adds the price named then.")
         << (facts.sloped_more > 0 ? QObject::tr("Each of these needs a written yes from %1 beforehand.")
                                   : QObject::tr("It needs a written yes from %1 beforehand."))
                .arg(one ? QObject::tr("the owner") : QObject::tr("the owners"));
  if (tells_of_no(plan.proposal.payment))
    agreed << QObject::tr("After a no the work ends as said under “Payment”.");
  agreed << QObject::tr(
      "Where the permit or local codes ask for more than these pages, the permit and the codes come first.");
  return agreed;
}

// Of three equal parts, the last with what dividing leaves.
QString payment_words(const ProposalPage& page) {
  const QString payment = term(page.plan.proposal.payment);
  if (payment.isEmpty() || !is_by_thirds(page.plan.proposal.payment)) return payment;
  const double third = std::floor(page.facts.price / 3);
  return payment + " " +
         QObject::tr("Of the price signed a third is %1, the rest %2.")
             .arg(money(page.plan, third), money(page.plan, page.facts.price - 2 * third));
}

// "60 days, until December 31, 2026"; as typed where it is no number of days.
QString validity_words(const ProposalPage& page) {
  const QString validity = term(page.plan.proposal.validity);
  static const QRegularExpression days("^(\\d{1,4}) (?:days|días)$");
  const auto match = days.match(validity);
  if (!match.hasMatch() || !page.date.isValid()) return validity;
  return QObject::tr("%1, until %2").arg(validity, plain_date(page.date.addDays(match.captured(1).toInt())));
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
      page.points));
  if (const QString payment = payment_words(page); !payment.isEmpty())
    blocks.push_back(std::make_shared<Prose>(
        "", std::vector<Prose::Line>{{"", QObject::tr("Payment:"), payment}}, page.points));
  if (guarantee.isEmpty()) return;
  QStringList agreed = agreed_words(page);
  const QString validity = validity_words(page);
  if (!validity.isEmpty()) agreed << QObject::tr("This offer stands for %1.").arg(validity);
  QStringList owners = owners_of(text_of(plan.title.owner));
  if (owners.isEmpty()) owners << QObject::tr("Owner");
  blocks.push_back(std::make_shared<SignHere>(
      agreed.join(" "), owners, or_else(plan.title.designer, QObject::tr("Contractor")), page.points));
}

BlockPtr changes_block(const ProposalPage& page) {
  std::vector<Prose::Line> lines;
  for (const PriceChange& change : price_changes(page.plan, page.facts))
    lines.push_back({"•", change.lead, change.words});
  return std::make_shared<Prose>(QObject::tr("What can change the price"), std::move(lines), page.points);
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

std::vector<BlockPtr> proposal_agreement(const ProposalPage& page) {
  Blocks blocks = near_blocks(page, 4);
  blocks.push_back(risks_block(page));
  blocks.push_back(changes_block(page));
  add_signature(blocks, page);
  return blocks;
}

}  // namespace underlawn::sheet
