// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/run_window.h"

#include <QApplication>
#include <QIcon>

#include "language/language.h"
#include "window/main_window.h"
#include "window/settings.h"
#include "window/theme_now.h"

static void init_resources() {
  Q_INIT_RESOURCE(underlawn);  // must be called outside a namespace, since this library is linked statically
}

namespace underlawn {

int run_window(int& argc, char** argv, QString plan_path, const std::string& language) {
  QApplication::setHighDpiScaleFactorRoundingPolicy(Qt::HighDpiScaleFactorRoundingPolicy::PassThrough);
  QApplication application(argc, argv);
  init_resources();
  QApplication::setApplicationName("underlawn");
  QApplication::setApplicationVersion(UNDERLAWN_VERSION);
  QApplication::setWindowIcon(QIcon(":/underlawn/underlawn.svg"));
  speak(language.empty() ? settings::language() : language);
  let_qt_speak();
  ThemeKeeper::instance().choose(settings::theme());

  MainWindow window;
  settings::restore_window(window);
  window.show();
  if (!plan_path.isEmpty()) window.files().open(plan_path);
  window.files().offer_left_behind();
  const int status = QApplication::exec();
  settings::keep_window(window);
  return status;
}

}  // namespace underlawn
