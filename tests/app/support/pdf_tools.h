// SPDX-License-Identifier: GPL-3.0-or-later
// A PDF as poppler's tools see it: a page's strokes, its text, its fonts. None of it is our own code.
#pragma once

#include <QByteArray>
#include <QLineF>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <QVector>

namespace underlawn::pdf {

// A stroke of straight pieces, in points (1/72 in) on the page.
struct Stroke {
  QVector<QLineF> lines;
  double width = 0;  // points
  int dashes = 0;    // numbers in the dash pattern
};

QVector<Stroke> strokes(const QByteArray& pdf, int page);       // pdftocairo -svg
QVector<QRectF> filled_boxes(const QByteArray& pdf, int page);  // black rectangles, the same
QString text(const QByteArray& pdf, int page = 0);              // pdftotext -layout; 0: all pages
QString text_in_order(const QByteArray& pdf);                   // pdftotext -raw: as it was drawn
QString fonts(const QByteArray& pdf);                           // pdffonts
QString info(const QByteArray& pdf);                            // pdfinfo
QStringList images(const QByteArray& pdf);                      // pdfimages -list, a line each, no head

}  // namespace underlawn::pdf
