// SPDX-License-Identifier: GPL-3.0-or-later
// The header drawn out to scale with the size of every piece, and the same as a table.
#include <cmath>
#include <numbers>

#include "canvas/labels.h"
#include "canvas/paint_context.h"
#include "dig/dig_order.h"
#include "flow/header_tree.h"
#include "plane/region.h"
#include "plane/strip.h"
#include "sheets/contents.h"
#include "sheets/detail_parts.h"
#include "sheets/map_parts.h"
#include "sheets/paper.h"

namespace underlawn::sheet {

namespace {

const double kMargin = pt(26);
constexpr double kStub = 2.5;     // m of every trench shown, and of the run
constexpr double kOnLine = 0.05;  // m within which a head lies on the run

// "1-1/4 in DR 11" of the header pipe that carries so many circuits; "" where the flow is not solved.
QString size_of_piece(const Outcome& outcome, LoopPart part, int carries) {
  if (!outcome.flow) return "";
  for (const LoopPipe& pipe : outcome.flow->loop.pipes)
    if (pipe.part == part && (part == LoopPart::run_supply || pipe.carries == carries))
      return text_of(pipe.size.name);
  return "";
}

Polyline start_of(const Polyline& line, double metres) {
  Polyline part{line.front()};
  const PlaceAlong place = place_along(line, std::min(metres, length(line)));
  for (std::size_t i = 1; i <= place.leg && i < line.size(); ++i) part.push_back(line[i]);
  part.push_back(place.at);
  return part;
}

Polyline reversed(Polyline line) {
  std::reverse(line.begin(), line.end());
  return line;
}

// m of the run from the header on: where it comes along a coil trench, as far as that is shown.
double shown_run(const Layout& layout) {
  const Polyline line = reversed(layout.run.line);
  double shown = kStub;
  for (const Trench& t : layout.trenches) {
    if (t.role != TrenchRole::supply) continue;
    double walked = 0;
    for (std::size_t i = 1; i < line.size(); ++i) {
      const Segment leg{line[i - 1], line[i]};
      if (distance(leg, t.head) < kOnLine)
        shown = std::max(shown, walked + distance(leg.a, nearest_on(leg, t.head)) + kStub);
      walked += distance(leg.a, leg.b);
    }
  }
  return shown;
}

// The strip that both pipes of a leg lie in.
QPolygonF between_pipes(QPointF a, QPointF b, double pipes) {
  const QLineF leg(a, b);
  if (leg.length() < 1) return {};
  const QPointF aside = QPointF(-leg.dy(), leg.dx()) / leg.length() * 0.6 * pipes;
  return QPolygonF(QVector<QPointF>{a + aside, b + aside, b - aside, a - aside});
}

class HeaderDetail : public Block {
 public:
  HeaderDetail(const Plan& plan, const Outcome& outcome) : plan_(plan), outcome_(outcome) {
    lines_.push_back(start_of(reversed(outcome.layout.run.line), shown_run(outcome.layout)));
    for (const Polyline& leg : outcome.layout.header.legs)
      if (leg.size() > 1) lines_.push_back(leg);
    for (const Trench& t : outcome.layout.trenches) stubs_.push_back(start_of(middle_line(t), kStub));
    bool first = true;
    for (const auto* all : {&lines_, &stubs_})
      for (const Polyline& line : *all)
        for (Point p : line) {
          if (first) box_ = {p, p};
          first = false;
          box_.low = {std::min(box_.low.x, p.x), std::min(box_.low.y, p.y)};
          box_.high = {std::max(box_.high.x, p.x), std::max(box_.high.y, p.y)};
        }
  }

