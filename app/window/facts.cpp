// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/facts.h"

#include "window/theme_now.h"

namespace underlawn {

namespace {

QString faint(const QString& text) {
  return QString("<span style='color:%1'>%2</span>").arg(theme_now().faint.name(), text);
}

QString row_of(const Fact& fact) {
  const QString name = faint(fact.name.toHtmlEscaped());
  if (fact.value.isEmpty()) return QString("<tr><td colspan=2>%1</td></tr>").arg(name);
  return QString("<tr><td>%1&nbsp;&nbsp;</td><td align=right>%2</td></tr>")
      .arg(name, fact.value.toHtmlEscaped());
}

}  // namespace

Facts::Facts(QWidget* parent) : QLabel(parent) {
  setTextFormat(Qt::RichText);
  setWordWrap(true);
  setTextInteractionFlags(Qt::TextSelectableByMouse);
  setAlignment(Qt::AlignTop | Qt::AlignLeft);
}

void Facts::say(const QString& html) {
  if (html != text()) setText(html);
  setVisible(!html.isEmpty());
}

void Facts::show_facts(const std::vector<Fact>& facts) {
  facts_ = facts;
  QString html;
  for (const Fact& fact : facts) html += row_of(fact);
  say(html.isEmpty() ? html : "<table width='100%' cellspacing=0 cellpadding=2>" + html + "</table>");
}

void Facts::show_table(const std::vector<QStringList>& rows) {
  facts_.clear();
  QString html;
  for (const QStringList& row : rows) {
    html += "<tr>";
    for (qsizetype i = 0; i < row.size(); ++i)
      html += i == 0 || &row == rows.data() ? "<td>" + faint(row[i]) + "</td>" : "<td>" + row[i] + "</td>";
    html += "</tr>";
  }
  say(html.isEmpty() ? html : "<table width='100%' cellspacing=0 cellpadding=3>" + html + "</table>");
}

QString Facts::value_of(const QString& name) const {
  for (const Fact& fact : facts_)
    if (fact.name == name) return fact.value;
  return {};
}

}  // namespace underlawn
