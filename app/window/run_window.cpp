// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/run_window.h"

#include <QApplication>
#include <QIcon>
#include <QProcess>

#include "language/language.h"
#include "window/main_window.h"
#include "window/settings.h"
#include "window/theme_now.h"

static void init_resources() {
  Q_INIT_RESOURCE(underlawn);  // must be called outside a namespace, since this library is linked statically
}

namespace underlawn {

namespace {

struct Left {
  int status;
  bool start_again;
  QString path;  // of the plan that was open
};

Left show_window(const QString& plan_path) {
  MainWindow window;
  settings::restore_window(window);
  window.show();
  if (!plan_path.isEmpty()) window.files().open(plan_path);
  window.files().offer_left_behind();
  const int status = QApplication::exec();
  settings::keep_window(window);
  return {status, window.wants_to_start_again(), window.document().path()};
}

}  // namespace

int run_window(int& argc, char** argv, QString plan_path, const std::string& language) {
  QApplication::setHighDpiScaleFactorRoundingPolicy(Qt::HighDpiScaleFactorRoundingPolicy::PassThrough);
  QApplication application(argc, argv);
  init_resources();
  QApplication::setApplicationName("underlawn");
  QApplication::setOrganizationName("Underlawn");
  QApplication::setApplicationVersion(UNDERLAWN_VERSION);
  QApplication::setWindowIcon(QIcon(":/underlawn/underlawn.svg"));
  settings::carry_over();
  speak(language.empty() ? settings::language() : language);
  let_qt_speak();
  ThemeKeeper::instance().choose(settings::theme());

  const Left left = show_window(plan_path);
  const QStringList plan = left.path.isEmpty() ? QStringList() : QStringList{left.path};
  if (left.start_again) QProcess::startDetached(QApplication::applicationFilePath(), plan);
  return left.status;
}

}  // namespace underlawn
