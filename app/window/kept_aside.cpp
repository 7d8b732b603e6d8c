// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/kept_aside.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>
#include <QUuid>

#include "files/plan_file.h"

namespace underlawn {

namespace {

constexpr const char* kPathOf = ".path";  // beside a copy: where the plan itself lies
constexpr const char* kLockOf = ".lock";  // held while the program that keeps the copy runs

void write_path(const QString& copy, const QString& path) {
  QFile file(copy + kPathOf);
  if (file.open(QIODevice::WriteOnly)) file.write(path.toUtf8());
}

QString read_path(const QString& copy) {
  QFile file(copy + kPathOf);
  return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

// Whether the program that made the copy is gone.
bool is_orphan(const QString& copy) {
  QLockFile lock(copy + kLockOf);
  lock.setStaleLockTime(0);
  return lock.tryLock(0);
}

void remove_copy(const QString& copy) {
  QFile::remove(copy);
  QFile::remove(copy + kPathOf);
}

QString name_of(const Plan& plan, const QString& path) {
  const QString project = QString::fromStdString(plan.title.project).simplified();
  if (!project.isEmpty()) return project;
  return path.isEmpty() ? KeptAside::tr("a plan that was never saved") : QFileInfo(path).completeBaseName();
}

}  // namespace

KeptAside::KeptAside(Document& document, QString folder, int every, QObject* parent)
    : QObject(parent), document_(document), folder_(std::move(folder)) {
  copy_ = folder_ + "/" + QUuid::createUuid().toString(QUuid::WithoutBraces) + QString::fromUtf8(kPlanSuffix);
  timer_.setSingleShot(true);
  timer_.setInterval(every);
  connect(&timer_, &QTimer::timeout, this, &KeptAside::keep_now);
  connect(&document, &Document::history_changed, this, &KeptAside::update);
  connect(&document, &Document::saved, this, &KeptAside::update);
}

KeptAside::~KeptAside() = default;

QString KeptAside::usual_folder() {
  // Whatever the program calls its maker, what was kept aside before is found.
  return QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) + "/underlawn/kept-aside";
}

void KeptAside::update() {
  if (!document_.modified()) return drop();
  if (!timer_.isActive()) timer_.start();
}

void KeptAside::keep_now() {
  if (!document_.modified()) return;
  QDir().mkpath(folder_);
  if (!lock_) {
    lock_ = std::make_unique<QLockFile>(copy_ + kLockOf);
    lock_->setStaleLockTime(0);
    lock_->tryLock(0);
  }
  const auto kept = save_plan(document_.committed(), copy_.toStdString());
  if (kept) {
    write_path(copy_, document_.path());
    if (!recovered_from_.isEmpty()) remove_copy(std::exchange(recovered_from_, {}));
    told_ = false;
  } else if (!std::exchange(told_, true)) {
    emit failed(QString::fromStdString(kept.error().message()));
  }
}

void KeptAside::drop() {
  timer_.stop();
  remove_copy(copy_);
  if (!recovered_from_.isEmpty()) remove_copy(std::exchange(recovered_from_, {}));
}

std::vector<LeftBehind> KeptAside::left_behind() const {
  std::vector<LeftBehind> found;
  const QDir folder(folder_, "*" + QString::fromUtf8(kPlanSuffix), QDir::Time, QDir::Files);
  for (const QFileInfo& info : folder.entryInfoList()) {
    const QString copy = info.absoluteFilePath();
    if (copy == copy_ || copy == recovered_from_ || !is_orphan(copy)) continue;
    const auto plan = load_plan(copy.toStdString());
    if (!plan) continue;  // left where it is: whoever knows how may still mend it
    const QString path = read_path(copy);
    found.push_back({copy, name_of(plan->value, path), path, info.lastModified(),
                     path.isEmpty() ? QDateTime() : QFileInfo(path).lastModified()});
  }
  return found;
}

Result<void> KeptAside::recover(const LeftBehind& left) {
  auto plan = load_plan(left.copy.toStdString());
  if (!plan) return refuse(plan.error());
  document_.recover(std::move(plan->value), left.path);
  recovered_from_ = left.copy;
  keep_now();
  return {};
}

void KeptAside::discard(const LeftBehind& left) {
  remove_copy(left.copy);
}

}  // namespace underlawn
