// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

#include "sheets/sheet_kinds.h"
#include "window/document.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace underlawn {

// Which sheets, on which paper, at which scale: their pages to look at before they are written, in place of
// the drawing.
class SheetStrip : public QWidget {
  Q_OBJECT

 public:
  explicit SheetStrip(Document& document, QWidget* parent = nullptr);
  void open();
  void close_strip();
  SheetSetup setup() const;
  // Of the table of kinds, by name; "dig" to begin with.
  void pick(const QStringList& names);
  QStringList picked() const;
  // One file, or one each in the folder `path`; false when it was not written; says why.
  bool write(const QString& path);
  bool write_each(const QString& folder);
  void print();  // asks for the printer
  QString said() const;
  int pages() const;

 signals:
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* make_column();
  QWidget* make_area();
  void connect_all();
  void show_wishes();  // what the plan asks, in the column
  void take_wishes(const QString& what);
  void keep_language();  // with the plan, or not any more
  void lay_out();        // the sheets anew
  void show_pages();     // their pictures in the room there is
  void ask_and_write();
  void say(const QString& words, bool wrong);
  void say_pages();
  bool ready();
  QString plan_name() const;
  std::vector<const Sheet*> sheets() const;
  QString title_of_all() const;

  Document& document_;
  QListWidget* kinds_;
  QComboBox* paper_;
  QComboBox* scale_;
  QComboBox* language_;
  QComboBox* units_;
  QComboBox* files_;
  QCheckBox* kept_language_;
  QCheckBox* each_trench_;
  QLabel* said_;
  QPushButton* write_;
  QScrollArea* area_;
  QVBoxLayout* pages_;
  std::vector<SheetPtr> made_;
  std::string chosen_language_;  // for the sheets looked at now; "": as the plan asks
};

}  // namespace underlawn
