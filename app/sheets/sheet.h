// SPDX-License-Identifier: GPL-3.0-or-later
// What every printed sheet is: pages that can be painted on any device.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <QSizeF>
#include <QString>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "plan/sheet_wishes.h"

class QPainter;

namespace underlawn {

enum class Paper { letter, tabloid, a4, a3 };

struct SheetSetup {
  Paper paper = Paper::letter;
  std::optional<int> scale;  // 1:scale; without it the largest usual scale at which the plan fits
  std::optional<QDate> date = std::nullopt;  // printed in the title block; today without it
  bool page_a_trench = false;                // dig sheet: a page for each trench as well
  std::string language = "";                 // "es"; empty: as the program speaks
  SheetUnits units = SheetUnits::as_plan;
  QString folder = {};  // of the plan file, where its photos lie; empty: not known
};

inline constexpr double kSheetUnits = 1200;  // an inch

// A sheet laid out and ready to be painted. A Qt GUI application object must be there.
class Sheet {
 public:
  virtual ~Sheet() = default;
  virtual QString title() const = 0;  // "Dig sheet"
  virtual int pages() const = 0;
  virtual QPageLayout page_layout() const = 0;  // without margins: they are in the drawing
  virtual QSizeF page_size() const = 0;         // sheet units, kSheetUnits an inch
  virtual int scale() const { return 0; }       // 1:scale of its plan; 0 where it has none
  // What of the plan is off the page at the asked scale; empty when all is there. The same is printed on the
  // sheet.
  virtual const std::vector<Trouble>& remarks() const;
  // Paints page `page` (0..pages()-1) in sheet units from the page's upper left corner: scale the painter
  // first.
  virtual void paint(QPainter& painter, int page) const = 0;
};

using SheetPtr = std::unique_ptr<const Sheet>;

}  // namespace underlawn
