// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCheckBox>
#include <QComboBox>
#include <QMenu>
#include <QToolButton>

#include "base/say.h"
#include "plan/edits.h"
#include "site/clearances.h"
#include "site/names.h"
#include "window/form.h"
#include "window/points_table.h"
#include "window/selected_panel.h"
#include "window/several_page.h"

namespace underlawn {

namespace {

Feature feature_of(const Plan& plan, int id) {
  const Feature* f = find_feature(plan.site, id);
  return f != nullptr ? *f : Feature{};
}

template <class T>
Form::Bound<T> bound(int id, std::function<T(const Feature&)> get, std::function<void(Feature&, T)> set,
                     const QString& what) {
  return {[=](const Plan& p) { return get(feature_of(p, id)); },
          [=](Plan& p, T value) {
            Feature f = feature_of(p, id);
            if (f.id == 0) return;
            set(f, value);
            p = edit::with_feature(std::move(p), std::move(f));
          },
          what};
}

QString kind_title(const Feature& f) {
  return capital(QString::fromUtf8(kind_name(f.kind)));
}

void add_utility(Form& form, int id) {
  form.choice(
      Form::tr("Carries"), utility_names(),
      bound<int>(
          id, [](const Feature& f) { return static_cast<int>(f.utility); },
          [](Feature& f, int i) { f.utility = static_cast<UtilityKind>(i); }, Form::tr("Kind of utility")));
  form.number(Form::tr("Depth to its top"), Quantity::length,
              bound<double>(
                  id, [](const Feature& f) { return f.depth; }, [](Feature& f, double v) { f.depth = v; },
                  Form::tr("Depth of the utility")));
  form.note([](const Plan&) { return depths_are_guesses(); });
}

void add_tree(Form& form, int id) {
  form.number(Form::tr("Trunk diameter"), Quantity::diameter,
              bound<double>(
                  id, [](const Feature& f) { return f.trunk_diameter; },
                  [](Feature& f, double v) { f.trunk_diameter = v; }, Form::tr("Trunk diameter")));
  form.note([id](const Plan& p) {
    return Form::tr("Root zone: %1 round the trunk.")
        .arg(QString::fromStdString(
            print_quantity(Quantity::length, root_zone_radius(p.site, feature_of(p, id)), p.units)));
  });
}

using Own = std::optional<double> Feature::*;

void commit_own(Document& document, int id, Own own, std::optional<double> value) {
  Feature f = feature_of(document.committed(), id);
  f.*own = value;
  document.commit(edit::with_feature(document.committed(), std::move(f)), Form::tr("Clearance"));
}

// This feature's clearance for every feature of its kind.
void commit_rule(Document& document, int id) {
  Plan plan = document.committed();
  Feature f = feature_of(plan, id);
  const ClearanceRule rule{f.kind, trench_clearance(plan.site, f), run_clearance(plan.site, f)};
  f.trench_clearance.reset();
  f.run_clearance.reset();
  document.commit(edit::with_rule(edit::with_feature(std::move(plan), std::move(f)), rule),
                  Form::tr("Rule for the kind"));
}

QString length_text(double metres, UnitSystem units) {
  return QString::fromStdString(print_quantity(Quantity::length, metres, units));
}

QString source_of(std::string_view source) {
  return QString::fromStdString(translated(source));
}

// What has been published for the kind, each a choice.
void fill_choices(QMenu* menu, Document& document, int id, Own own) {
  menu->clear();
  const Feature f = feature_of(document.plan(), id);
  const ClearanceDefault& row = clearance_default(f.kind);
  const bool trench = own == &Feature::trench_clearance;
  const UnitSystem units = document.plan().units;
  menu->addAction(Form::tr("Default %1: %2")
                      .arg(length_text(trench ? row.trench : row.run, units), source_of(row.source)),
                  menu, [=, &document] { commit_own(document, id, own, std::nullopt); });
  if (trench)
    for (const PublishedClearance& other : row.others)
      menu->addAction(Form::tr("%1: %2").arg(length_text(other.distance, units), source_of(other.source)),
                      menu, [=, &document, d = other.distance] { commit_own(document, id, own, d); });
  menu->addSeparator();
  menu->addAction(
      Form::tr("Use this plan's clearances of it for every %1").arg(QString::fromUtf8(kind_name(f.kind))),
      menu, [=, &document] { commit_rule(document, id); });
  if (std::any_of(document.plan().site.rules.begin(), document.plan().site.rules.end(),
                  [&](const ClearanceRule& r) { return r.kind == f.kind; }))
    menu->addAction(Form::tr("Drop this plan's rule for every %1").arg(QString::fromUtf8(kind_name(f.kind))),
                    menu, [kind = f.kind, &document] {
                      document.commit(edit::without_rule(document.committed(), kind),
                                      Form::tr("Rule for the kind"));
                    });
}

void add_clearance(Form& form, Document& document, int id, const QString& label, Own own,
                   double (*in_force)(const Site&, const Feature&)) {
  form.number(label, Quantity::length,
              {[=](const Plan& p) { return in_force(p.site, feature_of(p, id)); },
               [=](Plan& p, double v) {
                 Feature f = feature_of(p, id);
                 f.*own = v;
                 p = edit::with_feature(std::move(p), std::move(f));
               },
               Form::tr("Clearance")});
  auto* choose = new QToolButton;
  choose->setObjectName("follow");
  choose->setText("…");
  choose->setPopupMode(QToolButton::InstantPopup);
  choose->setFocusPolicy(Qt::StrongFocus);
  choose->setToolTip(Form::tr("Published values"));
  choose->setAccessibleName(Form::tr("Published values for: %1").arg(label));
  auto* menu = new QMenu(choose);
  choose->setMenu(menu);
  QObject::connect(menu, &QMenu::aboutToShow, choose,
                   [=, &document] { fill_choices(menu, document, id, own); });
  form.beside(choose);
}

void add_clearances(Form& form, Document& document, int id) {
  form.section(Form::tr("Kept clear of it"));
  add_clearance(form, document, id, Form::tr("Coil trench"), &Feature::trench_clearance, trench_clearance);
  add_clearance(form, document, id, Form::tr("Header and run"), &Feature::run_clearance, run_clearance);
  form.note([id](const Plan& p) {
    const Feature f = feature_of(p, id);
    if (f.id == 0) return QString();
    return Form::tr("In force: %1. Local codes govern.")
        .arg(QString::fromStdString(clearance_reason(p.site, f)));
  });
}

}  // namespace

Form* feature_page(Document& document, int id) {
  auto* form = new Form(document);
  const Feature f = feature_of(document.plan(), id);
  form->section(kind_title(f));
  form->text(Form::tr("Name"),
             bound<QString>(
                 id,
                 [](const Feature& x) {
                   return x.name.empty() ? QString() : QString::fromStdString(display_name(x));
                 },
                 [](Feature& x, const QString& v) { x.name = kept_name(x, v.simplified().toStdString()); },
                 Form::tr("Name")));
  add_kind_choice(*form, document, {id});
  if (f.kind == FeatureKind::utility) add_utility(*form, id);
  if (f.kind == FeatureKind::tree) add_tree(*form, id);
  if (can_be_crossed(f.kind))
    form->check(Form::tr("Header and run may cross it"),
                bound<bool>(
                    id, [](const Feature& x) { return x.may_cross; },
                    [](Feature& x, bool on) { x.may_cross = on; }, Form::tr("May be crossed")));
  add_clearances(*form, document, id);
  form->section(shape_of(f.kind) == FeatureShape::point ? Form::tr("Place") : Form::tr("Points"));
  auto* points = new PointsTable(document, PointsTable::Of{false, id});
  form->wide(points);
  form->on_refresh([points] { points->refresh(); });
  form->text(
      Form::tr("Note"),
      bound<QString>(
          id, [](const Feature& x) { return QString::fromStdString(x.note); },
          [](Feature& x, const QString& v) { x.note = v.simplified().toStdString(); }, Form::tr("Note")));
  form->end();
  form->refresh();
  return form;
}

}  // namespace underlawn
