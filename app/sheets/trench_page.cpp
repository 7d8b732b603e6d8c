// SPDX-License-Identifier: GPL-3.0-or-later
// One trench, one page: what the crew needs while it digs this one, large enough to be read in the rain.
#include <cmath>

#include "canvas/labels.h"
#include "canvas/plan_painter.h"
#include "canvas/utility_tags.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "plan/checks/measure.h"
#include "plan/figures/groups.h"
#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/map_parts.h"
#include "sheets/paper.h"
#include "sheets/stake_words.h"
#include "sheets/tapes.h"

namespace underlawn::sheet {

namespace {

const double kHead = pt(54);
const double kGap = pt(12);
constexpr double kNear = 4.5;  // m: utilities nearer than this are named

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
  void paint_head(QPainter& painter, const QRectF& room) const;
  void paint_map(QPainter& painter, const QRectF& map) const;
  void paint_tapes(QPainter& painter, const View& view) const;
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

void TrenchPage::paint_tapes(QPainter& painter, const View& view) const {
  QPen pen = rule(0.9, "#000000");
  pen.setDashPattern({8, 3});
  for (const Tie& tie : ties()) {
    const PrintedTapes tapes = printed_tapes(plan_, outcome_.stake_out, tie);
    for (const auto& [tag, text] : {std::pair(tie.first, tapes.first), std::pair(tie.second, tapes.second)}) {
      const HouseCorner* c = corner(outcome_, tag);
      if (c == nullptr) continue;
      const QLineF line(view.to_device(c->at), view.to_device(tie.at));
      painter.setPen(pen);
      painter.drawLine(line);
      double angle = -line.angle();
      while (angle < -90) angle += 180;
      while (angle > 90) angle -= 180;
      paint_text(painter, text, type(11, QFont::Bold), kInk, Qt::white, line.pointAt(0.55), angle, pt(3));
    }
  }
}

void TrenchPage::paint_map(QPainter& painter, const QRectF& map) const {
  const Box shown = box();
  const double wide = shown.high.x - shown.low.x, high = shown.high.y - shown.low.y;
  int scale = usual_scales(plan_.units).back();
  for (const int s : usual_scales(plan_.units)) {
    if (wide * per_metre(s) + pt(70) > map.width() || high * per_metre(s) + pt(70) > map.height()) continue;
    scale = s;
    break;
  }
  const View view{0.5 * (shown.low + shown.high), per_metre(scale), map.size(), 0};
  PaintOptions options;
  options.corner_tags = true;
  options.edge_lengths = options.findings = options.zones = false;
  painter.save();
  painter.setClipRect(map);
  painter.translate(map.topLeft());
  paint_plan(painter, plan_, &outcome_, view, sheet_look(), options);
  paint_tapes(painter, view);
  painter.restore();
  painter.setBrush(Qt::NoBrush);
  painter.setPen(rule(0.8));
  painter.drawRect(map);
  const QRectF corner(map.right() - pt(46), map.top() + pt(4), pt(42), pt(46));
  painter.fillRect(corner, Qt::white);
  paint_north(painter, corner.center() + QPointF(0, pt(3)), pt(18), plan_.site.north);
  const QString words = QObject::tr("Scale %1").arg(scale_text(scale, plan_.units));
  const QRectF note(map.left() + pt(4), map.bottom() - pt(18), width_of(words, type(9.5)) + pt(8), pt(14));
  painter.fillRect(note, Qt::white);
  write(painter, note.bottomLeft() + QPointF(pt(4), -pt(4)), words, type(9.5));
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
    write(painter, {x, room.top() + pt(17)},
          QObject::tr("Dig as number %1 of %2").arg(place.number).arg(place.of), type(13, QFont::DemiBold));
  write(painter, {x, room.top() + pt(35)},
        QObject::tr("%1. Tags %2-S and %2-R.").arg(place.way).arg(trench_.number), type(12));
}

TablePtr TrenchPage::tape_block(double points) const {
  std::vector<std::vector<Cell>> rows;
  for (const Tie& tie : ties()) {
    const PrintedTapes tapes = printed_tapes(plan_, outcome_.stake_out, tie);
    rows.push_back({{point_name(tie), std::nullopt, true},
                    {text_of(tie.first)},
                    {tapes.first, std::nullopt, true},
                    {text_of(tie.second)},
                    {tapes.second, std::nullopt, true},
                    {side_word(tie)}});
    if (const auto check = second_tie(plan_.site, outcome_.stake_out, tie)) {
      const PrintedTapes second = printed_tapes(plan_, outcome_.stake_out, *check);
      rows.push_back({{QObject::tr("check", "a second pair of tapes")},
                      {text_of(check->first)},
                      {second.first},
                      {text_of(check->second)},
                      {second.second},
                      {side_word(*check)}});
    }
  }
  rows.push_back({{QObject::tr("head – end")},
                  {""},
                  {shown_length(plan_, distance(trench_.head, trench_.end)), std::nullopt, true},
                  {""},
                  {""},
                  {""}});
  return std::make_shared<Table>(QObject::tr("STAKES"), tape_columns(), std::move(rows), points);
}

TablePtr TrenchPage::fact_block(double points) const {
  const std::string key = figures::trench_key(trench_.number);
  std::vector<std::vector<Cell>> rows;
  const auto add = [&](const QString& name, const QString& value) {
    rows.push_back({{name}, {value, std::nullopt, true}});
  };
  const EndDepths depths = end_depths(outcome_, order_ - 1);
  add(QObject::tr("Depth at the head"), shown_length(plan_, depths.head));
  add(QObject::tr("Depth at the end"), shown_length(plan_, depths.end));
  add(QObject::tr("Floor width"), shown(plan_, outcome_, key + ".width"));
  add(QObject::tr("Length"), shown(plan_, outcome_, key + ".length"));
  add(QObject::tr("Protective slope"), shown(plan_, outcome_, "dig.slope"));
  add(QObject::tr("Bedding round the pipe"), shown(plan_, outcome_, "dig.bedding"));
  add(is_straight(trench_.coil.pattern) ? QObject::tr("Pipe") : QObject::tr("Coil, return included"),
      shown(plan_, outcome_, key + ".coil_length"));
  if (!is_straight(trench_.coil.pattern)) {
    add(QObject::tr("Loops"), shown(plan_, outcome_, key + ".loops"));
    add(QObject::tr("Pitch"), shown(plan_, outcome_, key + ".pitch"));
    add(QObject::tr("Loop across"), shown(plan_, outcome_, "coil.loop_diameter"));
  }
  return std::make_shared<Table>(QObject::tr("DIG AND LAY"),
                                 std::vector<Column>{{"", Align::left, true}, {"", Align::right}},
                                 std::move(rows), points);
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
  items.push_back(
      {"!", QObject::tr("Nobody enters without slope, shield or shoring"),
       QObject::tr("and the competent person's look that day. Spoil and machine back from the edge; a ladder "
                   "near everyone.")});
  for (const QString& text : {QObject::tr("staked and checked"), QObject::tr("dug, floor level and clean"),
                              QObject::tr("bedding in"), QObject::tr("coil laid, tied, tagged"),
                              QObject::tr("tested before it is covered"), QObject::tr("as-built tapes taken"),
                              QObject::tr("warning tape, backfilled")})
    items.push_back({"☐", "", text});
  return std::make_shared<Items>(QObject::tr("TICK WHEN DONE"), std::move(items), points);
}

void TrenchPage::paint(QPainter& painter, const QRectF& room) const {
  paint_head(painter, room);
  const bool lies = room.width() > room.height();
  // On a page that lies there is less height for the same words.
  const bool low = room.height() < pt(480);
  const auto tapes = tape_block(low ? 11 : 13), facts = fact_block(low ? 10.5 : 13);
  const auto ticks = tick_block(low ? 10 : 12);
  const double column = lies ? 0.5 * room.width() : (room.width() - pt(20)) / 2;
  const double top = room.top() + kHead;
  if (lies) {
    const QRectF words(room.right() - column, top, column, room.bottom() - top);
    paint_map(painter, QRectF(room.left(), top, room.width() - column - pt(16), room.bottom() - top));
    const double half = (column - pt(16)) / 2, under = tapes->height(column) + kGap;
    tapes->paint(painter, words);
    facts->paint(painter, QRectF(words.left(), top + under, half, 1));
    ticks->paint(painter, QRectF(words.right() - half, top + under, half, 1));
    return;
  }
  const double right = ticks->height(column), left = tapes->height(column) + kGap + facts->height(column);
  const double words = std::max(left, right), map = room.bottom() - top - words - kGap;
  paint_map(painter, QRectF(room.left(), top, room.width(), std::max(map, pt(150))));
  const double y = room.bottom() - words;
  tapes->paint(painter, QRectF(room.left(), y, column, 1));
  facts->paint(painter, QRectF(room.left(), y + tapes->height(column) + kGap, column, 1));
  ticks->paint(painter, QRectF(room.right() - column, y, column, 1));
}

}  // namespace

std::vector<BlockPtr> trench_pages(const Plan& plan, const Outcome& outcome) {
  std::vector<BlockPtr> pages;
  for (std::size_t i = 0; i < outcome.layout.trenches.size(); ++i)
    pages.push_back(std::make_shared<TrenchPage>(plan, outcome, i));
  return pages;
}

}  // namespace underlawn::sheet
