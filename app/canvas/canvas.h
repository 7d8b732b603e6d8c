// SPDX-License-Identifier: GPL-3.0-or-later
// The drawing that the window is made of: shows the plan and what follows from it, and hands mouse, keys and
// typed text to the tool in hand.
#pragma once

#include <QPixmap>
#include <QWidget>
#include <functional>
#include <map>
#include <memory>

#include "canvas/ghost.h"
#include "canvas/look.h"
#include "canvas/plan_painter.h"
#include "canvas/survey_marks.h"
#include "canvas/typed_entry.h"
#include "tools/ask_tool.h"
#include "tools/tool.h"
#include "tools/tool_id.h"
#include "window/gesture_rest.h"
#include "window/selection.h"

namespace underlawn {

class Canvas : public QWidget, private ToolContext {
  Q_OBJECT

 public:
  Canvas(Document& document, Selection& selection, QWidget* parent = nullptr);
  ~Canvas() override;

  ToolId tool() const { return tool_id_; }
  void set_tool(ToolId id);  // drops the gesture in hand
  QString status() const;    // what the tool says now

  const Look& look() const { return look_; }
  void set_look(const Look& look);
  const PaintOptions& paint_options() const { return options_; }
  void set_paint_options(const PaintOptions& options);  // `stale` is the canvas's own
  const Layers& layers() const override { return options_.layers; }
  void set_layers(const Layers& layers);

  // Painted over the plan and beneath what moves with the pointer; may be none.
  void set_veil(std::function<void(QPainter&, const View&)> veil);
  void set_ghosts(std::vector<Ghost> ghosts);  // other layouts over the one that is drawn, two at most
  const std::vector<Ghost>& ghosts() const { return ghosts_; }
  const Ghost* ghost() const { return ghosts_.empty() ? nullptr : &ghosts_.front(); }
  // Asks for places on the drawing: clicked, led to by keys or typed; the tool in hand goes.
  void ask_places(AskedPlaces asked);
  // What is not of the plan, or not yet, over it: a drawing to be brought in. May be none.
  void set_guest(std::function<void(QPainter&, const View&)> guest);
  // All of it in view, left of a card that covers so many pixels at the right.
  void look_at(const Box& box, int covered = 0);
  // Over the drawing; brought into sight as long as the view is the whole of it.
  void set_survey(SurveyMarks survey);
  const SurveyMarks& survey() const { return survey_; }

  // Drawn instead of what follows from the plan; null takes it back. Nothing of it can be taken hold of.
  void set_drawn(std::shared_ptr<const Outcome> outcome);

  void zoom_to_fit() override;
  void zoom_by(double factor);                            // about the middle; above 1 is closer
  void say_for_now(const QString& words) { say(words); }  // until the next key or click
  void zoom_to_selected();
  double paper_scale() const;  // the 240 of 1:240, on a screen as dense as it says it is
  void set_paper_scale(double scale);
  const View& view() const override { return view_; }

  void remove_selected();  // one entry, whatever is selected
  void turn_hold();        // locks the trenches, header or run selected, or lets them go
  bool copy_selected();    // to the clipboard
  void cut_selected();
  void join_selected();  // lines end to end, areas side by side
  void pick_under();     // what lies beneath what is selected, where the pointer is
  void hide_kind_of_selected();
  void select_all();   // everything that was drawn and is shown
  void select_kind();  // everything shown that is of a kind with what is selected
  void select_none();
  bool select_next(int step);  // +1 or -1 through everything on the lot; false past the end
  const std::vector<Selected>& picked() const override { return selection_.all(); }

 signals:
  void tool_changed(underlawn::ToolId id);
  void layers_changed();
  void view_changed();  // another scale
  void status_text(QString text);
  void pointer_at(underlawn::Point lot);
  void pointer_left();

 protected:
  bool event(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  // ToolContext
  const Plan& plan() const override { return document_.committed(); }
  const Outcome* outcome() const override { return document_.outcome(); }
  void preview(std::optional<Plan> plan) override;
  void commit(Plan plan, QString what) override;
  void pick(std::vector<Selected> what) override;
  void say(QString text) override;
  void pan_by(QPointF device) override;
  void back_to_select() override { set_tool(ToolId::select); }
  QString length_text(double metres) const override;

  Tool& now() const { return *tools_.at(tool_id_); }
  Pointer pointer_from(QPointF device, Qt::KeyboardModifiers modifiers) const;
  void point_at(QPointF device, Qt::KeyboardModifiers modifiers);
  void fit_box(const Box& box);
  void take_typed_text();
  bool take_typed_way();    // holds the direction where the text is one
  void take_typed_place();  // the pointer stands where the typed text says
  void place_typed();
  CourseFrame course_frame() const;
  bool own_key(const QKeyEvent& key) const;
  bool typing_key(const QKeyEvent& key) const;
  bool typing_key_press(QKeyEvent& key);
  bool gesture_key_press(QKeyEvent& key);
  bool cursor_key_press(QKeyEvent& key);
  void enter_pressed();
  void escape_pressed();
  void drop_gesture();
  void plan_redrawn();  // the picture of the plan is out of date
  void tell_status();
  void zoom_about(QPointF device, double factor);
  void lead_cursor_to(Point p);
  bool in_view(QPointF device) const;
  void keep_in_view(Point p);
  void point_out(const std::vector<Polyline>& places);
  void forget_missing();
  void follow_trenches();
  void selection_changed();
  void turn_holds_of_trenches();
  std::vector<Selected> drawn_things() const;
  bool is_locked_trench(const Selected& what) const;
  QString remove_refusal(const Selected& what) const;

  void paint_picture();
  void paint_overlay(QPainter& painter) const;

  Document& document_;
  GestureRest gesture_;
  Selection& selection_;
  Look look_ = Look::light();
  PaintOptions options_;
  View view_;
  bool fitted_ = true;  // still the view that zoom_to_fit gave: kept fitting as the widget is resized
  std::map<ToolId, std::unique_ptr<Tool>> tools_;
  ToolId tool_id_ = ToolId::select;
  std::vector<Segment> trenches_lay_;  // where those selected lay, in order: numbers change, places stay
  Pointer pointer_;
  bool pointer_inside_ = false;
  std::optional<Point> key_cursor_;  // where the arrow keys have led the pointer; none: the mouse leads
  bool key_placed_ = false;          // what they led to has been placed
  TypedEntry typed_;
  std::optional<Point> held_way_;  // unit: the next point lies that way from the last
  std::vector<Polyline> pointed_out_;
  QString said_;
  std::optional<QPointF> panning_from_;
  bool space_held_ = false;
  bool committing_ = false;
  bool picture_old_ = true;
  std::function<void(QPainter&, const View&)> veil_;
  std::function<void(QPainter&, const View&)> guest_;
  std::shared_ptr<const Outcome> drawn_;
  SurveyMarks survey_;
  std::vector<Ghost> ghosts_;
  QPixmap picture_;
};

}  // namespace underlawn
