// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>

#include "window/theme.h"

namespace underlawn {

// The theme in force and who wants to know when it changes. One a program, like the application's own style.
class ThemeKeeper : public QObject {
  Q_OBJECT

 public:
  static ThemeKeeper& instance();
  const Theme& theme() const { return theme_; }
  ThemeChoice choice() const { return choice_; }
  void choose(ThemeChoice choice);

 signals:
  void changed();

 private:
  Theme theme_ = Theme::light();
  ThemeChoice choice_ = ThemeChoice::system;
};

inline const Theme& theme_now() {
  return ThemeKeeper::instance().theme();
}

}  // namespace underlawn
