// SPDX-License-Identifier: GPL-3.0-or-later
// A day of editing in the real window: the history holds, and memory stays flat.
//     UNDERLAWN_EDITS=30000 build/tests/app_tests --gtest_filter='DayOfEditing*'   # ten days; CI does one
#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <random>

#include "app/support/wait.h"
#include "plan/edits.h"
#include "window/main_window.h"

using namespace underlawn;

namespace {

constexpr int kADay = 3000;  // gestures: one every ten seconds for eight hours
constexpr double kMostGrowth =
    60;  // MB in a day; a plan with its picture is 1 MB, so whole plans would be 3 GB
constexpr double kHistoryMost = 130;  // MB, however many days

int edits_asked() {
  const char* asked = std::getenv("UNDERLAWN_EDITS");
  return asked != nullptr ? std::atoi(asked) : kADay;
}

double resident_mb() {
  long pages = 0, all = 0;
  std::ifstream("/proc/self/statm") >> all >> pages;
  return static_cast<double>(pages) * 4096 / 1e6;
}

// What a designer does all day, each time a little otherwise.
class Day {
 public:
  explicit Day(MainWindow& window) : document_(window.document()) {}

  void edit() {
    Plan plan = document_.committed();
    const auto& features = plan.site.features;
    const int id = features[random_() % features.size()].id;
    switch (random_() % 10) {
      case 0:
        plan.wishes.trench_depth = 1.5 + 0.001 * static_cast<double>(random_() % 300);
        break;
      case 1:
        plan.title.note = "note " + std::to_string(random_() % 1000);
        break;
      case 2:
        plan = edit::moved_handle(plan, {edit::Handle::Kind::lot_corner, 0, 2}, {60 + small(), 60 + small()});
        break;
      case 3:
        plan = added(std::move(plan));
        break;
      case 4:
        if (document_.can_undo()) return document_.undo();
        break;
      default:
        plan = edit::moved_feature(plan, id, {small(), small()});
    }
    document_.commit(std::move(plan), "Edit");
  }

 private:
  double small() { return 0.01 * (static_cast<double>(random_() % 11) - 5); }
  // Trees come and go, so that the lot stays a lot.
  Plan added(Plan plan) {
    const Feature& last = plan.site.features.back();
    if (plan.site.features.size() > 40) return edit::without_feature(plan, last.id);
    Feature tree;
    tree.kind = FeatureKind::tree;
    tree.points = {{10 + 100 * small(), 10 + 100 * small()}};
    return edit::with_feature(std::move(plan), tree);
  }

  Document& document_;
  std::mt19937 random_{1886};
};

void add_picture(Document& document) {
  Plan plan = document.committed();
  Picture picture;
  picture.name = "plat.png";
  picture.width = picture.height = 60;
  picture.data = SharedText(std::string(1'000'000, 'x'));
  plan.pictures.push_back(picture);
  document.commit(plan, "Add picture");
}

}  // namespace

TEST(DayOfEditing, LeavesMemoryFlatAndCanBeTakenBack) {
  QTemporaryDir folder;
  MainWindow window(folder.filePath("kept"));
  window.resize(1280, 800);
  window.show();
  ASSERT_TRUE(window.document().open(QString(UNDERLAWN_SOURCE_DIR) + "/samples/alder-lane.underlawn"));
  add_picture(window.document());
  Day day(window);
  const auto work = [&](int count) {
    for (int i = 1; i <= count; ++i) {
      day.edit();
      if (i % 10 == 0) QCoreApplication::processEvents();
      if (i % 250 != 0) continue;
      EXPECT_TRUE(wait_until([&] { return !window.document().stale(); }));
    }
  };
  const int all = edits_asked(), warm = std::max(1, all / 10);
  work(warm);
  const double before = resident_mb();
  std::fprintf(stderr, "%d edits: %.0f MB\n", warm, before);
  for (int tenth = 2; tenth <= 10; ++tenth) {
    work(warm);
    std::fprintf(stderr, "%d edits: %.0f MB\n", tenth * warm, resident_mb());
  }
  EXPECT_LT(resident_mb() - before, all <= kADay ? kMostGrowth : kMostGrowth + kHistoryMost);

  const Plan now = window.document().committed();
  int back = 0;
  for (; back < 1000 && window.document().can_undo(); ++back) window.document().undo();
  EXPECT_GE(back, std::min(1000, all / 2));
  EXPECT_NE(window.document().committed(), now);
  while (back-- > 0) window.document().redo();
  EXPECT_EQ(window.document().committed(), now);
  window.document().start_new();
}
