// SPDX-License-Identifier: GPL-3.0-or-later
// Tables that a family reads: no rules but fine ones, the number last and bold.
#pragma once

#include "sheets/family_blocks.h"

namespace underlawn::sheet {

// Short lines in two columns: what, a word on it, how much.
class Pairs : public Block {
 public:
  struct Row {
    QString what, note, amount;
  };
  Pairs(QString heading, std::vector<Row> rows, QString foot)
      : heading_(std::move(heading)), rows_(std::move(rows)), foot_(std::move(foot)) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  std::size_t deep() const { return (rows_.size() + 1) / 2; }
  QString heading_;
  std::vector<Row> rows_;
  QString foot_;
};

// A head and rows; cells but the first stand to the right. The first row is the one offered.
class Compared : public Block {
 public:
  using Row = std::vector<QString>;
  Compared(Row head, std::vector<Row> rows) : head_(std::move(head)), rows_(std::move(rows)) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  double cell_width(std::size_t column, double width) const;
  // The row's height; paints where there is a painter.
  double set_row(QPainter* painter, const QRectF& room, const Row& row, double points, bool bold) const;
  Row head_;
  std::vector<Row> rows_;
};

}  // namespace underlawn::sheet
