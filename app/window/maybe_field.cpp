// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/maybe_field.h"

#include "plan/record/moment.h"
#include "window/shown_unit.h"

namespace underlawn {

namespace {

// Where nothing is at that place any more, such as a flushing that was removed, an empty text.
QString text_at(const std::function<std::string*(Plan&)>& where, const Plan& plan) {
  Plan copy = plan;
  const std::string* text = where(copy);
  return text == nullptr ? QString() : QString::fromStdString(*text);
}

}  // namespace

TypedField* maybe_number(Form& form, Document& document, const QString& label, Quantity quantity,
                         Form::Bound<std::optional<double>> bound) {
  TypedField* field = form.text(
      label, {[quantity, bound](const Plan& p) {
                const auto value = bound.get(p);
                if (!value) return QString();
                // Minutes are lost in tenths of an hour.
                const Fineness fineness = quantity == Quantity::duration ? Fineness::fine : Fineness::normal;
                return QString::fromStdString(print_quantity(quantity, *value, p.units, fineness));
              },
              [](Plan&, const QString&) {}, bound.what});
  field->edit()->setPlaceholderText(Form::tr("not noted"));
  field->set_taker([&document, quantity, bound](const QString& typed) {
    std::optional<double> value;
    if (!typed.trimmed().isEmpty()) {
      const Plan& plan = document.plan();
      const auto read = parse_quantity(
          quantity, with_shown_unit(quantity, typed, bound.get(plan).value_or(0), plan.units), plan.units);
      if (!read) return QString::fromStdString(read.error().message());
      value = *read;
    }
    return enter_change(document, bound.what, [&](Plan& p) { bound.set(p, value); });
  });
  return field;
}

TypedField* words_row(Form& form, const QString& label, std::function<std::string*(Plan&)> where,
                      const QString& what) {
  return form.text(label, {[where](const Plan& p) { return text_at(where, p); },
                           [where](Plan& p, const QString& typed) {
                             if (std::string* text = where(p)) *text = typed.simplified().toStdString();
                           },
                           what});
}

TypedField* moment_row(Form& form, Document& document, const QString& label,
                       std::function<std::string*(Plan&)> where, const QString& what) {
  TypedField* field = words_row(form, label, where, what);
  field->edit()->setPlaceholderText(Form::tr("e.g. 2026-05-14 09:30"));
  field->set_taker([&document, where, what](const QString& typed) {
    std::string text = typed.simplified().toStdString();
    if (!text.empty()) {
      const auto moment = moment_from_text(text, what.toStdString());
      if (!moment) return QString::fromStdString(moment.error().message());
      text = print_moment(*moment);
    }
    return enter_change(document, what, [&](Plan& p) {
      if (std::string* kept = where(p)) *kept = text;
    });
  });
  return field;
}

}  // namespace underlawn
