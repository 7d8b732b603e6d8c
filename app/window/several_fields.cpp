// SPDX-License-Identifier: GPL-3.0-or-later
// The fields that several features share.
#include <QPushButton>
#include <algorithm>

#include "plan/edits.h"
#include "plan/kinds.h"
#include "site/clearances.h"
#include "window/several_page.h"
#include "window/shared_rows.h"

namespace underlawn {

namespace {

using Ids = std::vector<int>;

void for_all(Plan& plan, const Ids& ids, const std::function<void(Feature&)>& change) {
  for (int id : ids)
    if (const Feature* f = find_feature(plan.site, id)) {
      Feature changed = *f;
      change(changed);
      plan = edit::with_feature(std::move(plan), std::move(changed));
    }
}

template <class T>
Shared<T> shared(const Ids& ids, std::function<T(const Plan&, const Feature&)> get,
                 std::function<void(Feature&, T)> set, const QString& what) {
  return {[=](const Plan& p) {
            std::vector<T> all;
            for (int id : ids)
              if (const Feature* f = find_feature(p.site, id)) all.push_back(get(p, *f));
            return all;
          },
          [=](Plan& p, T value) { for_all(p, ids, [&](Feature& f) { set(f, value); }); }, what};
}

bool every(const Plan& plan, const Ids& ids, bool (*holds)(const Feature&)) {
  return std::all_of(ids.begin(), ids.end(), [&](int id) {
    const Feature* f = find_feature(plan.site, id);
    return f != nullptr && holds(*f);
  });
}

void add_utilities(Form& form, Document& document, const Ids& ids) {
  shared_choice(
      form, Form::tr("Carries"), utility_names(),
      shared<int>(
          ids, [](const Plan&, const Feature& f) { return static_cast<int>(f.utility); },
          [](Feature& f, int i) { f.utility = static_cast<UtilityKind>(i); }, Form::tr("Kind of utility")));
  shared_number(form, document, Form::tr("Depth to its top"), Quantity::length,
                shared<double>(
                    ids, [](const Plan&, const Feature& f) { return f.depth; },
                    [](Feature& f, double v) { f.depth = v; }, Form::tr("Depth of the utility")));
  form.note([](const Plan&) { return depths_are_guesses(); });
}

void add_trees(Form& form, Document& document, const Ids& ids) {
  shared_number(form, document, Form::tr("Trunk diameter"), Quantity::diameter,
                shared<double>(
                    ids, [](const Plan&, const Feature& f) { return f.trunk_diameter; },
                    [](Feature& f, double v) { f.trunk_diameter = v; }, Form::tr("Trunk diameter")));
}

void drop_own_clearances(Document& document, const Ids& ids) {
  Plan plan = document.committed();
  for_all(plan, ids, [](Feature& f) {
    f.trench_clearance.reset();
    f.run_clearance.reset();
  });
  document.commit(std::move(plan), Form::tr("Clearance"));
}

void add_clearances(Form& form, Document& document, const Ids& ids) {
  form.section(Form::tr("Kept clear of them"));
  shared_number(form, document, Form::tr("Coil trench"), Quantity::length,
                shared<double>(
                    ids, [](const Plan& p, const Feature& f) { return trench_clearance(p.site, f); },
                    [](Feature& f, double v) { f.trench_clearance = v; }, Form::tr("Clearance")));
  shared_number(form, document, Form::tr("Header and run"), Quantity::length,
                shared<double>(
                    ids, [](const Plan& p, const Feature& f) { return run_clearance(p.site, f); },
                    [](Feature& f, double v) { f.run_clearance = v; }, Form::tr("Clearance")));
  auto* usual = new QPushButton(Form::tr("As usual for each kind"));
  QObject::connect(usual, &QPushButton::clicked, &form,
                   [=, &document] { drop_own_clearances(document, ids); });
  form.wide(usual);
  form.note([](const Plan&) { return Form::tr("Local codes govern."); });
}

void add_note(Form& form, Document& document, const Ids& ids) {
  shared_text(
      form, document, Form::tr("Note"),
      shared<QString>(
          ids, [](const Plan&, const Feature& f) { return QString::fromStdString(f.note); },
          [](Feature& f, const QString& v) { f.note = v.simplified().toStdString(); }, Form::tr("Note")));
}

}  // namespace

QStringList utility_names() {
  QStringList names;
  for (int i = 0; i < 6; ++i) names << QString::fromUtf8(utility_name(static_cast<UtilityKind>(i)));
  return names;
}

QString depths_are_guesses() {
  return Form::tr(
      "Depths on drawings are guesses. Have lines located before any digging; dig by hand within 18 in.");
}

void add_kind_choice(Form& form, Document& document, const Ids& ids) {
  const Feature* first = ids.empty() ? nullptr : find_feature(document.plan().site, ids.front());
  if (first == nullptr) return;
  const FeatureShape shape = shape_of(first->kind);
  const auto kinds = edit::kinds_of_shape(shape);
  const bool same = std::all_of(ids.begin(), ids.end(), [&](int id) {
    const Feature* f = find_feature(document.plan().site, id);
    return f != nullptr && shape_of(f->kind) == shape;
  });
  if (!same || kinds.size() < 2) return;
  QStringList names;
  for (FeatureKind kind : kinds) names << QString::fromStdString(kind_name(kind));
  shared_choice(
      form, Form::tr("Kind"), names,
      {[=](const Plan& p) {
         std::vector<int> all;
         for (int id : ids)
           if (const Feature* f = find_feature(p.site, id))
             all.push_back(static_cast<int>(std::find(kinds.begin(), kinds.end(), f->kind) - kinds.begin()));
         return all;
       },
       [=](Plan& p, int i) { p = edit::with_kind(std::move(p), ids, kinds[static_cast<std::size_t>(i)]); },
       Form::tr("Kind")});
}

void add_shared_fields(Form& form, Document& document, const Ids& ids) {
  const Plan& plan = document.plan();
  if (every(plan, ids, [](const Feature& f) { return f.kind == FeatureKind::utility; }))
    add_utilities(form, document, ids);
  if (every(plan, ids, [](const Feature& f) { return f.kind == FeatureKind::tree; }))
    add_trees(form, document, ids);
  if (every(plan, ids, [](const Feature& f) { return can_be_crossed(f.kind); }))
    shared_check(form, document, Form::tr("Header and run may cross them"),
                 shared<bool>(
                     ids, [](const Plan&, const Feature& f) { return f.may_cross; },
                     [](Feature& f, bool on) { f.may_cross = on; }, Form::tr("May be crossed")));
  add_note(form, document, ids);
  add_kind_choice(form, document, ids);  // not the first: a letter typed there would change it
  add_clearances(form, document, ids);
}

}  // namespace underlawn
