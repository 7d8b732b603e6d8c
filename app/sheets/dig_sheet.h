// SPDX-License-Identifier: GPL-3.0-or-later
// The dig sheet: what the crew takes to the lot. First the plan to scale with every trench end tied to house
// corners, then tables, section, cautions. Every number on it is one of the outcome's.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <QString>
#include <memory>
#include <optional>

#include "base/result.h"
#include "canvas/view.h"
#include "plan/outcome.h"
#include "plan/plan.h"

class QPainter;
class QPrinter;

namespace underlawn {

enum class Paper { letter, tabloid, a4, a3 };

struct SheetSetup {
  Paper paper = Paper::letter;
  std::optional<int> scale;  // 1:scale; without it the largest usual scale at which the plan fits
  std::optional<QDate> date = std::nullopt;  // printed in the title block; today without it
};

// A sheet laid out and ready to be painted, on whatever device. A Qt GUI application object must be there.
class DigSheet {
 public:
  DigSheet(Plan plan, Outcome outcome, const SheetSetup& setup);
  ~DigSheet();
  DigSheet(DigSheet&&) noexcept;
  DigSheet& operator=(DigSheet&&) noexcept;

  int pages() const;
  int scale() const;                // 1:scale of the plan
  QPageLayout page_layout() const;  // without margins: they are in the drawing
  QSizeF page_size() const;         // sheet units, kSheetUnits an inch
  const View& view() const;         // of the plan on the first page, in sheet units from `map().topLeft()`
  QRectF map() const;               // the plan's frame on the first page, sheet units
  // What of the plan is off the page at the asked scale; empty when all is there. The same is printed on the
  // sheet.
  const std::vector<Trouble>& remarks() const;

  // Paints page `page` (0..pages()-1) in sheet units from the page's upper left corner: scale the painter
  // first.
  void paint(QPainter& painter, int page) const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

inline constexpr double kSheetUnits = 1200;  // an inch

// Writes the sheet as vector PDF, whole or not at all. Refuses a file that cannot be written and a scale
// below 1:1. The same plan on the same date gives the same bytes.
Result<void> write_dig_sheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup,
                             const QString& path);

// The same of a sheet laid out already, whose remarks the caller has.
Result<void> write_dig_sheet(const DigSheet& sheet, const QString& path);

// The PDF itself.
QByteArray dig_sheet_pdf(const DigSheet& sheet);

// Prints on a printer set up by the caller but for its page layout, which follows the sheet.
Result<void> print_dig_sheet(QPrinter& printer, const DigSheet& sheet);

}  // namespace underlawn
