// SPDX-License-Identifier: GPL-3.0-or-later
// A canvas of 800 x 600 pixels at 10 pixels a metre with (40, 30) m in the middle, so that lot (x, y) is at
// pixel (10 x, 600 - 10 y).
#pragma once

#include <gtest/gtest.h>

#include <QTest>

#include "canvas/canvas.h"
#include "plan/edits.h"

namespace underlawn {

class CanvasTest : public testing::Test {
 protected:
  CanvasTest() {
    canvas.resize(800, 600);
    canvas.show();
    document.start_new();
    square_view();
    canvas.setFocus();
  }

  // The wheel and the drag keep their own view, so the fixed one is made by what the user has: fit and zoom.
  void square_view() {
    Plan frame = document.committed();
    frame.site.lot = {{{0.0, 0.0}}, {{80.0, 0.0}}, {{80.0, 60.0}}, {{0.0, 60.0}}};
    document.preview(frame);
    canvas.zoom_to_fit();
    document.preview(std::nullopt);
    canvas.zoom_by(10 / canvas.view().scale);
  }

  QPoint px(Point p) const { return canvas.view().to_device(p).toPoint(); }
  void click(Point p, Qt::KeyboardModifiers modifiers = {}) {
    QTest::mouseMove(&canvas, px(p));
    move_to(p, modifiers);
    QTest::mouseClick(&canvas, Qt::LeftButton, modifiers, px(p));
  }
  void move_to(Point p, Qt::KeyboardModifiers modifiers = {}, Qt::MouseButtons buttons = {}) {
    QMouseEvent move(QEvent::MouseMove, QPointF(px(p)), canvas.mapToGlobal(QPointF(px(p))), Qt::NoButton,
                     buttons, modifiers);
    QApplication::sendEvent(&canvas, &move);
  }
  void hold(Point from, Point to, Qt::KeyboardModifiers modifiers = {}) {
    QTest::mousePress(&canvas, Qt::LeftButton, modifiers, px(from));
    move_to(0.5 * (from + to), modifiers, Qt::LeftButton);
    move_to(to, modifiers, Qt::LeftButton);
  }
  void let_go(Point at, Qt::KeyboardModifiers modifiers = {}) {
    QTest::mouseRelease(&canvas, Qt::LeftButton, modifiers, px(at));
  }
  void drag(Point from, Point to, Qt::KeyboardModifiers modifiers = {}) {
    hold(from, to, modifiers);
    let_go(to, modifiers);
  }
  void type(const char* text) { QTest::keyClicks(&canvas, QString::fromUtf8(text)); }
  void enter(const char* text) {
    type(text);
    QTest::keyClick(&canvas, Qt::Key_Return);
  }
  void key(Qt::Key k, Qt::KeyboardModifiers modifiers = {}) { QTest::keyClick(&canvas, k, modifiers); }

  int add(FeatureKind kind, std::vector<Point> points) {
    Feature f;
    f.id = edit::next_feature_id(document.committed());
    f.kind = kind;
    f.points = std::move(points);
    const int id = f.id;
    document.commit(edit::with_feature(document.committed(), std::move(f)), "Add");
    return id;
  }
  void add_lot(const Ring& ring) {
    document.commit(edit::with_lot(document.committed(), ring, 3), "Add lot");
  }
  Ring lot() const { return lot_ring(document.committed().site); }
  const std::vector<Point>& points(int id) const {
    return find_feature(document.committed().site, id)->points;
  }
  int entries() {  // how many changes can be undone
    int count = 0;
    while (document.can_undo()) {
      document.undo();
      ++count;
    }
    for (int i = 0; i < count; ++i) document.redo();
    return count;
  }

  Document document;
  Selection selection;
  Canvas canvas{document, selection};
};

constexpr double kFt = 0.3048;

}  // namespace underlawn
