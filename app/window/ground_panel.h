// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/form.h"

namespace underlawn {

// Soil as digging meets it.
class GroundPanel : public Form {
  Q_OBJECT

 public:
  explicit GroundPanel(Document& document, QWidget* parent = nullptr);
};

// What is printed at the foot of every sheet.
class TitlePanel : public Form {
  Q_OBJECT

 public:
  explicit TitlePanel(Document& document, QWidget* parent = nullptr);
};

}  // namespace underlawn
