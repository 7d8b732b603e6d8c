// SPDX-License-Identifier: GPL-3.0-or-later
#include <QHBoxLayout>
#include <QPushButton>

#include "plan/edits.h"
#include "site/clearances.h"
#include "window/form.h"
#include "window/points_table.h"
#include "window/selected_panel.h"
#include "window/several_page.h"

namespace underlawn {

namespace {

std::size_t next_corner(const Site& site, std::size_t i) {
  return (i + 1) % site.lot.size();
}

double edge_length(const Plan& plan, int edge) {
  const auto i = static_cast<std::size_t>(edge);
  if (i >= plan.site.lot.size()) return 0;
  return distance(plan.site.lot[i].at, plan.site.lot[next_corner(plan.site, i)].at);
}

// The far corner moves along the edge; the near one stays.
void set_edge_length(Plan& plan, int edge, double wanted) {
  const auto i = static_cast<std::size_t>(edge);
  const double now = edge_length(plan, edge);
  if (now <= kSamePlace || wanted <= 0) return;
  LotCorner& far = plan.site.lot[next_corner(plan.site, i)];
  far.at = plan.site.lot[i].at + (wanted / now) * (far.at - plan.site.lot[i].at);
}

double first_setback(const Plan& p) {
  return p.site.lot.empty() ? 0 : p.site.lot.front().setback;
}

bool one_setback(const Plan& p) {
  return std::all_of(p.site.lot.begin(), p.site.lot.end(),
                     [&](const LotCorner& c) { return c.setback == p.site.lot.front().setback; });
}

}  // namespace

QString setback_source(const Plan& plan) {
  return Form::tr("Default %1: Texas 16 TAC 6.106 and Maine 144 CMR 232 ch. 6. Local codes govern.")
      .arg(QString::fromStdString(print_quantity(Quantity::length, kDefaultSetback, plan.units)));
}

Form* lot_page(Document& document, Selection&) {
  auto* form = new Form(document);
  form->section(Form::tr("Lot line"));
  form->number(Form::tr("Setback of every edge"), Quantity::length,
               {first_setback,
                [](Plan& p, double v) {
                  for (LotCorner& c : p.site.lot) c.setback = v;
                },
                Form::tr("Setback of every edge")});
  form->note([](const Plan& p) {
    if (one_setback(p)) return setback_source(p);
    return Form::tr("The edges differ; shown is the first. %1").arg(setback_source(p));
  });
  form->section(Form::tr("Corners, and the edge from each"));
  auto* points = new PointsTable(document, PointsTable::Of{true, 0});
  form->wide(points);
  form->note([](const Plan&) {
    return Form::tr(
        "Select the setbacks of several edges with Shift and the arrows: one typed length is for all of "
        "them.");
  });
  form->on_refresh([points] { points->refresh(); });
  form->end();
  form->refresh();
  return form;
}

Form* edge_page(Document& document, Selection& selection, int edge) {
  auto* form = new Form(document);
  form->section(Form::tr("Lot edge %1").arg(edge + 1));
  form->number(Form::tr("Setback"), Quantity::length,
               {[edge](const Plan& p) {
                  const auto i = static_cast<std::size_t>(edge);
                  return i < p.site.lot.size() ? p.site.lot[i].setback : 0;
                },
                [edge](Plan& p, double v) {
                  if (static_cast<std::size_t>(edge) < p.site.lot.size())
                    p.site.lot[static_cast<std::size_t>(edge)].setback = v;
                },
                Form::tr("Setback")});
  form->note(setback_source);
  form->note([](const Plan&) { return Form::tr("Shift+click takes another edge too, Ctrl+B all of them."); });
  form->number(Form::tr("Length"), Quantity::length,
               {[edge](const Plan& p) { return edge_length(p, edge); },
                [edge](Plan& p, double v) { set_edge_length(p, edge, v); }, Form::tr("Length of an edge")});
  form->note([](const Plan&) { return Form::tr("A new length moves the far corner along the edge."); });
  auto* whole = new QPushButton(Form::tr("The whole lot line"));
  QObject::connect(whole, &QPushButton::clicked, &selection, [&selection] {
    selection.select({Selected::Kind::lot, 0, -1});
  });
  form->wide(whole);
  form->end();
  form->refresh();
  return form;
}

Form* entry_page(Document& document) {
  auto* form = new Form(document);
  form->section(Form::tr("Entry point"));
  const auto coordinate = [](double Point::*axis) {
    return Form::Bound<double>{[axis](const Plan& p) { return p.site.entry ? p.site.entry->at.*axis : 0; },
                               [axis](Plan& p, double v) {
                                 if (!p.site.entry) return;
                                 Point at = p.site.entry->at;
                                 at.*axis = v;
                                 p = edit::with_entry(std::move(p), at);
                               },
                               Form::tr("Entry point")};
  };
  form->number(Form::tr("x, to the right"), Quantity::length, coordinate(&Point::x));
  form->number(Form::tr("y, up the page"), Quantity::length, coordinate(&Point::y));
  form->note([](const Plan& p) {
    const Feature* house = p.site.entry ? find_feature(p.site, p.site.entry->house_id) : nullptr;
    return house == nullptr ? QString()
                            : Form::tr("In the wall of %1; it slides to the nearest wall.")
                                  .arg(QString::fromStdString(display_name(*house)));
  });
  form->end();
  form->refresh();
  return form;
}

}  // namespace underlawn
