// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/export_flow.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

#include "base/say.h"
#include "exchange/export_plan.h"
#include "files/atomic_file.h"
#include "files/stake_csv.h"
#include "plan/solve.h"
#include "window/document.h"
#include "window/notice_bar.h"

namespace underlawn {

namespace {

constexpr const char* kSubject = "export";

// The list of stakes is no table of the plan: its name says which it is.
QString stakes_end() {
  return QObject::tr("-stakes", "end of a file's name");
}

QString ending_of(const QString& filter) {
  return filter.contains("geojson") ? ".geojson"
         : filter.contains("gpkg")  ? ".gpkg"
         : filter.contains("csv")   ? ".csv"
                                    : ".dxf";
}

QString suggested(const Document& document, const QString& ending) {
  const QString folder =
      document.path().isEmpty() ? QString() : QFileInfo(document.path()).absolutePath() + "/";
  const QString base =
      document.path().isEmpty() ? document.display_name() : QFileInfo(document.path()).completeBaseName();
  return folder + base + (ending == ".csv" ? stakes_end() : QString()) + ending;
}

// For programs it is the same in every language; words come about as a plan is solved.
std::string stakes_in_english(const Plan& plan, const Outcome& outcome) {
  if (spoken_here() == nullptr) return stake_csv(plan, outcome);
  const SpeakHere english(nullptr);
  return stake_csv(plan, solve(plan));
}

Result<void> export_stakes(const Document& document, const QString& path) {
  const Outcome& outcome = *document.outcome();
  if (outcome.stake_out.ties.empty())
    return refuse({"no_stakes", say("The stake-out list"), say_as("a list", "empty"),
                   say("one stake or more"), say("Draw lot, house and entry point.")});
  return write_file(path.toStdString(), stakes_in_english(*document.outcome_plan(), outcome));
}

}  // namespace

Result<void> export_to(const Document& document, const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  if (ending == "csv") return export_stakes(document, path);
  const auto form = export_form(ending.toStdString());
  if (!form)
    return refuse({"export_form", say("The file's ending"), "“." + ending.toStdString() + "”",
                   say(".dxf, .geojson, .gpkg or .csv"), say("Give the file one of these.")});
  const Plan& plan = *document.outcome_plan();
  const Outcome& outcome = *document.outcome();
  const auto bytes = exported(*form, plan, export_parts(plan, outcome.layout, outcome.stake_out));
  if (!bytes) return refuse(bytes.error());
  return write_file(path.toStdString(), *bytes);
}

void ask_and_export(Document& document, NoticeBar& bar, QWidget* window) {
  QFileDialog dialog(window, QObject::tr("Export the plan"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters(
      QObject::tr("DXF (*.dxf);;GeoJSON (*.geojson);;GeoPackage (*.gpkg);;Stake-out list (*.csv)")
          .split(";;"));
  const QFileInfo first(suggested(document, ".dxf"));
  if (!document.path().isEmpty()) dialog.setDirectory(first.absolutePath());
  dialog.selectFile(first.fileName());
  // The name goes along with the form, for as long as it is the suggested one.
  QObject::connect(&dialog, &QFileDialog::filterSelected, &dialog,
                   [&dialog, &document](const QString& filter) {
                     const QString base = QFileInfo(dialog.selectedFiles().value(0)).completeBaseName();
                     const QString plain = QFileInfo(suggested(document, ".dxf")).completeBaseName();
                     if (base == plain || base == plain + stakes_end())
                       dialog.selectFile(QFileInfo(suggested(document, ending_of(filter))).fileName());
                   });
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  QString path = dialog.selectedFiles().front();
  if (QFileInfo(path).suffix().isEmpty()) path += ending_of(dialog.selectedNameFilter());
  document.when_current([&document, &bar, path] {
    const auto done = export_to(document, path);
    bar.tell(kSubject,
             done ? QObject::tr("The plan was written to “%1”.").arg(QDir::toNativeSeparators(path))
                  : QObject::tr("“%1” was not written. %2")
                        .arg(QFileInfo(path).fileName(), QString::fromStdString(done.error().message())));
  });
}

}  // namespace underlawn
