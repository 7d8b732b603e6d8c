// SPDX-License-Identifier: GPL-3.0-or-later
// How near the work comes to what people love: trenches, earth and machine.
#include <algorithm>

#include "sheets/contents.h"
#include "sheets/family_tables.h"
#include "sheets/proposal_parts.h"
#include "sheets/while_dug.h"

namespace underlawn::sheet {

namespace {

QString short_distance(const Plan& plan, const std::optional<double>& metres) {
  return !metres ? QString("–") : *metres < 0.05 ? QObject::tr("at it") : family_length(plan, *metres);
}

constexpr std::size_t kNearRows = 12, kNearRowsTight = 6;

// House and trees always, of the rest what is nearest; what is left out is named.
std::vector<Loved> told_near(const ProposalPage& page, QStringList& left_out) {
  const auto always = [&](const Loved& l) {
    const Feature* f = find_feature(page.plan.site, l.feature_id);
    return f != nullptr && (f->kind == FeatureKind::tree || f->kind == FeatureKind::house);
  };
  const std::vector<Loved> all = loved(page.plan, page.outcome);
  auto must = static_cast<std::size_t>(std::ranges::count_if(all, always));
  const std::size_t rows = page.tight ? kNearRowsTight : kNearRows;
  std::size_t others = rows > must ? rows - must : 0;
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

QString crossing_words(const Plan& plan, const Outcome& outcome) {
  return crosses_line_only_at_entry(plan, outcome)
             ? QObject::tr("it crosses the lot line only where it comes in from the street.")
             : QObject::tr("it crosses the lot line where it comes in and elsewhere: ask us where.");
}

BlockPtr near_table(const ProposalPage& page) {
  const Plan& plan = page.plan;
  std::vector<Pairs::Row> rows;
  QStringList left_out, reach;
  for (const Loved& l : told_near(page, left_out)) {
    const WhileDug w = while_dug(plan, page.outcome, l);
    const QString note = l.roots > 0 ? QObject::tr("roots %1").arg(family_length(plan, l.roots)) : QString();
    if (l.roots > 0) reach << text_of(l.name) + " " + family_length(plan, l.roots);
    rows.push_back({text_of(l.name),
                    note,
                    {short_distance(plan, l.distance), short_distance(plan, w.earth),
                     l.feature_id == 0 ? QObject::tr("over it") : short_distance(plan, w.machine)}});
  }
  if (rows.empty()) return nullptr;
  QString foot =
      QObject::tr(
          "Trench: from its edge at the floor, to a tree's trunk; of the house, from the deep ones. "
          "Earth: from the heaps. Machine: its ways, trucks' ways and pipe laid ready;") +
      " " + crossing_words(plan, page.outcome);
  if (!left_out.isEmpty())
    foot += " " + QObject::tr("Farther off and left out: %1.").arg(left_out.join(", "));
  const QStringList roots =
      reach.isEmpty() ? QStringList() : QStringList{QObject::tr("Roots reach: %1.").arg(reach.join(", "))};
  return std::make_shared<Pairs>(
      QObject::tr("How near to what you love"),
      QStringList{QObject::tr("trench", "how near"), QObject::tr("earth", "how near"),
                  QObject::tr("machine", "how near")},
      std::move(rows), roots, foot);
}

// A sentence for each tree and bed that bears something meanwhile.
BlockPtr near_words(const ProposalPage& page, bool headed) {
  const QStringList words = root_words(page.plan, page.outcome);
  if (words.isEmpty()) return nullptr;
  return prose(headed ? QObject::tr("Trees and beds meanwhile") : QString(), words.join(" "), page.points);
}

}  // namespace

Blocks near_blocks(const ProposalPage& page, int number) {
  Blocks blocks;
  if (page.near_table == number) blocks.push_back(near_table(page));
  if (page.near_words == number) blocks.push_back(near_words(page, page.near_table != number));
  std::erase(blocks, nullptr);
  return blocks;
}

}  // namespace underlawn::sheet
