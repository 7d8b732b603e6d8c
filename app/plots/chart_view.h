// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "plots/chart.h"

namespace underlawn {

// A chart in a panel. The pointer reads it; with the keyboard on it Left and Right (Up and Down where it is
// read along y) do, Home and End go to the ends, Esc stops reading.
class ChartView : public QWidget {
  Q_OBJECT

 public:
  explicit ChartView(int height = 240, QWidget* parent = nullptr);
  void set_chart(Chart chart);
  const Chart& chart() const { return chart_; }
  std::optional<double> reading() const { return reading_; }  // the place read at
  QPointF place_of(QPointF value) const;                      // in the widget
  QSize sizeHint() const override { return {330, height_}; }
  QSize minimumSizeHint() const override { return {200, height_}; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QRectF area() const;
  QFont chart_font() const;
  const ChartAxis& read_axis() const { return chart_.read_along_y ? chart_.y : chart_.x; }
  void read_at(std::optional<double> place);

  Chart chart_;
  int height_;
  std::optional<double> reading_;
};

}  // namespace underlawn
