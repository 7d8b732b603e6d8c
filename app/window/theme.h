// SPDX-License-Identifier: GPL-3.0-or-later
// Underlawn's own look: clean paper, dark soil, grass. Two themes with the same roles.
#pragma once

#include <QColor>
#include <QObject>
#include <QString>

class QApplication;

namespace underlawn {

enum class ThemeChoice { system, light, dark };

struct Theme {
  bool dark = false;
  QColor paper;                 // behind fields and reports
  QColor ground;                // behind panels
  QColor sunken;                // behind read-only things, table heads
  QColor line;                  // hairlines
  QColor edge;                  // outline of fields: 3:1 against what is round it
  QColor text;                  // 7:1 and more on paper
  QColor faint;                 // second text, 4.5:1 and more
  QColor grass;                 // what can be pressed and what is chosen
  QColor on_grass;              // text on it
  QColor tint;                  // behind what is chosen in a list
  QColor focus;                 // ring round what has the keyboard
  QColor error, warning, hint;  // as text on paper, 4.5:1 and more

  static Theme light();
  static Theme night();
};

// Contrast of two opaque colours, 1..21: WCAG 2.1, relative luminance.
double contrast(const QColor& a, const QColor& b);

// Whether the system asks for dark windows.
bool system_is_dark();

QString style_sheet(const Theme& theme);
void apply_theme(QApplication& application, const Theme& theme);

// Spacing rhythm: everything is a multiple of it. Device-independent pixels.
inline constexpr int kGap = 4;

}  // namespace underlawn
