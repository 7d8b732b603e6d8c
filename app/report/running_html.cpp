// SPDX-License-Identifier: GPL-3.0-or-later
// What the house costs to run and when the loop has paid, in the report and on the Price page.
#include <QObject>
#include <cmath>

#include "cost/comparison.h"
#include "report/report_html.h"

namespace underlawn {

namespace {

QString years(const Page& page, const std::string& key, bool priced) {
  if (!priced) return "–";
  if (!page.has(key)) return QObject::tr("never");
  const double value = std::round(10 * page.figures().at(key).value) / 10;
  return page.link(kFigureLink + QString::fromStdString(key), QString::number(value, 'g', 4));
}

// Of two printed in whole units what is left between them as printed; the figure itself is behind it.
QString between(const Page& page, const std::string& key, const std::string& from, const std::string& less) {
  if (!page.has(key) || !page.has(from) || !page.has(less)) return page.number(key, Fineness::coarse);
  const double value = std::round(page.figures().at(from).value) - std::round(page.figures().at(less).value);
  return page.link(
      kFigureLink + QString::fromStdString(key),
      QString::fromStdString(print_quantity(Quantity::money, value + 0.0, page.units(), Fineness::coarse)));
}

QString tonnes(const Page& page, const std::string& key) {
  if (!page.has(key)) return "–";
  return page.link(kFigureLink + QString::fromStdString(key),
                   QString::number(page.figures().at(key).value / 1000, 'f', 1));
}

void add_costs_of(Page& page, const Comparison& c) {
  page.begin_table(
      {QObject::tr("First cost"), QObject::tr("A year"), QObject::tr("Life cycle"), QObject::tr("CO₂, t")});
  const auto row = [&](const std::string& key, const QString& name) {
    page.row_beneath(
        name, {page.number(key + ".first", Fineness::coarse), page.number(key + ".running", Fineness::coarse),
               page.number(key + ".life_cycle", Fineness::coarse), tonnes(page, key + ".emission")});
  };
  row("run.loop", QObject::tr("Ground loop"));
  for (std::size_t i = 0; i < c.others.size(); ++i)
    row("run.other_" + std::to_string(i + 1), QString::fromStdString(c.others[i].name).toHtmlEscaped());
  page.end_table();
}

void add_paybacks(Page& page, const Comparison& c) {
  if (c.others.empty()) return;
  page.paragraph(page.faint(QObject::tr("Ground loop against")));
  page.begin_table({QObject::tr("Saves a year"), QObject::tr("Pays back, years"), QObject::tr("discounted"),
                    QObject::tr("Net savings")});
  for (std::size_t i = 0; i < c.others.size(); ++i) {
    const std::string key = "run.other_" + std::to_string(i + 1);
    page.row_beneath(
        QString::fromStdString(c.others[i].name).toHtmlEscaped(),
        {between(page, key + ".saved", key + ".running", "run.loop.running"),
         years(page, key + ".payback", c.priced), years(page, key + ".discounted_payback", c.priced),
         between(page, key + ".net_savings", key + ".life_cycle", "run.loop.life_cycle")});
  }
  page.end_table();
}

}  // namespace

void add_running(Page& page, const Plan& plan, const Outcome& outcome) {
  if (outcome.comparison == nullptr || !page.has("run.loop.first")) return;
  const Comparison& c = *outcome.comparison;
  page.heading(QObject::tr("Running cost over %1 years, %2")
                   .arg(c.years)
                   .arg(QString::fromStdString(plan.wishes.prices.currency)));
  add_costs_of(page, c);
  add_paybacks(page, c);
  if (!c.priced && !c.others.empty())
    page.paragraph(QObject::tr(
        "The price of the heat pump indoors was not entered (Price page): the first cost of the loop is "
        "without it, and no payback is told."));
  page.paragraph(page.faint(
      c.others.empty()
          ? QObject::tr("Describe other ways to heat and cool on the Price page to see when the loop pays.")
          : QObject::tr("“A year” is energy and maintenance at today's prices; “discounted” and the "
                        "life cycle take in rising prices and what is bought again. All rests on the "
                        "prices and efficiencies entered.")));
}

}  // namespace underlawn
