// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPlainTextEdit>
#include <vector>

namespace underlawn {

// Several lines of text with the manners of the one-line fields: leaving it or Ctrl+Enter keeps, Esc takes
// back, Tab goes on.
class DeedEditor : public QPlainTextEdit {
  Q_OBJECT

 public:
  explicit DeedEditor(QWidget* parent = nullptr);
  // What stands there when nobody is typing; leaves the text being typed alone.
  void show_text(const QString& text);
  bool typing() const { return toPlainText() != kept_; }
  void mark_lines(const std::vector<int>& wrong, int picked);  // counted from 1; picked: 0 for none

 signals:
  void entered(const QString& text);

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void enter();

  QString kept_;
};

}  // namespace underlawn
