// SPDX-License-Identifier: GPL-3.0-or-later
// The rooms of core/ stand on one another in one order; a room includes only from itself and from rooms below
// it, and no room knows Qt. This test reads the includes and says file and line where that is broken.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>

namespace fs = std::filesystem;

namespace {

const std::vector<std::string> kRooms = {"base", "plane", "site",   "survey",  "ground", "house",
                                         "pipe", "field", "layout", "thermal", "flow",   "dig",
                                         "cost", "plan",  "files",  "exchange"};

int floor_of(const std::string& room) {
  for (std::size_t i = 0; i < kRooms.size(); ++i)
    if (kRooms[i] == room) return static_cast<int>(i);
  return -1;
}

std::vector<std::string> broken_includes(const fs::path& file, const fs::path& core) {
  static const std::regex include(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])");
  static const std::regex qt(R"(^(Q[A-Z]|Qt[A-Z]).*)");
  const std::string room = fs::relative(file, core).begin()->string();
  std::vector<std::string> broken;
  std::ifstream in(file);
  std::string line;
  for (int number = 1; std::getline(in, line); ++number) {
    std::smatch m;
    if (!std::regex_search(line, m, include)) continue;
    const std::string what = m[2];
    const std::string where = file.string() + ":" + std::to_string(number) + ": " + what;
    if (std::regex_match(what, qt)) broken.push_back(where + " (Qt in core)");
    const int below = floor_of(fs::path(what).begin()->string());
    if (m[1] == "\"" && below < 0) broken.push_back(where + " (no such room)");
    if (below > floor_of(room)) broken.push_back(where + " (a room above " + room + ")");
  }
  return broken;
}

}  // namespace

TEST(Rooms, IncludeOnlyFromRoomsBelowAndNeverQt) {
  const fs::path core = fs::path(UNDERLAWN_SOURCE_DIR) / "core";
  int files = 0;
  for (const auto& entry : fs::recursive_directory_iterator(core)) {
    const auto ending = entry.path().extension();
    if (ending != ".h" && ending != ".cpp") continue;
    ++files;
    for (const std::string& where : broken_includes(entry.path(), core)) ADD_FAILURE() << where;
  }
  EXPECT_GT(files, 20);
}

TEST(Rooms, EveryFolderIsANamedRoom) {
  for (const auto& entry : fs::directory_iterator(fs::path(UNDERLAWN_SOURCE_DIR) / "core")) {
    if (!entry.is_directory()) continue;
    EXPECT_GE(floor_of(entry.path().filename().string()), 0) << entry.path();
  }
}
