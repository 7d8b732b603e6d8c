// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/survey_marks.h"

#include <QPainter>

namespace underlawn {

namespace {

constexpr double kMark = 5;          // half a mark
constexpr double kRoomForName = 34;  // device units of a course that can carry its number
constexpr std::size_t kMostNames = 400;

QPolygonF on_device(const std::vector<Point>& points, const View& view) {
  QPolygonF line;
  for (Point p : points) line << view.to_device(p);
  return line;
}

QPen dashed(const QColor& colour, double width, bool tie) {
  QPen pen(colour, width, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
  pen.setDashPattern(tie ? QList<qreal>{1, 3} : QList<qreal>{6, 2});
  return pen;
}

void draw_line(QPainter& painter, const QPolygonF& line, const Look& look, const QPen& pen) {
  QColor halo = look.ground;
  halo.setAlpha(200);
  painter.setPen(QPen(halo, pen.widthF() + 3));
  painter.drawPolyline(line);
  painter.setPen(pen);
  painter.drawPolyline(line);
}

// Words on a patch of ground, so that they can be read over anything.
void draw_words(QPainter& painter, QPointF middle, const QString& words, const Look& look,
                const QColor& colour) {
  const QFont font = set_for(plan_font(look.text_size), words);
  const QFontMetricsF metrics(font);
  QRectF box(0, 0, metrics.horizontalAdvance(words) + 6, metrics.height() + 2);
  box.moveCenter(middle);
  QColor patch = look.ground;
  patch.setAlpha(220);
  painter.setPen(Qt::NoPen);
  painter.setBrush(patch);
  painter.drawRoundedRect(box, 3, 3);
  painter.setBrush(Qt::NoBrush);
  painter.setFont(font);
  painter.setPen(colour);
  painter.drawText(box, Qt::AlignCenter, words);
}

void paint_courses(QPainter& painter, const SurveyMarks& s, const View& view, const Look& look) {
  for (std::size_t i = 0; i < s.courses.size(); ++i) {
    const bool picked = static_cast<int>(i) == s.picked_course;
    draw_line(painter, on_device(s.courses[i].line, view), look,
              picked ? QPen(look.selection, 3) : dashed(look.ghost, 2, s.courses[i].tie));
  }
  for (std::size_t i = 0; i < s.courses.size() && i < kMostNames; ++i) {
    const QPolygonF line = on_device(s.courses[i].line, view);
    const qsizetype half = line.size() / 2;
    const QPointF middle = line.size() > 2 ? line[half] : (line.first() + line.last()) / 2;
    const QPointF across = line.last() - line.first();
    if (std::hypot(across.x(), across.y()) >= kRoomForName || static_cast<int>(i) == s.picked_course)
      draw_words(painter, middle, s.courses[i].name, look, look.ghost);
  }
}

void paint_beginning(QPainter& painter, const SurveyMarks& s, const View& view, const Look& look) {
  if (s.misclosure) {
    draw_line(painter, on_device({s.misclosure->a, s.misclosure->b}, view), look, QPen(look.error, 2));
    const QPointF end = view.to_device(s.misclosure->a);
    const double half = QFontMetricsF(plan_font(look.text_size)).horizontalAdvance(s.misclosure_words) / 2;
    if (half > 0) draw_words(painter, end + QPointF(half, 18), s.misclosure_words, look, look.error);
  }
  if (!s.begin) return;
  const QPointF at = view.to_device(*s.begin);
  painter.setPen(QPen(look.ghost, 2));
  painter.setBrush(look.ground);
  painter.drawRect(QRectF(at - QPointF(kMark, kMark), QSizeF(2 * kMark, 2 * kMark)));
  painter.setBrush(Qt::NoBrush);
}

void paint_mark(QPainter& painter, const SurveyMarks::Mark& mark, const View& view, const Look& look) {
  const QPointF at = view.to_device(mark.at);
  const QColor colour = mark.picked ? look.selection : look.ghost;
  if (mark.picked && mark.base) {
    draw_line(painter, on_device({mark.base->a, mark.at}, view), look, QPen(colour, 1, Qt::DashLine));
    draw_line(painter, on_device({mark.base->b, mark.at}, view), look, QPen(colour, 1, Qt::DashLine));
  }
  painter.setPen(QPen(colour, mark.picked ? 3 : 2));
  painter.setBrush(look.ground);
  painter.drawEllipse(at, kMark, kMark);
  painter.drawLine(at - QPointF(2 * kMark, 0), at + QPointF(2 * kMark, 0));
  painter.drawLine(at - QPointF(0, 2 * kMark), at + QPointF(0, 2 * kMark));
  painter.setBrush(Qt::NoBrush);
}

void paint_names(QPainter& painter, const SurveyMarks& s, const View& view, const Look& look) {
  for (std::size_t i = 0; i < s.marks.size(); ++i) {
    if (i >= kMostNames && !s.marks[i].picked) continue;
    const QFontMetricsF metrics(plan_font(look.text_size));
    const double half = metrics.horizontalAdvance(s.marks[i].name) / 2;
    draw_words(painter, view.to_device(s.marks[i].at) + QPointF(half + 3 * kMark, -2 * kMark),
               s.marks[i].name, look, s.marks[i].picked ? look.selection : look.text);
  }
}

}  // namespace

void paint_survey(QPainter& painter, const SurveyMarks& survey, const View& view, const Look& look) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setBrush(Qt::NoBrush);
  paint_courses(painter, survey, view, look);
  paint_beginning(painter, survey, view, look);
  for (const SurveyMarks::Mark& mark : survey.marks) paint_mark(painter, mark, view, look);
  paint_names(painter, survey, view, look);
  painter.restore();
}

std::vector<Point> places_of(const SurveyMarks& survey) {
  std::vector<Point> places;
  for (const SurveyMarks::Course& c : survey.courses)
    places.insert(places.end(), c.line.begin(), c.line.end());
  for (const SurveyMarks::Mark& m : survey.marks) places.push_back(m.at);
  return places;
}

}  // namespace underlawn
