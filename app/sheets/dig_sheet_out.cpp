// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet onto its two devices.
#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QSaveFile>

#include "sheets/dig_sheet.h"

namespace underlawn {

namespace {

// Qt stamps the hour into the file; the sheet itself bears only its date.
void set_creation_date(QByteArray& pdf, const QByteArray& stamp) {
  const qsizetype at = pdf.indexOf("/CreationDate (");
  if (at < 0) return;
  const qsizetype from = at + 15, to = pdf.indexOf(')', from);
  // The same length, so that the offsets of the cross-reference table stay true.
  for (qsizetype i = from; i < to; ++i)
    if (i - from < stamp.size()) pdf[i] = stamp[i - from];
}

}  // namespace

QByteArray dig_sheet_pdf(const DigSheet& sheet) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setResolution(static_cast<int>(kSheetUnits));
    writer.setPageLayout(sheet.page_layout());
    writer.setTitle("Dig sheet");
    writer.setCreator("Underlawn");
    QPainter painter(&writer);
    for (int page = 0; page < sheet.pages(); ++page) {
      if (page > 0) writer.newPage();
      sheet.paint(painter, page);
    }
  }
  set_creation_date(bytes, "D:20000101000000+00'00'");
  return bytes;
}

Result<void> write_dig_sheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup,
                             const QString& path) {
  if (setup.scale && *setup.scale < 1)
    return refuse({"scale_too_large", "the scale of the sheet", "1:" + std::to_string(*setup.scale),
                   "1:1 or smaller", "Ask for 1:240, say."});
  return write_dig_sheet(DigSheet(plan, outcome, setup), path);
}

Result<void> write_dig_sheet(const DigSheet& sheet, const QString& path) {
  const QByteArray pdf = dig_sheet_pdf(sheet);
  QSaveFile file(path);
  if (file.open(QIODevice::WriteOnly) && file.write(pdf) == pdf.size() && file.commit()) return {};
  return refuse({"sheet_not_written", "the dig sheet " + path.toStdString(),
                 "not written: " + file.errorString().toStdString(), "", "Choose another place."});
}

Result<void> print_dig_sheet(QPrinter& printer, const DigSheet& sheet) {
  printer.setFullPage(true);
  printer.setPageLayout(sheet.page_layout());
  QPainter painter;
  if (!painter.begin(&printer))
    return refuse({"printer_not_ready", "the printer " + printer.printerName().toStdString(), "not ready", "",
                   "Choose another printer, or write a PDF."});
  const double k = printer.resolution() / kSheetUnits;
  for (int page = 0; page < sheet.pages(); ++page) {
    if (page > 0) printer.newPage();
    painter.save();
    painter.scale(k, k);
    sheet.paint(painter, page);
    painter.restore();
  }
  return {};
}

}  // namespace underlawn
