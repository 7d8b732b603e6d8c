// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <functional>
#include <vector>

class QLabel;
class QHBoxLayout;

namespace underlawn {

// Says something above the drawing and offers ways on, without stopping anybody. One notice at a time; a
// question that was not answered yet waits behind it.
class NoticeBar : public QFrame {
  Q_OBJECT

 public:
  struct Way {
    QString words;
    std::function<void()> take;  // may be empty: only closes the notice
  };
  explicit NoticeBar(QWidget* parent = nullptr);
  // The first way is the usual one. Without ways there is only a Close button. A notice of the same `subject`
  // is replaced.
  void tell(const QString& subject, const QString& words, std::vector<Way> ways = {});
  // The same for an answer that the user waits for: the first way gets the keyboard. What comes up by itself
  // leaves it where it is, or a word being typed would choose.
  void ask(const QString& subject, const QString& words, std::vector<Way> ways);
  bool take_keyboard();  // to the first way; false where nothing is said
  void withdraw(const QString& subject);
  bool telling(const QString& subject) const;
  QString words() const;  // of the notice in sight
  void take(int way);     // as if its button were pressed

 signals:
  void answered();  // with the keyboard, which is free again

 protected:
  void keyPressEvent(QKeyEvent* event) override;  // Esc is the last way

 private:
  struct Notice {
    QString subject, words;
    std::vector<Way> ways;
  };
  void show_last();

  std::vector<Notice> notices_;
  QLabel* label_;
  QHBoxLayout* buttons_;
};

}  // namespace underlawn
