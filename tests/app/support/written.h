// SPDX-License-Identifier: GPL-3.0-or-later
// What a painter writes, in the order in which it is written, without a picture being made.
#pragma once

#include <QPainter>
#include <QStringList>
#include <functional>

namespace underlawn::test {

QStringList written_by(const std::function<void(QPainter&)>& paint, QSize size = {4000, 4000});

}  // namespace underlawn::test
