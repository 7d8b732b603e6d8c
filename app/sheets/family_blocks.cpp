// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/family_blocks.h"

#include <algorithm>

namespace underlawn::sheet {

namespace {

const double kGap = kFamilyGap;
const double kBetweenTiles = pt(10), kInTile = pt(8);
constexpr double kAmountsRoom = 0.8;  // of the width, for what an amount is of
constexpr double kName = 10.5;        // points
constexpr double kNote = 9.5;         // points: nothing that a family reads is smaller

double leading(double points) {
  return pt((points > 9.7 ? 1.42 : 1.26) * points);  // the smallest are told where there is much to tell
}

// The lead in bold and the text behind it on the same lines.
double set_run_in(QPainter* painter, QPointF at, double width, const QString& lead, const QString& text,
                  double points) {
  const QFont bold = type(points, QFont::DemiBold), plain = type(points);
  double x = 0, y = 0;
  const auto put = [&](const QString& words, const QFont& font) {
    for (const QString& word : words.split(' ', Qt::SkipEmptyParts)) {
      const double wide = width_of(word, font);
      if (x > 0 && x + wide > width) {
        x = 0;
        y += leading(points);
      }
      if (painter != nullptr) write(*painter, at + QPointF(x, y + pt(points)), word, font, "#222222");
      x += wide + width_of(" ", font);
    }
  };
  put(lead, bold);
  put(text, plain);
  return y + leading(points);
}

double set_line(QPainter* painter, QPointF at, double width, const Prose::Line& line, double points) {
  return line.lead.isEmpty() ? set_family_text(painter, at, width, line.text, points, false)
                             : set_run_in(painter, at, width, line.lead, line.text, points);
}

}  // namespace

double family_heading() {
  return pt(22);
}

void paint_family_heading(QPainter& painter, const QRectF& room, const QString& text) {
  write(painter, room.topLeft() + QPointF(0, pt(15)), elided(text, type(15, QFont::DemiBold), room.width()),
        type(15, QFont::DemiBold), kFamilyGreen);
}

double set_family_text(QPainter* painter, QPointF at, double width, const QString& text, double points,
                       bool bold, const QColor& colour) {
  if (text.isEmpty()) return 0;
  const QFont font = type(points, bold ? QFont::DemiBold : QFont::Normal);
  double y = 0;
  for (const QString& line : wrapped(text, font, width)) {
    if (painter != nullptr) write(*painter, at + QPointF(0, y + pt(points)), line, font, colour);
    y += leading(points);
  }
  return y;
}

Prose::Prose(QString heading, std::vector<Line> lines, double points)
    : heading_(std::move(heading)), lines_(std::move(lines)), points_(points) {}

double Prose::indent() const {
  const bool marked = std::ranges::any_of(lines_, [](const Line& l) { return !l.mark.isEmpty(); });
  return marked ? pt(16) : 0;
}

double Prose::line_height_of(const Line& line, double width) const {
  return set_line(nullptr, {}, width - indent(), line, points_) + pt(5);
}

double Prose::height(double width) const {
  double sum = heading_.isEmpty() ? 0 : family_heading();
  for (const Line& line : lines_) sum += line_height_of(line, width);
  return sum + kGap - pt(5);
}

void Prose::paint(QPainter& painter, const QRectF& room) const {
  double y = room.top();
  if (!heading_.isEmpty()) {
    paint_family_heading(painter, room, heading_);
    y += family_heading();
  }
  const double left = room.left() + indent(), width = room.width() - indent();
  for (const Line& line : lines_) {
    write(painter, {room.left(), y + pt(points_)}, line.mark, type(points_, QFont::Bold), kFamilyGreen);
    set_line(&painter, {left, y}, width, line, points_);
    y += line_height_of(line, room.width());
  }
}

std::optional<std::pair<BlockPtr, BlockPtr>> Prose::split(double width, double room) const {
  double used = heading_.isEmpty() ? 0 : family_heading();
  std::size_t n = 0;
  while (n < lines_.size() && used + line_height_of(lines_[n], width) <= room)
    used += line_height_of(lines_[n++], width);
  if (n == 0 || n == lines_.size()) return std::nullopt;
  const auto cut = lines_.begin() + static_cast<std::ptrdiff_t>(n);
  return std::pair<BlockPtr, BlockPtr>(
      std::make_shared<Prose>(heading_, std::vector<Line>(lines_.begin(), cut), points_),
      std::make_shared<Prose>("", std::vector<Line>(cut, lines_.end()), points_));
}

double Tiles::width_of_one(double width) const {
  const auto n = static_cast<double>(tiles_.size());
  return (width - (n - 1) * kBetweenTiles) / n;
}

// All of one size, on two lines at most.
QFont Tiles::number_font(double width) const {
  QFont font = type(18, QFont::DemiBold);
  for (const Tile& tile : tiles_) {
    const QFont own = fitting(tile.number, width, {18, 9.5}, QFont::DemiBold, 2);
    if (own.pixelSize() < font.pixelSize()) font = own;
  }
  return font;
}

// Of one tile; painted where there is a painter.
double Tiles::set_tile(QPainter* painter, const Tile& tile, const QRectF& box, const QFont& number) const {
  const double left = box.left() + kInTile, width = box.width() - 2 * kInTile;
  double y = box.top() + pt(6);
  for (const QString& line : wrapped(tile.number, number, width, 2)) {
    y += 1.15 * number.pixelSize();
    if (painter != nullptr) write(*painter, {left, y}, line, number, kFamilyGreen);
  }
  y += pt(7);
  for (const QString& line : wrapped(tile.words, type(9.5), width, 4)) {
    if (painter != nullptr) write(*painter, {left, y + pt(9.5)}, line, type(9.5));
    y += pt(12);
  }
  return y + pt(8) - box.top();
}

double Tiles::high(double width) const {
  const QRectF box(0, 0, width_of_one(width), 0);
  const QFont number = number_font(box.width() - 2 * kInTile);
  double most = 0;
  for (const Tile& tile : tiles_) most = std::max(most, set_tile(nullptr, tile, box, number));
  return most;
}

double Tiles::height(double width) const {
  return high(width) + kGap;
}

void Tiles::paint(QPainter& painter, const QRectF& room) const {
  const double width = width_of_one(room.width()), tall = high(room.width());
  const QFont number = number_font(width - 2 * kInTile);
  QRectF box(room.left(), room.top(), width, tall);
  for (const Tile& tile : tiles_) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(kFamilyTint);
    painter.drawRoundedRect(box, pt(6), pt(6));
    painter.setBrush(Qt::NoBrush);
    set_tile(&painter, tile, box, number);
    box.translate(width + kBetweenTiles, 0);
  }
}

