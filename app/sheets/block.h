// SPDX-License-Identifier: GPL-3.0-or-later
// Pieces that flow down the columns of a sheet's pages.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QSizeF>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/sheet_type.h"

namespace underlawn::sheet {

class Block;
using BlockPtr = std::shared_ptr<const Block>;

class Block {
 public:
  virtual ~Block() = default;
  virtual double height(double width) const = 0;
  virtual void paint(QPainter& painter, const QRectF& room) const = 0;
  // The same for pages of this size; null where it is the same on all.
  virtual std::shared_ptr<const Block> for_pages(QSizeF /*room*/) const { return nullptr; }
  // A first part no higher than `room` and the rest; nothing when the block cannot be parted so.
  virtual std::optional<std::pair<BlockPtr, BlockPtr>> split(double /*width*/, double /*room*/) const {
    return std::nullopt;
  }
};

// Heading of a block: bold capitals over a rule. The rest of one that was parted is continued.
double heading_height();
void paint_heading(QPainter& painter, const QRectF& room, const QString& heading);
QString heading_of(const QString& heading, bool continued);

struct Cell {
  QString text;
  std::optional<QColor> swatch = std::nullopt;  // a coloured bar before the text
  bool bold = false;
};

struct Column {
  QString head;
  Align align = Align::left;
  bool wraps = false;  // gives way where the table is too wide
};

class Table : public Block {
 public:
  Table(QString heading, std::vector<Column> columns, std::vector<std::vector<Cell>> rows, double points,
        QString note = {});
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;
  std::optional<std::pair<BlockPtr, BlockPtr>> split(double width, double room) const override;
  std::shared_ptr<const Block> for_pages(QSizeF room) const override;
  double natural_width() const;
  std::shared_ptr<const Table> in_type(double points) const;  // the same in that size
  // Over the width of a page it is set smaller where that keeps it on one page.
  void keep_on_a_page() { on_a_page_ = true; }

 private:
  void measure();
  double widest(std::size_t column, bool whole) const;  // its widest text, or its widest word
  std::optional<Table> smaller_for(double width) const;
  std::vector<double> widths(double width) const;
  std::vector<double> shared(double width) const;
  QFont head_font() const;
  double row_height(const std::vector<Cell>& row, const std::vector<double>& widths) const;
  double head_height(const std::vector<double>& widths) const;
  QFont cell_font(const Cell& cell) const;
  void paint_row(QPainter& painter, QPointF at, const std::vector<Cell>& row,
                 const std::vector<double>& w) const;
  void paint_head(QPainter& painter, QPointF at, const std::vector<double>& w) const;

  QString heading_;
  bool continued_ = false, on_a_page_ = false;
  std::vector<Column> columns_;
  std::vector<std::vector<Cell>> rows_;
  double points_;
  QString note_;
  std::vector<double> natural_, least_;  // widths of the columns: on one line each, and with no word torn
  std::vector<double> square_;           // sum of squares of their texts' widths
};

using TablePtr = std::shared_ptr<const Table>;

struct Item {
  QString mark;  // "1", "•"
  QString lead;  // bold, its own line start
  QString text;
};

// Paragraphs, each behind its mark.
class Items : public Block {
 public:
  // In one column, or two of about one height.
  Items(QString heading, std::vector<Item> items, double points, int columns = 1);
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;
  std::optional<std::pair<BlockPtr, BlockPtr>> split(double width, double room) const override;

 private:
  double item_height(const Item& item, double width) const;
  double column_width(double width) const;
  std::size_t first_of_second(double width) const;
  double heights(std::size_t from, std::size_t to, double width) const;
  void paint_items(QPainter& painter, QPointF at, double width, std::size_t from, std::size_t to) const;
  double indent() const;

  QString heading_;
  bool continued_ = false;
  std::vector<Item> items_;
  double points_;
  int columns_;
};

}  // namespace underlawn::sheet
