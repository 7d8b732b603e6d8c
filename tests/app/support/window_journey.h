// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/support/window_texts.h"
#include "window/main_window.h"

namespace underlawn {

void write_file_of(const QString& path, const std::string& bytes);

// Goes through the whole window, with a plan that has something of every kind, and reads it at every stop.
class WindowJourney {
 public:
  WindowJourney(const QString& folder, WindowTexts& texts);
  ~WindowJourney();

  void go();        // every page, thing, tool, card and notice
  void searches();  // what searches find: ways and sizes

 private:
  void run(std::string_view id);
  void look();
  void take(const Plan& plan);
  void tabs();
  void things();
  void tools();
  void over_the_window();
  void sheets();
  void cards();
  void picture();
  void notices();

  QString folder_;
  MainWindow window_;
  WindowTexts& texts_;
};

}  // namespace underlawn
