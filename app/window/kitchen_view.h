// SPDX-License-Identifier: GPL-3.0-or-later
// The plan told to its owners at their table: one picture and a few large words at a time, over the whole
// window.
#pragma once

#include <QPointer>
#include <QWidget>
#include <functional>

#include "sheets/family_facts.h"
#include "window/document.h"

class QPushButton;

namespace underlawn {

struct KitchenScene {
  QString title;
  QStringList words;
  std::function<void(QPainter&, const QRectF&, double text)> picture;  // may be empty
  std::vector<std::pair<QString, QString>> amounts = {};  // instead of a picture: number, what it is
};
std::vector<KitchenScene> kitchen_scenes(const Plan& plan, const Outcome& outcome);

class KitchenView : public QWidget {
  Q_OBJECT

 public:
  KitchenView(Document& document, QWidget* window);
  void open();  // when the outcome is current; or leaves, where it is open
  void leave();
  void go(int scene);
  int scene() const { return at_; }
  int scenes() const { return static_cast<int>(scenes_.size()); }
  QString title() const;

 protected:
  bool event(QEvent* event) override;  // keys are the view's own, not the drawing's tools
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void take();  // the scenes of the plan as it is now
  double text_size() const;
  void paint_words(QPainter& painter, const QRectF& room) const;
  void paint_amounts(QPainter& painter, const QRectF& room) const;
  void paint_steps(QPainter& painter) const;
  void place_buttons();

  Document& document_;
  std::vector<KitchenScene> scenes_;
  int at_ = 0;
  QPushButton *back_, *on_, *close_;
  QPointer<QWidget> before_;
};

}  // namespace underlawn
