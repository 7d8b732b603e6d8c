// SPDX-License-Identifier: GPL-3.0-or-later
// Lettering of sheets, in sheet units.
#pragma once

#include <QColor>
#include <QFont>
#include <QPainter>
#include <QStringList>
#include <string>

#include "sheets/sheet.h"

namespace underlawn::sheet {

constexpr double pt(double points) {
  return points * kSheetUnits / 72;
}
constexpr double mm(double millimetres) {
  return millimetres * kSheetUnits / 25.4;
}
constexpr double per_metre(int scale) {
  return kSheetUnits / 0.0254 / scale;
}  // sheet units

inline const QColor kInk = Qt::black;
inline const QColor kFaint = "#444444";
inline const QColor kRule = "#9a9a9a";
inline const QColor kTint = "#eeeeee";

QFont type(double points, QFont::Weight weight = QFont::Normal);
double width_of(const QString& text, const QFont& font);
double line_height(const QFont& font);

enum class Align { left, centre, right };
// `at` is the left end, middle or right end of the baseline.
void write(QPainter& painter, QPointF at, const QString& text, const QFont& font, const QColor& colour = kInk,
           Align align = Align::left);

// Broken at blanks into lines no wider than `width`; a word too long for a line is broken too.
QStringList wrapped(const QString& text, const QFont& font, double width);
// At most `lines` lines; what is left out shows as an ellipsis.
QStringList wrapped(const QString& text, const QFont& font, double width, int lines);
QString elided(const QString& text, const QFont& font, double width);

// The largest type between the two sizes in which the text stands on so many lines of the width; the smallest
// where it does in none.
struct Sizes {
  double most, least;  // points
};
QFont fitting(const QString& text, double width, const Sizes& sizes, QFont::Weight weight = QFont::Normal,
              int lines = 1);
// On one line, from `at`; cut short where the smallest is too large.
void write_fitted(QPainter& painter, QPointF at, const QString& text, double width, const Sizes& sizes,
                  QFont::Weight weight = QFont::Normal, const QColor& colour = kInk);

// On one line from `at`, else on so many in smaller type; cut short where the smallest is too large.
void write_on_lines(QPainter& painter, QPointF at, const QString& text, double width, const Sizes& sizes,
                    int lines, const QColor& colour = kInk);

inline QString text_of(const std::string& s) {
  return QString::fromStdString(s);
}

QPen rule(double points, const QColor& colour = kInk);

}  // namespace underlawn::sheet
