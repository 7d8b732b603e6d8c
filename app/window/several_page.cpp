// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/several_page.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "layout/given.h"
#include "tools/grips.h"
#include "tools/trench_drag.h"
#include "window/several_totals.h"
#include "window/shared_rows.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

// A member of those that are selected in one of the plan's lists, which `list` finds in a plan.
template <class Thing, class T, class List>
Shared<T> members(List list, const std::vector<int>& places, std::function<T(const Thing&)> get,
                  std::function<void(Thing&, T)> set, const QString& what) {
  return {[=](const Plan& p) {
            std::vector<T> values;
            for (int i : places)
              if (static_cast<std::size_t>(i) < list(p).size())
                values.push_back(get(list(p)[static_cast<std::size_t>(i)]));
            return values;
          },
          [=](Plan& p, T value) {
            for (int i : places)
              if (static_cast<std::size_t>(i) < list(p).size())
                set(list(p)[static_cast<std::size_t>(i)], value);
          },
          what};
}

constexpr auto kDrawnTrenches = [](auto& p) -> auto& {
  return p.wishes.locked;
};
constexpr auto kHeights = [](auto& p) -> auto& {
  return p.site.heights;
};
constexpr auto kDimensions = [](auto& p) -> auto& {
  return p.dimensions;
};

void add_drawn_trenches(Form& form, Document& document, const std::vector<int>& places) {
  const auto row = [&](const QString& label, double GivenTrench::*member, const QString& what,
                       const QString& nought) {
    shared_number(form, document, label, Quantity::length,
                  members<GivenTrench, double>(
                      kDrawnTrenches, places, [=](const GivenTrench& t) { return t.*member; },
                      [=](GivenTrench& t, double v) { t.*member = v; }, what));
    form.note([=](const Plan&) { return nought; });
  };
  row(Form::tr("Depth"), &GivenTrench::depth, Form::tr("Depth of a drawn trench"),
      Form::tr("0: as deep as the others."));
  row(Form::tr("Pipe in it"), &GivenTrench::coil_length, Form::tr("Pipe in a drawn trench"),
      Form::tr("0: as the pitch of the others gives for its length."));
}

void add_heights(Form& form, Document& document, const std::vector<int>& places) {
  shared_number(form, document, Form::tr("Height"), Quantity::length,
                members<SpotHeight, double>(
                    kHeights, places, [](const SpotHeight& h) { return h.height; },
                    [](SpotHeight& h, double v) { h.height = v; }, Form::tr("Spot height")));
  form.note([](const Plan&) { return Form::tr("Over one bench mark for the whole lot, any you like."); });
}

void add_dimensions(Form& form, Document& document, const std::vector<int>& places) {
  shared_choice(form, Form::tr("Measures"), ways_of_dimensions(),
                members<Dimension, int>(
                    kDimensions, places, [](const Dimension& d) { return static_cast<int>(d.way); },
                    [](Dimension& d, int way) { d.way = static_cast<DimensionWay>(way); },
                    Form::tr("What a dimension measures")));
  shared_number(form, document, Form::tr("Line off by"), Quantity::length,
                members<Dimension, double>(
                    kDimensions, places, [](const Dimension& d) { return d.offset; },
                    [](Dimension& d, double v) { d.offset = v; }, Form::tr("Line of a dimension")));
  shared_text(form, document, Form::tr("Words behind it"),
              members<Dimension, QString>(
                  kDimensions, places, [](const Dimension& d) { return QString::fromStdString(d.text); },
                  [](Dimension& d, const QString& v) { d.text = v.simplified().toStdString(); },
                  Form::tr("Words of a dimension")));
}

constexpr auto kLotCorners = [](auto& p) -> auto& {
  return p.site.lot;
};

void add_lot_edges(Form& form, Document& document, const std::vector<int>& edges) {
  shared_number(form, document, Form::tr("Setback"), Quantity::length,
                members<LotCorner, double>(
                    kLotCorners, edges, [](const LotCorner& c) { return c.setback; },
                    [](LotCorner& c, double v) { c.setback = v; }, Form::tr("Setback")));
  form.note(setback_source);
}

