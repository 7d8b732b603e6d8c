// SPDX-License-Identifier: GPL-3.0-or-later
// The stakes once more: by a second pair of corners, from a base line, and from one another.
#include <QHash>
#include <cmath>

#include "plan/tape.h"
#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/crew_needs.h"
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
      const QString side = side_word(*second) + (shared ? " †" : "") + marks_.of(stakes_, *second);
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
    QStringList all{QObject::tr("Pull these tapes once the stakes are in: they must meet the same stake.")};
    if (dash_)
      all << QObject::tr(
          "A dash under From: no second pair of corners sees it at 30° or more: tape it from its neighbours "
          "(BETWEEN STAKES).");
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

// A place with a stake, by the name that the sheet has for it.
struct Named {
  QString name;
  Point at;
};

class Between {
 public:
  Between(const Plan& plan, const Outcome& outcome) : plan_(plan), outcome_(outcome) {
    for (const Tie& tie : outcome.stake_out.ties) stakes_.push_back({point_name(tie), tie.at});
    if (plan.site.entry) stakes_.push_back({entry_name(), plan.site.entry->at});
  }

  std::vector<std::vector<Cell>> rows() {
    trenches();
    along(outcome_.layout.run.line);
    for (const Polyline& leg : outcome_.layout.header.legs) along(leg);
    lone_stakes();
    buildings();
    return std::move(rows_);
  }
  // After rows().
  const LongestTape& longest() const { return longest_; }

 private:
  void add(const QString& a, const QString& b, double metres) {
    if (metres < kSameStake || pairs_.contains(a + b) || pairs_.contains(b + a)) return;
    pairs_ << a + b;
    for (const QString& name : {a, b}) ++named_[name];
    if (metres > longest_.metres) longest_ = {metres, a, b};
    rows_.push_back({{QString("%1 – %2").arg(a, b), std::nullopt, true}, {shown_length(plan_, metres)}});
  }

  void trenches() {
    const auto& all = outcome_.layout.trenches;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Trench& t = all[i];
      add(head(t), end(t), distance(t.head, t.end));
      if (i + 1 == all.size()) continue;
      add(head(t), head(all[i + 1]), distance(t.head, all[i + 1].head));
      add(end(t), end(all[i + 1]), distance(t.end, all[i + 1].end));
    }
  }
  static QString head(const Trench& t) { return text_of(say_head(t.number)); }
  static QString end(const Trench& t) { return text_of(say_end(t.number)); }

  // From stake to stake as header and run are dug, crossings among them.
  void along(const Polyline& line) {
    std::vector<std::pair<double, const Named*>> met;
    for (const Named& stake : stakes_)
      if (const auto at = place_on(line, stake.at)) met.emplace_back(*at, &stake);
    std::stable_sort(met.begin(), met.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t i = 1; i < met.size(); ++i)
      add(met[i - 1].second->name, met[i].second->name, distance(met[i - 1].second->at, met[i].second->at));
  }

  // m along the line where it passes the stake.
  static std::optional<double> place_on(const Polyline& line, Point p) {
    double walked = 0;
    for (std::size_t i = 1; i < line.size(); ++i) {
      const Point leg = line[i] - line[i - 1];
      const double long_ = distance(line[i - 1], line[i]);
      const double t = long_ > 0 ? std::clamp(dot(p - line[i - 1], leg) / (long_ * long_), 0.0, 1.0) : 0;
      if (distance(p, line[i - 1] + t * leg) <= 2 * kSameStake) return walked + t * long_;
      walked += long_;
    }
    return std::nullopt;
  }

  // What has neither second pair nor base line is measured from its two nearest neighbours; two tapes at
  // least have all that lack a second pair, or whose first is thin.
  void lone_stakes() {
    const auto base = base_line(plan_.site, outcome_.stake_out);
    for (const Tie& tie : outcome_.stake_out.ties) {
      const auto second = second_tie(plan_.site, outcome_.stake_out, tie);
      const bool sure = second && !shares_corner(tie, *second);
      const bool enough = (second && tie.cut >= kThinCut) || named_[point_name(tie)] > 1;
      if (enough && (sure || (base && offset_is_free(plan_.site, *base, tie.at)))) continue;
      std::vector<Named> near = stakes_;
      std::stable_sort(near.begin(), near.end(), [&](const Named& a, const Named& b) {
        return distance(a.at, tie.at) < distance(b.at, tie.at);
      });
      int taken = 0;
      for (const Named& other : near)
        if (other.name != point_name(tie) && distance(other.at, tie.at) > 1 && taken++ < 2)
          add(point_name(tie), other.name, distance(tie.at, other.at));
    }
  }

  // A building whose place hangs on thin arcs: from its corner to the nearest stake that is not taped from
  // it.
  void buildings() {
    for (const Tie& corner : building_ties(plan_.site, outcome_.stake_out)) {
      if (corner.cut >= kThinCut) continue;
      const QStringList own = corners_beside(corner.point);
      const Tie* nearest = nullptr;
      for (const Tie& stake : outcome_.stake_out.ties) {
        const bool apart = !own.contains(text_of(stake.first)) && !own.contains(text_of(stake.second));
        const bool nearer =
            nearest == nullptr || distance(stake.at, corner.at) < distance(nearest->at, corner.at);
        if (apart && nearer && tape_is_free(tape_ground(plan_.site), corner.at, stake.at)) nearest = &stake;
      }
      if (nearest != nullptr)
        add(point_name(*nearest), text_of(corner.point), distance(nearest->at, corner.at));
    }
  }

  // Tags of the corners of its building.
  QStringList corners_beside(const std::string& tag) const {
    const std::vector<Wall> walls = building_walls(plan_.site, outcome_.stake_out);
    QStringList own;
    for (const Wall& of : walls)
      if (of.line.from.tag == tag)
        for (const Wall& w : walls)
          if (w.house_id == of.house_id) own << text_of(w.line.from.tag);
    return own;
  }

  const Plan& plan_;
  const Outcome& outcome_;
  std::vector<Named> stakes_;
  QStringList pairs_;
  QHash<QString, int> named_;  // how many tapes each has
  LongestTape longest_;
  std::vector<std::vector<Cell>> rows_;
};

}  // namespace

