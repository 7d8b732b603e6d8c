// SPDX-License-Identifier: GPL-3.0-or-later
// What it costs and how long it lies open, in the report.
#include <QObject>

#include "cost/bill.h"
#include "cost/print_price.h"
#include "report/report_html.h"

namespace underlawn {

namespace {

QString group_name(BillGroup group) {
  switch (group) {
    case BillGroup::pipe:
      return QObject::tr("Pipe");
    case BillGroup::fittings:
      return QObject::tr("Fittings");
    case BillGroup::goods:
      return QObject::tr("Other goods");
    case BillGroup::work:
      return QObject::tr("Digging and crew");
    case BillGroup::own:
      return QObject::tr("Your own lines");
  }
  return {};
}

QString figure_link(const Page& page, const std::string& key, const QString& words) {
  return page.link(kFigureLink + QString::fromStdString(key), words);
}

QString price(const Page& page, const BillLine& line) {
  const std::string key = "price." + line.key;
  if (!page.has(key)) return page.coloured(QObject::tr("no price"), page.theme().warning);
  QString words;
  if (line.group == BillGroup::own || line.unit == PriceUnit::hour || line.unit == PriceUnit::day)
    words = QString::fromStdString(print_quantity(Quantity::money, *line.price, page.units()));
  else
    words = QString::fromStdString(
        print_price(page.figures().at(key).value, quantity_of(line.unit), page.units()));
  // Broken behind its number, where it has to be.
  const auto unit = words.indexOf(' ') + 1;
  if (unit > 0) words = words.left(unit) + words.mid(unit).replace(' ', QChar(0x00a0));
  return figure_link(page, key, words);
}

constexpr int kColumns = 3;  // amount, price, sum

QString amount(const Page& page, const BillLine& line) {
  QString words = QString::fromStdString(line.group == BillGroup::own
                                             ? print_quantity(Quantity::count, line.needed, page.units()) +
                                                   (line.unit_text.empty() ? "" : " " + line.unit_text)
                                             : amount_text(line.unit, line.bought.amount, page.units()));
  return figure_link(page, "amount." + line.key, words.toHtmlEscaped());
}

void add_group(Page& page, const Bill& bill, BillGroup group) {
  bool first = true;
  for (const BillLine& line : bill.lines) {
    if (line.group != group) continue;
    if (first) page.sum_row("<b>" + group_name(group) + "</b>", "", kColumns);
    first = false;
    page.row_beneath(QString::fromStdString(line.item).toHtmlEscaped(),
                     {amount(page, line), price(page, line), page.number("cost." + line.key)});
  }
}

void add_sum(Page& page, const QString& words, const char* key) {
  if (page.has(key)) page.sum_row(words, page.number(key), kColumns);
}

void add_sums(Page& page, const Bill& bill, bool pump_apart) {
  const bool more = bill.overhead > 0 || bill.markup > 0 || bill.tax > 0;
  if (more) add_sum(page, QObject::tr("Cost"), "bill.cost");
  if (bill.overhead > 0) add_sum(page, QObject::tr("Overhead"), "bill.overhead");
  if (bill.markup > 0) add_sum(page, QObject::tr("Markup"), "bill.markup");
  if (bill.tax > 0) add_sum(page, QObject::tr("Tax"), "bill.tax");
  page.sum_row("<b>" + (pump_apart ? QObject::tr("Loop alone") : QObject::tr("In all")) + "</b>",
               page.number("cost.total"), kColumns);
  for (std::size_t i = 0; i < bill.incentives.size(); ++i) {
    const std::string key = "bill.incentive_" + std::to_string(i + 1);
    if (page.has(key))
      page.sum_row(QString::fromStdString(bill.incentives[i].name).toHtmlEscaped(), "−" + page.number(key),
                   kColumns);
  }
  if (!bill.incentives.empty()) add_sum(page, QObject::tr("After incentives"), "cost.net");
  if (pump_apart && page.has("run.loop.first")) {
    add_sum(page, QObject::tr("Heat pump indoors"), "run.loop.unit_cost");
    add_sum(page, "<b>" + QObject::tr("In all, heat pump in") + "</b>", "run.loop.first");
  }
  if (page.has("cost.by_capacity"))
    page.sum_row(
        QObject::tr("By capacity"),
        figure_link(page, "cost.by_capacity",
                    QString::fromStdString(print_price(page.figures().at("cost.by_capacity").value / 1000,
                                                       Quantity::power, page.units()))),
        kColumns);
}

}  // namespace

void add_bill(Page& page, const Plan& plan, const Outcome& outcome) {
  if (!page.has("cost.total") || outcome.bill == nullptr) return;
  const Bill& bill = *outcome.bill;
  page.heading(QObject::tr("Cost, %1").arg(QString::fromStdString(plan.wishes.prices.currency)));
  page.begin_table({QObject::tr("Amount"), QObject::tr("Price"), QObject::tr("Sum")});
  for (int group = 0; group < kBillGroups; ++group) add_group(page, bill, static_cast<BillGroup>(group));
  add_sums(page, bill, plan.pricing.running.unit_cost > 0);
  page.end_table();
  page.paragraph(
      page.faint(QObject::tr("Amounts are rounded up to what is sold, for the trench sides chosen. An "
                             "estimate from the plan's own price book, not an offer.")));
}

void add_cost(Page& page, const Plan& plan, const Outcome& outcome) {
  add_bill(page, plan, outcome);
  add_running(page, plan, outcome);
  if (!page.has("days.open")) return;
  page.heading(QObject::tr("Days on the lot"));
  page.begin_table({});
  const std::pair<const char*, QString> rows[] = {{"days.digging", QObject::tr("Digging")},
                                                  {"days.coil_making", QObject::tr("Making the coils")},
                                                  {"days.laid", QObject::tr("Last coil laid after")},
                                                  {"days.joining", QObject::tr("Header, run and joints")},
                                                  {"days.testing", QObject::tr("Filling and pressure test")},
                                                  {"days.filling", QObject::tr("Filling in")},
                                                  {"days.hauling", QObject::tr("Trucks, all of them")},
                                                  {"days.open", QObject::tr("Open in all")}};
  for (const auto& [key, words] : rows)
    if (page.has(key)) page.row({words, page.number(key)});
  page.end_table();
  page.paragraph(page.faint(QObject::tr("Working days of 8 h. Digging and coil making race each other.")));
}

}  // namespace underlawn
