// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/form.h"

namespace underlawn {

// What is asked for: coil, trenches, header and run.
class LoopPanel : public Form {
  Q_OBJECT

 public:
  explicit LoopPanel(Document& document, QWidget* parent = nullptr);

 private:
  void add_coil();
  void add_pattern();
  void add_one_of_three(const QString& label, CoilUnknown which, double Wishes::*wish);
  void add_trenches();
  void add_floors();
  void add_run();
  void add_aim();
  void add_held();
  void add_releases();
  void add_prices();
  void money(const QString& metric, const QString& us, double per_us, double Prices::*which);
  void let_follow(CoilUnknown which);

  Document& document_;
};

}  // namespace underlawn