  double height(double width) const override {
    return heading_height() + 2 * kMargin + down() * per_metre(scale(width)) + pt(3) +
           static_cast<double>(wrapped(key(), type(9), width).size()) * line_height(type(9));
  }
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  // A long header that goes up the plan lies down here: a sheet is wider than the room it has for this.
  bool turned() const { return box_.high.y - box_.low.y > 1.5 * (box_.high.x - box_.low.x); }
  double across() const { return turned() ? box_.high.y - box_.low.y : box_.high.x - box_.low.x; }
  double down() const { return turned() ? box_.high.x - box_.low.x : box_.high.y - box_.low.y; }
  int scale(double width) const {
    const int wide = detail_scale(plan_.units, across(), width - 2 * kMargin - pt(60));
    return std::max(wide, detail_scale(plan_.units, down(), pt(230)));
  }

  QString key() const {
    return turned() ? QObject::tr(
                          "Whole line: supply. Dashed: return. Dot: trench head, where coil and header are "
                          "joined. Turned: what is up on the plan is right here.")
                    : QObject::tr(
                          "Whole line: supply. Dashed: return. Dot: trench head, where coil and header are "
                          "joined.");
  }

  Plan plan_;
  Outcome outcome_;
  std::vector<Polyline> lines_, stubs_;
  Box box_{};
};

void HeaderDetail::paint(QPainter& painter, const QRectF& room) const {
  const int n = scale(room.width());
  paint_heading(painter, room, QObject::tr("HEADER, FROM ABOVE %1").arg(detail_scale_text(n, plan_.units)));
  const double k = per_metre(n), high = down() * k + 2 * kMargin;
  const QRectF area(room.left(), room.top() + heading_height(), room.width(), high);
  const View view{0.5 * (box_.low + box_.high), k, area.size(), turned() ? -std::numbers::pi / 2 : 0};
  Labels labels;
  const Look look = sheet_look();
  PaintOptions options;
  PaintContext c{painter, plan_, &outcome_, view, look, options, labels};
  painter.save();
  painter.translate(area.topLeft());
  const double pipes = std::max(0.2 * k, pt(5));
  for (const Polyline& stub : stubs_) {
    painter.setPen(rule(0.8));
    painter.setBrush(QColor("#f6ecdc"));
    const QPolygonF trench = c.line(strip_along(stub, outcome_.layout.trenches.front().width));
    painter.drawPolygon(trench);
    labels.avoid(trench, true);
    painter.setBrush(Qt::NoBrush);
  }
  for (const Polyline& line : lines_) {
    const QPolygonF on_page = c.line(line);
    painter.setPen(rule(1.6, "#0d3550"));
    painter.drawPolyline(beside(on_page, pipes / 2));
    QPen back = rule(1.6, "#0d3550");
    back.setDashPattern({5, 2.5});
    painter.setPen(back);
    painter.drawPolyline(beside(on_page, -pipes / 2));
    for (int i = 0; i + 1 < on_page.size(); ++i)
      labels.keep_off(between_pipes(on_page[i], on_page[i + 1], pipes));
  }
  for (std::size_t i = 0; i < stubs_.size(); ++i) {
    const QPointF head = c.at(stubs_[i].front());
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor("#0d3550"));
    painter.drawEllipse(head, pt(2.8), pt(2.8));
    painter.setBrush(Qt::NoBrush);
    Label label;
    label.text = QString::number(outcome_.layout.trenches[i].number);
    label.font = type(10, QFont::Bold);
    label.tag = TagShape::round;
    label.tag_fill = Qt::white;
    label.tag_line = label.colour = kInk;
    label.must = true;
    label.rank = 1;
    label.places = {c.at(stubs_[i].back())};
    labels.add(std::move(label));
  }
  if (outcome_.order != nullptr)
    for (const DigStep& step : outcome_.order->steps) {
      if (step.kind != DigKind::header || step.part == 0) continue;
      Label part;
      part.text = text_of(step_name(step));
      part.font = type(9, QFont::DemiBold);
      part.colour = kInk;
      part.must = true;
      for (double share : {0.5, 0.3, 0.7})
        part.places += places_around(c.at(place_along(step.line, share * length(step.line)).at),
                                     QSizeF(pipes, pipes), part.text, part.font, 1);
      labels.add(std::move(part));
    }
  Label house;
  house.text = QObject::tr("to the house: %1").arg(size_of_piece(outcome_, LoopPart::run_supply, 0));
  house.font = type(9, QFont::DemiBold);
  house.colour = kInk;
  house.must = true;
  house.places = places_around(c.at(lines_.front().back()), QSizeF(pt(4), pt(4)), house.text, house.font);
  labels.add(std::move(house));
  labels.paint(painter, QRectF(QPointF(0, 0), area.size()), Qt::white, look.line);
  painter.restore();
  double y = area.bottom() + pt(9);
  for (const QString& line_of_key : wrapped(key(), type(9), room.width())) {
    write(painter, {room.left(), y}, line_of_key, type(9));
    y += line_height(type(9));
  }
}

QString tee_name(const HeaderTree& tree, const Outcome& outcome, int tee) {
  if (tee < 0) return QObject::tr("house");
  QStringList numbers;
  for (int t : tree[static_cast<std::size_t>(tee)].trenches)
    numbers << QString::number(outcome.layout.trenches[static_cast<std::size_t>(t)].number);
  if (numbers.isEmpty()) return tee == 0 ? QObject::tr("end of the run") : QObject::tr("tee");
  return (numbers.size() == 1 ? QObject::tr("head %1") : QObject::tr("heads %1")).arg(numbers.join(", "));
}

}  // namespace

