// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/theme_now.h"

#include <QApplication>

namespace underlawn {

ThemeKeeper& ThemeKeeper::instance() {
  static ThemeKeeper keeper;
  return keeper;
}

void ThemeKeeper::choose(ThemeChoice choice) {
  choice_ = choice;
  const bool dark = choice == ThemeChoice::dark || (choice == ThemeChoice::system && system_is_dark());
  theme_ = dark ? Theme::night() : Theme::light();
  if (auto* application = qobject_cast<QApplication*>(QCoreApplication::instance()))
    apply_theme(*application, theme_);
  emit changed();
}

}  // namespace underlawn
