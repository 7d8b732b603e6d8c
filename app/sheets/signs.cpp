// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/signs.h"

#include "sheets/map_parts.h"

namespace underlawn::sheet {

namespace {

const double kRow = pt(13.5);
const double kSymbol = pt(34);
constexpr double kText = 8.5;

int columns_in(const std::vector<Sign>& signs, double width) {
  double widest = 0;
  for (const Sign& sign : signs) widest = std::max(widest, width_of(sign.text, type(kText)));
  return std::max(1, static_cast<int>(width / (widest + kSymbol + pt(14))));
}

int rows_in(const std::vector<Sign>& signs, int columns) {
  return (static_cast<int>(signs.size()) + columns - 1) / columns;
}

// In one column a text may take several lines.
QStringList lines_of(const Sign& sign, double width) {
  return wrapped(sign.text, type(kText), width - kSymbol - pt(8));
}

double top_of(const std::vector<Sign>& signs, std::size_t which, double width) {
  double y = 0;
  for (std::size_t i = 0; i < which; ++i)
    y += kRow + (static_cast<double>(lines_of(signs[i], width).size()) - 1) * line_height(type(kText));
  return y;
}

}  // namespace

Sign sign_of(const QString& text, std::function<void(Miniature&)> fill, void (*paint)(PaintContext&)) {
  return {text, [fill = std::move(fill), paint](PaintContext& c) {
            Miniature small;
            small.plan.wishes.run_width = 6;
            fill(small);
            PaintContext now{c.painter, small.plan, &small.outcome, c.view, c.look, c.options, c.labels};
            paint(now);
          }};
}

double signs_height(const std::vector<Sign>& signs, double width) {
  const int columns = columns_in(signs, width);
  return columns == 1 ? top_of(signs, signs.size(), width) : rows_in(signs, columns) * kRow;
}

void paint_signs(QPainter& painter, const QRectF& room, const std::vector<Sign>& signs,
                 const PaintOptions& options) {
  const int columns = columns_in(signs, room.width()), rows = rows_in(signs, columns);
  const double step = room.width() / columns;
  Look look = sheet_look();
  look.line *= 0.85;
  look.text_size = pt(7);
  const View view{{17, 5}, pt(1), {pt(34), pt(10)}, 0};
  const Plan plan;
  for (std::size_t i = 0; i < signs.size(); ++i) {
    const int column = static_cast<int>(i) / rows, row = static_cast<int>(i) % rows;
    const QPointF at(room.left() + column * step,
                     columns == 1 ? room.top() + top_of(signs, i, step) : room.top() + row * kRow);
    Labels labels;
    PaintContext c{painter, plan, nullptr, view, look, options, labels};
    painter.save();
    painter.translate(at);
    painter.setClipRect(QRectF(0, -pt(0.5), kSymbol, pt(11)));
    signs[i].paint(c);
    labels.paint(painter, c.device(), look.ground, look.line);
    painter.restore();
    const QPointF text = at + QPointF(kSymbol + pt(5), pt(8));
    if (columns > 1) {
      write_fitted(painter, text, signs[i].text, step - kSymbol - pt(8), {kText, 6.5});
      continue;
    }
    double down = 0;
    for (const QString& line : lines_of(signs[i], step)) {
      write(painter, text + QPointF(0, down), line, type(kText));
      down += line_height(type(kText));
    }
  }
}

}  // namespace underlawn::sheet
