// SPDX-License-Identifier: GPL-3.0-or-later
// The trench cut across, to scale, with its sides as planned.
#include <cmath>

#include "canvas/hatch.h"
#include "canvas/labels.h"
#include "field/straight.h"
#include "plan/figures/groups.h"
#include "sheets/contents.h"
#include "sheets/detail_parts.h"
#include "sheets/trench_ticks.h"

namespace underlawn::sheet {

namespace {

// What a section is drawn from, metres; all of it figures.
struct Cut {
  double width = 0, depth = 0, bedding = 0, loop = 0, slope = 0;
  Coil coil = {};
  double top() const { return width + 2 * slope * depth; }
};

constexpr int kUsScales[] = {24, 32, 48, 64, 96, 128, 192, 384};
constexpr int kMetricScales[] = {20, 25, 50, 75, 100, 150, 200, 500};

const double kAbove = pt(26);  // room over the ground for the dimension of the top width
const double kBelow = pt(40);  // under the floor: floor width, caption

class Section : public Block {
 public:
  Section(const Plan& plan, const Outcome& outcome) : plan_(plan), units_(plan.units) {
    const auto value = [&](const std::string& key) {
      const Figure* f = outcome.figures.find(key);
      return f != nullptr && std::isfinite(f->value) ? f->value : 0.0;
    };
    vertical_ = {value("dig.trench_width"),
                 value("dig.trench_depth"),
                 value("dig.bedding"),
                 value("coil.loop_diameter"),
                 0,
                 outcome.coil};
    sloped_ = vertical_;
    sloped_.slope = value("dig.slope");
    top_text_ = shown(plan, outcome, "dig.top_width");
    slope_text_ = shown(plan, outcome, "dig.slope");
    soil_ = text_of(std::string(soil_name(plan.ground.soil)));
    for (const Trench& t : outcome.layout.trenches)
      if (const Figure* over = outcome.figures.find(figures::trench_key(t.number) + ".run_floor")) {
        shared_ << QString::number(t.number);
        run_floor_ = over->value;
      }
  }

  double height(double width) const override {
    return heading_height() + kAbove + vertical_.depth * per_metre(scale_for(width)) + kBelow +
           (shared_.isEmpty() ? 0 : pt(14));
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    const int scale = scale_for(room.width());
    paint_heading(painter, room, QObject::tr("TRENCH SECTION %1").arg(scale_words(scale)));
    const double k = per_metre(scale);
    const double ground = room.top() + heading_height() + kAbove;
    if (!shared_.isEmpty())
      write_fitted(
          painter, {room.left(), room.top() + height(room.width()) - pt(3)},
          QObject::tr("Trench %1 is another: over its bedded coil lie the run's two pipes, bedded too, "
                      "%2 deep.")
              .arg(shared_.join(", "), shown_length(plan_, run_floor_)),
          room.width(), {9.5, 7});
    const Cut& cut = planned();
    const double spare = std::max(0.0, room.width() - needed(scale));
    paint_cut(painter, cut, {room.left() + kSide + 0.5 * spare + 0.5 * cut.top() * k, ground}, k,
              cut.slope > 0 ? QObject::tr("AS PLANNED: protective slope %1, %2").arg(slope_text_, soil_)
                            : vertical_words());
  }

 private:
  // One statement on all sheets: what the dig plan asks for.
  QString vertical_words() const {
    switch (plan_.dig.coil_sides) {
      case Sides::stay_out:
        return QObject::tr("AS PLANNED: vertical, NOBODY GOES IN");
      case Sides::shield:
        return QObject::tr("AS PLANNED: vertical, people only in the shield");
      case Sides::shoring:
        return QObject::tr("AS PLANNED: vertical, shored first");
      case Sides::slope:
        break;
    }
    return QObject::tr("AS PLANNED: vertical");
  }

  // What is not dug is not drawn: nobody shall dig by it.
  const Cut& planned() const {
    return plan_.dig.coil_sides == Sides::slope && sloped_.slope > 0 ? sloped_ : vertical_;
  }

