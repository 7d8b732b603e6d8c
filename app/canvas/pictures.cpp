// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/pictures.h"

#include <poppler-qt6.h>

#include <QBuffer>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QMutex>
#include <QPainter>
#include <list>

#include "canvas/paint_context.h"

namespace underlawn {

namespace {

constexpr int kFinest = 200;  // dots per inch of a page
constexpr std::size_t kMostKept = 8;

std::vector<QImage> halved(QImage image) {
  std::vector<QImage> levels;
  if (image.isNull()) return levels;
  levels.push_back(image.convertToFormat(QImage::Format_ARGB32_Premultiplied));
  while (std::max(levels.back().width(), levels.back().height()) > 400 && levels.size() < 8) {
    const QSize half(std::max(1, levels.back().width() / 2), std::max(1, levels.back().height() / 2));
    levels.push_back(levels.back().scaled(half, Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
  }
  return levels;
}

DecodedPicture decode_page(const QByteArray& bytes, int number) {
  DecodedPicture out;
  const auto pdf = Poppler::Document::loadFromData(bytes);
  if (!pdf || pdf->isLocked() || pdf->numPages() < 1) {
    out.trouble = QObject::tr("The PDF cannot be read: it is damaged or locked.");
    return out;
  }
  out.pages = pdf->numPages();
  const auto page = number >= 1 && number <= out.pages ? pdf->page(number - 1) : nullptr;
  const QSizeF points = page ? page->pageSizeF() : QSizeF();
  if (!page || !(points.width() > 0) || !(points.height() > 0)) {
    out.trouble = QObject::tr("The PDF has %1 pages; there is no page %2.").arg(out.pages).arg(number);
    return out;
  }
  pdf->setRenderHint(Poppler::Document::Antialiasing);
  pdf->setRenderHint(Poppler::Document::TextAntialiasing);
  const double longest = std::max(points.width(), points.height());
  const double dpi = std::min<double>(kFinest, 72.0 * kMostPicturePixels / longest);
  out.levels = halved(page->renderToImage(dpi, dpi));
  if (out.levels.empty()) out.trouble = QObject::tr("The page cannot be shown.");
  return out;
}

DecodedPicture decode_image(const QByteArray& bytes) {
  DecodedPicture out;
  QBuffer buffer;
  buffer.setData(bytes);
  QImageReader reader(&buffer);
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  if (size.isValid() && std::max(size.width(), size.height()) > kMostPicturePixels)
    reader.setScaledSize(size.scaled(kMostPicturePixels, kMostPicturePixels, Qt::KeepAspectRatio));
  out.levels = halved(reader.read());
  if (out.levels.empty())
    out.trouble = QObject::tr("It is no picture that can be shown: %1.").arg(reader.errorString());
  return out;
}

QString name_of(const Picture& p) {
  const QString name = QString::fromStdString(p.name);
  return name.isEmpty() ? QFileInfo(QString::fromStdString(p.file)).fileName() : name;
}

DecodedPicture decode(const Picture& p, const QString& path) {
  if (!p.data.empty())
    return decode_picture(QByteArray::fromBase64(QByteArray::fromStdString(p.data.text())), p.page);
  QFile file(path);
  DecodedPicture out;
  if (p.file.empty() || !file.open(QIODevice::ReadOnly)) {
    out.trouble = QObject::tr("“%1” is not there: %2").arg(name_of(p), path);
    return out;
  }
  if (file.size() > kMostPictureBytes) {
    out.trouble = QObject::tr("“%1” is larger than %2 MB.").arg(name_of(p)).arg(kMostPictureBytes >> 20);
    return out;
  }
  return decode_picture(file.readAll(), p.page);
}

QString& usual_folder() {
  static QString folder;
  return folder;
}

struct Kept {
  SharedText data;  // held, so that its address is its own
  QString key;
  std::shared_ptr<const DecodedPicture> picture;
};

QString key_of(const Picture& p, const QString& path) {
  if (!p.data.empty()) return QString("%1:%2").arg(quintptr(p.data.text().data())).arg(p.page);
  const QFileInfo info(path);
  return QString("%1:%2:%3:%4")
      .arg(path)
      .arg(info.lastModified().toMSecsSinceEpoch())
      .arg(info.size())
      .arg(p.page);
}

void paint_missing(PaintContext& c, const Picture& p, const QString& why) {
  QPolygonF frame;
  for (Point corner : corners_of(p)) frame << c.at(corner);
  c.painter.setBrush(Qt::NoBrush);
  c.painter.setPen(c.dashed(c.look.warning, 1, {6, 4}));
  c.painter.drawPolygon(frame);
  c.painter.setPen(c.look.warning);
  c.painter.setFont(c.font());
  c.painter.drawText(frame.boundingRect(), Qt::AlignCenter | Qt::TextWordWrap, why);
}

void paint_one(PaintContext& c, const Picture& p) {
  if (!(p.width > 0) || !(p.height > 0)) return;
  const auto picture = decoded(p, c.options.picture_folder);
  if (!picture->shown()) return c.options.sheet ? void() : paint_missing(c, p, picture->trouble);
  const auto corners = corners_of(p);
  const QPointF lower = c.view.to_device(corners[0]), upper = c.view.to_device(corners[3]);
  const QPointF right = c.view.to_device(corners[2]);
  const double wide = QLineF(upper, right).length();
  std::size_t level = 0;
  while (!c.options.sheet && level + 1 < picture->levels.size() &&
         picture->levels[level + 1].width() >= wide * c.painter.device()->devicePixelRatioF())
    ++level;
  const QImage& image = picture->levels[level];
  const QPointF across = (right - upper) / image.width(), down = (lower - upper) / image.height();
  c.painter.save();
  c.painter.setOpacity(std::clamp(p.strength, 0.0, 1.0));
  c.painter.setRenderHint(QPainter::SmoothPixmapTransform);
  c.painter.setTransform(QTransform(across.x(), across.y(), down.x(), down.y(), upper.x(), upper.y()), true);
  c.painter.drawImage(QPointF(0, 0), image);
  c.painter.restore();
}

}  // namespace

DecodedPicture decode_picture(const QByteArray& bytes, int page) {
  return bytes.startsWith("%PDF") ? decode_page(bytes, page) : decode_image(bytes);
}

std::shared_ptr<const DecodedPicture> decoded(const Picture& picture, const QString& folder) {
  static QMutex mutex;
  static std::list<Kept> kept;  // the one used last stands first
  const QMutexLocker lock(&mutex);
  const QString path =
      QDir(folder.isEmpty() ? usual_folder() : folder).absoluteFilePath(QString::fromStdString(picture.file));
  const QString key = key_of(picture, path);
  auto at = std::ranges::find(kept, key, &Kept::key);
  if (at == kept.end())
    at = kept.insert(kept.begin(),
                     {picture.data, key, std::make_shared<const DecodedPicture>(decode(picture, path))});
  kept.splice(kept.begin(), kept, at);
  if (kept.size() > kMostKept) kept.pop_back();
  return kept.front().picture;
}

QString picture_folder(const QString& plan_path) {
  return plan_path.isEmpty() ? QString() : QFileInfo(plan_path).absolutePath();
}

void set_usual_picture_folder(const QString& folder) {
  usual_folder() = folder;
}

std::array<Point, 4> corners_of(const Picture& p) {
  const Point across = rotated({p.width, 0}, p.turn), up = rotated({0, p.height}, p.turn);
  return {p.at, p.at + across, p.at + across + up, p.at + up};
}

bool covers(const Picture& p, Point at) {
  const Point in = rotated(at - p.at, -p.turn);
  return in.x >= 0 && in.x <= p.width && in.y >= 0 && in.y <= p.height;
}

void paint_pictures(PaintContext& c) {
  if (!c.options.pictures) return;
  for (const Picture& p : c.plan.pictures)
    if (c.options.sheet ? p.on_sheets && !p.hidden : !p.hidden) paint_one(c, p);
}

}  // namespace underlawn
