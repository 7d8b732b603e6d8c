// SPDX-License-Identifier: GPL-3.0-or-later
// The stakes once more: by a second pair of corners, from a base line, and from one another.
#include <cmath>

#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/tapes.h"

namespace underlawn::sheet {

namespace {

// "12'-3" left": seen when walking from the first corner to the second.
QString off_words(const Plan& plan, double off) {
  const QString text = shown_length(plan, std::abs(off));
  if (std::abs(off) < 0.005) return text;
  return off > 0 ? QObject::tr("%1 L", "left").arg(text) : QObject::tr("%1 R", "right").arg(text);
}

QString along_words(const Plan& plan, double along) {
  return (along < -0.005 ? "−" : "") + shown_length(plan, std::abs(along));
}

std::vector<Cell> check_row(const Plan& plan, const Outcome& outcome, const Tie& tie,
                            const std::optional<BaseLine>& base) {
  std::vector<Cell> row{{point_name(tie), std::nullopt, true}};
  if (const auto second = second_tie(plan.site, outcome.stake_out, tie)) {
    const PrintedTapes tapes = printed_tapes(plan, outcome.stake_out, *second);
    row.insert(row.end(),
               {{text_of(second->first)}, {tapes.first}, {text_of(second->second)}, {tapes.second}});
  } else {
    row.insert(row.end(), {{"–"}, {"–"}, {"–"}, {"–"}});
  }
  if (base) {
    const Offset offset = offset_from(*base, tie.at);
    row.push_back({along_words(plan, offset.along)});
    row.push_back({off_words(plan, offset.off)});
  }
  return row;
}

}  // namespace

BlockPtr check_table(const Plan& plan, const Outcome& outcome) {
  const StakeOut& stakes = outcome.stake_out;
  if (stakes.ties.empty()) return nullptr;
  const auto base = base_line(plan.site, stakes);
  std::vector<Column> columns{{QObject::tr("Stake")},
                              {QObject::tr("From"), Align::centre},
                              {QObject::tr("Tape"), Align::right},
                              {QObject::tr("From"), Align::centre},
                              {QObject::tr("Tape"), Align::right}};
  QString note = QObject::tr(
      "Pull these tapes once the stakes are in: they must meet the same stake. A dash: no second pair of "
      "corners sees it.");
  if (base) {
    const QString line = text_of(base->from.tag) + "–" + text_of(base->to.tag);
    columns.push_back({QObject::tr("Along %1").arg(line), Align::right});
    columns.push_back({QObject::tr("Square off it"), Align::right});
    note +=
        " " + QObject::tr(
                  "Base line: the wall from corner %1 to corner %2, drawn out both ways; along it from %1 "
                  "(− behind %1), then square off it, L or R as seen walking from %1 to %2.")
                  .arg(text_of(base->from.tag), text_of(base->to.tag));
  }
  std::vector<std::vector<Cell>> rows;
  for (const Tie& tie : stakes.ties) rows.push_back(check_row(plan, outcome, tie, base));
  return std::make_shared<Table>(QObject::tr("CHECK EVERY STAKE: SECOND PAIR OF CORNERS, BASE LINE"),
                                 std::move(columns), std::move(rows), 10, note);
}

BlockPtr between_table(const Plan& plan, const Outcome& outcome) {
  const auto& trenches = outcome.layout.trenches;
  if (trenches.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  const auto add = [&](const QString& what, Point a, Point b) {
    rows.push_back({{what, std::nullopt, true}, {shown_length(plan, distance(a, b))}});
  };
  for (std::size_t i = 0; i < trenches.size(); ++i) {
    const Trench& t = trenches[i];
    add(QObject::tr("%1 head – %1 end").arg(t.number), t.head, t.end);
    if (i + 1 == trenches.size()) continue;
    const Trench& next = trenches[i + 1];
    add(QObject::tr("%1 head – %2 head").arg(t.number).arg(next.number), t.head, next.head);
    add(QObject::tr("%1 end – %2 end").arg(t.number).arg(next.number), t.end, next.end);
  }
  return std::make_shared<Table>(
      QObject::tr("BETWEEN STAKES"),
      std::vector<Column>{{QObject::tr("Straight from stake to stake"), Align::left, true},
                          {QObject::tr("Tape"), Align::right}},
      std::move(rows), 10,
      QObject::tr("Measured level. A difference of more than 3 in or 8 cm: stake again."));
}

}  // namespace underlawn::sheet
