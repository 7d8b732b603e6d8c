// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/figure_table.h"

#include "layout/header_groups.h"
#include "plan/figures/groups.h"
#include "report/page.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

// What running it costs is kept under "run." as well.
const std::vector<std::string> kOfTheRun = {"run.length", "run.shared", "run.pipe", "run.dug_length",
                                            "dig.run."};

std::vector<std::string> beginnings(const Selected& what) {
  if (what.kind == Selected::Kind::run) return kOfTheRun;
  const std::string key = what.kind == Selected::Kind::trench ? figures::trench_key(what.id) : "header";
  return {key + ".", "dig." + key + "."};
}

// "Trench 2, head x" under the heading "Trench 2" is "Head x".
QString without_name(const QString& label) {
  const QString rest = label.mid(label.indexOf(", ") + 2);
  return label.contains(", ") ? rest.left(1).toUpper() + rest.mid(1) : label;
}

QString title_of(const Selected& what) {
  if (what.kind == Selected::Kind::trench) return FigureTable::tr("Trench %1").arg(what.id);
  if (what.kind == Selected::Kind::header && what.id > 0)
    return FigureTable::tr("Header of group %1").arg(what.id);
  return what.kind == Selected::Kind::header ? FigureTable::tr("Header") : FigureTable::tr("Supply run");
}

bool held(const Plan& plan, const Layout& layout, const Selected& what) {
  if (what.kind == Selected::Kind::header) return header_is_held(plan.wishes, what.id);
  if (what.kind == Selected::Kind::run) return !plan.wishes.run_by.empty();
  return std::any_of(layout.trenches.begin(), layout.trenches.end(),
                     [&](const Trench& t) { return t.number == what.id && t.locked; });
}

QString how_it_lies(const Plan& plan, const Layout& layout, const Selected& what) {
  if (held(plan, layout, what))
    return FigureTable::tr("Held where it lies; the rest is arranged round it. K lets it go.");
  const bool in_run = what.kind == Selected::Kind::trench &&
                      std::any_of(layout.trenches.begin(), layout.trenches.end(), [&](const Trench& t) {
                        return t.number == what.id && t.role == TrenchRole::supply;
                      });
  if (in_run)
    return FigureTable::tr(
        "This coil lies in the supply run and goes where that goes: hold the run instead.");
  if (what.kind == Selected::Kind::trench && !plan.wishes.given.empty())
    return FigureTable::tr("Drawn where it lies.");
  return FigureTable::tr(
      "Laid out by the program: it follows from the lot and from what is asked for. K holds it.");
}

}  // namespace

FigureTable::FigureTable(Document& document, Selected what, QWidget* parent)
    : QTextBrowser(parent), document_(document), what_(what) {
  setOpenLinks(false);
  setFrameShape(QFrame::NoFrame);
  QTextBrowser::document()->setDocumentMargin(14);
  connect(this, &QTextBrowser::anchorClicked, this, [this](const QUrl& link) {
    if (const QString key = target_of(link, kFigureLink); !key.isEmpty()) emit trace_asked(key);
  });
  connect(&document, &Document::outcome_changed, this, &FigureTable::refresh);
  connect(&document, &Document::plan_changed, this, &FigureTable::refresh);
  refresh();
}

void FigureTable::refresh() {
  const Outcome* outcome = document_.outcome();
  if (outcome == nullptr) return;
  Page page(outcome->figures, document_.plan().units, theme_now());
  page.heading(title_of(what_));
  page.paragraph(page.faint(how_it_lies(document_.plan(), outcome->layout, what_)));
  page.begin_table({});
  bool any = false;
  for (const std::string& beginning : beginnings(what_))
    for (const Figure& f : outcome->figures.all())
      if (f.key.rfind(beginning, 0) == 0) {
        page.row({without_name(QString::fromStdString(f.label)).toHtmlEscaped(), page.number(f.key)});
        any = true;
      }
  page.end_table();
  if (!any) page.paragraph(page.faint(tr("It is not there any more.")));
  setHtml(page.html());
}

QString target_of(const QUrl& link, const char* kind) {
  const QString text = QUrl::fromPercentEncoding(link.toEncoded());
  return text.startsWith(QLatin1String(kind)) ? text.mid(static_cast<int>(qstrlen(kind))) : QString();
}

}  // namespace underlawn
