// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "window/document.h"

class QListWidget;
class QPushButton;

namespace underlawn {

class TypedField;

// Pictures of the job with their captions: kept as paths beside the plan, shown small, opened by the system's
// own viewer.
class PhotoList : public QWidget {
  Q_OBJECT

 public:
  explicit PhotoList(Document& document, QWidget* parent = nullptr);
  void refresh();
  void add_files(const QStringList& paths, int trench);  // one entry of the history
  void set_trench(int number);                           // that new pictures may be of; 0: of none
  QListWidget* list() const { return list_; }
  TypedField* caption() const { return caption_; }

 private:
  void ask_files(int trench);
  void open_file();
  void remove_file();
  void show_caption();
  QString full_path(const std::string& file) const;
  QString kept_path(const QString& path) const;

  Document& document_;
  QListWidget* list_;
  TypedField* caption_;
  QPushButton *of_trench_, *open_, *remove_;
  int trench_ = 0;
};

}  // namespace underlawn
