// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QActionGroup>
#include <QObject>
#include <functional>
#include <map>
#include <string>

#include "window/commands.h"

class QAction;
class QMenuBar;
class QToolButton;
class QWidget;

namespace underlawn {

// One action for each command of the table, with its key, icon and help; menus and tool strip are made of
// them.
class Actions : public QObject {
  Q_OBJECT

 public:
  explicit Actions(QWidget* window);  // the keys work wherever in it the keyboard is

  QAction* action(std::string_view id) const;  // the command must exist
  // What a command does. A command that toggles hears whether it is on now.
  void on(std::string_view id, std::function<void(bool)> run);
  bool has_run(std::string_view id) const { return runs_.contains(id); }

  void fill_menus(QMenuBar* bar) const;
  QWidget* make_tool_strip() const;

 private:
  QToolButton* make_button(std::string_view id) const;
  void add(const Command& command, QWidget* window);
  void tint();

  std::map<std::string, QAction*, std::less<>> actions_;
  std::map<std::string, QActionGroup*, std::less<>> sets_;
  std::map<std::string, std::function<void(bool)>, std::less<>> runs_;
};

// The key as this system writes it, "" for none.
QString key_words(const Command& command);

}  // namespace underlawn
