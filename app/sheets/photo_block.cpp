// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/photo_block.h"

#include <algorithm>

#include "sheets/contents.h"
#include "sheets/photo_picture.h"

namespace underlawn::sheet {

namespace {

constexpr std::size_t kBeside = 2;
constexpr int kPixels = 1500;   // of the longer side: about 300 an inch on a letter page
constexpr double kTall = 0.75;  // height of a photo's place over its width
constexpr int kMostLines = 3;   // of a caption, and of a file's name
const double kGap = pt(12);
const double kLead = pt(4);

double cell_width(double width) {
  return (width - kGap) / static_cast<double>(kBeside);
}

QFont bold() {
  return type(9, QFont::DemiBold);
}
QFont plain() {
  return type(8);
}

}  // namespace

PhotoBlock::PhotoBlock(std::vector<Photo> photos, QString folder, bool continued)
    : photos_(std::move(photos)), folder_(std::move(folder)), continued_(continued) {}

PhotoBlock::Words PhotoBlock::words_of(const Photo& photo, double width) const {
  QString caption = text_of(photo.caption);
  if (photo.trench > 0)
    caption = caption.isEmpty() ? QObject::tr("Trench %1").arg(photo.trench)
                                : QObject::tr("Trench %1: %2").arg(photo.trench).arg(caption);
  QString file = text_of(photo.file);
  if (!photo.taken.empty()) file += ", " + text_of(photo.taken);
  return {caption.isEmpty() ? QStringList() : wrapped(caption, bold(), width, kMostLines),
          wrapped(file, plain(), width, kMostLines)};
}

double PhotoBlock::words_height(const Photo& photo, double width) const {
  const Words words = words_of(photo, width);
  return static_cast<double>(words.bold.size()) * line_height(bold()) +
         static_cast<double>(words.plain.size()) * line_height(plain());
}

double PhotoBlock::row_height(std::size_t first, double width) const {
  const double cell = cell_width(width);
  double words = 0;
  for (std::size_t i = first; i < std::min(first + kBeside, photos_.size()); ++i)
    words = std::max(words, words_height(photos_[i], cell));
  return kTall * cell + kLead + words + kGap;
}

double PhotoBlock::height(double width) const {
  double sum = heading_height();
  for (std::size_t i = 0; i < photos_.size(); i += kBeside) sum += row_height(i, width);
  return sum;
}

std::optional<std::pair<BlockPtr, BlockPtr>> PhotoBlock::split(double width, double room) const {
  double sum = heading_height();
  std::size_t kept = 0;
  while (kept < photos_.size() && sum + row_height(kept, width) <= room) {
    sum += row_height(kept, width);
    kept += kBeside;
  }
  if (kept == 0 || kept >= photos_.size()) return std::nullopt;
  const auto at = photos_.begin() + static_cast<std::ptrdiff_t>(kept);
  return std::pair<BlockPtr, BlockPtr>(
      std::make_shared<PhotoBlock>(std::vector<Photo>(photos_.begin(), at), folder_, continued_),
      std::make_shared<PhotoBlock>(std::vector<Photo>(at, photos_.end()), folder_, true));
}

void PhotoBlock::paint(QPainter& painter, const QRectF& room) const {
  paint_heading(painter, room, heading_of(QObject::tr("PHOTOS, KEPT BESIDE THE PLAN FILE"), continued_));
  const double cell = cell_width(room.width());
  double y = room.top() + heading_height();
  for (std::size_t i = 0; i < photos_.size(); ++i) {
    const std::size_t column = i % kBeside;
    paint_photo(painter, photos_[i], {room.left() + static_cast<double>(column) * (cell + kGap), y}, cell);
    if (column + 1 == kBeside) y += row_height(i + 1 - kBeside, room.width());
  }
}

void PhotoBlock::paint_photo(QPainter& painter, const Photo& photo, QPointF at, double width) const {
  const QRectF place(at, QSizeF(width, kTall * width));
  const QString path = photo_path(photo.file, folder_);
  const QImage image = small_picture(path, kPixels);
  if (image.isNull()) {
    painter.setPen(rule(0.6, kRule));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(place);
    double y = place.center().y();
    for (const QString& line : wrapped(no_picture(path).words, plain(), width - 2 * kLead, kMostLines)) {
      write(painter, {place.center().x(), y}, line, plain(), kFaint, Align::centre);
      y += line_height(plain());
    }
  } else {
    QRectF shown(QPointF(), QSizeF(image.size()).scaled(place.size(), Qt::KeepAspectRatio));
    shown.moveTopLeft(place.topLeft());
    painter.drawImage(shown, image);
  }
  const Words words = words_of(photo, width);
  double y = place.bottom() + kLead;
  const auto lines = [&](const QStringList& all, const QFont& font, const QColor& ink) {
    for (const QString& line : all) {
      y += line_height(font);
      write(painter, {at.x(), y - 0.25 * line_height(font)}, line, font, ink);
    }
  };
  lines(words.bold, bold(), kInk);
  lines(words.plain, plain(), kFaint);
}

}  // namespace underlawn::sheet
