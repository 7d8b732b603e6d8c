// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QScrollArea>

namespace underlawn {

// Keeps the field that has the keyboard where it is on the screen while what stands above it, in its scrolled
// page or over that, grows or shrinks: a page that jumps takes the field from under the hand. A page that was
// only opened and never scrolled shows its top.
class StaysPut : public QObject {
  Q_OBJECT

 public:
  explicit StaysPut(QScrollArea* area);

 private:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void look_at(QWidget* focused);
  int place() const;
  void settle();
  void pay();

  QScrollArea* area_;
  QPointer<QWidget> focused_;  // within the page
  bool touched_ = false;       // by key or mouse since the page was opened
  int y_ = 0;                  // of it were the page not scrolled, in the window, when last looked
  int owed_ = 0;               // to scroll, as soon as the page is long enough
};

}  // namespace underlawn
