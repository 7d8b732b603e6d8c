// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/page_picture.h"

#include <QPainter>

namespace underlawn {

PagePicture::PagePicture(const Sheet& sheet, int page, int width, QWidget* parent)
    : QWidget(parent), sheet_(sheet), page_(page) {
  const QSizeF size = sheet.page_size();
  setFixedSize(width, qRound(width * size.height() / size.width()));
  setAccessibleName(tr("%1, page %2").arg(sheet.title()).arg(page + 1));
}

void PagePicture::paintEvent(QPaintEvent*) {
  const double density = devicePixelRatioF(), shrink = width() * density / sheet_.page_size().width();
  if (picture_.isNull()) {
    picture_ = QPixmap((QSizeF(size()) * density).toSize());
    picture_.fill(Qt::white);
    QPainter painter(&picture_);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(shrink, shrink);
    sheet_.paint(painter, page_);
    painter.end();
    picture_.setDevicePixelRatio(density);
  }
  QPainter(this).drawPixmap(0, 0, picture_);
}

}  // namespace underlawn
