// SPDX-License-Identifier: GPL-3.0-or-later
// One trench, one page: what the crew needs while it digs this one, large enough to be read in the rain.
#include <algorithm>
#include <cmath>

#include "canvas/paint_context.h"
#include "canvas/utility_tags.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "plan/checks/measure.h"
#include "plan/coil_ends.h"
#include "plan/figures/groups.h"
#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/map_parts.h"
#include "sheets/paper.h"
#include "sheets/stake_words.h"
#include "sheets/tapes.h"
#include "sheets/trench_ticks.h"

namespace underlawn::sheet {

namespace {

const double kHead = pt(54);
const double kGap = pt(12);
const double kBeside = pt(16);
const double kOrientation = pt(164);  // at the right of the head: scale and north
constexpr double kLeastMap = 0.4;     // of the page's height under its head
constexpr double kNear = 4.5;         // m: utilities nearer than this are named

class TrenchPage : public Block {
 public:
  TrenchPage(const Plan& plan, const Outcome& outcome, std::size_t index)
      : plan_(plan), outcome_(outcome), trench_(outcome.layout.trenches[index]), order_(index + 1) {}
  double height(double) const override { return 0; }  // takes the room it is given
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  struct Place {
    int number = 0, of = 0;  // among the steps
    QString way = "–";
  };
  Place place_in_order() const;
  std::vector<Tie> ties() const;
  TablePtr tape_block(double points) const;
  TablePtr fact_block(double points) const;
  BlockPtr tick_block(double points) const;
  QString sides_words() const;
  void paint_lying(QPainter& painter, const QRectF& room) const;
  void paint_upright(QPainter& painter, const QRectF& room) const;
  struct Seen {
    int scale = 0;
    View view;
  };
  Seen seen(const QRectF& map) const;
  void paint_orientation(QPainter& painter, const QRectF& room, const Seen& how) const;
  void paint_head(QPainter& painter, const QRectF& room) const;
  void paint_map(QPainter& painter, const QRectF& map) const;
  void paint_tapes(PaintContext& on) const;
  Box box() const;

