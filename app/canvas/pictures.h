// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures under the drawing: their files decoded, kept, and painted where they lie.
#pragma once

#include <QImage>
#include <QString>
#include <array>

#include "canvas/view.h"
#include "plan/picture.h"

namespace underlawn {

struct PaintContext;

// Of a picture file: at most this large; a page of a PDF, or an image that is larger, is made smaller.
inline constexpr qint64 kMostPictureBytes = 24 << 20;
inline constexpr int kMostPicturePixels = 5000;  // along its longer side

struct DecodedPicture {
  std::vector<QImage> levels;  // each half as large as the one before; none where it cannot be shown
  int pages = 1;
  QString trouble;  // why it cannot be shown: "plat.png is not there"
  bool shown() const { return !levels.empty(); }
  QSize size() const { return levels.empty() ? QSize() : levels.front().size(); }
};

// Decodes `bytes`: PNG, JPEG or a page (from 1) of a PDF.
DecodedPicture decode_picture(const QByteArray& bytes, int page);

// Of the plan's picture, kept while it is in use. `folder`: from where Picture::file counts.
std::shared_ptr<const DecodedPicture> decoded(const Picture& picture, const QString& folder);
QString picture_folder(const QString& plan_path);  // the folder of a plan file; "" for a plan without one
// From where paths count whose plan's folder is not told: that of the plan that is open.
void set_usual_picture_folder(const QString& folder);

// Lower left, lower right, upper right, upper left, on the plan.
std::array<Point, 4> corners_of(const Picture& picture);
bool covers(const Picture& picture, Point p);

void paint_pictures(PaintContext& c);

}  // namespace underlawn