double Pictures::width_of_one(double width) const {
  const auto n = static_cast<double>(pictures_.size());
  return (width - (n - 1) * pt(12)) / n;
}

double Pictures::height(double width) const {
  double words = 0;
  const double one = width_of_one(width);
  for (const Picture& p : pictures_)
    words = std::max(
        words, (p.title.isEmpty() ? 0 : pt(20)) + set_family_text(nullptr, {}, one, p.caption, kNote, false));
  return high_ + pt(6) + words + kGap;
}

void Pictures::paint(QPainter& painter, const QRectF& room) const {
  const double one = width_of_one(room.width());
  for (std::size_t i = 0; i < pictures_.size(); ++i) {
    const QRectF box(room.left() + static_cast<double>(i) * (one + pt(12)), room.top(), one, high_);
    pictures_[i].paint(painter, box);
    double y = box.bottom() + pt(6);
    if (!pictures_[i].title.isEmpty()) {
      write(painter, {box.left(), y + pt(13)}, pictures_[i].title, type(13, QFont::DemiBold), kFamilyGreen);
      y += pt(20);
    }
    set_family_text(&painter, {box.left(), y}, one, pictures_[i].caption, kNote, false);
  }
}

namespace {

const double kBetweenColumns = pt(16);

double stacked(const std::vector<BlockPtr>& blocks, double width) {
  double sum = 0;
  for (const BlockPtr& block : blocks) sum += block->height(width);
  return sum;
}

void paint_stacked(const std::vector<BlockPtr>& blocks, QPainter& painter, QRectF room) {
  for (const BlockPtr& block : blocks) {
    room.setHeight(block->height(room.width()));
    block->paint(painter, room);
    room.translate(0, room.height());
  }
}

}  // namespace

