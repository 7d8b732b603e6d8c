// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/run_window.h"

#include <QApplication>

namespace underlawn {

int run_window(int& argc, char** argv, QString) {
  QApplication application(argc, argv);
  return 0;
}

}  // namespace underlawn
