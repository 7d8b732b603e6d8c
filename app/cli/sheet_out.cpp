// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/sheet_out.h"

#include <QApplication>
#include <iostream>

namespace underlawn::cli {

namespace {

// What Qt remarks about the machine (a folder it would like, a font it lacks) is not trouble with the plan.
void keep_quiet(QtMsgType type, const QMessageLogContext&, const QString& text) {
  if (type == QtCriticalMsg || type == QtFatalMsg) std::cerr << "underlawn: " << text.toStdString() << "\n";
}

}  // namespace

Paper usual_paper(const Plan& plan) {
  return plan.units == UnitSystem::us ? Paper::letter : Paper::a4;
}

Result<void> sheet_out(const Plan& plan, const Outcome& outcome, const SheetSetup& setup,
                       const std::string& path) {
  // Fonts need an application object, but never a display.
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qInstallMessageHandler(keep_quiet);
  int argc = 1;
  char name[] = "underlawn";
  char* argv[] = {name, nullptr};
  const QApplication application(argc, argv);
  const DigSheet sheet(plan, outcome, setup);
  for (const Trouble& remark : sheet.remarks()) std::cerr << "underlawn: " << remark.message() << "\n";
  return write_dig_sheet(sheet, QString::fromStdString(path));
}

}  // namespace underlawn::cli
