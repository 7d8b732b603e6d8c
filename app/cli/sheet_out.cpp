// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/sheet_out.h"

#include <QApplication>
#include <filesystem>
#include <iostream>

#include "base/say.h"
#include "language/language.h"
#include "sheets/said_sheet.h"
#include "sheets/sheets_out.h"

namespace underlawn::cli {

namespace {

// What Qt remarks about the machine (a folder it would like, a font it lacks) is not trouble with the plan.
void keep_quiet(QtMsgType type, const QMessageLogContext&, const QString& text) {
  if (type == QtCriticalMsg || type == QtFatalMsg) std::cerr << "underlawn: " << text.toStdString() << "\n";
}

using Made = std::vector<SheetPtr>;

Made made(const Plan& plan, const Outcome& outcome, const SheetOrder& order) {
  Made sheets = make_sheets(order.kinds, plan, outcome, order.setup);
  for (const SheetPtr& sheet : sheets)
    for (const Trouble& remark : sheet->remarks()) std::cerr << "underlawn: " << remark.message() << "\n";
  return sheets;
}

Result<std::vector<std::string>> one_file(const Plan& plan, const Made& sheets, const std::string& path) {
  SheetList list;
  for (const SheetPtr& sheet : sheets) list.push_back(sheet.get());
  const QString title = document_title(plan, sheets.size() == 1 ? sheets[0]->title() : QObject::tr("Sheets"));
  const auto written = write_pdf(list, title, QString::fromStdString(path));
  if (!written) return refuse(written.error());
  return std::vector{path};
}

Result<std::vector<std::string>> file_each(const Plan& plan, const Made& sheets, const SheetOrder& order) {
  std::error_code error;
  std::filesystem::create_directories(order.path, error);
  if (error)
    return refuse({"folder_not_made", say("the folder {}", order.path),
                   say("not made: {}", translated(error.message())), "", say("Choose another place.")});
  std::vector<std::string> paths;
  for (const SheetPtr& sheet : sheets) {
    const std::string name = file_name_of(QString::fromStdString(order.name), sheet->title()).toStdString();
    paths.push_back((std::filesystem::path(order.path) / name).string());
    const auto written =
        write_pdf({sheet.get()}, document_title(plan, sheet->title()), QString::fromStdString(paths.back()));
    if (!written) return refuse(written.error());
  }
  return paths;
}

}  // namespace

Result<std::vector<std::string>> sheets_out(const Plan& plan, const Outcome& outcome,
                                            const SheetOrder& order) {
  // Fonts need an application object, but never a display.
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qInstallMessageHandler(keep_quiet);
  int argc = 1;
  char name[] = "underlawn";
  char* argv[] = {name, nullptr};
  const QApplication application(argc, argv);
  let_qt_speak();
  const Made sheets = made(plan, outcome, order);
  return order.each ? file_each(plan, sheets, order) : one_file(plan, sheets, order.path);
}

}  // namespace underlawn::cli
