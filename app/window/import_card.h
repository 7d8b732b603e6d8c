// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QPointer>

#include "exchange/bring_in.h"
#include "window/canvas_card.h"
#include "window/document.h"
#include "window/drawing_reader.h"

class QGridLayout;
class QLabel;
class QPushButton;
class QScrollArea;

namespace underlawn {

class NoticeBar;
class QuantityField;

// A drawing file before it is brought in: what its layers are taken for, its scale, and what would come of
// it, shown on the drawing as it would lie. One entry of the history brings it in; Esc leaves no trace.
class ImportCard : public CanvasCard {
  Q_OBJECT

 public:
  ImportCard(Document& document, Canvas& canvas, NoticeBar& bar);

  void ask_file();                 // which file
  void read(const QString& path);  // shows itself when it is read; a refusal goes to the notice bar
  void close_card() override;
  bool reading() const { return reader_.busy(); }

  const Drawing& drawing() const { return drawing_; }
  const std::vector<ShapeGroup>& groups() const { return groups_; }
  QComboBox* choice_of(int group) const { return choices_[static_cast<std::size_t>(group)]; }
  QComboBox* unit_box() const { return unit_; }
  QuantityField* distance_field() const { return distance_; }
  QPushButton* bring_button() const { return bring_; }
  QPushButton* next_outline_button() const { return next_outline_; }
  const Brought& brought() const { return brought_; }
  QString alarms() const;           // what is said of it as a warning
  void scale_by(Point a, Point b);  // two places on the plan: asks for their distance

 protected:
  Point caught(Point p, double reach) const override;
  bool click(Point p) override;  // inside a ring that could be the lot: that one is meant
  void paint_guest(QPainter& painter, const View& view) const override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void build();
  QWidget* make_scale();
  void take(Result<Drawing> drawing, const QString& name);
  void fill_attributes();
  void fill_groups();
  void fill_units();
  void fill_height_units();
  void tell_drawing();
  QString lies_astray() const;
  void choose_unit(int index);
  void take_distance(double metres);
  void place_anew();
  void look_at_all();
  void refresh();
  void show_brought();
  void tell_result();
  void bring();
  std::vector<Becomes> chosen() const;
  std::vector<int> wanted_shapes() const;
  Point in_drawing(Point on_plan) const;
  void make_lines();

  Document& document_;
  NoticeBar& bar_;
  DrawingReader reader_;
  QString name_;
  Drawing drawing_;
  std::vector<ShapeGroup> groups_;
  std::vector<QPointer<QComboBox>> choices_;
  Bringing how_;
  double own_unit_ = 0;                              // by two points; 0 for none
  std::optional<std::pair<Point, Point>> measured_;  // in the drawing
  Brought brought_;
  std::vector<std::pair<int, Polyline>> lines_;  // of the preview: group, points on the plan
  int pointed_ = -1;                             // group whose row the pointer is on
  bool refreshing_ = false;

  QLabel *title_, *facts_, *notes_, *alarms_, *size_, *result_, *scale_says_;
  QScrollArea* scroll_;
  QGridLayout* rows_ = nullptr;
  QComboBox* unit_;
  QComboBox *height_unit_, *by_;
  QPushButton *two_points_, *next_outline_, *bring_, *cancel_;
  QuantityField *distance_, *within_;
};

}  // namespace underlawn