// Whether the trenches of the loop are held where they lie.
void add_laid_trenches(Form& form, Document& document, const std::vector<int>& numbers) {
  const auto placed = [numbers, &document] {
    std::vector<Trench> all;
    if (document.outcome() == nullptr) return all;
    for (int number : numbers)
      if (const Trench* t = trench_numbered(document.outcome()->layout, number)) all.push_back(*t);
    return all;
  };
  shared_check(
      form, document, Form::tr("Held where they lie"),
      {[=](const Plan& p) {
         std::vector<bool> held;
         for (const Trench& t : placed()) held.push_back(locked_index(p, t).has_value());
         return held;
       },
       [=](Plan& p, bool on) { p = with_locks(std::move(p), placed(), on); }, Form::tr("Lock trenches")});
  form.note(
      [](const Plan&) { return Form::tr("The rest is arranged round what is held. K does the same."); });
}

std::vector<int> ids_of(const std::vector<Selected>& what) {
  std::vector<int> ids;
  for (const Selected& s : what) ids.push_back(s.id);
  return ids;
}

std::vector<int> edges_of(const std::vector<Selected>& what) {
  std::vector<int> edges;
  for (const Selected& s : what) edges.push_back(s.index);
  return edges;
}

bool all_are(const std::vector<Selected>& what, Kind kind) {
  return std::all_of(what.begin(), what.end(), [kind](const Selected& s) { return s.kind == kind; });
}

bool add_what_they_share(Form& form, Document& document, const std::vector<Selected>& what) {
  const auto ids = ids_of(what);
  if (all_are(what, Kind::feature)) return add_shared_fields(form, document, ids), true;
  if (all_are(what, Kind::locked)) return add_drawn_trenches(form, document, ids), true;
  if (all_are(what, Kind::height)) return add_heights(form, document, ids), true;
  if (all_are(what, Kind::dimension)) return add_dimensions(form, document, ids), true;
  if (all_are(what, Kind::lot_edge)) return add_lot_edges(form, document, edges_of(what)), true;
  if (all_are(what, Kind::trench)) return add_laid_trenches(form, document, ids), true;
  return false;
}

// How many of a kind, and a button that leaves only these selected.
void add_total(Form& form, Document& document, Selection& selection, const KindTotal& total, bool alone) {
  auto* line = new QWidget;
  auto* row = new QHBoxLayout(line);
  row->setContentsMargins(0, 0, 0, 0);
  auto* words = new QLabel;
  words->setWordWrap(true);
  row->addWidget(words, 1);
  form.wide(line);
  form.on_refresh([words, total, &document] {
    const auto now = totals_of(document.plan(), document.outcome(), total.what);
    words->setText(now.empty() ? QString()
                               : Form::tr("%1: %2").arg(capital(total.name),
                                                        total_words(now.front(), document.plan().units)));
  });
  if (alone) return;
  auto* only = new QPushButton(Form::tr("Only these"));
  only->setAccessibleName(Form::tr("Only these: %1").arg(total.name));
  QObject::connect(only, &QPushButton::clicked, &selection,
                   [&selection, what = total.what] { selection.select_several(what); });
  row->addWidget(only);
}

}  // namespace

Form* several_page(Document& document, Selection& selection, const std::vector<Selected>& what) {
  auto* form = new Form(document);
  form->follow_outcome();
  form->section(Form::tr("%1 things selected").arg(what.size()));
  const auto totals = totals_of(document.plan(), document.outcome(), what);
  for (const KindTotal& total : totals) add_total(*form, document, selection, total, totals.size() == 1);
  form->section(Form::tr("For all of them"));
  if (!add_what_they_share(*form, document, what))
    form->note([](const Plan&) {
      return Form::tr(
          "These share nothing that could be typed for all of them. Leave only one kind selected.");
    });
  if (all_are(what, Kind::lot_edge))
    form->note([](const Plan&) { return Form::tr("Shift+click takes one in or out, Ctrl+B takes all."); });
  else if (std::any_of(what.begin(), what.end(), can_move))
    form->note([](const Plan&) {
      return Form::tr(
          "Arrow keys or @x,y move them, Ctrl+M and Ctrl+R move and turn them exactly, Ctrl+C copies "
          "them, Del removes them. Shift+click takes one in or out.");
    });
  form->end();
  form->refresh();
  return form;
}

}  // namespace underlawn