  static constexpr double kSide = pt(88);      // left of a cut: its depth
  static constexpr double kBetween = pt(104);  // right of a sloped one: what is in its bedding
  static constexpr double kRight = pt(30);
  static constexpr double kWords = pt(165);  // right of a vertical cut: what is in it

  double needed(int scale) const {
    const Cut& cut = planned();
    return kSide + cut.top() * per_metre(scale) + (cut.slope > 0 ? kRight + kBetween : kWords);
  }

  int scale_for(double width) const {
    const auto& scales = units_ == UnitSystem::us ? kUsScales : kMetricScales;
    for (int scale : scales)
      if (needed(scale) <= width && vertical_.depth * per_metre(scale) <= pt(120)) return scale;
    return scales[7];
  }

  QString scale_words(int scale) const { return detail_scale_text(scale, plan_.units); }

  void paint_cut(QPainter& painter, const Cut& cut, QPointF mid, double k, const QString& caption) const;
  void paint_ground(QPainter& painter, const Cut& cut, QPointF mid, double k) const;
  void paint_fill(QPainter& painter, const Cut& cut, QPointF mid, double k) const;
  void paint_pipe(QPainter& painter, const Cut& cut, QPointF mid, double k) const;
  void paint_dimensions(QPainter& painter, const Cut& cut, QPointF mid, double k) const;
  void paint_words(QPainter& painter, const Cut& cut, QPointF mid, double k) const;
  QPolygonF outline(const Cut& cut, QPointF mid, double k, double from, double to) const;

