// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/dimensions.h"
#include "window/form.h"
#include "window/selected_panel.h"
#include "window/several_page.h"

namespace underlawn {

namespace {

const Dimension* dimension_of(const Plan& plan, int index) {
  const auto i = static_cast<std::size_t>(index);
  return i < plan.dimensions.size() ? &plan.dimensions[i] : nullptr;
}

template <class T>
Form::Bound<T> bound(int index, std::function<T(const Dimension&)> get,
                     std::function<void(Dimension&, T)> set, const QString& what) {
  return {[=](const Plan& p) {
            const Dimension* d = dimension_of(p, index);
            return d != nullptr ? get(*d) : T{};
          },
          [=](Plan& p, T value) {
            if (dimension_of(p, index) != nullptr) set(p.dimensions[static_cast<std::size_t>(index)], value);
          },
          what};
}

void add_place(Form& form, int index, const QString& name, Point Dimension::*place) {
  const QString what = Form::tr("Place of a dimension");
  for (const bool x : {true, false}) {
    double Point::*axis = x ? &Point::x : &Point::y;
    form.number(x ? Form::tr("%1, x").arg(name) : Form::tr("%1, y").arg(name), Quantity::length,
                bound<double>(
                    index, [=](const Dimension& d) { return d.*place.*axis; },
                    [=](Dimension& d, double v) { d.*place.*axis = v; }, what));
  }
}

}  // namespace

QStringList ways_of_dimensions() {
  return {Form::tr("straight"), Form::tr("level, along x"), Form::tr("upright, along y")};
}

Form* dimension_page(Document& document, int index) {
  auto* form = new Form(document);
  form->section(Form::tr("Dimension %1").arg(index + 1));
  form->note([index](const Plan& p) {
    const Dimension* d = dimension_of(p, index);
    return d == nullptr ? QString()
                        : Form::tr("%1. It follows the corners and edges that its ends lie on.")
                              .arg(printed(Quantity::length, measured(*d), p));
  });
  form->choice(Form::tr("Measures"), ways_of_dimensions(),
               bound<int>(
                   index, [](const Dimension& d) { return static_cast<int>(d.way); },
                   [](Dimension& d, int way) { d.way = static_cast<DimensionWay>(way); },
                   Form::tr("What a dimension measures")));
  form->number(Form::tr("Line off by"), Quantity::length,
               bound<double>(
                   index, [](const Dimension& d) { return d.offset; },
                   [](Dimension& d, double v) { d.offset = v; }, Form::tr("Line of a dimension")));
  form->text(Form::tr("Words behind it"),
             bound<QString>(
                 index, [](const Dimension& d) { return QString::fromStdString(d.text); },
                 [](Dimension& d, const QString& v) { d.text = v.simplified().toStdString(); },
                 Form::tr("Words of a dimension")));
  add_place(*form, index, Form::tr("From", "of a dimension"), &Dimension::from);
  add_place(*form, index, Form::tr("To", "of a dimension"), &Dimension::to);
  form->end();
  form->refresh();
  return form;
}

}  // namespace underlawn