BlockPtr header_block(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty() || outcome.layout.run.line.size() < 2) return nullptr;
  return std::make_shared<HeaderDetail>(plan, outcome);
}

BlockPtr header_table(const Plan& plan, const Outcome& outcome) {
  const auto tree = header_tree(outcome.layout);
  if (!tree || !outcome.flow || plan.flow.arrangement == HeaderArrangement::home_runs) return nullptr;
  const bool reverse = plan.flow.arrangement == HeaderArrangement::reverse_return;
  std::vector<std::vector<Cell>> rows;
  for (const Tee& tee : *tree) {
    const auto index = static_cast<int>(&tee - tree->data());
    const bool run = tee.parent < 0;
    const QString size =
        size_of_piece(outcome, run ? LoopPart::run_supply : LoopPart::header_supply, tee.feeds);
    rows.push_back({{tee_name(*tree, outcome, tee.parent) + " – " + tee_name(*tree, outcome, index)},
                    {shown_length(plan, tee.length)},
                    {QString::number(tee.feeds)},
                    {size.isEmpty() ? "–" : size, std::nullopt, true}});
  }
  QString kind = text_of(std::string(header_arrangement_name(plan.flow.arrangement)));
  if (!kind.isEmpty()) kind[0] = kind[0].toUpper();
  QString note =
      QObject::tr("%1. Cut two pipes of each length, supply and return: both lie in that trench.").arg(kind);
  if (reverse)
    note +=
        " " + QObject::tr("The return of a reverse return comes back beside the header from its far end.");
  note +=
      " " +
      QObject::tr(
          "Each coil, %1, is joined at its head as FITTINGS OF HEADER AND RUN has it: by tees on the way, "
          "by elbows where the header ends. All joints by heat fusion, tested before they are covered.")
          .arg(text_of(plan.wishes.pipe));
  if (plan.flow.header_sizes.empty())
    note +=
        " " + QObject::tr(
                  "Sizes: the lightest set that as a whole keeps the circuits in balance, suits the pump and "
                  "lets the cart flush it; a short piece may be wider so that the long run need not be.");
  return std::make_shared<Table>(QObject::tr("HEADER, PIECE BY PIECE"),
                                 std::vector<Column>{{QObject::tr("From – to"), Align::left, true},
                                                     {QObject::tr("Length"), Align::right},
                                                     {QObject::tr("Circuits"), Align::right},
                                                     {QObject::tr("Pipe, each way"), Align::left}},
                                 std::move(rows), 10, note);
}

}  // namespace underlawn::sheet
