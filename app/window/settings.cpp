// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/settings.h"

#include <QSettings>
#include <QWidget>

namespace underlawn::settings {

ThemeChoice theme() {
  const QString kept = QSettings().value("theme").toString();
  return kept == "light" ? ThemeChoice::light : kept == "dark" ? ThemeChoice::dark : ThemeChoice::system;
}

void keep_theme(ThemeChoice choice) {
  QSettings().setValue("theme", choice == ThemeChoice::light  ? "light"
                                : choice == ThemeChoice::dark ? "dark"
                                                              : "system");
}

void restore_window(QWidget& window) {
  window.resize(1600, 1000);
  window.restoreGeometry(QSettings().value("window").toByteArray());
}

void keep_window(const QWidget& window) {
  QSettings().setValue("window", window.saveGeometry());
}

}  // namespace underlawn::settings
