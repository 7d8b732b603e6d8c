// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/plan.h"
#include "window/canvas_card.h"
#include "window/document.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QSlider;
class QSpinBox;

namespace underlawn {

class NoticeBar;
class QuantityField;

// The pictures under the drawing: a scanned plat, an aerial photograph, a page of a PDF. Placed, scaled by
// two clicks and a distance, turned by two clicks and a bearing, dimmed, locked, hidden, stored with the plan
// or beside it. Each change is one entry of the history.
class PictureCard : public CanvasCard {
  Q_OBJECT

 public:
  PictureCard(Document& document, Canvas& canvas, NoticeBar& bar);

  void open();  // with the pictures there are; asks for a file where there is none
  void ask_file();
  void add(const QString& path);  // a refusal goes to the notice bar
  int index() const;              // of the picture shown; -1: none

  QComboBox* which() const { return which_; }
  QPushButton* scale_button() const { return scale_; }
  QPushButton* turn_button() const { return turn_; }
  QPushButton* move_button() const { return move_; }
  QuantityField* distance_field() const { return distance_; }
  QuantityField* bearing_field() const { return bearing_; }
  QSlider* strength() const { return strength_; }
  QCheckBox* locked() const { return locked_; }
  QCheckBox* hidden_box() const { return hidden_; }
  QCheckBox* beside() const { return beside_; }

 protected:
  Point caught(Point p, double reach) const override;
  void paint_guest(QPainter& painter, const View& view) const override;

 private:
  void build();
  void connect_fields();
  void refresh();
  void say_missing();
  void ask_scale();
  void ask_turn();
  void ask_move();
  void change(const Picture& to, const QString& what);
  void store_beside(bool beside);
  const Picture* now() const;

  Document& document_;
  NoticeBar& bar_;
  std::optional<std::pair<Point, Point>> clicked_two_;
  bool snaps_ = false;
  QLabel *title_, *says_;
  QComboBox* which_;
  QSpinBox* page_;
  QPushButton *scale_, *turn_, *move_, *another_, *remove_, *done_;
  QuantityField *distance_, *bearing_;
  QSlider* strength_;
  QCheckBox *locked_, *hidden_, *on_sheets_, *beside_;
};

}  // namespace underlawn
