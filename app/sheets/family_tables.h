// SPDX-License-Identifier: GPL-3.0-or-later
// Tables that a family reads: no rules but fine ones, the number last and bold.
#pragma once

#include "sheets/family_blocks.h"

namespace underlawn::sheet {

// Short lines in two columns: what, a word on it, how much of each kind.
class Pairs : public Block {
 public:
  struct Row {
    QString what, note;
    QStringList amounts;  // as many as there are heads
  };
  // `notes`: said under the lines where the words on them have no room there; `foot`: small, what is meant.
  Pairs(QString heading, QStringList heads, std::vector<Row> rows, QStringList notes, QString foot)
      : heading_(std::move(heading)),
        heads_(std::move(heads)),
        rows_(std::move(rows)),
        notes_(std::move(notes)),
        foot_(std::move(foot)) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  std::size_t deep() const { return (rows_.size() + 1) / 2; }
  bool noted(double room) const;
  double amount_width(qsizetype column) const;
  double amounts_width() const;
  double row_height(std::size_t i, double width) const;
  double rows_height(double width) const;
  void paint_row(QPainter& painter, const QRectF& at, const Row& row) const;
  // The height; paints where there is a painter.
  double set_notes(QPainter* painter, const QPointF& at, double width) const;
  QString heading_;
  QStringList heads_;
  std::vector<Row> rows_;
  QStringList notes_;
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
