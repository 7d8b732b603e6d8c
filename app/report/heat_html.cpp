// SPDX-License-Identifier: GPL-3.0-or-later
// Temperatures and flow in the report.
#include <QObject>

#include "plan/assumptions.h"
#include "report/report_html.h"

namespace underlawn {

namespace {

using Rows = std::vector<std::pair<const char*, QString>>;

void add_rows(Page& page, const Rows& rows) {
  page.begin_table({});
  for (const auto& [key, words] : rows)
    if (page.has(key)) page.row({words, page.number(key)});
  page.end_table();
}

QString label_of(const Page& page, const char* key) {
  return QString::fromStdString(page.figures().at(key).label).toHtmlEscaped();
}

}  // namespace

void add_temperatures(Page& page) {
  if (!page.has("heat.coldest")) return;
  page.heading(QObject::tr("Water to the heat pump"));
  Rows rows;
  for (const char* key : {"heat.first.coldest", "heat.tenth.coldest", "heat.last.coldest"})
    if (page.has(key)) rows.push_back({key, label_of(page, key)});
  rows.push_back({"heat.coldest_allowed", QObject::tr("Coldest allowed")});
  for (const char* key : {"heat.first.warmest", "heat.last.warmest"})
    if (page.has(key)) rows.push_back({key, label_of(page, key)});
  rows.push_back({"heat.warmest_allowed", QObject::tr("Warmest allowed")});
  add_rows(page, rows);
  page.heading(QObject::tr("A year of heat"));
  add_rows(page, {{"house.heating", QObject::tr("Heat the house needs")},
                  {"house.cooling", QObject::tr("Cooling the house needs")},
                  {"heat.from_ground", QObject::tr("Taken from the ground, last year")},
                  {"heat.to_ground", QObject::tr("Given to the ground, last year")},
                  {"heat.electricity", QObject::tr("Electricity, back-up included")},
                  {"heat.backup", QObject::tr("of it back-up heat")},
                  {"heat.seasonal_heating", QObject::tr("Seasonal performance, heating")},
                  {"heat.seasonal_cooling", QObject::tr("Seasonal performance, cooling")},
                  {"heat.seasonal", QObject::tr("The whole, pump and back-up included")}});
}

void add_flow(Page& page, const Outcome& outcome) {
  if (outcome.flow_refusal) {
    page.heading(QObject::tr("Flow"));
    page.paragraph(QString::fromStdString(outcome.flow_refusal->message()).toHtmlEscaped());
  }
  if (!page.has("flow.design.head")) return;
  page.heading(QObject::tr("Flow"));
  add_rows(page, {{"flow.design_flow", QObject::tr("Flow")},
                  {"flow.design.head", QObject::tr("Head over the heating season")},
                  {"flow.coldest.head", QObject::tr("Head at the coldest")},
                  {"flow.design.imbalance", QObject::tr("Imbalance of the circuits")},
                  {"flow.coldest.reynolds", QObject::tr("Reynolds number in the coils, coldest")},
                  {"flow.pump.flow", QObject::tr("What the circulator gives, coldest")},
                  {"flow.pump.power", QObject::tr("Circulator")},
                  {"flow.volume", QObject::tr("Liquid in the loop")},
                  {"flow.concentrate", QObject::tr("Concentrate to buy")},
                  {"flow.freezing_point", QObject::tr("Freezing point")},
                  {"flow.purge.flow", QObject::tr("Flushing, least flow")},
                  {"flow.purge.head", QObject::tr("Flushing, head")}});
}

void add_assumptions(Page& page, const Plan& plan, const Outcome& outcome) {
  const auto lines = assumptions(plan, outcome);
  if (lines.empty()) return;
  page.heading(QObject::tr("What is assumed"));
  for (const std::string& line : lines)
    page.paragraph(page.faint(QString::fromStdString(line).toHtmlEscaped()));
}

}  // namespace underlawn
