// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <QPointer>

class QLineEdit;
class QListWidget;

namespace underlawn {

class Actions;
struct Command;

// A card over the window that leaves with Esc, a click beside it or when the keyboard goes elsewhere; else it
// gives the keyboard back to who had it.
class Overlay : public QFrame {
  Q_OBJECT

 public:
  explicit Overlay(QWidget* window);
  void open();
  void close_card();

 protected:
  virtual void place() = 0;  // size and position in the window
  virtual void prepare() {}
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QPointer<QWidget> before_;
};

// Type what you want to do; Enter does it.
class Finder : public Overlay {
  Q_OBJECT

 public:
  Finder(QWidget* window, Actions& actions);
  QLineEdit* field() const { return field_; }
  QListWidget* list() const { return list_; }

 protected:
  void place() override;
  void prepare() override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh();
  void run();

  Actions& actions_;
  QLineEdit* field_;
  QListWidget* list_;
};

// All commands with their keys on one card.
class KeySheet : public Overlay {
  Q_OBJECT

 public:
  explicit KeySheet(QWidget* window);

 protected:
  void place() override;
};

class About : public Overlay {
  Q_OBJECT

 public:
  explicit About(QWidget* window);

 protected:
  void place() override;
};

}  // namespace underlawn