double Beside::height(double width) const {
  return std::max(stacked(left_, left_width_), stacked(right_, width - left_width_ - kBetweenColumns));
}

void Beside::paint(QPainter& painter, const QRectF& room) const {
  paint_stacked(left_, painter, QRectF(room.left(), room.top(), left_width_, 0));
  paint_stacked(right_, painter, room.adjusted(left_width_ + kBetweenColumns, 0, 0, 0));
}

double PictureKey::set(QPainter* painter, const QRectF& room) const {
  return set_picture_key(painter, room, key_, pt(kNote));
}

// The word on it stands behind it where the line has room.
bool Amounts::on_one_line(const Row& row, double room) {
  const QFont what = type(kName, row.bold ? QFont::DemiBold : QFont::Normal);
  return row.note.isEmpty() || width_of(row.what, what) + pt(8) + width_of(row.note, type(kNote)) <= room;
}

double Amounts::row_height(const Row& row, double width) const {
  const double room = kAmountsRoom * width;
  const double what = set_family_text(nullptr, {}, room, row.what, kName, row.bold);
  return what + (on_one_line(row, room) ? 0 : set_family_text(nullptr, {}, room, row.note, kNote, false)) +
         pt(7);
}

double Amounts::height(double width) const {
  double sum = heading_.isEmpty() ? 0 : family_heading();
  for (const Row& row : rows_) sum += row_height(row, width);
  return sum + kGap;
}

void Amounts::paint(QPainter& painter, const QRectF& room) const {
  double y = room.top();
  if (!heading_.isEmpty()) {
    paint_family_heading(painter, room, heading_);
    y += family_heading();
  }
  for (const Row& row : rows_) {
    const double width = kAmountsRoom * room.width(), top = y;
    double at = y + pt(2);
    const double used = set_family_text(&painter, {room.left(), at}, width, row.what, kName, row.bold);
    if (on_one_line(row, width))
      write(
          painter,
          {room.left() + pt(8) + width_of(row.what, type(kName, row.bold ? QFont::DemiBold : QFont::Normal)),
           at + pt(kName)},
          row.note, type(kNote), "#444444");
    else
      set_family_text(&painter, {room.left(), at + used}, width, row.note, kNote, false, "#444444");
    double points = row.bold ? 14 : kName;
    while (points > kNote &&
           width_of(row.amount, type(points, QFont::DemiBold)) > (1 - kAmountsRoom - 0.01) * room.width())
      points -= 0.5;
    write(painter, {room.right(), top + pt(14)}, row.amount, type(points, QFont::DemiBold), kInk,
          Align::right);
    y += row_height(row, room.width());
    painter.setPen(rule(0.5, "#c9d4b8"));
    painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y));
  }
}

double SignHere::height(double width) const {
  const auto lines = static_cast<double>(std::max<std::size_t>(owners_.size(), 1));
  return pt(6) + set_family_text(nullptr, {}, width, agreed_, points_, false) + pt(16) + lines * pt(38);
}

void SignHere::paint(QPainter& painter, const QRectF& room) const {
  const double top =
      room.top() + pt(6) +
      set_family_text(&painter, room.topLeft() + QPointF(0, pt(6)), room.width(), agreed_, points_, false);
  const double half = (room.width() - pt(30)) / 2;
  const auto line = [&](double x, double y, const QString& name, int lines) {
    painter.setPen(rule(0.8));
    painter.drawLine(QPointF(x, y), QPointF(x + 0.64 * half, y));
    painter.drawLine(QPointF(x + 0.7 * half, y), QPointF(x + half, y));
    write_on_lines(painter, {x, y + pt(13)}, name, 0.64 * half, {kNote, kNote}, lines);
    write(painter, {x + 0.7 * half, y + pt(13)}, QObject::tr("date"), type(kNote));
  };
  double y = top + pt(36);
  line(room.right() - half, y, designer_, 3);
  for (const QString& owner : owners_) {
    line(room.left(), y, owner, 2);
    y += pt(38);
  }
}

}  // namespace underlawn::sheet
