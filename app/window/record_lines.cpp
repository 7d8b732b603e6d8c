// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/record_lines.h"

#include "window/theme_now.h"

namespace underlawn {

namespace {

QColor colour_of(Tone tone) {
  const Theme& t = theme_now();
  switch (tone) {
    case Tone::good:
      return t.grass;
    case Tone::doubt:
      return t.warning;
    case Tone::bad:
      return t.error;
    case Tone::open:
      break;
  }
  return t.faint;
}

QString line_html(const RecordLine& line) {
  const QString title = QString::fromStdString(line.title).toHtmlEscaped();
  QString words = QString::fromStdString(line.words).toHtmlEscaped();
  if (line.tone == Tone::open)
    words = QString("<span style='color:%1'>%2</span>").arg(theme_now().faint.name(), words);
  return QString("<tr><td width=18 style='color:%1'><b>%2</b></td><td><b>%3</b><br>%4</td></tr>")
      .arg(colour_of(line.tone).name(), tone_mark(line.tone), title, words);
}

}  // namespace

QString tone_mark(Tone tone) {
  switch (tone) {
    case Tone::good:
      return QStringLiteral("✓");
    case Tone::doubt:
      return QStringLiteral("?");
    case Tone::bad:
      return QStringLiteral("✗");
    case Tone::open:
      break;
  }
  return QStringLiteral("○");
}

RecordLines::RecordLines(const QString& name, QWidget* parent) : QLabel(parent) {
  setAccessibleName(name);
  setTextFormat(Qt::RichText);
  setWordWrap(true);
  setTextInteractionFlags(Qt::TextSelectableByMouse);
  setAlignment(Qt::AlignTop | Qt::AlignLeft);
  hide();
}

void RecordLines::show_lines(const std::vector<RecordLine>& lines) {
  QString html;
  for (const RecordLine& line : lines) html += line_html(line);
  if (!html.isEmpty()) html = QString("<table width='100%' cellspacing=0 cellpadding=3>%1</table>").arg(html);
  if (html != text()) setText(html);
  setVisible(!html.isEmpty());
}

}  // namespace underlawn
