// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/surveyed.h"
#include "window/document.h"
#include "window/edited_table.h"

namespace underlawn {

// The notebook's points: name, how measured, where they lie. Names are edited in place.
class NotebookTable : public EditedTable {
  Q_OBJECT

 public:
  explicit NotebookTable(Document& document, QWidget* parent = nullptr);
  void refresh(const std::vector<PlacedSighting>& placed);
  std::vector<std::size_t> picked() const;  // rows, in order
  std::optional<std::size_t> current() const;
  void pick(std::size_t first, std::size_t count);

 signals:
  void picked_changed();

 private:
  void take(int row, int column) override;

  Document& document_;
};

}  // namespace underlawn
