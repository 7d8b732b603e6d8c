// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/sheet_type.h"

#include <QFontMetricsF>

#include "canvas/look.h"

namespace underlawn::sheet {

QFont type(double points, QFont::Weight weight) {
  return plan_font(pt(points), weight);
}

double width_of(const QString& text, const QFont& font) {
  return QFontMetricsF(set_for(font, text)).horizontalAdvance(text);
}

double line_height(const QFont& font) {
  return 1.32 * font.pixelSize();
}

void write(QPainter& painter, QPointF at, const QString& text, const QFont& font, const QColor& colour,
           Align align) {
  if (text.isEmpty()) return;
  const double width = align == Align::left ? 0 : width_of(text, font);
  painter.setFont(set_for(font, text));
  painter.setPen(colour);
  painter.drawText(at - QPointF(align == Align::right ? width : width / 2 * (align == Align::centre), 0),
                   text);
}

namespace {

// The most of `word` that fits, at least one character.
qsizetype fitting(const QString& word, const QFont& font, double width) {
  qsizetype n = word.size();
  while (n > 1 && width_of(word.left(n), font) > width) --n;
  return n;
}

}  // namespace

QStringList wrapped(const QString& text, const QFont& font, double width) {
  QStringList lines;
  for (const QString& paragraph : text.split('\n')) {
    QString line;
    for (QString word : paragraph.simplified().split(' ')) {
      const QString longer = line.isEmpty() ? word : line + ' ' + word;
      if (width_of(longer, font) <= width) {
        line = longer;
        continue;
      }
      if (!line.isEmpty()) lines.push_back(line);
      while (width_of(word, font) > width && word.size() > 1) {
        const qsizetype n = fitting(word, font, width);
        lines.push_back(word.left(n));
        word = word.mid(n);
      }
      line = word;
    }
    lines.push_back(line);
  }
  return lines;
}

QString elided(const QString& text, const QFont& font, double width) {
  if (width_of(text, font) <= width) return text;
  const QString cut = text.left(400);
  for (qsizetype n = cut.size(); n > 0; --n) {
    const QString shorter = cut.left(n).trimmed() + "…";
    if (width_of(shorter, font) <= width) return shorter;
  }
  return "…";
}

QStringList wrapped(const QString& text, const QFont& font, double width, int lines) {
  QStringList all = wrapped(text.left(2000), font, width);
  if (all.size() <= lines) return all;
  const QString rest = all.mid(lines - 1).join(' ');
  all = all.mid(0, lines - 1);
  all.push_back(elided(rest, font, width));
  return all;
}

QFont fitting(const QString& text, double width, const Sizes& sizes, QFont::Weight weight, int lines) {
  double points = sizes.most;
  while (points > sizes.least && wrapped(text, type(points, weight), width).size() > lines) points -= 0.25;
  return type(std::max(points, sizes.least), weight);
}

void write_fitted(QPainter& painter, QPointF at, const QString& text, double width, const Sizes& sizes,
                  QFont::Weight weight, const QColor& colour) {
  const QFont font = fitting(text, width, sizes, weight);
  write(painter, at, elided(text, font, width), font, colour);
}

QPen rule(double points, const QColor& colour) {
  return {colour, pt(points), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
}

void write_on_lines(QPainter& painter, QPointF at, const QString& text, double width, const Sizes& sizes,
                    int lines, const QColor& colour) {
  const QFont one = fitting(text, width, sizes);
  const QFont font = width_of(text, one) <= width ? one : fitting(text, width, sizes, QFont::Normal, lines);
  for (const QString& line : wrapped(text, font, width, lines)) {
    write(painter, at, line, font, colour);
    at.ry() += line_height(font);
  }
}

}  // namespace underlawn::sheet
