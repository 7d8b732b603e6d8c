// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <optional>
#include <span>

#include "sheets/dig_sheet.h"
#include "window/document.h"

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace underlawn {

// Paper and scale of the dig sheet, its pages to look at before they are written, in place of the drawing.
class SheetStrip : public QWidget {
  Q_OBJECT

 public:
  explicit SheetStrip(Document& document, QWidget* parent = nullptr);
  void open();
  void close_strip();
  SheetSetup setup() const;
  bool write(const QString& path);  // false when it was not written; says why
  void print();                     // asks for the printer
  QString said() const;
  int pages() const { return sheet_ ? sheet_->pages() : 0; }

 signals:
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* make_bar();
  void lay_out();     // the sheet anew
  void show_pages();  // its pictures in the room there is
  void ask_and_write();
  void say(const QString& words, bool wrong);

  Document& document_;
  QComboBox* paper_;
  QComboBox* scale_;
  QLabel* said_;
  QPushButton* write_;
  QScrollArea* area_;
  QVBoxLayout* pages_;
  std::optional<DigSheet> sheet_;
};

}  // namespace underlawn