LongestTape longest_tape(const Plan& plan, const Outcome& outcome) {
  const StakeOut& stakes = outcome.stake_out;
  Between between(plan, outcome);
  between.rows();
  LongestTape longest = between.longest();
  const auto pull = [&](double metres, const QString& from, const QString& to) {
    if (metres > longest.metres) longest = {metres, from, to};
  };
  const auto pair = [&](const Tie& tie) {
    pull(tie.first_distance, text_of(tie.first), point_name(tie));
    pull(tie.second_distance, text_of(tie.second), point_name(tie));
  };
  for (const Tie& tie : stakes.ties) {
    pair(tie);
    if (const auto second = second_tie(plan.site, stakes, tie)) pair(*second);
  }
  for (const Tie& tie : building_ties(plan.site, stakes)) pair(tie);
  for (const Wall& w : building_walls(plan.site, stakes))
    pull(distance(w.line.from.at, w.line.to.at), text_of(w.line.from.tag), text_of(w.line.to.tag));
  const auto base = base_line(plan.site, stakes);
  for (const Tie& tie : stakes.ties)
    if (base && offset_is_free(plan.site, *base, tie.at)) {
      const Offset offset = offset_from(*base, tie.at);
      pull(std::abs(offset.along), text_of(base->from.tag),
           QObject::tr("the station of %1", "on the base line").arg(point_name(tie)));
      pull(std::abs(offset.off), QObject::tr("the base line"), point_name(tie));
    }
  return longest;
}

BlockPtr check_table(const Plan& plan, const Outcome& outcome) {
  return outcome.stake_out.ties.empty() ? nullptr : Checks(plan, outcome).table();
}

BlockPtr between_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return nullptr;
  return std::make_shared<Table>(
      QObject::tr("BETWEEN STAKES"),
      std::vector<Column>{{QObject::tr("Straight from stake to stake"), Align::left, true},
                          {QObject::tr("Tape"), Align::right}},
      Between(plan, outcome).rows(), 10,
      QObject::tr("Measured level. A difference of more than 3 in or 8 cm: stake again."));
}

}  // namespace underlawn::sheet
