// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/atomic_file.h"

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>

#include "files/json_text.h"
#include "files/plan_file.h"
#include "support/sample_plans.h"

namespace fs = std::filesystem;

namespace underlawn {
namespace {

// A folder of its own for each test, gone afterwards.
class AtomicFile : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "underlawn-XXXXXX").string();
    ASSERT_NE(::mkdtemp(name.data()), nullptr);
    folder_ = name;
  }
  void TearDown() override {
    fs::permissions(folder_, fs::perms::owner_all);
    fs::remove_all(folder_);
  }
  static void put(const fs::path& path, std::string_view bytes) {
    std::ofstream(path, std::ios::binary) << bytes;
  }
  static std::string get(const fs::path& path) { return *read_file(path, 1 << 20); }
  std::vector<std::string> names() const {
    std::vector<std::string> all;
    for (const auto& entry : fs::directory_iterator(folder_)) all.push_back(entry.path().filename().string());
    std::ranges::sort(all);
    return all;
  }

  fs::path folder_;
};

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

}  // namespace

TEST_F(AtomicFile, WritesAndReadsBack) {
  const std::string bytes("a\0b\n", 4);
  ASSERT_TRUE(write_file(folder_ / "x", bytes).has_value());
  EXPECT_EQ(get(folder_ / "x"), bytes);
  ASSERT_TRUE(write_file(folder_ / "x", "").has_value());
  EXPECT_EQ(get(folder_ / "x"), "");
  EXPECT_THAT(names(), ElementsAre("x"));
}

TEST_F(AtomicFile, KeepsThePermissionsOfTheOldFile) {
  put(folder_ / "x", "old");
  fs::permissions(folder_ / "x", fs::perms::owner_read | fs::perms::owner_write);
  ASSERT_TRUE(write_file(folder_ / "x", "new").has_value());
  EXPECT_EQ(fs::status(folder_ / "x").permissions(), fs::perms::owner_read | fs::perms::owner_write);
}

TEST_F(AtomicFile, FollowsALink) {
  put(folder_ / "real", "old");
  fs::create_symlink("real", folder_ / "link");
  ASSERT_TRUE(write_file(folder_ / "link", "new").has_value());
  EXPECT_TRUE(fs::is_symlink(folder_ / "link"));
  EXPECT_EQ(get(folder_ / "real"), "new");
}

TEST_F(AtomicFile, LeavesAFolderAsItIs) {
  fs::create_directory(folder_ / "x");
  const auto done = write_file(folder_ / "x", "new");
  ASSERT_FALSE(done.has_value());
  EXPECT_EQ(done.error().code, "file_not_written");
  EXPECT_THAT(done.error().message(), HasSubstr("is not written (it is a folder)"));
  EXPECT_THAT(names(), ElementsAre("x"));
}

TEST_F(AtomicFile, SaysThatThereIsNoSuchFolder) {
  const auto done = write_file(folder_ / "none" / "x", "new");
  ASSERT_FALSE(done.has_value());
  EXPECT_THAT(done.error().message(), HasSubstr("No such file or directory"));
}

// Root may write everywhere, so that a folder whose permissions forbid it proves nothing there; /proc refuses
// root too.
TEST_F(AtomicFile, KeepsTheOldFileWhereNothingMayBeWritten) {
  put(folder_ / "x", "old");
  const bool root = ::geteuid() == 0;
  if (!root) fs::permissions(folder_, fs::perms::owner_read | fs::perms::owner_exec);
  const auto done = write_file(root ? fs::path("/proc/version") : folder_ / "x", "new");
  ASSERT_FALSE(done.has_value());
  EXPECT_THAT(done.error().message(), HasSubstr("What was there before is unchanged."));
  EXPECT_EQ(get(folder_ / "x"), "old");
  EXPECT_THAT(names(), ElementsAre("x"));
}

// The disk fills up half-way: the largest file that a child of this process may write is made small.
TEST_F(AtomicFile, KeepsTheOldFileWhenTheDiskIsFull) {
  put(folder_ / "x", "old");
  const auto write_too_much = [this] {
    ::signal(SIGXFSZ, SIG_IGN);
    rlimit small{};
    small.rlim_cur = small.rlim_max = 1000;
    ::setrlimit(RLIMIT_FSIZE, &small);
    const auto done = write_file(folder_ / "x", std::string(100'000, 'n'));
    ::_exit(!done && done.error().message().find("File too large") != std::string::npos ? 0 : 1);
  };
  EXPECT_EXIT(write_too_much(), testing::ExitedWithCode(0), "");
  EXPECT_EQ(get(folder_ / "x"), "old");
  EXPECT_THAT(names(), ElementsAre("x"));
}

TEST_F(AtomicFile, SaysWhatCannotBeRead) {
  EXPECT_THAT(read_file(folder_ / "none", 10).error().message(),
              HasSubstr("none” is not read (No such file or directory). Check the name"));
  EXPECT_THAT(read_file(folder_, 10).error().message(), HasSubstr("Is a directory"));
  put(folder_ / "x", "12345678901");
  EXPECT_EQ(read_file(folder_ / "x", 10).error().code, "file_too_large");
}

TEST_F(AtomicFile, ReadsNoMoreThanItMayFromAFileWithoutEnd) {
  EXPECT_EQ(read_file("/dev/zero", 1 << 20).error().code, "file_too_large");
}

TEST_F(AtomicFile, SavesAndLoadsAPlan) {
  const Plan plan = sample::half_acre();
  const fs::path file = folder_ / ("Straße 7" + std::string(kPlanSuffix));
  ASSERT_TRUE(save_plan(plan, file).has_value());
  EXPECT_EQ(load_plan(file)->value, plan);
  EXPECT_EQ(get(file), plan_to_text(plan));
}

}  // namespace underlawn
