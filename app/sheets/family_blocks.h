// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks of the proposal: larger and quieter than those of a crew's sheet.
#pragma once

#include <functional>

#include "sheets/block.h"
#include "sheets/lot_picture.h"

namespace underlawn::sheet {

inline const QColor kFamilyGreen = "#47692e";
inline const QColor kFamilyTint = "#eef3e4";

inline const double kFamilyGap = pt(7);  // under every block

double family_heading();
void paint_family_heading(QPainter& painter, const QRectF& room, const QString& text);
// Returns the height used; paints where there is a painter.
double set_family_text(QPainter* painter, QPointF at, double width, const QString& text, double points,
                       bool bold, const QColor& colour = "#222222");

// A heading and paragraphs; a paragraph may have a mark before it.
class Prose : public Block {
 public:
  struct Line {
    QString mark, lead, text;  // lead: bold, the text behind it
  };
  Prose(QString heading, std::vector<Line> lines, double points = 11.5);
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;
  std::optional<std::pair<BlockPtr, BlockPtr>> split(double width, double room) const override;

 private:
  double line_height_of(const Line& line, double width) const;
  double indent() const;
  QString heading_;
  std::vector<Line> lines_;
  double points_;
};

// Large numbers with what they are, side by side.
class Tiles : public Block {
 public:
  struct Tile {
    QString number, words;
  };
  explicit Tiles(std::vector<Tile> tiles) : tiles_(std::move(tiles)) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  double width_of_one(double width) const;
  double high(double width) const;  // of the highest tile
  QFont number_font(double width) const;
  double set_tile(QPainter* painter, const Tile& tile, const QRectF& box, const QFont& number) const;

  std::vector<Tile> tiles_;
};

// Pictures side by side, each with a title and a caption.
class Pictures : public Block {
 public:
  struct Picture {
    QString title, caption;
    std::function<void(QPainter&, const QRectF&)> paint;
  };
  Pictures(std::vector<Picture> pictures, double high) : pictures_(std::move(pictures)), high_(high) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  double width_of_one(double width) const;
  std::vector<Picture> pictures_;
  double high_;  // sheet units, of the picture
};

// Two columns, the left one so wide: what is told beside what is shown.
class Beside : public Block {
 public:
  Beside(std::vector<BlockPtr> left, std::vector<BlockPtr> right, double left_width)
      : left_(std::move(left)), right_(std::move(right)), left_width_(left_width) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  std::vector<BlockPtr> left_, right_;
  double left_width_;
};

// What the colours of the pictures above it are.
class PictureKey : public Block {
 public:
  explicit PictureKey(std::vector<PictureColour> key) : key_(std::move(key)) {}
  double height(double width) const override { return set(nullptr, QRectF(0, 0, width, 0)) + kFamilyGap; }
  void paint(QPainter& painter, const QRectF& room) const override { set(&painter, room); }

 private:
  double set(QPainter* painter, const QRectF& room) const;
  std::vector<PictureColour> key_;
};

// What and how much, line by line.
class Amounts : public Block {
 public:
  struct Row {
    QString what, note, amount;
    bool bold = false;
  };
  Amounts(QString heading, std::vector<Row> rows) : heading_(std::move(heading)), rows_(std::move(rows)) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  static bool on_one_line(const Row& row, double room);
  double row_height(const Row& row, double width) const;
  QString heading_;
  std::vector<Row> rows_;
};

// Lines to sign on, one for each owner, with what is agreed above them.
class SignHere : public Block {
 public:
  SignHere(QString agreed, QStringList owners, QString designer, double points)
      : agreed_(std::move(agreed)),
        owners_(std::move(owners)),
        designer_(std::move(designer)),
        points_(points) {}
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  QString agreed_;
  QStringList owners_;
  QString designer_;
  double points_;
};

}  // namespace underlawn::sheet
