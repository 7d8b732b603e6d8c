// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "sheets/sheet.h"

namespace underlawn {

// One page of a sheet as the printer would make it, on white paper in either theme. It is painted when it is
// first seen. The sheet must outlive it.
class PagePicture : public QWidget {
  Q_OBJECT

 public:
  PagePicture(const Sheet& sheet, int page, int width, QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  const Sheet& sheet_;
  int page_;
  QPixmap picture_;
};

}  // namespace underlawn
