// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/file_watch.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "files/plan_file.h"
#include "support/sample_plans.h"
#include "window/file_flow.h"

using namespace underlawn;

namespace {

class FileWatchTest : public testing::Test {
 protected:
  FileWatchTest() {
    EXPECT_TRUE(save_plan(sample::half_acre(), path.toStdString()).has_value());
    EXPECT_TRUE(document.open(path).has_value());
  }

  Plan renamed(const char* project) {
    Plan plan = document.committed();
    plan.title.project = project;
    return plan;
  }
  void somebody_saves(const char* project) {
    EXPECT_TRUE(save_plan(renamed(project), path.toStdString()).has_value());
  }
  std::string project_on_disk() { return load_plan(path.toStdString())->value.title.project; }

  QTemporaryDir dir;
  QString path = dir.filePath("a.underlawn");
  Document document;
  FileWatch watch{document, dir.filePath("marks"), 50};
};

}  // namespace

TEST_F(FileWatchTest, OwnSavesAreNoChangeAndOthersAre) {
  EXPECT_FALSE(watch.changed_since().has_value());
  document.commit(renamed("mine"), "Name");
  ASSERT_TRUE(document.save().has_value());
  EXPECT_FALSE(watch.changed_since().has_value());
  QSignalSpy told(&watch, &FileWatch::changed);
  somebody_saves("theirs");
  EXPECT_TRUE(watch.changed_since().has_value());
  EXPECT_TRUE(told.wait(2000));
  EXPECT_FALSE(told.wait(300)) << "told once";
}

TEST_F(FileWatchTest, TheSameBytesWrittenAgainAreNoChange) {
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadWrite));
  const QByteArray bytes = file.readAll();
  file.seek(0);
  file.write(bytes);
  file.setFileTime(QDateTime::currentDateTime().addSecs(60), QFileDevice::FileModificationTime);
  file.close();
  EXPECT_FALSE(watch.changed_since().has_value());
}

TEST_F(FileWatchTest, AFileThatIsGoneIsNoChange) {
  QFile::remove(path);
  EXPECT_FALSE(watch.changed_since().has_value());
}

TEST_F(FileWatchTest, ASecondWindowLearnsThatThereIsAFirst) {
  EXPECT_FALSE(watch.elsewhere());
  Document other;
  FileWatch second(other, dir.filePath("marks"), 50);
  QSignalSpy told(&second, &FileWatch::open_elsewhere);
  ASSERT_TRUE(other.open(path).has_value());
  EXPECT_TRUE(second.elsewhere());
  EXPECT_EQ(told.count(), 1);
  document.start_new();
  ASSERT_TRUE(other.open(path).has_value());
  other.start_new();
  ASSERT_TRUE(other.open(path).has_value());
  EXPECT_FALSE(second.elsewhere()) << "the first has gone elsewhere";
}

TEST_F(FileWatchTest, WhatSomebodyElseSavedIsNotWrittenOverWithoutAWord) {
  QWidget window;
  NoticeBar bar;
  KeptAside kept(document, dir.filePath("kept"), 100000);
  FileFlow files(document, kept, watch, bar, &window);
  document.commit(renamed("mine"), "Name");
  somebody_saves("theirs");
  EXPECT_FALSE(files.save());
  EXPECT_EQ(project_on_disk(), "theirs");
  EXPECT_TRUE(bar.words().contains("a.underlawn")) << bar.words().toStdString();
  EXPECT_TRUE(document.modified());
  bar.take(1);  // Save mine over it
  EXPECT_EQ(project_on_disk(), "mine");
  EXPECT_FALSE(document.modified());
}
