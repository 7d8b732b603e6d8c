// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <functional>
#include <vector>

#include "plane/point.h"

class QPainter;

namespace underlawn {

class Canvas;
struct View;

// A card on the drawing, in its upper right corner: what is decided on it shows on the drawing at once. It
// asks for places on the drawing where it needs them; otherwise the drawing works as ever. Esc closes it.
class CanvasCard : public QFrame {
  Q_OBJECT

 public:
  CanvasCard(Canvas& canvas, int width);
  ~CanvasCard() override;

  virtual void close_card();
  // Asks for so many places on the drawing, then calls `then` with them. Esc gives up.
  void ask_points(int points, const QString& words, std::function<void(std::vector<Point>)> then);
  void stop_asking();
  bool asking() const { return asking_; }
  QString asked() const { return asked_; }
  const std::vector<Point>& clicked() const { return clicked_; }

 signals:
  void closed();
  void asking_changed();

 protected:
  virtual Point caught(Point p, double reach) const;  // what a click there takes
  virtual bool click(Point) { return false; }  // a click while nothing is asked for; whether it was of use
  virtual void paint_guest(QPainter&, const View&) const {}
  void keyPressEvent(QKeyEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void place();
  Canvas& canvas() const { return canvas_; }

 private:
  Canvas& canvas_;
  bool asking_ = false;
  QString asked_;
  std::vector<Point> clicked_;
};

}  // namespace underlawn
