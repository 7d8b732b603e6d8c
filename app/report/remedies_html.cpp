// SPDX-License-Identifier: GPL-3.0-or-later
#include <QObject>
#include <cmath>

#include "report/report_html.h"
#include "window/same_loop.h"

namespace underlawn {

namespace {

QString money(const Plan& plan, double value) {
  return QString("%1 %2").arg(QString::fromStdString(plan.wishes.prices.currency).toHtmlEscaped(),
                              QString::number(std::round(value), 'f', 0));
}

QString price_of(const Plan& plan, const MoreRoom& r) {
  const QString total = money(plan, r.cost), by = money(plan, std::abs(r.dearer));
  return r.dearer < 0 ? QObject::tr("%1 in all, %2 less than now").arg(total, by)
                      : QObject::tr("%1 in all, %2 more than now").arg(total, by);
}

QString one_remedy(const Page& page, const Plan& plan, const MoreRoom& r, std::size_t which) {
  const QString circuits =
      r.circuits == 1 ? QObject::tr("1 circuit") : QObject::tr("%1 circuits").arg(r.circuits);
  QString rich = QString("<b>%1</b>: %2, %3. ")
                     .arg(QString::fromStdString(r.sentence).toHtmlEscaped(), circuits, price_of(plan, r));
  if (!r.holds) rich += QObject::tr("The temperatures do not hold.") + " ";
  if (asks_leave(r))
    rich += QObject::tr("Only where the local code and whoever made the rule allow it: ask first.") + " ";
  return rich + page.link(kTakeLink + QString::number(which), QObject::tr("Take it"));
}

}  // namespace

QString remedies_html(const Page& page, const Plan& plan, const RemedySearch& search) {
  if (search.share)
    return page.faint(QObject::tr("Looking for more room: %1 %").arg(std::lround(100 * *search.share))) +
           " &nbsp; " + page.link(kStopRemediesLink, QObject::tr("Stop"));
  const bool current = search.answer != nullptr && same_loop(search.answer->plan, plan);
  if (!current)
    return page.link(kFindRemediesLink, QObject::tr("Find what makes room for them, with its price"));
  if (search.answer->refusal)
    return QString::fromStdString(search.answer->refusal->message()).toHtmlEscaped();
  if (search.answer->remedies.empty())
    return QObject::tr(
        "No other way, and nothing that is held or kept free, alone or two at once, was found to make room "
        "for more.");
  QStringList lines;
  for (std::size_t i = 0; i < search.answer->remedies.size(); ++i)
    lines << one_remedy(page, plan, search.answer->remedies[i], i);
  return lines.join("<br>");
}

}  // namespace underlawn
