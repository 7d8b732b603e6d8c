// SPDX-License-Identifier: GPL-3.0-or-later
// Drawings in and out, as a shell sees it.
#include <gtest/gtest.h>

#include <QProcess>
#include <QTemporaryDir>

#include "files/atomic_file.h"
#include "support/drawing_files.h"

namespace underlawn {
namespace {

struct Ran {
  std::string out, err;
  int status = -1;
};

class DrawingVerbs : public testing::Test {
 protected:
  Ran run(const QStringList& words) {
    QProcess process;
    process.setWorkingDirectory(folder_.path());
    process.start(UNDERLAWN_PROGRAM, words);
    EXPECT_TRUE(process.waitForFinished(120'000));
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
    return {process.readAllStandardOutput().toStdString(), process.readAllStandardError().toStdString(),
            process.exitCode()};
  }
  void put(const char* name, std::string_view bytes) const {
    ASSERT_TRUE(write_file(folder_.filePath(name).toStdString(), bytes).has_value());
  }
  bool there(const char* name) const { return QFile::exists(folder_.filePath(name)); }

  QTemporaryDir folder_;
};

using testing::HasSubstr;

}  // namespace

TEST_F(DrawingVerbs, ImportMakesAPlanOfADrawingAndExportWritesItBack) {
  put("lot.dxf", sample::dxf_text(sample::in_order(sample::surveyed_lot())));
  const Ran listed = run({"drawing", "lot.dxf"});
  EXPECT_EQ(listed.status, 0) << listed.err;
  EXPECT_THAT(listed.out, HasSubstr("arrived: 13 of 13 shapes"));
  const Ran ran =
      run({"import", "lot.dxf", "--out", "a.underlawn", "--map", "Straße=no_dig;V-NGAS-UNDR=water"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("water: 1\n"));
  EXPECT_THAT(ran.out, HasSubstr("DIMENSION"));
  for (const char* form : {"dxf", "gpkg"}) {
    const Ran out = run({"export", "a.underlawn", "--as", form});
    EXPECT_EQ(out.status, 0) << out.err;
    EXPECT_EQ(out.out, std::string("a.") + form + "\n");
    EXPECT_EQ(run({"drawing", QString("a.%1").arg(form)}).status, 0);
  }
  EXPECT_EQ(run({"export", "a.underlawn", "--as", "geojson"}).status, 1);  // it lies nowhere on the Earth
  EXPECT_EQ(run({"export", "a.underlawn", "--as", "dwg"}).status, 2);
}

TEST_F(DrawingVerbs, ImportSaysWhatItCannotDo) {
  put("lot.dxf", sample::dxf_text(sample::dxf_drawing(sample::dxf_line("walls", {0, 0}, {9, 0}), 0)));
  EXPECT_EQ(run({"import", "lot.dxf"}).status, 2);
  const Ran unit = run({"import", "lot.dxf", "--out", "a.underlawn"});
  EXPECT_EQ(unit.status, 1);
  EXPECT_THAT(unit.err, HasSubstr("--unit"));
  const Ran none = run({"import", "lot.dxf", "--out", "a.underlawn", "--unit", "ft"});
  EXPECT_EQ(none.status, 1);
  EXPECT_THAT(none.err, HasSubstr("--map"));
  EXPECT_EQ(run({"import", "lot.dxf", "--out", "a.underlawn", "--unit", "ft", "--map", "walls=moat"}).status,
            1);
  EXPECT_EQ(run({"import", "none.dxf", "--out", "a.underlawn"}).status, 3);
  EXPECT_FALSE(there("a.underlawn"));
}

}  // namespace underlawn
