// SPDX-License-Identifier: GPL-3.0-or-later
// The one table of all commands. Menus, tool strip, shortcuts, the finder and the sheet of keys are made from
// it.
#pragma once

#include <QString>
#include <array>
#include <span>
#include <string_view>
#include <vector>

namespace underlawn {

enum class CommandGroup { file, edit, draw, view, panel, help };
inline constexpr std::array kCommandGroups = {CommandGroup::file, CommandGroup::edit,  CommandGroup::draw,
                                              CommandGroup::view, CommandGroup::panel, CommandGroup::help};
QString group_title(CommandGroup group);

struct Command {
  std::string_view id;        // "tool.tree"; unique
  std::string_view title;     // as in the menu
  std::string_view help;      // one sentence: what it does
  std::string_view shortcut;  // portable text of the key, "" for none; unique
  CommandGroup group;
  std::string_view icon;      // name in icons.cpp, "" for none
  std::string_view set = "";  // one of several that exclude each other: the name of the set
  bool toggles = false;       // stays on or off
  bool starts_part = false;   // a dividing line above it in the menu
};

QString title_of(const Command& command);  // as the program speaks
QString help_of(const Command& command);

std::span<const Command> commands();
const Command* find_command(std::string_view id);

// Tools are the commands whose id starts with "tool.": "tool.tree" is the tool "tree".
inline constexpr std::string_view kToolPrefix = "tool.";

// The commands that match every word of `typed` in title, help or group, best first: titles that begin with
// it, titles that hold it, the rest; in the table's order otherwise.
std::vector<const Command*> find_commands(QString typed);

}  // namespace underlawn
