// SPDX-License-Identifier: GPL-3.0-or-later
// Sheets onto their two devices.
#pragma once

#include <QByteArray>
#include <QStringList>
#include <vector>

#include "plan/plan.h"
#include "sheets/sheet.h"

class QPrinter;

namespace underlawn {

using SheetList = std::vector<const Sheet*>;

// One vector PDF of all the sheets' pages. `title` is the document's, as a reader shows it. The same sheets
// of the same date give the same bytes.
QByteArray pdf_of(const SheetList& sheets, const QString& title);
QByteArray pdf_of(const Sheet& sheet);

// Writes it whole or not at all. Refuses a file that cannot be written.
Result<void> write_pdf(const SheetList& sheets, const QString& title, const QString& path);

// Prints on a printer set up by the caller but for its page layout, which follows each sheet.
Result<void> print_sheets(QPrinter& printer, const SheetList& sheets);

// "Alder Lane 14: dig sheet"; the sheet's title alone where the project has no name.
QString document_title(const Plan& plan, const QString& sheet);

// "alder-lane-dig-sheet.pdf" of "alder-lane" and the sheet's title.
QString file_name_of(const QString& plan_name, const QString& sheet);

}  // namespace underlawn
