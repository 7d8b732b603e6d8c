// SPDX-License-Identifier: GPL-3.0-or-later
// From stake to stake; and the longest of all tapes that a sheet asks for.
#include <QHash>
#include <algorithm>
#include <cmath>

#include "plan/tape.h"
#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/crew_needs.h"
#include "sheets/stake_words.h"

namespace underlawn::sheet {

namespace {

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

BlockPtr between_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return nullptr;
  return std::make_shared<Table>(
      QObject::tr("BETWEEN STAKES"),
      std::vector<Column>{{QObject::tr("Straight from stake to stake"), Align::left, true},
                          {QObject::tr("Tape"), Align::right}},
      Between(plan, outcome).rows(), 10,
      QObject::tr(
          "Measured level. A difference of more than %1: stake again. The second pair of corners agrees "
          "as closely.")
          .arg(plan.units == UnitSystem::us ? "3 in" : "8 cm"));
}

}  // namespace underlawn::sheet
