// SPDX-License-Identifier: GPL-3.0-or-later
// What is remembered from one day to the next. Nothing of a plan is among it.
#pragma once

#include <string>

#include "window/theme.h"

class QWidget;

namespace underlawn::settings {

ThemeChoice theme();  // follows the system until chosen
void keep_theme(ThemeChoice choice);
std::string language();  // its code; the system's until chosen
void keep_language(const std::string& code);
// The window's place and size.
void restore_window(QWidget& window);
void keep_window(const QWidget& window);

}  // namespace underlawn::settings
