// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/document.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <fstream>

#include "app/support/wait.h"
#include "files/plan_file.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

Plan with_circuits(int circuits) {
  Plan plan = sample::half_acre();
  plan.wishes.circuits = circuits;
  return plan;
}

void wait_for_answer(Document& document) {
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
}

// Resident memory, in bytes.
long resident() {
  long pages = 0, all = 0;
  std::ifstream("/proc/self/statm") >> all >> pages;
  return pages * 4096;
}

}  // namespace

// A pointer that moves where what it holds cannot follow asks for nothing.
TEST(Document, ThePreviewThatIsShownAlreadyIsNotSolvedAgain) {
  Document document;
  document.commit(with_circuits(2), "Set up");
  int changes = 0;
  QObject::connect(&document, &Document::plan_changed, [&changes] { ++changes; });
  document.preview(with_circuits(3));
  document.preview(with_circuits(3));
  EXPECT_EQ(changes, 1);
  document.preview(with_circuits(4));
  EXPECT_EQ(changes, 2);
}

TEST(Document, NewOneIsEmptyAndCountsAsSaved) {
  Document document;
  EXPECT_TRUE(document.plan().site.lot.empty());
  EXPECT_FALSE(document.modified());
  EXPECT_FALSE(document.can_undo());
  EXPECT_EQ(document.display_name(), "Untitled plan");
}

TEST(Document, CommitIsOneEntryAndUndoTakesItBack) {
  Document document;
  document.commit(with_circuits(2), "Circuits");
  EXPECT_EQ(document.plan().wishes.circuits, 2);
  EXPECT_TRUE(document.modified());
  EXPECT_EQ(document.undo_name(), "Circuits");
  document.undo();
  EXPECT_EQ(document.plan(), Plan{});
  EXPECT_FALSE(document.modified());
  document.redo();
  EXPECT_EQ(document.plan(), with_circuits(2));
}

TEST(Document, CommitOfTheSamePlanMakesNoEntry) {
  Document document;
  document.commit(document.plan(), "Nothing");
  EXPECT_FALSE(document.can_undo());
}

TEST(Document, PreviewThatIsTakenBackLeavesNoTrace) {
  Document document;
  document.preview(with_circuits(3));
  EXPECT_EQ(document.plan().wishes.circuits, 3);
  EXPECT_EQ(document.committed(), Plan{});
  EXPECT_FALSE(document.modified());
  document.preview(std::nullopt);
  EXPECT_EQ(document.plan(), Plan{});
  EXPECT_FALSE(document.can_undo());
}

TEST(Document, OutcomeIsThatOfThePlan) {
  Document document;
  document.commit(sample::half_acre(), "Drawn");
  EXPECT_TRUE(document.stale());
  wait_for_answer(document);
  ASSERT_NE(document.outcome(), nullptr);
  EXPECT_EQ(*document.outcome_plan(), sample::half_acre());
  EXPECT_EQ(document.outcome()->figures, solve(sample::half_acre()).figures);
}

TEST(Document, AnOutcomeOfAnotherPlanIsNeverCalledCurrent) {
  Document document;
  int seen = 0;
  QObject::connect(&document, &Document::outcome_changed, [&] {
    ++seen;
    EXPECT_TRUE(document.stale() || *document.outcome_plan() == document.plan());
  });
  for (int i = 1; i <= 40; ++i) {
    document.preview(with_circuits(1 + i % 7));
    QCoreApplication::processEvents();
  }
  document.preview(std::nullopt);
  wait_for_answer(document);
  EXPECT_EQ(*document.outcome_plan(), document.plan());
  EXPECT_GT(seen, 40);
}

TEST(Document, NewestPlanWinsAndTenThousandPreviewsLeaveMemoryFlat) {
  Document document;
  Plan plan = sample::tiny_lot();
  const auto drag = [&](int from, int to) {
    for (int i = from; i < to; ++i) {
      plan.site.lot[2].at.x = 20 + 0.001 * i;
      document.preview(plan);
      if (i % 50 == 0) QCoreApplication::processEvents();
    }
  };
  drag(0, 1000);
  wait_for_answer(document);
  const long before = resident();
  drag(1000, 10'000);
  wait_for_answer(document);
  EXPECT_EQ(*document.outcome_plan(), plan);
  EXPECT_LT(resident() - before, 40L << 20);
}

TEST(Document, WaiterIsCalledOnceWhenTheOutcomeIsCurrent) {
  Document document;
  document.commit(sample::half_acre(), "Drawn");
  int called = 0;
  document.when_current([&] {
    ++called;
    EXPECT_FALSE(document.stale());
  });
  EXPECT_EQ(called, 0);
  wait_for_answer(document);
  document.commit(with_circuits(1), "Circuits");
  wait_for_answer(document);
  EXPECT_EQ(called, 1);
}

TEST(Document, ClosingWhileItSolvesDoesNotWaitForTheAnswer) {
  for (int i = 0; i < 20; ++i) {
    Document document;
    document.commit(with_circuits(1 + i % 5), "Circuits");
  }
  SUCCEED() << "every thread was joined";
}

TEST(Document, SavesAndOpensAgainTheSamePlan) {
  QTemporaryDir folder;
  const QString path = folder.filePath("plan.underlawn");
  Document document;
  document.commit(sample::half_acre(), "Drawn");
  ASSERT_TRUE(document.save_as(path).has_value());
  EXPECT_FALSE(document.modified());
  EXPECT_EQ(document.path(), path);

  Document other;
  const auto remarks = other.open(path);
  ASSERT_TRUE(remarks.has_value());
  EXPECT_TRUE(remarks->empty());
  EXPECT_EQ(other.plan(), sample::half_acre());
  EXPECT_FALSE(other.modified());
  EXPECT_FALSE(other.can_undo());
}

TEST(Document, FileThatCannotBeReadIsRefusedAndThePlanStays) {
  QTemporaryDir folder;
  QFile file(folder.filePath("bad.underlawn"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("this is no plan");
  file.close();
  Document document;
  document.commit(with_circuits(2), "Circuits");
  const auto opened = document.open(file.fileName());
  ASSERT_FALSE(opened.has_value());
  EXPECT_FALSE(opened.error().message().empty());
  EXPECT_EQ(document.plan(), with_circuits(2));
}

TEST(Document, SaveThatFailsLeavesThePlanUnsaved) {
  Document document;
  document.commit(with_circuits(2), "Circuits");
  EXPECT_FALSE(document.save_as("/no/such/folder/plan.underlawn").has_value());
  EXPECT_TRUE(document.modified());
  EXPECT_TRUE(document.path().isEmpty());
}
