// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "window/document.h"

class QCheckBox;
class QVBoxLayout;

namespace underlawn {

// The walls of the houses, each with a box: no coil trench lies beyond the line of one that is ticked.
class WallList : public QWidget {
  Q_OBJECT

 public:
  explicit WallList(Document& document, QWidget* parent = nullptr);
  void refresh();

 private:
  void rebuild(std::size_t count);
  void toggle(std::size_t which, bool closed);

  Document& document_;
  QVBoxLayout* column_;
  std::vector<QCheckBox*> boxes_;
};

// Walls long enough to speak of, in the order of houses and corners.
std::vector<ClosedSide> walls_of(const Site& site);

}  // namespace underlawn
