// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QString>
#include <string>

namespace underlawn {

// Where a photo lies: from `folder`, the plan file's, unless it is said whole.
QString photo_path(const std::string& file, const QString& folder);

// A picture no larger than `side` pixels, upright, read small where its format can; null where there is none.
QImage small_picture(const QString& path, int side);

// Why there is none, as a sentence and as a word or two.
struct NoPicture {
  QString words, brief;
};
NoPicture no_picture(const QString& path);

}  // namespace underlawn
