// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QLabel;
class QProgressBar;
class QPushButton;

namespace underlawn {

class LongWork;

// The button that begins a long work, how far it is, the button that stops it, and whether what it found is
// of an earlier plan.
class WorkBox : public QWidget {
  Q_OBJECT

 public:
  WorkBox(LongWork& work, const QString& begin, QWidget* parent = nullptr);

  void empty();  // before a new run
  void set_earlier(bool earlier);
  QPushButton& begin() { return *begin_; }
  QPushButton& stop() { return *stop_; }

 private:
  void show_busy();

  LongWork& work_;
  QPushButton* begin_;
  QPushButton* stop_;
  QProgressBar* bar_;
  QLabel* doing_;
  QLabel* earlier_;
};

}  // namespace underlawn
