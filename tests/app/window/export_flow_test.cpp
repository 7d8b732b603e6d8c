// SPDX-License-Identifier: GPL-3.0-or-later
// What goes out of the window besides drawings.
#include "window/export_flow.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>

#include "app/support/wait.h"
#include "files/stake_csv.h"
#include "language/language.h"
#include "support/sample_plans.h"
#include "window/document.h"

using namespace underlawn;

namespace {

QByteArray bytes_of(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

}  // namespace

// For a total station or a spreadsheet: corners, stakes, tapes and offsets; in English whatever is spoken.
TEST(ExportFlow, TheStakeOutListIsWrittenAsCsv) {
  QTemporaryDir folder;
  const auto written = [&](const char* language) {
    speak(language);
    Document document;
    Plan plan = sample::half_acre();
    plan.thermal.years = 1;
    document.commit(plan, "Drawn");
    EXPECT_TRUE(wait_until([&] { return !document.stale(); }));
    const QString path = folder.filePath(QString("stakes-%1.csv").arg(language));
    EXPECT_TRUE(export_to(document, path).has_value());
    return bytes_of(path);
  };
  const QByteArray english = written("en");
  EXPECT_TRUE(english.startsWith("kind,name,x")) << english.left(80).toStdString();
  EXPECT_TRUE(english.contains("stake,1 head,"));
  EXPECT_EQ(written("es"), english);
  speak("en");
}

TEST(ExportFlow, WithNothingToStakeOutNoListIsWritten) {
  QTemporaryDir folder;
  Document document;
  Plan plan;
  for (Point p : {Point{0, 0}, Point{40, 0}, Point{40, 60}, Point{0, 60}}) plan.site.lot.push_back({p, 3});
  document.commit(plan, "Drawn");
  ASSERT_TRUE(wait_until([&] { return !document.stale() && document.outcome() != nullptr; }));
  const QString path = folder.filePath("stakes.csv");
  const auto done = export_to(document, path);
  ASSERT_FALSE(done.has_value());
  EXPECT_NE(done.error().message().find("entry point"), std::string::npos) << done.error().message();
  EXPECT_FALSE(QFile::exists(path));
}
