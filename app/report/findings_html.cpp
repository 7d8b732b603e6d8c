// SPDX-License-Identifier: GPL-3.0-or-later
#include <QObject>
#include <utility>

#include "report/report_html.h"

namespace underlawn {

namespace {

QString measured_and_required(const Page& page, const Finding& f) {
  if (f.measured == f.required) return {};  // nothing to compare
  const auto print = [&](double v) {
    return QString::fromStdString(print_quantity(f.quantity, v, page.units())).toHtmlEscaped();
  };
  return QObject::tr("is %1, asked is %2.")
             .arg("<b>" + print(f.measured) + "</b>", "<b>" + print(f.required) + "</b>") +
         " ";
}

QString decision(const Page& page, const Finding& f) {
  const QString key = QString::fromStdString(f.key);
  if (!f.accepted) return page.link(kAcceptLink + key, QObject::tr("Accept…"));
  return QObject::tr("Accepted: %1").arg(QString::fromStdString(f.reason).toHtmlEscaped()) + " &nbsp; " +
         page.link(kWithdrawLink + key, QObject::tr("Take back"));
}

// Where a missing circuit may be found.
QString way_out(const Page& page, const Finding& f, const QString& remedies) {
  if (f.rule != "circuits_missing" || f.severity != Severity::error) return {};
  const QString panel = kPanelLink;
  return remedies + "<br>" +
         QObject::tr("All other ways to lay them: %1. How many it takes: %2.")
             .arg(page.link(panel + "ways", QObject::tr("Ways")),
                  page.link(panel + "size", QObject::tr("Size"))) +
         "<br>";
}

void add_finding(Page& page, const Finding& f, const QString& remedies = {}) {
  const QColor ink = f.accepted ? page.theme().faint : severity_ink(f.severity, page.theme());
  const QString title = QString::fromStdString(f.title).toHtmlEscaped();
  QString rich = page.coloured(QString("%1&nbsp; ").arg(severity_mark(f.severity)), ink);
  rich += f.places.empty() ? "<b>" + title + "</b>"
                           : page.link(kPlaceLink + QString::fromStdString(f.key), "<b>" + title + "</b>");
  rich += page.faint(" &nbsp;" + severity_word(f.severity));
  rich += "<br>" + measured_and_required(page, f) + QString::fromStdString(f.advice).toHtmlEscaped();
  rich += "<br>" + way_out(page, f, remedies);
  if (!f.source.empty())
    rich += QString("%1 &nbsp; ").arg(page.faint(QString::fromStdString(f.source).toHtmlEscaped()));
  rich += decision(page, f);
  page.spaced(rich);
}

}  // namespace

QString severity_mark(Severity severity) {
  switch (severity) {
    case Severity::error:
      return "■";
    case Severity::warning:
      return "▲";
    case Severity::hint:
      break;
  }
  return "●";
}

QString severity_word(Severity severity) {
  switch (severity) {
    case Severity::error:
      return QObject::tr("error");
    case Severity::warning:
      return QObject::tr("warning");
    case Severity::hint:
      break;
  }
  return QObject::tr("hint");
}

QColor severity_ink(Severity severity, const Theme& theme) {
  switch (severity) {
    case Severity::error:
      return theme.error;
    case Severity::warning:
      return theme.warning;
    case Severity::hint:
      break;
  }
  return theme.hint;
}

namespace {

void add_some(Page& page, const Outcome& outcome, const QString& heading, bool (*belongs)(const Finding&),
              const QString& remedies = {}) {
  bool any = false;
  for (const Finding& f : outcome.findings) {
    if (!belongs(f)) continue;
    if (!std::exchange(any, true)) page.heading(heading);
    add_finding(page, f, remedies);
  }
}

}  // namespace

void add_errors(Page& page, const Outcome& outcome, const QString& remedies) {
  add_some(
      page, outcome, QObject::tr("To put right"),
      [](const Finding& f) { return !f.accepted && f.severity == Severity::error; }, remedies);
}

void add_findings(Page& page, const Outcome& outcome) {
  page.anchor(kFindingsAnchor);
  add_some(page, outcome, QObject::tr("To look at"),
           [](const Finding& f) { return !f.accepted && f.severity != Severity::error; });
  add_some(page, outcome, QObject::tr("Accepted"), [](const Finding& f) { return f.accepted; });
  page.paragraph(page.faint(
      QObject::tr("The checks do not replace local codes, utility locating or a competent person.")));
}

}  // namespace underlawn
