// SPDX-License-Identifier: GPL-3.0-or-later
// Where the stakes stand, and the frame they are taped from: walls of the buildings, how these stand to one
// another.
#include "base/say.h"
#include "plan/corner_checks.h"
#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/stake_words.h"
#include "sheets/tapes.h"

namespace underlawn::sheet {

std::vector<Column> tape_columns() {
  return {{QObject::tr("Stake"), Align::left}, {QObject::tr("From", "a house corner"), Align::centre},
          {QObject::tr("Tape"), Align::right}, {QObject::tr("From", "a house corner"), Align::centre},
          {QObject::tr("Tape"), Align::right}, {QObject::tr("Side"), Align::left}};
}

QString side_word(const Tie& tie) {
  return tie.left_of_base ? QObject::tr("L", "left") : QObject::tr("R", "right");
}

QString entry_name() {
  return QObject::tr("entry", "a stake");
}

std::string say_head(int trench) {
  return say("{} head", std::to_string(trench));
}

std::string say_end(int trench) {
  return say("{} end", std::to_string(trench));
}

QString TapeMarks::of(const StakeOut& stake_out, const Tie& tie) {
  bool off_lot = false, planted = false;
  for (const HouseCorner& c : stake_out.corners) {
    if (c.tag != tie.first && c.tag != tie.second) continue;
    const TapeWay way = tape_way(ground_, c.at, tie.at);
    off_lot = off_lot || !way.on_lot;
    planted = planted || !way.off_planted;
    for (const Feature& f : site_.features)
      if (!way.off_planted && f.kind == FeatureKind::no_dig && !tape_is_free({f.points}, c.at, tie.at))
        planted_ << text_of(display_name(f));
  }
  const bool thin = tie.cut > 0 && tie.cut < kThinCut;
  off_lot_ = off_lot_ || off_lot;
  thin_ = thin_ || thin;
  return QString(off_lot ? " ‡" : "") + (planted ? " ¶" : "") + (thin ? " §" : "");
}

QString TapeMarks::of_check(const StakeOut& stake_out, Tie tie) {
  tie.cut = std::max(tie.cut, kThinCut);
  return of(stake_out, tie);
}

QStringList TapeMarks::notes() const {
  QStringList all, named = planted_;
  named.removeDuplicates();
  if (off_lot_) all << QObject::tr("‡ A tape runs over the neighbour's land: ask first.");
  if (!named.isEmpty())
    all << QObject::tr("¶ A tape runs over %1, no pair is as good: lift it over what stands there.")
               .arg(named.join(", "));
  if (thin_)
    all << QObject::tr("§ The tapes meet at less than 30°, no pair is better: check by BETWEEN STAKES.");
  return all;
}

namespace {

QString frame_length(const Plan& plan, double metres) {
  return text_of(print_quantity(Quantity::length, metres, plan.units, Fineness::fine));
}

int buildings(const Plan& plan) {
  return static_cast<int>(std::count_if(plan.site.features.begin(), plan.site.features.end(),
                                        [](const Feature& f) { return f.kind == FeatureKind::house; }));
}

std::vector<Cell> tape_row(const Plan& plan, const StakeOut& stakes, const Tie& tie, const QString& marks) {
  const PrintedTapes tapes = printed_tapes(plan, stakes, tie);
  return {{point_name(tie), std::nullopt, true}, {text_of(tie.first)},
          {tapes.first, std::nullopt, true},     {text_of(tie.second)},
          {tapes.second, std::nullopt, true},    {side_word(tie) + marks}};
}

}  // namespace

TablePtr tie_table(const Plan& plan, const Outcome& outcome, double points) {
  const StakeOut& stakes = outcome.stake_out;
  if (stakes.ties.empty()) return nullptr;
  TapeMarks marks(plan.site);
  std::vector<std::vector<Cell>> rows;
  bool hidden = false;
  for (const Tie& tie : stakes.ties) {
    hidden = hidden || tie.cut == 0;
    rows.push_back(tape_row(plan, stakes, tie, QString(tie.cut == 0 ? " *" : "") + marks.of(stakes, tie)));
  }
  if (const auto mark = entry_on_wall(plan.site, stakes))
    rows.push_back({{entry_name(), std::nullopt, true},
                    {text_of(mark->from.tag)},
                    {frame_length(plan, mark->from_distance), std::nullopt, true},
                    {text_of(mark->to.tag)},
                    {frame_length(plan, mark->to_distance), std::nullopt, true},
                    {QObject::tr("wall", "side of a stake")}});
  QStringList note{
      QObject::tr("Pull both tapes level and tight; the stake stands where they meet, to the left (L) or "
                  "right (R) as seen "
                  "from the first corner to the second. Middle lines of trenches.")};
  if (hidden)
    note << QObject::tr("* A house or trunk hides a corner: offset the tape or check by a third distance.");
  note << marks.notes();
  return std::make_shared<Table>(buildings(plan) > 1 ? QObject::tr("TAPE FROM BUILDING CORNERS")
                                                     : QObject::tr("TAPE FROM HOUSE CORNERS"),
                                 tape_columns(), std::move(rows), points, note.join(" "));
}

namespace {

QString name_of_building(const Plan& plan, int id) {
  const Feature* f = find_feature(plan.site, id);
  return f == nullptr ? QString() : text_of(display_name(*f));
}

// Walls corner by corner; then what is measured round the outside.
void add_building(std::vector<std::vector<Cell>>& rows, const Plan& plan, const std::vector<Wall>& walls) {
  const auto add = [&](const HouseCorner& a, const HouseCorner& b, const QString& what) {
    rows.push_back({{QString("%1–%2").arg(text_of(a.tag), text_of(b.tag)), std::nullopt, true},
                    {what},
                    {frame_length(plan, distance(a.at, b.at)), std::nullopt, true}});
  };
  const QString name = name_of_building(plan, walls.front().house_id);
  for (const Wall& wall : walls) add(wall.line.from, wall.line.to, QObject::tr("%1, wall").arg(name));
}

// m that a wall is drawn out for it: a round length in the user's units.
double drawn_out(const Plan& plan) {
  return plan.units == UnitSystem::us ? 10 * 0.3048 : 3;
}

void add_outside(std::vector<std::vector<Cell>>& rows, const Plan& plan, const CornerCheck& k) {
  const QString a = text_of(k.a.tag), b = text_of(k.b.tag), c = text_of(k.c.tag);
  const QString name = name_of_building(plan, k.house_id);
  if (k.out == 0)
    rows.push_back({{QString("%1–%2").arg(a, c), std::nullopt, true},
                    {QObject::tr("%1, outside, over the open corner at %2").arg(name, b)},
                    {frame_length(plan, k.length), std::nullopt, true}});
  else
    rows.push_back({{QString("%1*–%2").arg(b, c), std::nullopt, true},
                    {QObject::tr("%1, outside: %2* lies %3 beyond %2 in the line %4–%2")
                         .arg(name, b, shown_length(plan, k.out), a)},
                    {frame_length(plan, k.length), std::nullopt, true}});
}

QString entry_words(const Plan& plan, const StakeOut& stakes) {
  const auto mark = entry_on_wall(plan.site, stakes);
  if (!mark) return {};
  return QObject::tr("Entry of the run: in the wall %1–%2, %3 from %1 and %4 from %2.")
      .arg(text_of(mark->from.tag), text_of(mark->to.tag), frame_length(plan, mark->from_distance),
           frame_length(plan, mark->to_distance));
}

}  // namespace

BlockPtr corner_table(const Plan& plan, const Outcome& outcome) {
  const std::vector<Wall> walls = building_walls(plan.site, outcome.stake_out);
  if (walls.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (auto first = walls.begin(); first != walls.end();) {
    const auto last =
        std::find_if(first, walls.end(), [&](const Wall& w) { return w.house_id != first->house_id; });
    add_building(rows, plan, {first, last});
    for (const CornerCheck& k : corner_checks(plan.site, outcome.stake_out, drawn_out(plan)))
      if (k.house_id == first->house_id) add_outside(rows, plan, k);
    first = last;
  }
  QStringList note{
      QObject::tr("Outer corners of the walls. Measure them first: what differs is told to the designer.")};
  if (const QString entry = entry_words(plan, outcome.stake_out); !entry.isEmpty()) note << entry;
  return std::make_shared<Table>(
      buildings(plan) > 1 ? QObject::tr("BUILDING CORNERS") : QObject::tr("HOUSE CORNERS"),
      std::vector<Column>{{QObject::tr("From – to")},
                          {QObject::tr("What"), Align::left, true},
                          {QObject::tr("Length"), Align::right}},
      std::move(rows), 10, note.join(" "));
}

BlockPtr building_table(const Plan& plan, const Outcome& outcome) {
  const std::vector<Tie> ties = building_ties(plan.site, outcome.stake_out);
  if (ties.empty()) return nullptr;
  TapeMarks marks(plan.site);
  std::vector<std::vector<Cell>> rows;
  for (const Tie& tie : ties)
    rows.push_back(tape_row(plan, outcome.stake_out, tie, marks.of(outcome.stake_out, tie)));
  std::vector<Column> columns = tape_columns();
  columns.front().head = QObject::tr("Corner");
  return std::make_shared<Table>(QObject::tr("HOW THE BUILDINGS STAND TO ONE ANOTHER"), std::move(columns),
                                 std::move(rows), 10, marks.notes().join(" "));
}

}  // namespace underlawn::sheet