  Plan plan_;
  UnitSystem units_;
  Cut vertical_, sloped_;
  QString top_text_, slope_text_, soil_;
  QStringList shared_;    // numbers of trenches that the run's pipes lie in too
  double run_floor_ = 0;  // m, how deep these
};

// The pipe where the cut meets it, from the middle of the lowest. Loops that lie flat show as pipe at either
// side, standing ones at the floor and on top, with the return pipe beside them.
std::vector<QPointF> pipe_in_cut(const Cut& cut, double k) {
  const double loop = cut.loop * k;
  if (cut.coil.pattern == CoilPattern::flat_coil) return {{-loop / 2, 0}, {0, 0}, {loop / 2, 0}};
  if (cut.coil.pattern == CoilPattern::upright_coil)
    return {{0, 0}, {0, -loop}, {pt(4.2), cut.coil.return_on_top ? -loop : 0}};
  std::vector<QPointF> at;
  for (const StraightPipe& p : straight_pipes(cut.coil)) at.emplace_back(-p.across * k, -p.up * k);
  return at;
}

// Behind the cut a loop joins them.
QLineF loop_behind(const Cut& cut, QPointF lowest, double k) {
  const double loop = cut.loop * k;
  if (cut.coil.pattern == CoilPattern::upright_coil) return {lowest, lowest - QPointF(0, loop)};
  return {lowest - QPointF(loop / 2, 0), lowest + QPointF(loop / 2, 0)};
}

double tape_reach(const Cut& cut, double k) {
  return std::min(cut.width * k / 2, pt(22)) * 0.8;
}

// The cut between two heights over its floor.
QPolygonF Section::outline(const Cut& cut, QPointF mid, double k, double from, double to) const {
  const double floor = mid.y() + cut.depth * k;
  const auto half = [&](double h) { return (cut.width / 2 + cut.slope * h) * k; };
  return QPolygonF({{mid.x() - half(to), floor - to * k},
                    {mid.x() - half(from), floor - from * k},
                    {mid.x() + half(from), floor - from * k},
                    {mid.x() + half(to), floor - to * k}});
}

void Section::paint_ground(QPainter& painter, const Cut& cut, QPointF mid, double k) const {
  const double reach = cut.top() * k / 2 + pt(28);
  painter.setPen(rule(1.4));
  painter.drawLine(mid - QPointF(reach, 0), mid - QPointF(cut.top() * k / 2, 0));
  painter.drawLine(mid + QPointF(cut.top() * k / 2, 0), mid + QPointF(reach, 0));
  // Short strokes under the ground line, as ground is drawn.
  painter.setPen(rule(0.5));
  for (double side : {-1.0, 1.0})
    for (double x = cut.top() * k / 2 + pt(5); x < reach; x += pt(5))
      painter.drawLine(mid + QPointF(side * x, 0), mid + QPointF(side * x - pt(4), pt(5)));
}

void Section::paint_fill(QPainter& painter, const Cut& cut, QPointF mid, double k) const {
  const QRectF everywhere(mid.x() - pt(2000), mid.y() - pt(2000), pt(4000), pt(4000));
  const QPolygonF fill = outline(cut, mid, k, cut.bedding, cut.depth);
  painter.setPen(rule(0.25, "#888888"));
  painter.drawLines(hatch_lines({fill}, {pt(7), 45, mid}, everywhere));
  QPen dots(kInk, pt(0.8), Qt::SolidLine, Qt::RoundCap);
  dots.setDashPattern({0.01, 3.4});
  painter.setPen(dots);
  painter.drawLines(hatch_lines({outline(cut, mid, k, 0, cut.bedding)}, {pt(2.4), 18, mid}, everywhere));
  painter.setPen(rule(0.6));
  const QPolygonF bed = outline(cut, mid, k, 0, cut.bedding);
  painter.drawLine(bed[0], bed[3]);
  const QPolygonF whole = outline(cut, mid, k, 0, cut.depth);
  painter.setPen(rule(1.6));
  painter.drawPolyline(whole);
}

void Section::paint_pipe(QPainter& painter, const Cut& cut, QPointF mid, double k) const {
  const double y = mid.y() + (cut.depth - cut.bedding / 2) * k;
  painter.setPen(rule(1.2, "#0d3550"));
  if (!is_straight(cut.coil.pattern)) painter.drawLine(loop_behind(cut, {mid.x(), y}, k));
  painter.setBrush(Qt::white);
  for (QPointF p : pipe_in_cut(cut, k))
    painter.drawEllipse(QPointF(mid.x() + p.x(), y + p.y()), pt(2.1), pt(2.1));
  painter.setBrush(Qt::NoBrush);
  // Warning tape in the upper backfill.
  const double tape = mid.y() + tape_down(cut.depth) * k, reach = tape_reach(cut, k);
  QPen pen = rule(2.2, "#c8000f");
  pen.setDashPattern({2.2, 1});
  painter.setPen(pen);
  painter.drawLine(QPointF(mid.x() - reach, tape), QPointF(mid.x() + reach, tape));
}

void Section::paint_dimensions(QPainter& painter, const Cut& cut, QPointF mid, double k) const {
  const double floor = mid.y() + cut.depth * k;
  const double left = mid.x() - cut.width * k / 2, right = mid.x() + cut.width * k / 2;
  dimension(painter, {left, floor + pt(8)}, {right, floor + pt(8)}, shown_length(plan_, cut.width),
            {mid.x(), floor + pt(21)}, Align::centre);
  const double x = mid.x() - cut.top() * k / 2 - pt(40);
  painter.setPen(rule(0.4, kRule));
  painter.drawLine(QPointF(x - pt(3), floor), QPointF(left - pt(3), floor));
  dimension(painter, {x, mid.y()}, {x, floor}, shown_length(plan_, cut.depth),
            {x - pt(5), (mid.y() + floor) / 2}, Align::right);
  if (cut.slope <= 0) return;
  const double half = cut.top() * k / 2, y = mid.y() - pt(8);
  dimension(painter, {mid.x() - half, y}, {mid.x() + half, y}, top_text_, {mid.x(), y - pt(5)},
            Align::centre);
}

// m across the cut, that far down.
double across(const Cut& cut, double down) {
  return cut.width + 2 * cut.slope * (cut.depth - down);
}

// m down to the middle of a line of words that wide, as deep as the sides leave room for it.
double depth_of_words(const Cut& cut, double k, double wide) {
  const double over_floor = ((wide + pt(16)) / k - cut.width) / (2 * cut.slope);
  return std::clamp(cut.depth - over_floor - pt(5) / k, 0.42 * cut.depth, 0.62 * cut.depth);
}

// In the sloped cut there is room for words up to its side; a vertical one has them beside it.
void Section::paint_words(QPainter& painter, const Cut& cut, QPointF mid, double k) const {
  const bool inside = cut.slope > 0;
  const QFont font = type(9);
  const double wall = mid.x() + cut.width * k / 2;
  const auto put = [&](QPointF at, const QString& text, double room = pt(400)) {
    paint_text(painter, text, fitting(text, room, {9, 6.5}), kInk, Qt::white, at, 0, inside ? pt(2) : 0);
  };
  const auto word = [&](double height, double from, double x, const QString& text, double room = pt(400)) {
    const double y = mid.y() + (cut.depth - height) * k;
    painter.setPen(rule(0.5, kFaint));
    painter.drawLine(QPointF(from, y), QPointF(x - pt(2), y));
    const QStringList lines = wrapped(text, font, room);
    for (int i = 0; i < lines.size(); ++i)
      put({x + width_of(lines[i], font) / 2, y + (i - 0.5 * (lines.size() - 1)) * pt(10)}, lines[i]);
  };
  const double tape = mid.x() + tape_reach(cut, k);
  const QString warning = QObject::tr("warning tape, %1 down").arg(shown_length(plan_, tape_down(cut.depth)));
  const QString fill =
      (plan_.dig.coil_sides == Sides::stay_out ? QObject::tr("fill in lifts of %1, pressed from above")
                                               : QObject::tr("backfill in lifts of %1"))
          .arg(plan_.units == UnitSystem::us ? "12 in" : "0.3 m");
  if (inside) {
    const double over_tape = tape_down(cut.depth) - pt(9) / k,
                 low = depth_of_words(cut, k, width_of(fill, font));
    put({mid.x(), mid.y() + over_tape * k}, warning, across(cut, over_tape + pt(5) / k) * k - pt(12));
    put({mid.x(), mid.y() + low * k}, fill, across(cut, low + pt(5) / k) * k - pt(8));
  } else {
    const bool flat = cut.coil.pattern == CoilPattern::flat_coil;  // else there is pipe further up
    word(0.75 * cut.depth, tape, wall + pt(26), warning);
    word((flat ? 0.45 : 0.6) * cut.depth, mid.x(), wall + pt(26), fill);
  }
  double pipe = 0;
  for (QPointF p : pipe_in_cut(cut, k))
    if (p.y() == 0) pipe = std::max(pipe, p.x());
  const double beside = wall + (inside ? pt(30) : pt(26));
  const double edge = inside ? mid.x() + cut.top() * k / 2 + kRight : beside + pt(400);
  word(cut.bedding / 2, mid.x() + pipe, beside,
       (is_straight(cut.coil.pattern) ? QObject::tr("pipe in %1 of bedding")
                                      : QObject::tr("coil in %1 of bedding"))
           .arg(shown_length(plan_, cut.bedding)),
       edge - beside);
}

void Section::paint_cut(QPainter& painter, const Cut& cut, QPointF mid, double k,
                        const QString& caption) const {
  if (!(cut.width > 0) || !(cut.depth > 0)) return;
  paint_ground(painter, cut, mid, k);
  paint_fill(painter, cut, mid, k);
  paint_words(painter, cut, mid, k);
  paint_pipe(painter, cut, mid, k);
  paint_dimensions(painter, cut, mid, k);
  write(painter, {mid.x(), mid.y() + cut.depth * k + pt(35)}, caption, type(9.5, QFont::DemiBold), kInk,
        Align::centre);
}

}  // namespace

BlockPtr section_block(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty() || outcome.figures.find("dig.trench_width") == nullptr) return nullptr;
  return std::make_shared<Section>(plan, outcome);
}

}  // namespace underlawn::sheet
