// SPDX-License-Identifier: GPL-3.0-or-later
// A page of the report as rich text. Every number on it is a figure and a link to how it came about.
#pragma once

#include <QString>
#include <string>
#include <string_view>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "window/theme.h"

namespace underlawn {

// Links: "figure:<key>" how a number came about, "place:<finding key>" show it, "accept:<finding key>",
// "withdraw:<finding key>", "panel:ways" and "panel:size" open that panel, "remedies:find", "remedies:stop",
// "take:<number>" take what makes room.
inline constexpr const char* kFigureLink = "figure:";
inline constexpr const char* kPlaceLink = "place:";
inline constexpr const char* kAcceptLink = "accept:";
inline constexpr const char* kWithdrawLink = "withdraw:";
inline constexpr const char* kPanelLink = "panel:";
inline constexpr const char* kFindRemediesLink = "remedies:find";
inline constexpr const char* kStopRemediesLink = "remedies:stop";
inline constexpr const char* kTakeLink = "take:";

class Page {
 public:
  Page(const Figures& figures, UnitSystem units, const Theme& theme)
      : figures_(figures), units_(units), theme_(theme) {}

  // The figure's value as a link; a dash where there is none.
  QString number(std::string_view key, Fineness fineness = Fineness::normal) const;
  QString value(const Figure& figure, Fineness fineness = Fineness::normal) const;  // without the link
  bool has(std::string_view key) const { return figures_.find(key) != nullptr; }
  QString link(const QString& address, const QString& words) const;
  QString faint(const QString& words) const;
  QString coloured(const QString& words, const QColor& colour) const;

  void heading(const QString& words);
  void anchor(const QString& name);
  void paragraph(const QString& rich);
  void spaced(const QString& rich);  // a paragraph that stands by itself
  // Tables: a head of words, then rows; every column but the first is set to the right.
  void begin_table(const QStringList& heads);
  void row(const QStringList& rich_cells);
  // Long names in a narrow table: the name over the whole width, the cells beneath it.
  void row_beneath(const QString& rich_name, const QStringList& rich_cells);
  void sum_row(const QString& rich_name, const QString& rich_sum, int columns);
  void end_table();

  const QString& html() const { return html_; }
  const Figures& figures() const { return figures_; }
  const Theme& theme() const { return theme_; }
  UnitSystem units() const { return units_; }

 private:
  const Figures& figures_;
  UnitSystem units_;
  const Theme& theme_;
  QString html_;
};

}  // namespace underlawn
