// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

class QFrame;

namespace underlawn {

// Buttons in parts under one another, in as many columns as make all of them fit into the height: two on most
// screens, more where the screen is low or everything is drawn large.
class ToolStrip : public QWidget {
  Q_OBJECT

 public:
  explicit ToolStrip(QWidget* parent = nullptr);
  void begin_part();
  void add(QWidget* button);        // into the part begun last
  void add_below(QWidget* button);  // at the lower end
  int columns() const { return columns_; }

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  using Part = std::vector<QWidget*>;
  QSize cell() const;
  int height_in(int columns) const;
  int place(const Part& part, int top) const;  // gives where it ends
  void arrange();

  std::vector<Part> parts_;
  std::vector<QFrame*> lines_;  // one before each part but the first
  Part below_;
  int columns_ = 2;
};

}  // namespace underlawn
