// SPDX-License-Identifier: GPL-3.0-or-later
#include <QObject>
#include <algorithm>

#include "report/report_html.h"

namespace underlawn {

namespace {

constexpr std::size_t kMostRows = 80;  // of what lies further back

QString how(const Page& page, const Figure& f) {
  QString words = QString::fromStdString(f.method).toHtmlEscaped();
  if (!f.source.empty())
    words +=
        "<br>" + page.faint(QObject::tr("Source: %1").arg(QString::fromStdString(f.source).toHtmlEscaped()));
  return words;
}

QString named(const Page& page, const Figure& f, bool with_method) {
  QString words = QString::fromStdString(f.label).toHtmlEscaped();
  if (with_method && f.method != "typed")
    words += "<br>" + page.faint(QString::fromStdString(f.method).toHtmlEscaped());
  return words;
}

void add_inputs(Page& page, const Figure& figure) {
  if (figure.from.empty()) return;
  page.begin_table({QObject::tr("From"), ""});
  for (const std::string& key : figure.from)
    if (const Figure* f = page.figures().find(key)) page.row({named(page, *f, false), page.number(key)});
  page.end_table();
}

void add_further_back(Page& page, const Figure& figure) {
  auto all = page.figures().trace(figure.key);
  std::erase_if(all, [&](const Figure* f) {
    return f == &figure || std::find(figure.from.begin(), figure.from.end(), f->key) != figure.from.end();
  });
  if (all.empty()) return;
  const std::size_t rows = std::min(all.size(), kMostRows);
  page.paragraph("");
  page.begin_table({QObject::tr("Further back"), ""});
  for (std::size_t i = 0; i < rows; ++i) page.row({named(page, *all[i], true), page.number(all[i]->key)});
  page.end_table();
  if (rows < all.size())
    page.paragraph(page.faint(QObject::tr("and %n more; click a number to go on from there", "",
                                          static_cast<int>(all.size() - rows))));
}

}  // namespace

QString trace_html(const Figures& figures, std::string_view key, UnitSystem units, const Theme& theme) {
  Page page(figures, units, theme);
  const Figure* f = figures.find(key);
  if (f == nullptr) {
    page.paragraph(page.faint(QObject::tr("This number is not there in the plan as it is now.")));
    return page.html();
  }
  page.paragraph(
      QString("%1<br><b style=\"font-size:17px\">%2</b>%3")
          .arg(QString::fromStdString(f->label).toHtmlEscaped(), page.value(*f),
               page.faint(" &nbsp;" + QObject::tr("exactly %1").arg(page.value(*f, Fineness::fine)))));
  page.paragraph(f->method == "typed" ? QObject::tr("Typed or drawn.") : how(page, *f));
  add_inputs(page, *f);
  add_further_back(page, *f);
  return page.html();
}

}  // namespace underlawn
