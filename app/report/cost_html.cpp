// SPDX-License-Identifier: GPL-3.0-or-later
// What it costs and how long it lies open, in the report.
#include <QObject>

#include "cost/estimate.h"
#include "report/report_html.h"

namespace underlawn {

namespace {

QString price(const Page& page, const char* key, Quantity amount) {
  const std::string figure = std::string("price.") + key;
  const double value = page.figures().at(figure).value;
  QString words = QString::fromStdString(print_price(value, amount, page.units()));
  // Broken before its unit, where it has to be.
  const auto unit = words.indexOf(" per ") + 1;
  if (unit > 0) words = words.left(unit) + words.mid(unit).replace(' ', QChar(0x00a0));
  return page.link(kFigureLink + QString::fromStdString(figure), words);
}

void add_bill(Page& page, const Plan& plan) {
  page.heading(QObject::tr("Cost, %1").arg(QString::fromStdString(plan.wishes.prices.currency)));
  page.begin_table({"", QObject::tr("Amount"), QObject::tr("Price"), QObject::tr("Sum")});
  const std::tuple<QString, const char*, const char*> rows[] = {
      {QObject::tr("Dug and filled in"), "dig.vertical.total.bank_volume", "digging"},
      {QObject::tr("Lines met by hand"), "cost.met_by_hand", "hand_crossing"},
      {QObject::tr("Pavement"), "cost.pavement_area", "pavement"},
      {QObject::tr("Lawn"), "layout.lawn", "lawn"},
      {QObject::tr("Sand"), "dig.vertical.total.bedding_volume", "bedding"},
      {QObject::tr("Pipe in coils"), "cost.pipe_in_coils", "coil_pipe"},
      {QObject::tr("Header, run"), "buy.header_pipe", "header_pipe"},
      {QObject::tr("Fused joints"), "layout.joints", "joint"},
      {QObject::tr("Crew days"), "days.paid", "crew_day"}};
  for (const auto& [words, amount, key] : rows)
    page.row({words, page.number(amount, Fineness::coarse),
              price(page, key, page.figures().at(amount).quantity),
              page.number(std::string("cost.") + key, Fineness::coarse)});
  page.row({QObject::tr("In all"), "", "", page.number("cost.total", Fineness::coarse)});
  if (page.has("cost.by_capacity"))
    page.row({QObject::tr("By capacity"), "", "",
              page.link(QString(kFigureLink) + "cost.by_capacity",
                        QString::fromStdString(print_price(page.figures().at("cost.by_capacity").value / 1000,
                                                           Quantity::power, page.units())))});
  page.end_table();
  page.paragraph(page.faint(QObject::tr("Sides vertical. With the protective slope ")) +
                 page.number("cost.sloped.total", Fineness::coarse) +
                 page.faint(QObject::tr(". An estimate from the plan's own prices, not an offer.")));
}

}  // namespace

void add_cost(Page& page, const Plan& plan) {
  if (!page.has("cost.total")) return;
  add_bill(page, plan);
  page.heading(QObject::tr("Days on the lot"));
  page.begin_table({});
  const std::pair<const char*, QString> rows[] = {
      {"days.digging", QObject::tr("Digging")},
      {"days.coil_making", QObject::tr("Making the coils")},
      {"days.laid", QObject::tr("Last coil laid after")},
      {"days.joining", QObject::tr("Header, run and joints")},
      {"days.testing", QObject::tr("Filling and pressure test")},
      {"days.filling", QObject::tr("Filling in")},
      {"days.open", QObject::tr("Open in all")},
      {"days.sloped.open", QObject::tr("with the protective slope")}};
  for (const auto& [key, words] : rows) page.row({words, page.number(key)});
  page.end_table();
  page.paragraph(page.faint(QObject::tr("Working days of 8 h. Digging and coil making race each other.")));
}

}  // namespace underlawn
