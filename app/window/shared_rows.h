// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of a form for several things at once: where these differ the row says so, and what is entered is
// entered for all of them, as one entry of the history.
#pragma once

#include "window/form.h"

namespace underlawn {

template <class T>
struct Shared {
  std::function<std::vector<T>(const Plan&)> get;  // of each thing
  std::function<void(Plan&, T)> set;               // for all of them
  QString what;                                    // the entry in the history
};

TypedField* shared_number(Form& form, Document& document, const QString& label, Quantity quantity,
                          Shared<double> bound);
TypedField* shared_text(Form& form, Document& document, const QString& label, Shared<QString> bound);
QComboBox* shared_choice(Form& form, const QString& label, const QStringList& names, Shared<int> bound);
QCheckBox* shared_check(Form& form, Document& document, const QString& label, Shared<bool> bound);

}  // namespace underlawn