  Plan plan_;
  Outcome outcome_;
  Trench trench_;
  std::size_t order_;
};

// Those of its head, bends and end; a stake of two trenches belongs to both.
std::vector<Tie> TrenchPage::ties() const {
  std::vector<Tie> own;
  for (const Point p : middle_line(trench_))
    for (const Tie& tie : outcome_.stake_out.ties)
      if (distance(tie.at, p) <= kSameStake) own.push_back(tie);
  return own;
}

const HouseCorner* corner(const Outcome& outcome, const std::string& tag) {
  for (const HouseCorner& c : outcome.stake_out.corners)
    if (c.tag == tag) return &c;
  return nullptr;
}

Box TrenchPage::box() const {
  std::vector<Point> points = floor_of(trench_);
  for (const Tie& tie : ties())
    for (const std::string& tag : {tie.first, tie.second})
      if (const HouseCorner* c = corner(outcome_, tag)) points.push_back(c->at);
  return bounds(points);
}

// In the tape, upright; off its corner and its stake where it is long enough.
Label tape_label(const QLineF& tape, const QString& text) {
  Label label;
  label.text = text;
  label.font = type(11, QFont::Bold);
  label.colour = kInk;
  label.angle = -tape.angle();
  while (label.angle < -90) label.angle += 180;
  while (label.angle > 90) label.angle -= 180;
  label.rank = 1;
  label.must = true;
  const QPointF across = QPointF(tape.dy(), -tape.dx()) / std::max(1.0, tape.length());
  const double kept = text_size(text, label.font).width() / 2 + 1.5 * label.font.pixelSize();
  const double most = std::max(0.0, 0.5 - kept / std::max(1.0, tape.length()));
  for (double aside : {0.0, 0.9, -0.9, 1.8, -1.8})
    for (double off : {0.05, -0.05, 0.15, -0.15, 0.25, -0.25, 0.35, -0.35})
      label.places << tape.pointAt(0.5 + std::clamp(off, -most, most)) +
                          aside * label.font.pixelSize() * across;
  return label;
}

void TrenchPage::paint_tapes(PaintContext& on) const {
  QPen pen = rule(0.9, "#000000");
  pen.setDashPattern({8, 3});
  for (const Tie& tie : ties()) {
    const PrintedTapes tapes = printed_tapes(plan_, outcome_.stake_out, tie);
    for (const auto& [tag, text] : {std::pair(tie.first, tapes.first), std::pair(tie.second, tapes.second)}) {
      const HouseCorner* c = corner(outcome_, tag);
      if (c == nullptr) continue;
      const QLineF line(on.at(c->at), on.at(tie.at));
      on.painter.setPen(pen);
      on.painter.drawLine(line);
      on.labels.add(tape_label(line, text));
    }
  }
}

// Turned by a quarter where that shows the trench larger.
TrenchPage::Seen TrenchPage::seen(const QRectF& map) const {
  const Box shown = box();
  const double wide = shown.high.x - shown.low.x, high = shown.high.y - shown.low.y;
  const auto fits = [&](double across, double up, int scale) {
    return across * per_metre(scale) + pt(60) <= map.width() &&
           up * per_metre(scale) + pt(60) <= map.height();
  };
  Seen seen{usual_scales(plan_.units).back(), {0.5 * (shown.low + shown.high), 0, map.size(), 0}};
  for (const int scale : usual_scales(plan_.units)) {
    const bool upright = fits(wide, high, scale);
    if (!upright && !fits(high, wide, scale)) continue;
    seen.scale = scale;
    seen.view.turn = upright ? 0 : -M_PI / 2;
    break;
  }
  seen.view.scale = per_metre(seen.scale);
  return seen;
}

// At the right of the head, where nothing of the map can lie: its scale, and north.
void TrenchPage::paint_orientation(QPainter& painter, const QRectF& room, const Seen& how) const {
  const QString scale = QObject::tr("Scale %1").arg(scale_text(how.scale, plan_.units));
  const QFont font = fitting(scale, kOrientation - pt(50), {10, 7}, QFont::DemiBold);
  write(painter, {room.right() - pt(42), room.top() + pt(17)}, scale, font, kInk, Align::right);
  paint_north(painter, {room.right() - pt(17), room.top() + pt(24)}, pt(17),
              plan_.site.north + how.view.turn);
}

void TrenchPage::paint_map(QPainter& painter, const QRectF& map) const {
  const Seen how = seen(map);
  PaintOptions options;
  options.corner_tags = options.sheet = true;
  options.of_trench = trench_.number;
  options.edge_lengths = options.findings = options.zones = false;
  options.over = [&](PaintContext& on) { paint_tapes(on); };
  paint_framed(painter, map, plan_, outcome_, how.view, options);
}

// As the table of the order of digging says.
TrenchPage::Place TrenchPage::place_in_order() const {
  if (outcome_.order == nullptr) return {};
  const std::vector<DigStep>& steps = outcome_.order->steps;
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (steps[i].trench == trench_.number)
      return {static_cast<int>(i) + 1, static_cast<int>(steps.size()), text_of(way_of_digging(steps[i]))};
  return {};
}

void TrenchPage::paint_head(QPainter& painter, const QRectF& room) const {
  const QString name = QObject::tr("TRENCH %1").arg(trench_.number);
  const Place place = place_in_order();
  write(painter, room.topLeft() + QPointF(0, pt(36)), name, type(40, QFont::Bold));
  const double x = room.left() + width_of(name, type(40, QFont::Bold)) + pt(20);
  if (place.of > 0)
    write_fitted(painter, {x, room.top() + pt(17)},
                 QObject::tr("Dig as number %1 of %2").arg(place.number).arg(place.of),
                 room.right() - kOrientation - x, {13, 8}, QFont::DemiBold);
  write_fitted(painter, {x, room.top() + pt(35)},
               QObject::tr("%1. Tags %2-S and %2-R.").arg(place.way).arg(trench_.number),
               room.right() - pt(40) - x, {12, 8});
}

TablePtr TrenchPage::tape_block(double points) const {
  TapeMarks marks(plan_.site);
  std::vector<std::vector<Cell>> rows;
  for (const Tie& tie : ties()) {
    const PrintedTapes tapes = printed_tapes(plan_, outcome_.stake_out, tie);
    rows.push_back({{point_name(tie), std::nullopt, true},
                    {text_of(tie.first)},
                    {tapes.first, std::nullopt, true},
                    {text_of(tie.second)},
                    {tapes.second, std::nullopt, true},
                    {side_word(tie) + marks.of(outcome_.stake_out, tie)}});
    if (const auto check = second_tie(plan_.site, outcome_.stake_out, tie)) {
      const PrintedTapes second = printed_tapes(plan_, outcome_.stake_out, *check);
      rows.push_back({{QObject::tr("check", "a second pair of tapes")},
                      {text_of(check->first)},
                      {second.first},
                      {text_of(check->second)},
                      {second.second},
                      {side_word(*check) + marks.of_check(outcome_.stake_out, *check)}});
    }
  }
  rows.push_back({{QObject::tr("head – end")},
                  {""},
                  {shown_length(plan_, distance(trench_.head, trench_.end)), std::nullopt, true},
                  {""},
                  {""},
                  {""}});
  return std::make_shared<Table>(QObject::tr("STAKES"), tape_columns(), std::move(rows), points,
                                 marks.notes().join(" "));
}

// Only what is planned: a slope that is not dug is no measure of this trench.
QString TrenchPage::sides_words() const {
  switch (plan_.dig.coil_sides) {
    case Sides::stay_out:
      return QObject::tr("vertical");
    case Sides::slope:
      return QObject::tr("laid back %1").arg(shown(plan_, outcome_, "dig.slope"));
    case Sides::shield:
      return QObject::tr("in a shield");
    case Sides::shoring:
      return QObject::tr("shored");
  }
  return {};
}

TablePtr TrenchPage::fact_block(double points) const {
  const std::string key = figures::trench_key(trench_.number);
  std::vector<std::vector<Cell>> rows;
  const auto add = [&](const QString& name, const QString& value) {
    rows.push_back({{name}, {value, std::nullopt, true}});
  };
  const EndDepths depths = end_depths(outcome_, order_ - 1);
  if (std::abs(depths.head - depths.end) < 0.005) {
    add(QObject::tr("Depth, head to end"), shown_length(plan_, depths.head));
  } else {
    add(QObject::tr("Depth at the head"), shown_length(plan_, depths.head));
    add(QObject::tr("Depth at the end"), shown_length(plan_, depths.end));
  }
  add(QObject::tr("Floor width"), shown(plan_, outcome_, key + ".width"));
  add(QObject::tr("Length"), shown(plan_, outcome_, key + ".length"));
  add(QObject::tr("Sides", "of a trench"), sides_words());
  add(trench_.coil.pattern == CoilPattern::flat_coil ? QObject::tr("Bedding in all, half under the pipe")
                                                     : QObject::tr("Bedding in all, from the floor up"),
      shown(plan_, outcome_, "dig.bedding"));
  if (outcome_.figures.find(key + ".run_floor") != nullptr)
    add(QObject::tr("Run's pipes over the coil, deep"), shown(plan_, outcome_, key + ".run_floor"));
  add(is_straight(trench_.coil.pattern) ? QObject::tr("Pipe") : QObject::tr("Coil, return included"),
      shown(plan_, outcome_, key + ".coil_length"));
  add(QObject::tr("Cut, both ends included"), shown_length(plan_, coil_cut(plan_, outcome_, trench_.number)));
  if (!is_straight(trench_.coil.pattern)) {
    add(QObject::tr("Loops"), shown_loops(trench_.coil.loops));
    add(QObject::tr("Pitch"), shown(plan_, outcome_, key + ".pitch"));
    add(QObject::tr("Loop across"), shown(plan_, outcome_, "coil.loop_diameter"));
  }
  return std::make_shared<Table>(
      QObject::tr("DIG AND LAY"), std::vector<Column>{{"", Align::left, true}, {"", Align::right}},
      std::move(rows), points,
      QObject::tr("Depths from the ground at the stake, before digging; within %1.")
          .arg(plan_.units == UnitSystem::us ? "1 in" : "3 cm"));
}

BlockPtr TrenchPage::tick_block(double points) const {
  std::vector<Item> items;
  for (const Feature& f : plan_.site.features) {
    if (f.kind != FeatureKind::utility) continue;
    const double away = area_to_feature(outline(trench_), f);
    if (away > kNear) continue;
    items.push_back({"!",
                     QObject::tr("%1 (%2) %3 away, %4 deep as told")
                         .arg(text_of(display_name(f)))
                         .arg(utility_tag(plan_.site, f))
                         .arg(shown_length(plan_, away), shown_length(plan_, f.depth)),
                     QObject::tr("Laid bare by hand before the machine comes near.")});
  }
  items.push_back(who_goes_in(plan_));
  for (const QString& text : trench_ticks(plan_, outcome_, trench_.number)) items.push_back({"☐", "", text});
  return std::make_shared<Items>(QObject::tr("TICK WHEN DONE"), std::move(items), points);
}

void TrenchPage::paint(QPainter& painter, const QRectF& room) const {
  paint_head(painter, room);
  const QRectF below = room.adjusted(0, kHead, 0, 0);
  if (room.width() > room.height())
    paint_lying(painter, below);
  else
    paint_upright(painter, below);
}

// Words at the right of the map, in less type on a low page: there is less height for the same.
void TrenchPage::paint_lying(QPainter& painter, const QRectF& room) const {
  const double column = 0.5 * room.width(), half = (column - kBeside) / 2;
  const QRectF map = room.adjusted(0, 0, -column - kBeside, 0);
  paint_map(painter, map);
  paint_orientation(painter, room.adjusted(0, -kHead, 0, 0), seen(map));
  const QRectF words(room.right() - column, room.top(), column, room.height());
  for (const double points : {13.0, 12.0, 11.0, 10.25, 9.5, 8.75}) {
    const auto tapes = tape_block(points), facts = fact_block(points);
    const auto ticks = tick_block(points - 0.75);
    const double under = words.top() + tapes->height(column) + kGap;
    const double low = under + std::max(facts->height(half), ticks->height(half));
    if (low > words.bottom() && points > 9) continue;
    tapes->paint(painter, words);
    facts->paint(painter, QRectF(words.left(), under, half, 1));
    ticks->paint(painter, QRectF(words.right() - half, under, half, 1));
    return;
  }
}

// Words under the map, which has the height that they leave: in less type where that would be too little.
void TrenchPage::paint_upright(QPainter& painter, const QRectF& room) const {
  for (const double points : {11.0, 10.25, 9.5, 9.0}) {
    const auto tapes = tape_block(points + 1), facts = fact_block(points);
    const auto ticks = tick_block(points);
    const double left = std::min(facts->natural_width(), 0.44 * room.width());
    const double right = room.width() - kBeside - left;
    const double under = std::max(ticks->height(right), facts->height(left));
    const double stakes = tapes->height(room.width()) + kGap, y = room.bottom() - under - stakes;
    if (y - room.top() < kLeastMap * room.height() && points > 9) continue;
    const QRectF map(room.topLeft(), QPointF(room.right(), y - kGap));
    paint_map(painter, map);
    paint_orientation(painter, room.adjusted(0, -kHead, 0, 0), seen(map));
    tapes->paint(painter, QRectF(room.left(), y, room.width(), 1));
    facts->paint(painter, QRectF(room.left(), y + stakes, left, 1));
    ticks->paint(painter, QRectF(room.right() - right, y + stakes, right, 1));
    return;
  }
}

}  // namespace

std::vector<BlockPtr> trench_pages(const Plan& plan, const Outcome& outcome) {
  std::vector<BlockPtr> pages;
  for (std::size_t i = 0; i < outcome.layout.trenches.size(); ++i)
    pages.push_back(std::make_shared<TrenchPage>(plan, outcome, i));
  return pages;
}

}  // namespace underlawn::sheet
