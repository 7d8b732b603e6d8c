// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/shared_rows.h"

#include <QCheckBox>
#include <QComboBox>
#include <algorithm>

namespace underlawn {

namespace {

template <class T>
bool alike(const std::vector<T>& all) {
  return std::adjacent_find(all.begin(), all.end(), std::not_equal_to<T>()) == all.end();
}

// Numbers that are printed alike are alike.
QString printed_alike(Quantity quantity, const std::vector<double>& all, const Plan& plan) {
  if (all.empty()) return {};
  const auto [least, most] = std::minmax_element(all.begin(), all.end());
  const QString low = printed(quantity, *least, plan);
  return low == printed(quantity, *most, plan) ? low : QString();
}

QString between(Quantity quantity, const std::vector<double>& all, const Plan& plan) {
  if (all.empty()) return {};
  const auto [least, most] = std::minmax_element(all.begin(), all.end());
  return Form::tr("%1 to %2").arg(printed(quantity, *least, plan), printed(quantity, *most, plan));
}

// What the field says while the things differ: in it, and to a reader of screens.
void say_differing(TypedField& field, const QString& words) {
  field.edit()->setPlaceholderText(words);
  if (field.wrong().isEmpty()) field.edit()->setAccessibleDescription(words);
}

}  // namespace

TypedField* shared_number(Form& form, Document& document, const QString& label, Quantity quantity,
                          Shared<double> bound) {
  TypedField* field =
      form.text(label, {[=](const Plan& p) { return printed_alike(quantity, bound.get(p), p); },
                        [](Plan&, const QString&) {}, bound.what});
  form.on_refresh([=, &document] {
    const std::vector<double> all = bound.get(document.plan());
    const bool one = !printed_alike(quantity, all, document.plan()).isEmpty();
    say_differing(*field, one ? QString() : between(quantity, all, document.plan()));
  });
  field->set_taker([=, &document](const QString& typed) {
    const auto value = parse_quantity(quantity, typed.toStdString(), document.plan().units);
    if (!value) return QString::fromStdString(value.error().message());
    return enter_change(document, bound.what, [&](Plan& p) { bound.set(p, *value); });
  });
  return field;
}

TypedField* shared_text(Form& form, Document& document, const QString& label, Shared<QString> bound) {
  TypedField* field = form.text(label, {[=](const Plan& p) {
                                          const auto all = bound.get(p);
                                          return alike(all) && !all.empty() ? all.front() : QString();
                                        },
                                        bound.set, bound.what});
  form.on_refresh([=, &document] {
    say_differing(*field, alike(bound.get(document.plan())) ? QString() : Form::tr("they differ"));
  });
  return field;
}

QComboBox* shared_choice(Form& form, const QString& label, const QStringList& names, Shared<int> bound) {
  QComboBox* box = form.choice(label, names,
                               {[=](const Plan& p) {
                                  const auto all = bound.get(p);
                                  return alike(all) && !all.empty() ? all.front() : -1;
                                },
                                bound.set, bound.what});
  box->setPlaceholderText(Form::tr("they differ"));
  return box;
}

// Half ticked while they differ; the next click ticks all of them.
QCheckBox* shared_check(Form& form, Document& document, const QString& label, Shared<bool> bound) {
  QCheckBox* box = form.check(label, {[=](const Plan& p) {
                                        const auto all = bound.get(p);
                                        return !all.empty() && alike(all) && all.front();
                                      },
                                      bound.set, bound.what});
  form.on_refresh([=, &document] {
    const bool differ = !alike(bound.get(document.plan()));
    box->setTristate(differ);
    if (differ) box->setCheckState(Qt::PartiallyChecked);
  });
  return box;
}

}  // namespace underlawn
