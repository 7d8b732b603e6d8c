// SPDX-License-Identifier: GPL-3.0-or-later
// What is remembered from one day to the next. Nothing of a plan is among it.
#pragma once

#include <string>

#include "window/theme.h"

class QWidget;

namespace underlawn::settings {

// Takes over what was kept while the settings had no maker's folder of their own; once.
void carry_over();
ThemeChoice theme();  // follows the system until chosen
void keep_theme(ThemeChoice choice);
std::string language();  // its code; the system's until chosen
void keep_language(const std::string& code);
// What lies in the printer, and whether sheets go into one file: the person's own habits, where scale,
// language and units of the sheets are the job's (plan/sheet_wishes.h). -1 until chosen.
int sheet_paper();
void keep_sheet_paper(int paper);
bool a_file_each_sheet();
void keep_a_file_each_sheet(bool each);
// The window's place and size.
void restore_window(QWidget& window);
void keep_window(const QWidget& window);

}  // namespace underlawn::settings
