// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QProcess>
#include <functional>
#include <memory>
#include <optional>

#include "exchange/read_drawing.h"

namespace underlawn {

// Reads drawing files in a process of its own (the verb “drawing” of this program), with bounds on its time
// and memory: a file that breaks the reader breaks nothing here, and the window goes on meanwhile.
class DrawingReader : public QObject {
  Q_OBJECT

 public:
  explicit DrawingReader(QObject* parent = nullptr);
  ~DrawingReader() override;

  // Calls `then` with what came of it; reading another file, or stop(), forgets the one before.
  // `about`: of a raster that knows its place only this part is wanted.
  void read(const QString& path, const std::optional<MapCircle>& about,
            std::function<void(Result<Drawing>)> then);
  void stop();
  bool busy() const { return process_ != nullptr; }
  // The program that reads; this one where it is not set (a test is another program).
  static void set_program(const QString& path);

 private:
  void finish();

  std::unique_ptr<QProcess> process_;
  std::function<void(Result<Drawing>)> then_;
};

}  // namespace underlawn
