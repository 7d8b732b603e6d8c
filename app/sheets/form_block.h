// SPDX-License-Identifier: GPL-3.0-or-later
// A form: what is to be written down, what is asked or expected, and a box for each reading.
#pragma once

#include <QStringList>

#include "sheets/block.h"

namespace underlawn::sheet {

struct FormRow {
  QString what;
  QString asked;      // beside the boxes; may be empty
  QStringList boxes;  // what stands in each; empty: to be written by hand
};

class FormBlock : public Block {
 public:
  // `boxes`: heads of the boxes; their number is the number of boxes of each row.
  FormBlock(QString heading, QString asked, QStringList boxes, std::vector<FormRow> rows, QString note = {});
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;
  std::optional<std::pair<BlockPtr, BlockPtr>> split(double width, double room) const override;

 private:
  struct Widths {
    double what, asked, box;
  };
  Widths widths(double width) const;
  double row_height(const FormRow& row, const Widths& w) const;
  double head_height() const;
  double note_height(double width) const;
  void paint_row(QPainter& painter, QPointF at, double height, const FormRow& row, const Widths& w) const;

  QString heading_, asked_;
  QStringList boxes_;
  std::vector<FormRow> rows_;
  QString note_;
};

}  // namespace underlawn::sheet
