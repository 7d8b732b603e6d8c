// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/support/pdf_tools.h"

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTransform>
#include <QXmlStreamReader>

namespace underlawn::pdf {

namespace {

// What the tool writes to standard output about the PDF.
QByteArray run(const QString& tool, QStringList before, const QByteArray& pdf, const QStringList& after) {
  QTemporaryDir folder;
  const QString path = folder.filePath("sheet.pdf");
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return {};
  file.write(pdf);
  file.close();
  QProcess process;
  process.start(tool, before << path << after);
  process.waitForFinished(60'000);
  return process.readAllStandardOutput();
}

QTransform matrix_of(const QString& text) {
  static const QRegularExpression number("-?[0-9.]+(e-?[0-9]+)?");
  QVector<double> m;
  for (auto i = number.globalMatch(text); i.hasNext();) m.push_back(i.next().captured().toDouble());
  return m.size() == 6 ? QTransform(m[0], m[1], m[2], m[3], m[4], m[5]) : QTransform();
}

QString style_value(const QString& style, const QString& name) {
  for (const QString& part : style.split(';'))
    if (part.startsWith(name + ":")) return part.mid(name.size() + 1);
  return {};
}

// Straight pieces of an SVG path in `d`, which cairo writes with absolute M, L, C and Z.
QVector<QLineF> lines_of(const QString& d, const QTransform& matrix) {
  QVector<QLineF> lines;
  QPointF start, at;
  const QStringList words = d.split(' ', Qt::SkipEmptyParts);
  for (qsizetype i = 0; i < words.size();) {
    const QString op = words[i];
    const qsizetype numbers = op == "C" ? 6 : op == "Z" ? 0 : 2;
    if (i + numbers >= words.size() + (numbers == 0)) break;
    const QPointF to =
        numbers == 0 ? start : QPointF(words[i + numbers - 1].toDouble(), words[i + numbers].toDouble());
    if (op == "L" || op == "Z") lines.push_back(matrix.map(QLineF(at, to)));
    if (op == "M") start = to;
    at = to;
    i += 1 + numbers;
  }
  return lines;
}

struct Path {
  QString d, style, transform;
};

QVector<Path> paths(const QByteArray& pdf, int page) {
  const QString n = QString::number(page);
  QXmlStreamReader xml(run("pdftocairo", {"-svg", "-f", n, "-l", n}, pdf, {"-"}));
  QVector<Path> all;
  int inside_symbols = 0;
  while (!xml.atEnd()) {
    xml.readNext();
    if (xml.isStartElement() && xml.name() == u"defs") ++inside_symbols;
    if (xml.isEndElement() && xml.name() == u"defs") --inside_symbols;
    if (!xml.isStartElement() || xml.name() != u"path" || inside_symbols > 0) continue;
    const auto a = xml.attributes();
    all.push_back({a.value("d").toString(), a.value("style").toString(), a.value("transform").toString()});
  }
  return all;
}

}  // namespace

QVector<Stroke> strokes(const QByteArray& pdf, int page) {
  QVector<Stroke> all;
  for (const Path& path : paths(pdf, page)) {
    if (style_value(path.style, "stroke-width").isEmpty()) continue;
    const QTransform matrix = matrix_of(path.transform);
    const QString dashes = style_value(path.style, "stroke-dasharray");
    all.push_back({lines_of(path.d, matrix),
                   style_value(path.style, "stroke-width").toDouble() * matrix.m11(),
                   dashes.isEmpty() || dashes == "none" ? 0 : static_cast<int>(dashes.count(',') + 1)});
  }
  return all;
}

QVector<QRectF> filled_boxes(const QByteArray& pdf, int page) {
  QVector<QRectF> boxes;
  for (const Path& path : paths(pdf, page)) {
    if (!style_value(path.style, "fill").startsWith("rgb(0%,0%,0%)")) continue;
    QPolygonF corners;
    for (const QLineF& line : lines_of(path.d, matrix_of(path.transform))) corners << line.p1();
    boxes.push_back(corners.boundingRect());
  }
  return boxes;
}

QString text(const QByteArray& pdf, int page) {
  QStringList range{"-layout", "-enc", "UTF-8"};
  if (page > 0) range << "-f" << QString::number(page) << "-l" << QString::number(page);
  return QString::fromUtf8(run("pdftotext", range, pdf, {"-"}));
}

QString text_in_order(const QByteArray& pdf) {
  return QString::fromUtf8(run("pdftotext", {"-raw", "-enc", "UTF-8"}, pdf, {"-"}));
}

QString fonts(const QByteArray& pdf) {
  return QString::fromUtf8(run("pdffonts", {}, pdf, {}));
}

QStringList images(const QByteArray& pdf) {
  return QString::fromUtf8(run("pdfimages", {"-list"}, pdf, {})).split('\n', Qt::SkipEmptyParts).mid(2);
}

QString info(const QByteArray& pdf) {
  return QString::fromUtf8(run("pdfinfo", {}, pdf, {}));
}

}  // namespace underlawn::pdf
