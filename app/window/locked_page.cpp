// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/given.h"
#include "window/form.h"
#include "window/points_table.h"
#include "window/selected_panel.h"

namespace underlawn {

namespace {

Form::Bound<double> of_locked(int index, double GivenTrench::*member, const QString& what) {
  const auto at = static_cast<std::size_t>(index);
  return {
      [at, member](const Plan& p) { return at < p.wishes.locked.size() ? p.wishes.locked[at].*member : 0.0; },
      [at, member](Plan& p, double v) {
        if (at < p.wishes.locked.size()) p.wishes.locked[at].*member = v;
      },
      what};
}

}  // namespace

Form* locked_page(Document& document, int index) {
  auto* form = new Form(document);
  form->section(Form::tr("Drawn trench %1").arg(index + 1));
  form->note([index](const Plan& p) {
    const auto at = static_cast<std::size_t>(index);
    if (at >= p.wishes.locked.size()) return QString();
    const GivenTrench& t = p.wishes.locked[at];
    const QString long_ = printed(Quantity::length, length(line_of(t)), p);
    return t.bends.empty() ? Form::tr("%1 long, straight. It stays where it is.").arg(long_)
                           : Form::tr("%1 long along its bends. It stays where it is.").arg(long_);
  });
  form->number(Form::tr("Depth"), Quantity::length,
               of_locked(index, &GivenTrench::depth, Form::tr("Depth of a drawn trench")));
  form->note([](const Plan&) { return Form::tr("0: as deep as the others."); });
  form->number(Form::tr("Pipe in it"), Quantity::length,
               of_locked(index, &GivenTrench::coil_length, Form::tr("Pipe in a drawn trench")));
  form->note([](const Plan&) { return Form::tr("0: as the pitch of the others gives for its length."); });
  form->section(Form::tr("Head, bends and end"));
  auto* points = new PointsTable(document, PointsTable::Of{false, index, true});
  form->wide(points);
  form->on_refresh([points] { points->refresh(); });
  form->end();
  form->refresh();
  return form;
}

}  // namespace underlawn
