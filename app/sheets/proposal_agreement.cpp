// SPDX-License-Identifier: GPL-3.0-or-later
// The last page: what may go wrong, what can change the price, who answers; where it is signed.
#include <QRegularExpression>

#include "language/language.h"
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
  if (const QString payment = term(plan.proposal.payment); !payment.isEmpty())
    blocks.push_back(std::make_shared<Prose>(
        "", std::vector<Prose::Line>{{"", QObject::tr("Payment:"), payment}}, page.points));
  if (guarantee.isEmpty()) return;
  QStringList agreed = agreed_words(page);
  const QString validity = term(plan.proposal.validity);
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
