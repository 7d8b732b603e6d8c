// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/page.h"

#include <QStringList>
#include <QUrl>

#include "plan/figures/fineness.h"

namespace underlawn {

QString Page::value(const Figure& figure, Fineness fineness) const {
  const Fineness shown = figures::fineness_of(figure.key, units_, fineness);
  return QString::fromStdString(
             print_quantity(figure.quantity, figure.value, figures::units_of(figure.key, units_), shown))
      .toHtmlEscaped();
}

QString Page::link(const QString& address, const QString& words) const {
  return QString("<a href=\"%1\" style=\"text-decoration:none; color:%2\">%3</a>")
      .arg(QString::fromLatin1(QUrl::toPercentEncoding(address, ":/")), theme_.grass.name(), words);
}

QString Page::number(std::string_view key, Fineness fineness) const {
  const Figure* f = figures_.find(key);
  if (f == nullptr) return faint("–");
  QString words = value(*f, fineness);
  words.replace(' ', QChar(0x00a0));  // a number and its unit stay on one line
  return link(kFigureLink + QString::fromStdString(f->key), words);
}

QString Page::coloured(const QString& words, const QColor& colour) const {
  return QString("<span style=\"color:%1\">%2</span>").arg(colour.name(), words);
}

QString Page::faint(const QString& words) const {
  return coloured(words, theme_.faint);
}

void Page::heading(const QString& words) {
  html_ += QString("<p style=\"margin-top:18px; margin-bottom:6px; font-weight:600\">%1</p>")
               .arg(words.toHtmlEscaped());
}

void Page::anchor(const QString& name) {
  html_ += QString("<a name=\"%1\"></a>").arg(name);
}

void Page::paragraph(const QString& rich) {
  html_ += QString("<p style=\"margin-top:0; margin-bottom:6px\">%1</p>").arg(rich);
}

void Page::spaced(const QString& rich) {
  html_ += QString("<p style=\"margin-top:0; margin-bottom:14px\">%1</p>").arg(rich);
}

void Page::begin_table(const QStringList& heads) {
  html_ += QString("<table width=\"100%\" cellspacing=\"0\" cellpadding=\"4\">");
  if (heads.isEmpty()) return;
  QStringList cells;
  for (const QString& head : heads) cells << faint(head.toHtmlEscaped());
  row(cells);
}

void Page::row(const QStringList& rich_cells) {
  html_ += "<tr>";
  for (qsizetype i = 0; i < rich_cells.size(); ++i)
    html_ += QString("<td align=\"%1\" style=\"border-bottom:1px solid %2\">%3</td>")
                 .arg(i == 0 ? "left" : "right", theme_.line.name(), rich_cells[i]);
  html_ += "</tr>";
}

void Page::row_beneath(const QString& rich_name, const QStringList& rich_cells) {
  html_ += QString("<tr><td colspan=\"%1\" style=\"padding-bottom:0\">%2</td></tr>")
               .arg(rich_cells.size())
               .arg(rich_name);
  row(rich_cells);
}

void Page::sum_row(const QString& rich_name, const QString& rich_sum, int columns) {
  html_ += QString(
               "<tr><td colspan=\"%1\" style=\"border-bottom:1px solid %2\">%3</td>"
               "<td align=\"right\" style=\"border-bottom:1px solid %2\">%4</td></tr>")
               .arg(columns - 1)
               .arg(theme_.line.name(), rich_name, rich_sum);
}

void Page::end_table() {
  html_ += "</table>";
}

}  // namespace underlawn
