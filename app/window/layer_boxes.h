// SPDX-License-Identifier: GPL-3.0-or-later
// What of the drawing is shown, kind by kind; only kinds that are on the lot.
#pragma once

#include <QCheckBox>
#include <QWidget>
#include <map>

#include "canvas/canvas.h"

class QGridLayout;

namespace underlawn {

class LayerBoxes : public QWidget {
  Q_OBJECT

 public:
  LayerBoxes(Document& document, Canvas& canvas, QWidget* parent = nullptr);

 private:
  void refresh();
  QCheckBox* add(const QString& name, std::function<bool(const Layers&)> is_on,
                 std::function<void(Layers&, bool)> turn);

  Document& document_;
  Canvas& canvas_;
  QGridLayout* grid_;
  struct Row {
    QCheckBox* box;
    std::function<bool(const Layers&)> is_on;
  };
  std::vector<Row> rows_;
  std::vector<QString> names_;
};

}  // namespace underlawn
