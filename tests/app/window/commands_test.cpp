// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/commands.h"

#include <gtest/gtest.h>

#include <QKeySequence>
#include <map>
#include <set>

#include "window/icons.h"

using namespace underlawn;

namespace {

std::string text(std::string_view s) {
  return std::string(s);
}

}  // namespace

TEST(Commands, NoTwoShareAnId) {
  std::set<std::string> ids;
  for (const Command& c : commands()) EXPECT_TRUE(ids.insert(text(c.id)).second) << c.id;
}

TEST(Commands, NoTwoShareAKey) {
  std::map<QString, std::string> keys;
  for (const Command& c : commands()) {
    if (c.shortcut.empty()) continue;
    const QString key = QKeySequence::fromString(QString::fromUtf8(c.shortcut)).toString();
    EXPECT_FALSE(key.isEmpty()) << c.id << " has a key that Qt cannot read: " << c.shortcut;
    const auto [at, fresh] = keys.emplace(key, text(c.id));
    EXPECT_TRUE(fresh) << c.id << " and " << at->second << " share " << c.shortcut;
  }
}

TEST(Commands, EachSaysWhatItDoes) {
  for (const Command& c : commands()) {
    EXPECT_FALSE(c.title.empty()) << c.id;
    ASSERT_FALSE(c.help.empty()) << c.id;
    EXPECT_EQ(c.help.back(), '.') << c.id;
  }
}

TEST(Commands, EveryNamedIconIsDrawn) {
  for (const Command& c : commands()) {
    if (c.icon.empty()) continue;
    const QImage image = icon(c.icon, Qt::black, Qt::white).pixmap(48, 48).toImage();
    ASSERT_FALSE(image.isNull()) << c.id;
    int inked = 0;
    for (int y = 0; y < image.height(); ++y)
      for (int x = 0; x < image.width(); ++x) inked += qAlpha(image.pixel(x, y)) > 128;
    EXPECT_GT(inked, 40) << c.id;
    EXPECT_LT(inked, image.width() * image.height() / 2) << c.id;
  }
}

TEST(Commands, EveryToolHasAnIcon) {
  for (const Command& c : commands()) {
    const bool tool = c.id.substr(0, kToolPrefix.size()) == kToolPrefix;
    EXPECT_TRUE(!tool || !c.icon.empty()) << c.id;
  }
}

TEST(Commands, AreFoundByAnyOfTheirWords) {
  EXPECT_EQ(find_commands("tree").front()->id, "tool.tree");
  EXPECT_EQ(find_commands("  UNDO ").front()->id, "edit.undo");
  EXPECT_EQ(find_commands("pdf crew").front()->id, "file.sheet");
  EXPECT_TRUE(find_commands("no such thing").empty());
  EXPECT_EQ(find_commands("").size(), commands().size());
}
