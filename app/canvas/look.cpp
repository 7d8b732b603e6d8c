// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/look.h"

namespace underlawn {

namespace {

struct Colours {
  const char* night;
  const char* light;  // and paper
};

// The classes of the APWA uniform colour code. Hues are the code's; how dark each is was chosen so that any
// two also differ to eyes that see no red or no green (tests/app/canvas/colour_vision_test.cpp).
Colours apwa(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::electric:
      return {"#f2555f", "#990c16"};
    case UtilityKind::gas:
      return {"#ffe373", "#d6ab00"};
    case UtilityKind::communication:
      return {"#ff8519", "#d15700"};
    case UtilityKind::water:
      return {"#80bbff", "#125199"};
    case UtilityKind::sewer:
      return {"#7dd199", "#1e9445"};
    case UtilityKind::reclaimed:
      return {"#b155f2", "#420f66"};
  }
  return {"#ffffff", "#000000"};
}

}  // namespace

Look Look::light() {
  Look look;
  look.background = "#efece4";
  look.ground = "#faf8f2";
  look.lot_line = "#26282b";
  look.setback = "#a59d8b";
  look.text = "#1f2328";
  look.faint_text = "#666b72";
  look.dimension = "#4d535a";
  look.house = "#33383f";
  look.drive = "#8d887c";
  look.septic = "#3d6f4c";
  look.well = "#1a5fa3";
  look.tree = "#5a7d3f";
  look.easement = "#7a6597";
  look.no_dig = "#a3542f";
  look.buildable = "#dbe8cf";
  look.clearance = "#7c93a8";
  look.trench = "#6b4423";
  look.trench_fill = "#f0e0c8";
  look.coil = "#14415f";
  look.header = "#14415f";
  look.run = "#14415f";
  look.crossing = "#a3157a";
  look.selection = "#0b7fab";
  look.snap = "#d6006c";
  look.stale = "#a7a49c";
  look.ghost = "#00594e";
  look.other_ghost = "#a3246f";
  look.hint = "#2f6db5";
  look.warning = "#c26a00";
  look.error = "#b3132b";
  return look;
}

Look Look::night() {
  Look look;
  look.dark = true;
  look.background = "#14171a";
  look.ground = "#1d2125";
  look.lot_line = "#e8e4da";
  look.setback = "#5d6369";
  look.text = "#eceae4";
  look.faint_text = "#9aa1a8";
  look.dimension = "#b9bec4";
  look.house = "#c9ced4";
  look.drive = "#7b7f84";
  look.septic = "#82bb93";
  look.well = "#74b3ee";
  look.tree = "#94b878";
  look.easement = "#b7a3d6";
  look.no_dig = "#dd9470";
  look.buildable = "#26332a";
  look.clearance = "#71869a";
  look.trench = "#d9aa77";
  look.trench_fill = "#3a2f24";
  look.coil = "#cfeafa";
  look.header = "#cfeafa";
  look.run = "#cfeafa";
  look.crossing = "#ff8ad6";
  look.selection = "#4cc3f0";
  look.snap = "#ff77c4";
  look.stale = "#5c6166";
  look.ghost = "#a8fff2";
  look.other_ghost = "#f29ad0";
  look.hint = "#7db4f5";
  look.warning = "#ffb54a";
  look.error = "#ff7480";
  return look;
}

Look Look::paper() {
  Look look = light();
  look.background = look.ground = "#ffffff";
  look.lot_line = look.text = look.house = "#000000";
  look.setback = "#9a9a9a";
  look.faint_text = "#4a4a4a";
  look.dimension = "#222222";
  look.drive = "#777777";
  look.buildable = "#eef3e8";
  look.trench = "#3a2410";
  look.trench_fill = "#f6ecdc";
  look.coil = look.header = look.run = "#0d3550";
  look.septic = "#2f5f3e";
  look.tree = "#47692e";
  return look;
}

QColor apwa_colour(UtilityKind kind, const Look& look) {
  const Colours colours = apwa(kind);
  return look.dark ? colours.night : colours.light;
}

QColor severity_colour(Severity severity, const Look& look) {
  switch (severity) {
    case Severity::hint:
      return look.hint;
    case Severity::warning:
      return look.warning;
    case Severity::error:
      return look.error;
  }
  return look.error;
}

QChar utility_letter(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::electric:
      return 'E';
    case UtilityKind::gas:
      return 'G';
    case UtilityKind::communication:
      return 'C';
    case UtilityKind::water:
      return 'W';
    case UtilityKind::sewer:
      return 'S';
    case UtilityKind::reclaimed:
      return 'R';
  }
  return '?';
}

QFont plan_font(double size, QFont::Weight weight) {
  QFont font;
  font.setFamilies({"Inter", "DejaVu Sans"});
  font.setStyleHint(QFont::SansSerif);
  font.setPixelSize(std::max(1, static_cast<int>(std::lround(size))));
  font.setWeight(weight);
  // Unhinted, so that a text is as wide on paper as it was measured.
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

// Beside figures and capitals the face swaps hyphen, colon and minus for taller ones without a character of
// their own, so that 24'-5" and AS-BUILT could not be searched for in a PDF. Texts with figures, signs or
// punctuation are set letter by letter, unless their script needs shaping.
QFont set_for(const QFont& font, const QString& text) {
  bool swapped = false;
  for (QChar c : text) {
    if (c.unicode() >= 0x250 && (c.isLetter() || c.isMark())) return font;
    swapped = swapped || c.isDigit() || c.isPunct() || c.isSymbol();
  }
  if (!swapped) return font;
  QFont plain = font;
  plain.setStyleStrategy(QFont::PreferNoShaping);
  return plain;
}

}  // namespace underlawn
