// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QIcon>
#include <string_view>

namespace underlawn {

// Our own line icons, drawn at whatever size and density is asked for: `ink` usually, `ink_on` where the
// button is checked. A null icon for a name that is none.
QIcon icon(std::string_view name, const QColor& ink, const QColor& ink_on);

}  // namespace underlawn
