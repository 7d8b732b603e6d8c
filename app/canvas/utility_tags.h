// SPDX-License-Identifier: GPL-3.0-or-later
// How buried lines are told apart without colour: by a letter of their own and by their dashes.
#pragma once

#include <QString>
#include <QVector>

#include "site/site.h"

namespace underlawn {

// "W"; "E1", "E2" where the lot has several of the kind, in the order they were drawn.
QString utility_tag(const Site& site, const Feature& utility);
// Of the line, in pens' widths.
QVector<qreal> utility_dashes(UtilityKind kind);

}  // namespace underlawn
