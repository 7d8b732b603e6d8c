// SPDX-License-Identifier: GPL-3.0-or-later
// Photos of the job, two beside each other, each over its caption and the name of its file.
#pragma once

#include <vector>

#include "plan/record/as_built.h"
#include "sheets/block.h"

namespace underlawn::sheet {

class PhotoBlock : public Block {
 public:
  // `folder`: of the plan file. A photo that is not there is said to be missing in its place.
  PhotoBlock(std::vector<Photo> photos, QString folder, bool continued = false);
  double height(double width) const override;
  void paint(QPainter& painter, const QRectF& room) const override;
  std::optional<std::pair<BlockPtr, BlockPtr>> split(double width, double room) const override;

 private:
  struct Words {
    QStringList bold, plain;
  };
  Words words_of(const Photo& photo, double width) const;
  double words_height(const Photo& photo, double width) const;
  double row_height(std::size_t first, double width) const;
  void paint_photo(QPainter& painter, const Photo& photo, QPointF at, double width) const;

  std::vector<Photo> photos_;
  QString folder_;
  bool continued_;
};

}  // namespace underlawn::sheet
