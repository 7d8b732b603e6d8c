// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "exchange/bring_in.h"

namespace underlawn {

QStringList becomes_names();  // for every Becomes, in its order: "leave out", "lot line", ...
QString brought_words(const Brought& brought);                      // "lot line, 1 house, 12 trees"
QString left_out_words(const std::vector<LeftOut>& all, int most);  // a line each

// What was taken of a raster: "Raster of 120 by 90 cells; a height every 2 m, from one cell in 4."
QString raster_words(const Drawing& drawing, UnitSystem units);

}  // namespace underlawn
