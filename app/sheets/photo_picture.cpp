// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/photo_picture.h"

#include <QDir>
#include <QFileInfo>
#include <QImageReader>
#include <QObject>

namespace underlawn {

namespace {

constexpr qint64 kMostPixels = 200'000'000;  // larger ones are not looked at

// Formats that cannot be read small take four bytes a pixel, and Qt bounds what it allocates for one.
bool too_large(const QImageReader& reader) {
  const QSize size = reader.size();
  const qint64 pixels = static_cast<qint64>(size.width()) * size.height();
  const qint64 most = static_cast<qint64>(QImageReader::allocationLimit()) << 20;
  return size.isValid() && (pixels > kMostPixels || (most > 0 && 4 * pixels > most));
}

}  // namespace

QString photo_path(const std::string& file, const QString& folder) {
  const QString path = QString::fromStdString(file);
  return QDir::isAbsolutePath(path) || folder.isEmpty() ? path : QDir(folder).filePath(path);
}

QImage small_picture(const QString& path, int side) {
  QImageReader reader(path);
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  if (!size.isValid() || static_cast<qint64>(size.width()) * size.height() > kMostPixels) return {};
  if (size.width() > side || size.height() > side)
    reader.setScaledSize(size.scaled(side, side, Qt::KeepAspectRatio).expandedTo({1, 1}));
  return reader.read();
}

NoPicture no_picture(const QString& path) {
  if (!QFileInfo::exists(path))
    return {QObject::tr("This photo was not found."), QObject::tr("not found", "a photo")};
  const QImageReader reader(path);
  if (!too_large(reader))
    return {QObject::tr("No picture can be read from this file."), QObject::tr("no picture", "a photo")};
  return {QObject::tr("This picture has %1 by %2 pixels, too many to be shown: save it smaller.")
              .arg(reader.size().width())
              .arg(reader.size().height()),
          QObject::tr("too large", "a photo")};
}

}  // namespace underlawn
