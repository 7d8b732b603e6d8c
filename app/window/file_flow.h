// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <functional>

#include "window/document.h"
#include "window/file_watch.h"
#include "window/kept_aside.h"
#include "window/notice_bar.h"

namespace underlawn {

// New, open, save, recover and close, with their questions asked in the notice bar.
class FileFlow : public QObject {
  Q_OBJECT

 public:
  FileFlow(Document& document, KeptAside& kept, FileWatch& watch, NoticeBar& bar, QWidget* window);

  void start_new();
  void ask_open();
  void open(const QString& path);  // asks first when there is something unsaved
  bool save();                     // asks for a name when there is none; false when it was not saved
  bool save_as();
  // Whether the window may close now; otherwise asks, and `close` is called when it may.
  bool may_close(std::function<void()> close);
  void offer_left_behind();

 private:
  void unless_unsaved(const QString& going_to, std::function<void()> go);
  void open_now(const QString& path);
  bool tell_saved(const Result<void>& saved, const QString& path);
  QString folder() const;
  void tell_changed(const QDateTime& when);
  void tell_elsewhere();
  void ask_save_over(const QDateTime& when);

  Document& document_;
  KeptAside& kept_;
  FileWatch& watch_;
  NoticeBar& bar_;
  QWidget* window_;
};

}  // namespace underlawn
