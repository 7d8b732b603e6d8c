// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/settings.h"

#include <QCoreApplication>
#include <QScreen>
#include <QSettings>
#include <QWidget>

#include "language/language.h"

namespace underlawn::settings {

void carry_over() {
  QSettings now;
  if (!now.allKeys().isEmpty()) return;
  const QSettings old("Unknown Organization", QCoreApplication::applicationName());  // as Qt calls none
  for (const QString& key : old.childKeys()) now.setValue(key, old.value(key));
}

ThemeChoice theme() {
  const QString kept = QSettings().value("theme").toString();
  return kept == "light" ? ThemeChoice::light : kept == "dark" ? ThemeChoice::dark : ThemeChoice::system;
}

void keep_theme(ThemeChoice choice) {
  QSettings().setValue("theme", choice == ThemeChoice::light  ? "light"
                                : choice == ThemeChoice::dark ? "dark"
                                                              : "system");
}

std::string language() {
  const std::string kept = QSettings().value("language").toString().toStdString();
  if (find_language(kept) != nullptr) return kept;
  for (const char* name : {"LC_ALL", "LC_MESSAGES", "LANG"})
    if (const QByteArray wanted = qgetenv(name); !wanted.isEmpty())
      return language_of_system(wanted.toStdString());
  return "en";
}

void keep_language(const std::string& code) {
  QSettings().setValue("language", QString::fromStdString(code));
}

int sheet_paper() {
  return QSettings().value("sheets/paper", -1).toInt();
}
void keep_sheet_paper(int paper) {
  QSettings().setValue("sheets/paper", paper);
}
bool a_file_each_sheet() {
  return QSettings().value("sheets/each", false).toBool();
}
void keep_a_file_each_sheet(bool each) {
  QSettings().setValue("sheets/each", each);
}

void restore_window(QWidget& window) {
  QSize size(1600, 1000);
  if (const QScreen* screen = window.screen()) size = size.boundedTo(screen->availableSize() * 0.96);
  window.resize(size);
  window.restoreGeometry(QSettings().value("window").toByteArray());
}

void keep_window(const QWidget& window) {
  QSettings().setValue("window", window.saveGeometry());
}

}  // namespace underlawn::settings
