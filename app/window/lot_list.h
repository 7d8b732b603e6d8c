// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "window/document.h"
#include "window/selection.h"

class QLineEdit;
class QListWidget;

namespace underlawn {

struct LotEntry {
  Selected what;
  QString name;    // "Sugar maple"
  QString detail;  // "tree"
  bool operator==(const LotEntry&) const = default;
};

// Everything on the lot, in the order it is walked through: lot line, features by kind, entry point, run,
// header, trenches.
std::vector<LotEntry> lot_entries(const Plan& plan, const Outcome* outcome);

// The same as a list with a field to find in it. Several are picked as in any list: Shift and Ctrl with
// click, arrows or Space, Ctrl+A for all that the field found.
class LotList : public QWidget {
  Q_OBJECT

 public:
  LotList(Document& document, Selection& selection, QWidget* parent = nullptr);
  void focus_find();
  void put_on_top(QWidget* widget);  // above the list
  // Selects the next or previous entry; `too`: beside what is selected.
  void step(int by, bool too = false);

 signals:
  void edit_asked();  // Enter on an entry

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void take_picked();
  void refresh();
  void show_selected();

  Document& document_;
  Selection& selection_;
  QLineEdit* find_;
  QListWidget* list_;
  std::vector<LotEntry> entries_;  // shown, in the list's order
  bool filling_ = false;
};

}  // namespace underlawn
