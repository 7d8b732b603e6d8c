// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/photo_picture.h"

#include <QDir>
#include <QImageReader>

namespace underlawn {

namespace {

constexpr qint64 kMostPixels = 200'000'000;  // larger ones are not looked at

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

}  // namespace underlawn
