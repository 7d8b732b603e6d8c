// SPDX-License-Identifier: GPL-3.0-or-later
// Whether the plan's file is still what this window read or wrote, and whether another window has it open.
#pragma once

#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <QTimer>
#include <memory>
#include <optional>

#include "window/document.h"

namespace underlawn {

class FileWatch : public QObject {
  Q_OBJECT

 public:
  // `folder`: where marks of open files lie, of all windows of one user on one machine.
  FileWatch(Document& document, QString folder, int every, QObject* parent = nullptr);
  ~FileWatch() override;

  // Looks at the disk now: when the file was changed by somebody else; none where it is as it was, or gone.
  std::optional<QDateTime> changed_since() const;
  // What is on the disk now is known and taken for what it is; no more is said of it.
  void take_as_known();
  bool elsewhere() const { return elsewhere_; }  // another window had it open before this one

 signals:
  void changed(const QDateTime& when);  // once for each change
  void open_elsewhere();

 private:
  struct State {
    QDateTime time;
    qint64 size = -1;
    QByteArray hash;
  };
  static State state_of(const QString& path, const State& before);
  void follow_path();
  void look();

  Document& document_;
  QString folder_, path_;
  State known_, told_;
  std::unique_ptr<QLockFile> mark_;
  bool elsewhere_ = false;
  QTimer timer_;
};

}  // namespace underlawn
