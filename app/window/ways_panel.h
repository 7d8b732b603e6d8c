// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/form.h"
#include "window/ways_service.h"

class QPushButton;
class QVBoxLayout;

namespace underlawn {

class WayCard;
class WorkBox;

// Other ways to lay the loop, as cards beside the plan's own. The one looked at, or else the one chosen, is
// to be shown over the drawing; each can be taken. Two picked for it are shown together, with their
// differences.
class WaysPanel : public Form {
  Q_OBJECT

 public:
  explicit WaysPanel(Document& document, QWidget* parent = nullptr);

  void start();  // finds the ways of the plan as it stands; nothing while they are being found
  void take_keyboard();
  WaysService& service() { return service_; }
  // Over the drawing: the two that are compared, or one; none, where that is what is drawn already.
  std::vector<const Way*> shown() const;

 signals:
  void shown_changed();

 protected:
  void hideEvent(QHideEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  void build();
  void hand_on_keyboard();
  void show_answer();
  void show_age();
  void add_card(std::size_t way, QVBoxLayout& into);
  void choose(int way);
  void compare(int way, bool on);
  void show_difference();
  const Way* looked_at() const;
  void take(std::size_t way);
  bool earlier() const;  // found for a plan that differs in more than which of the ways it has
  int drawn() const;     // which of the ways the plan has; -1: none

  Document& document_;
  WaysService service_;
  WorkBox* work_;
  QVBoxLayout* home_;
  QWidget* found_ = nullptr;  // made anew with each answer
  std::vector<WayCard*> cards_;
  int chosen_ = -1, looked_at_ = -1;
  std::vector<int> compared_;  // two at most, the first picked first
  QWidget* difference_ = nullptr;
};

}  // namespace underlawn
