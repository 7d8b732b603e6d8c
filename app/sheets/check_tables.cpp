// SPDX-License-Identifier: GPL-3.0-or-later
// The stakes once more: by a second pair of corners and from a base line.
#include <cmath>

#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/stake_words.h"
#include "sheets/tapes.h"

namespace underlawn::sheet {

namespace {

// Seen when walking from the first corner to the second.
QString off_words(const Plan& plan, double off) {
  const QString text = shown_length(plan, std::abs(off));
  if (std::abs(off) < 0.005) return text;
  return off > 0 ? QObject::tr("%1 L", "left").arg(text) : QObject::tr("%1 R", "right").arg(text);
}

// In words: a minus is lost when a sheet is copied.
QString along_words(const Plan& plan, const BaseLine& base, double along) {
  const QString text = shown_length(plan, std::abs(along));
  return along < -0.005 ? QObject::tr("%1 behind %2").arg(text, text_of(base.from.tag)) : text;
}

class Checks {
 public:
  Checks(const Plan& plan, const Outcome& outcome)
      : plan_(plan), stakes_(outcome.stake_out), base_(base_line(plan.site, stakes_)), marks_(plan.site) {}

  BlockPtr table() {
    for (const Tie& tie : stakes_.ties) rows_.push_back(row(tie));
    return std::make_shared<Table>(QObject::tr("CHECK EVERY STAKE: SECOND PAIR OF CORNERS, BASE LINE"),
                                   columns(), std::move(rows_), 10, note());
  }

 private:
  std::vector<Cell> row(const Tie& tie) {
    std::vector<Cell> cells{{point_name(tie), std::nullopt, true}};
    if (const auto second = second_tie(plan_.site, stakes_, tie)) {
      const PrintedTapes tapes = printed_tapes(plan_, stakes_, *second);
      const bool shared = shares_corner(tie, *second);
      shared_ = shared_ || shared;
      const QString side = side_word(*second) + (shared ? " †" : "") + marks_.of_check(stakes_, *second);
      cells.insert(
          cells.end(),
          {{text_of(second->first)}, {tapes.first}, {text_of(second->second)}, {tapes.second}, {side}});
    } else {
      dash_ = true;
      cells.insert(cells.end(), 5, Cell{"–"});
    }
    if (base_) add_offset(cells, tie);
    return cells;
  }

  void add_offset(std::vector<Cell>& cells, const Tie& tie) {
    if (!offset_is_free(plan_.site, *base_, tie.at)) {
      no_square_ = true;
      cells.insert(cells.end(), 2, Cell{"–"});
      return;
    }
    const Offset offset = offset_from(*base_, tie.at);
    cells.push_back({along_words(plan_, *base_, offset.along)});
    cells.push_back({off_words(plan_, offset.off)});
  }

  std::vector<Column> columns() const {
    std::vector<Column> all = tape_columns();
    if (!base_) return all;
    const QString line = text_of(base_->from.tag) + "–" + text_of(base_->to.tag);
    all.push_back({QObject::tr("Along %1").arg(line), Align::right});
    all.push_back({QObject::tr("Square off it"), Align::right});
    return all;
  }

  QString note() const {
    QStringList all{QObject::tr(
        "Pull these tapes once the stakes are in: they must meet the same stake. What a tape of the "
        "first pair is wrong by shows here by half or more.")};
    if (dash_)
      all << QObject::tr(
          "A dash under From: no second pair of corners sees it well enough to show a wrong tape: tape it "
          "from "
          "its neighbours (BETWEEN STAKES).");
    if (shared_)
      all << QObject::tr("† No pair of two other corners is as good: one corner is of the first pair again.");
    all << marks_.notes();
    if (base_)
      all << QObject::tr(
                 "Base line: the wall from corner %1 to corner %2, drawn out both ways; along it from %1, "
                 "then "
                 "square off it, L or R as seen walking from %1 to %2.")
                 .arg(text_of(base_->from.tag), text_of(base_->to.tag));
    if (no_square_)
      all << QObject::tr(
          "A dash under Along: a building, a trunk, trees or beds or the neighbour's land are in the way.");
    return all.join(" ");
  }

  const Plan& plan_;
  const StakeOut& stakes_;
  std::optional<BaseLine> base_;
  TapeMarks marks_;
  std::vector<std::vector<Cell>> rows_;
  bool shared_ = false, dash_ = false, no_square_ = false;
};

}  // namespace

BlockPtr check_table(const Plan& plan, const Outcome& outcome) {
  return outcome.stake_out.ties.empty() ? nullptr : Checks(plan, outcome).table();
}

}  // namespace underlawn::sheet
