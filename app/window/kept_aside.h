// SPDX-License-Identifier: GPL-3.0-or-later
// Unsaved work is kept aside every few seconds, never-saved plans too, and offered after a crash.
#pragma once

#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <QTimer>
#include <memory>
#include <vector>

#include "window/document.h"

namespace underlawn {

// A copy that a program which is no longer running left behind.
struct LeftBehind {
  QString copy;     // the file kept aside
  QString name;     // as the plan called itself
  QString path;     // of the plan's own file; empty: never saved
  QDateTime kept;   // when the copy was made
  QDateTime saved;  // of the plan's own file as it is now; invalid when there is none
};

class KeptAside : public QObject {
  Q_OBJECT

 public:
  // `folder` is made when needed; copies are made `every` ms at the most.
  KeptAside(Document& document, QString folder, int every, QObject* parent = nullptr);
  ~KeptAside() override;  // a copy stays until drop() says that it is not needed

  static QString usual_folder();
  std::vector<LeftBehind> left_behind() const;
  Result<void> recover(
      const LeftBehind& left);  // into the document; the old copy goes once a new one is made
  static void discard(const LeftBehind& left);
  void keep_now();  // if there is something unsaved
  void drop();      // saved, or not wanted

 signals:
  void failed(const QString& why);

 private:
  void update();

  Document& document_;
  QString folder_, copy_;
  std::unique_ptr<QLockFile> lock_;
  QTimer timer_;
  QString recovered_from_;
  bool told_ = false;
};

}  // namespace underlawn
