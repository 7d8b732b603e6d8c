// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/report_html.h"

#include <QObject>

#include "plan/figures/groups.h"
#include "plan/header_words.h"

namespace underlawn {

void add_troubles(Page& page, const Outcome& outcome) {
  if (outcome.troubles.empty()) return;
  page.heading(QObject::tr("In the way"));
  for (const Trouble& t : outcome.troubles)
    page.paragraph(QString("%1&nbsp; %2")
                       .arg(page.coloured(severity_mark(Severity::error), page.theme().error),
                            QString::fromStdString(t.message()).toHtmlEscaped()));
}

void add_costs(Page& page, const Outcome& outcome) {
  if (outcome.layout.costs.empty()) return;
  page.heading(QObject::tr("What costs trenches"));
  page.paragraph(page.faint(QObject::tr("Without this one restriction so many more would fit:")));
  page.begin_table({});
  for (const Figure& f : page.figures().all())
    if (f.key.rfind("layout.cost.", 0) == 0)
      page.row({QString::fromStdString(f.label).toHtmlEscaped(), page.number(f.key)});
  page.end_table();
}

void add_trenches(Page& page, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return;
  page.heading(QObject::tr("Coil trenches"));
  const bool loops = !is_straight(outcome.coil.pattern);
  if (loops)
    page.begin_table({QObject::tr("No."), QObject::tr("Length"), QObject::tr("Pitch"), QObject::tr("Loops"),
                      QObject::tr("Pipe")});
  else
    page.begin_table({QObject::tr("No."), QObject::tr("Length"), QObject::tr("Pipe")});
  bool shared = false;
  for (const Trench& t : outcome.layout.trenches) {
    const std::string key = figures::trench_key(t.number);
    const bool supply = t.role == TrenchRole::supply;
    shared = shared || supply;
    const QString number = QString::number(t.number) + (supply ? " *" : "");
    if (loops)
      page.row({number, page.number(key + ".length"), page.number(key + ".pitch"),
                page.number(key + ".loops", Fineness::coarse), page.number(key + ".coil_length")});
    else
      page.row({number, page.number(key + ".length"), page.number(key + ".coil_length")});
  }
  page.end_table();
  page.paragraph(page.faint(QObject::tr("Side by side, middle lines keep %1; end to end, or in different "
                                        "directions, floors keep %2. Both are set in the Loop panel.")
                                .arg(page.number("layout.spacing"), page.number("layout.end_gap"))));
  if (shared) page.paragraph(page.faint(QObject::tr("* the coil lies in the trench of the supply run")));
  page.begin_table({QObject::tr("No."), QObject::tr("Head x"), QObject::tr("Head y"), QObject::tr("End x"),
                    QObject::tr("End y")});
  for (const Trench& t : outcome.layout.trenches) {
    const std::string key = figures::trench_key(t.number);
    const auto place = [&](const char* which) { return page.number(key + which, Fineness::coarse); };
    page.row(
        {QString::number(t.number), place(".head_x"), place(".head_y"), place(".end_x"), place(".end_y")});
  }
  page.end_table();
}

void add_header_run(Page& page, const Outcome&) {
  if (!page.has("header.length") && !page.has("run.length")) return;
  page.heading(QObject::tr("Header and supply run"));
  page.begin_table({});
  const std::pair<const char*, QString> rows[] = {
      {"header.length", QObject::tr("Header trench")},
      {"run.length", QObject::tr("Supply run")},
      {"run.shared", QObject::tr("of it in a coil trench")},
      {"layout.crossings", QObject::tr("Crossings, dug by hand")},
      {"layout.lawn", QObject::tr("Lawn torn up")},
      {"layout.nearest_tree", QObject::tr("Nearest trunk of a tree")}};
  for (const auto& [key, words] : rows)
    if (page.has(key)) page.row({words, page.number(key)});
  page.end_table();
}

void add_pipe_to_buy(Page& page, const Plan& plan, const Outcome& outcome) {
  if (!page.has("buy.coils")) return;
  page.heading(QObject::tr("Pipe to buy"));
  page.begin_table({});
  page.row({QObject::tr("%1 in coils, both ends included")
                .arg(QString::fromStdString(plan.wishes.pipe).toHtmlEscaped()),
            page.number("buy.coils") + " × " + page.number("buy.coil_length"), page.number("buy.coil_pipe")});
  if (page.has("buy.header_pipe"))
    page.row({QObject::tr("%1, allowance included")
                  .arg(QString::fromStdString(header_and_run_sizes(plan, outcome)).toHtmlEscaped()),
              "", page.number("buy.header_pipe")});
  page.row({QObject::tr("In all, as counted"), "", page.number("buy.counted_pipe")});
  if (page.has("buy.pipe"))
    page.row({QObject::tr("To buy, rolls and what is cut to length"), "", page.number("buy.pipe")});
  page.end_table();
}

void add_earth(Page& page) {
  if (!page.has("dig.total.bank_volume")) return;
  page.heading(QObject::tr("Earth"));
  page.begin_table({});
  const std::pair<const char*, QString> rows[] = {
      {".total.bank_volume", QObject::tr("Excavated")},
      {".total.bedding_volume", QObject::tr("Bedding")},
      {".total.loose_volume", QObject::tr("Spoil, loose")},
      {".total.backfill_volume", QObject::tr("Backfill, compacted")},
      {".total.surplus_volume", QObject::tr("Surplus, loose")},
      {".spoil_width", QObject::tr("Heap beside a trench, width")},
      {".spoil_height", QObject::tr("Heap, height")}};
  for (const auto& [part, words] : rows) page.row({words, page.number(std::string("dig") + part)});
  page.end_table();
  page.paragraph(page.faint(QObject::tr("With the trench sides chosen. Laid back they slope %1, %2 wide at "
                                        "the ground. Trenches kill: 29 CFR 1926 Subpart P, a competent "
                                        "person on site, and local codes govern.")
                                .arg(page.number("dig.slope"), page.number("dig.top_width"))));
}

QString report_html(const Plan& plan, const Outcome& outcome, const Theme& theme,
                    const RemedySearch& remedies) {
  Page page(outcome.figures, plan.units, theme);
  if (plan.site.lot.empty() && plan.site.features.empty()) {
    page.paragraph(page.faint(QObject::tr("Nothing is drawn yet. The report fills as the lot is drawn.")));
    return page.html();
  }
  add_troubles(page, outcome);
  add_errors(page, outcome, remedies_html(page, plan, remedies));
  add_costs(page, outcome);
  add_trenches(page, outcome);
  add_header_run(page, outcome);
  add_pipe_to_buy(page, plan, outcome);
  add_temperatures(page);
  add_flow(page, outcome);
  add_earth(page);
  add_cost(page, plan, outcome);
  add_findings(page, outcome);
  add_assumptions(page, plan, outcome);
  return page.html();
}

}  // namespace underlawn
