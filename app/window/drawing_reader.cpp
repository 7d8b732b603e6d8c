// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/drawing_reader.h"

#include <QCoreApplication>
#include <QTimer>
#include <utility>

#include "exchange/drawing_json.h"
#include "language/language.h"

namespace underlawn {

namespace {

constexpr int kLongest = 120'000;  // ms; the process bounds its own time on the processor well below

QString& reading_program() {
  static QString path;
  return path;
}

}  // namespace

DrawingReader::DrawingReader(QObject* parent) : QObject(parent) {}

DrawingReader::~DrawingReader() {
  stop();
}

void DrawingReader::set_program(const QString& path) {
  reading_program() = path;
}

void DrawingReader::read(const QString& path, const std::optional<MapCircle>& about,
                         std::function<void(Result<Drawing>)> then) {
  stop();
  then_ = std::move(then);
  process_ = std::make_unique<QProcess>();
  QProcess* process = process_.get();
  connect(process, &QProcess::finished, this, [this, process] {
    if (process == process_.get()) finish();
  });
  connect(process, &QProcess::errorOccurred, this, [this, process](QProcess::ProcessError error) {
    if (error == QProcess::FailedToStart && process == process_.get()) finish();
  });
  QTimer::singleShot(kLongest, process, [process] { process->kill(); });
  const QString program =
      reading_program().isEmpty() ? QCoreApplication::applicationFilePath() : reading_program();
  const QString language = QString::fromUtf8(language_spoken());  // what it remarks is shown here
  QStringList arguments = {"drawing", "--json", "--language", language};
  if (about)
    arguments << QString("--about=%1,%2,%3")
                     .arg(about->middle.latitude, 0, 'f', 9)
                     .arg(about->middle.longitude, 0, 'f', 9)
                     .arg(about->reach, 0, 'f', 3);
  process->start(program, arguments << "--" << path);
}

void DrawingReader::stop() {
  if (!process_) return;
  process_->disconnect(this);
  process_->kill();
  process_->waitForFinished(1000);
  process_.reset();
  then_ = {};
}

void DrawingReader::finish() {
  const QByteArray out = process_->readAllStandardOutput();
  const auto then = std::exchange(then_, {});
  process_.release()->deleteLater();  // it is calling
  then(drawing_from_json({out.constData(), static_cast<std::size_t>(out.size())}));
}

}  // namespace underlawn
