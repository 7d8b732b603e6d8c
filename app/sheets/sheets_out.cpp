// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/sheets_out.h"

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QSaveFile>

#include "base/say.h"

namespace underlawn {

const std::vector<Trouble>& Sheet::remarks() const {
  static const std::vector<Trouble> kNone;
  return kNone;
}

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

// Begins a page laid out like each sheet before it is painted; `turn` does that on the device.
template <class Turn>
void paint_all(QPainter& painter, const SheetList& sheets, double shrink, Turn turn) {
  for (const Sheet* sheet : sheets)
    for (int page = 0; page < sheet->pages(); ++page) {
      turn(*sheet);
      painter.save();
      painter.scale(shrink, shrink);
      sheet->paint(painter, page);
      painter.restore();
    }
}

}  // namespace

QByteArray pdf_of(const SheetList& sheets, const QString& title) {
  QByteArray bytes;
  if (sheets.empty()) return bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setResolution(static_cast<int>(kSheetUnits));
    writer.setPageLayout(sheets.front()->page_layout());
    writer.setTitle(title);
    writer.setCreator("Underlawn");
    QPainter painter(&writer);
    bool first = true;
    paint_all(painter, sheets, 1, [&](const Sheet& sheet) {
      if (!first) {
        writer.setPageLayout(sheet.page_layout());
        writer.newPage();
      }
      first = false;
    });
  }
  set_creation_date(bytes, "D:20000101000000+00'00'");
  return bytes;
}

QByteArray pdf_of(const Sheet& sheet) {
  return pdf_of(SheetList{&sheet}, sheet.title());
}

Result<void> write_pdf(const SheetList& sheets, const QString& title, const QString& path) {
  const QByteArray pdf = pdf_of(sheets, title);
  QSaveFile file(path);
  if (file.open(QIODevice::WriteOnly) && file.write(pdf) == pdf.size() && file.commit()) return {};
  return refuse({"sheet_not_written", say("the sheet {}", path.toStdString()),
                 say("not written: {}", file.errorString().toStdString()), "", say("Choose another place.")});
}

Result<void> print_sheets(QPrinter& printer, const SheetList& sheets) {
  if (sheets.empty()) return {};
  printer.setFullPage(true);
  printer.setPageLayout(sheets.front()->page_layout());
  QPainter painter;
  if (!painter.begin(&printer))
    return refuse({"printer_not_ready", say("the printer {}", printer.printerName().toStdString()),
                   say("not ready"), "", say("Choose another printer, or write a PDF.")});
  bool first = true;
  paint_all(painter, sheets, printer.resolution() / kSheetUnits, [&](const Sheet& sheet) {
    if (!first) {
      printer.setPageLayout(sheet.page_layout());
      printer.newPage();
    }
    first = false;
  });
  return {};
}

QString document_title(const Plan& plan, const QString& sheet) {
  const QString project = QString::fromStdString(plan.title.project).simplified();
  return project.isEmpty() ? sheet : project + ": " + sheet.toLower();
}

QString file_name_of(const QString& plan_name, const QString& sheet) {
  return plan_name + "-" + sheet.toLower().replace(' ', '-').remove(',') + ".pdf";
}

}  // namespace underlawn
