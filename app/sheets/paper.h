// SPDX-License-Identifier: GPL-3.0-or-later
// Papers and the scales that scale rulers have.
#pragma once

#include <QPageSize>
#include <vector>

#include "base/quantity.h"
#include "sheets/sheet.h"

namespace underlawn::sheet {

QPageSize page_size(Paper paper);
// Sheet units, width by height.
QSizeF size_of(Paper paper, bool landscape);

// 1:N, largest scale first. US: the engineer's rule (1" = 10' .. 60') and its decimal steps; metric: 1:100,
// 1:200, 1:250, 1:500 and so on. The last shows the largest plan there may be.
const std::vector<int>& usual_scales(UnitSystem units);

// `1" = 20' (1:240)`, `1:200`.
QString scale_text(int scale, UnitSystem units);

// m: the whole length of a scale bar of about two inches, in round units.
double scale_bar_length(int scale, UnitSystem units);

}  // namespace underlawn::sheet
