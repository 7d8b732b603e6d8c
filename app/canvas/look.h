// SPDX-License-Identifier: GPL-3.0-or-later
// Colours and line weights of the drawing. Utilities keep the APWA colours in every look, because crews know
// them; everything else is told apart by shape, hatch and label too, never by colour alone.
#pragma once

#include <QColor>
#include <QFont>
#include <QString>

#include "field/trench.h"
#include "plan/finding.h"
#include "site/site.h"

namespace underlawn {

struct Look {
  bool dark = false;
  QColor background, ground, lot_line, setback, text, faint_text, dimension;
  QColor house, drive, septic, well, tree, easement, no_dig;
  QColor buildable, clearance;
  QColor trench, trench_fill, coil, header, run, crossing;
  QColor selection, snap, stale, ghost, other_ghost;
  QColor hint, warning, error;
  double line = 1.0;      // device units of a normal line
  double text_size = 11;  // device units

  static Look light();
  static Look night();
  static Look paper();  // for print: black-and-white legible
};

QColor apwa_colour(UtilityKind kind, const Look& look);
QColor severity_colour(Severity severity, const Look& look);

// The letter written into the line: E, G, C, W, S, R.
QChar utility_letter(UtilityKind kind);

// The face of drawing and sheets, `size` device units high.
QFont plan_font(double size, QFont::Weight weight = QFont::Normal);
// The font as `text` is to be measured and drawn with it.
QFont set_for(const QFont& font, const QString& text);

}  // namespace underlawn
