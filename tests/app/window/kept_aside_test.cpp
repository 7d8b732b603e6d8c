// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/kept_aside.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QTemporaryDir>

#include "app/support/wait.h"
#include "files/plan_file.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

struct KeptAsideTest : testing::Test {
  QTemporaryDir folder;
  int plans() const { return QDir(folder.path()).entryList({"*.underlawn"}).size(); }

  // A program that kept its plan aside and then died.
  void crash(const Plan& plan, const QString& path = {}) {
    Document document;
    if (!path.isEmpty()) {
      ASSERT_TRUE(document.save_as(path).has_value());
    }
    KeptAside kept(document, folder.path(), 1);
    document.commit(plan, "Drawn");
    kept.keep_now();
  }
};

}  // namespace

TEST_F(KeptAsideTest, UnsavedPlanIsKeptWithinItsTime) {
  Document document;
  KeptAside kept(document, folder.path(), 20);
  EXPECT_EQ(plans(), 0);
  document.commit(sample::half_acre(), "Drawn");
  EXPECT_TRUE(wait_until([&] { return plans() == 1; }));
}

TEST_F(KeptAsideTest, SavingDropsTheCopy) {
  QTemporaryDir other;
  Document document;
  KeptAside kept(document, folder.path(), 1);
  document.commit(sample::half_acre(), "Drawn");
  kept.keep_now();
  ASSERT_EQ(plans(), 1);
  ASSERT_TRUE(document.save_as(other.filePath("plan.underlawn")).has_value());
  EXPECT_EQ(plans(), 0);
}

TEST_F(KeptAsideTest, NeverSavedPlanOfACrashIsOfferedAndRecovered) {
  crash(sample::half_acre());
  Document document;
  KeptAside kept(document, folder.path(), 1000);
  const auto left = kept.left_behind();
  ASSERT_EQ(left.size(), 1u);
  EXPECT_TRUE(left[0].path.isEmpty());
  EXPECT_FALSE(left[0].saved.isValid());
  EXPECT_TRUE(left[0].kept.isValid());
  ASSERT_TRUE(kept.recover(left[0]).has_value());
  EXPECT_EQ(document.plan(), sample::half_acre());
  EXPECT_TRUE(document.modified());
  EXPECT_EQ(plans(), 1) << "the recovered plan is kept aside again, the old copy gone";
}

TEST_F(KeptAsideTest, SavedPlanOfACrashNamesItsFileAndBothDates) {
  QTemporaryDir other;
  const QString path = other.filePath("plan.underlawn");
  crash(sample::half_acre(), path);
  Document document;
  KeptAside kept(document, folder.path(), 1000);
  const auto left = kept.left_behind();
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left[0].path, path);
  EXPECT_TRUE(left[0].saved.isValid());
  EXPECT_GE(left[0].kept, left[0].saved);
}

TEST_F(KeptAsideTest, CopyOfARunningProgramIsNotOffered) {
  Document running;
  KeptAside keeps(running, folder.path(), 1000);
  running.commit(sample::half_acre(), "Drawn");
  keeps.keep_now();
  Document document;
  KeptAside kept(document, folder.path(), 1000);
  EXPECT_TRUE(kept.left_behind().empty());
}

TEST_F(KeptAsideTest, DiscardedCopyIsGone) {
  crash(sample::half_acre());
  Document document;
  KeptAside kept(document, folder.path(), 1000);
  KeptAside::discard(kept.left_behind().at(0));
  EXPECT_TRUE(kept.left_behind().empty());
}

TEST_F(KeptAsideTest, FolderThatCannotBeWrittenIsSaidOnce) {
  Document document;
  KeptAside kept(document, "/proc/no-folder-here", 1);
  int told = 0;
  QObject::connect(&kept, &KeptAside::failed, [&] { ++told; });
  document.commit(sample::half_acre(), "Drawn");
  kept.keep_now();
  kept.keep_now();
  EXPECT_EQ(told, 1);
}
