// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/file_watch.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace underlawn {

FileWatch::FileWatch(Document& document, QString folder, int every, QObject* parent)
    : QObject(parent), document_(document), folder_(std::move(folder)) {
  connect(&document, &Document::path_changed, this, &FileWatch::follow_path);
  connect(&document, &Document::saved, this, &FileWatch::take_as_known);
  connect(&timer_, &QTimer::timeout, this, &FileWatch::look);
  timer_.start(every);
  follow_path();
}

FileWatch::~FileWatch() = default;

// The content counts, not the time: a copy or a touch of the same bytes changes nothing. It is read only
// where time or size differ from what they were.
FileWatch::State FileWatch::state_of(const QString& path, const State& before) {
  const QFileInfo info(path);
  if (path.isEmpty() || !info.exists()) return {};
  State state{info.lastModified(), info.size(), {}};
  if (state.time == before.time && state.size == before.size) return before;
  QFile file(path);
  QCryptographicHash hash(QCryptographicHash::Sha1);
  if (file.open(QIODevice::ReadOnly) && hash.addData(&file)) state.hash = hash.result();
  return state;
}

void FileWatch::follow_path() {
  const QString path = document_.path();
  take_as_known();
  if (path == path_) return;
  path_ = path;
  mark_.reset();
  elsewhere_ = false;
  if (path.isEmpty()) return;
  QDir().mkpath(folder_);
  const QString real = QFileInfo(path).canonicalFilePath();
  const QByteArray name =
      QCryptographicHash::hash((real.isEmpty() ? path : real).toUtf8(), QCryptographicHash::Sha1).toHex();
  mark_ = std::make_unique<QLockFile>(folder_ + "/" + QString::fromLatin1(name) + ".open");
  mark_->setStaleLockTime(0);
  if (mark_->tryLock(0) || mark_->error() != QLockFile::LockFailedError) return;
  elsewhere_ = true;
  emit open_elsewhere();
}

void FileWatch::take_as_known() {
  known_ = told_ = state_of(document_.path(), {});
}

std::optional<QDateTime> FileWatch::changed_since() const {
  const State now = state_of(document_.path(), known_);
  if (now.size < 0 || known_.size < 0 || now.hash == known_.hash) return std::nullopt;
  return now.time;
}

void FileWatch::look() {
  const State now = state_of(document_.path(), told_);
  if (now.size < 0 || known_.size < 0 || now.hash == told_.hash) return;
  told_ = now;
  if (now.hash != known_.hash) emit changed(now.time);
}

}  // namespace underlawn
