// SPDX-License-Identifier: GPL-3.0-or-later
// Mouse, wheel and keys of the canvas.
#include <QMouseEvent>
#include <QWheelEvent>
#include <array>
#include <cmath>

#include "canvas/canvas.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kSnapReach = 12;  // px
constexpr double kLockStep = M_PI / 12;
constexpr double kCursorStep = 8;  // px, the least the keyboard's cursor moves
constexpr double kWheelZoom = 1.2;

// The next angle on the lock, exact along the axes.
Point locked(Point from, Point p) {
  const Point d = p - from;
  const int steps = static_cast<int>(std::lround(std::atan2(d.y, d.x) / kLockStep));
  if (steps % 12 == 0) return {p.x, from.y};
  if (std::abs(steps) == 6) return {from.x, p.y};
  const Point way = direction(steps * kLockStep);
  return from + dot(d, way) * way;
}

// A round length of at least `least` metres.
double cursor_step(double least, UnitSystem units) {
  constexpr double kInch = 0.0254;
  constexpr std::array us = {kInch,      3 * kInch,   6 * kInch,   12 * kInch,
                             60 * kInch, 120 * kInch, 600 * kInch, 1200 * kInch};
  constexpr std::array metric = {0.01, 0.05, 0.1, 0.25, 0.5, 1.0, 5.0, 25.0};
  const auto& steps = units == UnitSystem::us ? us : metric;
  for (double step : steps)
    if (step >= least) return step;
  return steps.back();
}

std::optional<Point> arrow(int key) {
  switch (key) {
    case Qt::Key_Left:
      return Point{-1, 0};
    case Qt::Key_Right:
      return Point{1, 0};
    case Qt::Key_Up:
      return Point{0, 1};
    case Qt::Key_Down:
      return Point{0, -1};
    default:
      return std::nullopt;
  }
}

bool plain(const QKeyEvent& key) {
  return !(key.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
}

// A tenth of a millimetre is finer than any tape; what is pointed at freely is kept to the millimetre.
Point tidy(Point p) {
  return {std::round(p.x * 1000) / 1000, std::round(p.y * 1000) / 1000};
}

}  // namespace

Pointer Canvas::pointer_from(QPointF device, Qt::KeyboardModifiers modifiers) const {
  Pointer pointer{device, key_cursor_.value_or(view_.to_lot(device)), {}, std::nullopt, modifiers};
  const Point aimed = now().aimed(pointer.raw);
  const auto from = now().from();
  pointer.at = key_cursor_ ? aimed : tidy(aimed);
  if (!now().snaps()) return pointer;
  if (from && (modifiers & Qt::ShiftModifier)) {
    pointer.at = locked(*from, aimed);
  } else if (from && held_way_) {
    // What is caught is brought onto the held direction: square across from it.
    pointer.snap = best_snap({aimed, std::nullopt, reach(kSnapReach)}, now().targets());
    const Point to = pointer.snap ? pointer.snap->at : aimed;
    pointer.at = *from + dot(to - *from, *held_way_) * *held_way_;
  } else if (!(modifiers & (Qt::AltModifier | Qt::ControlModifier))) {
    pointer.snap = best_snap({aimed, from, reach(kSnapReach)}, now().targets());
    if (pointer.snap) pointer.at = pointer.snap->at;
  }
  const Point steered = now().steered(pointer.at);
  if (pointer.snap && distance(steered, pointer.at) > kSamePlace) pointer.snap.reset();
  pointer.at = steered;
  return pointer;
}

void Canvas::point_at(QPointF device, Qt::KeyboardModifiers modifiers) {
  pointer_ = pointer_from(device, modifiers);
  pointer_inside_ = true;
  take_typed_place();
  now().move(pointer_);
  emit pointer_at(pointer_.at);
  tell_status();
}

CourseFrame Canvas::course_frame() const {
  return {now().from(), pointer_.at, plan().site.north, plan().units};
}

void Canvas::take_typed_text() {
  now().take_text(typed_.text(), false);
}

bool Canvas::take_typed_way() {
  const auto way =
      now().from() ? typed_direction(typed_.text().toStdString(), plan().site.north) : std::nullopt;
  if (!way) return false;
  typed_.clear();
  held_way_ = *way;
  pointer_ = pointer_from(pointer_.device, Qt::NoModifier);
  now().move(pointer_);
  said_ = tr("Direction held. Click or type the length; Esc lets it go.");
  tell_status();
  return true;
}

void Canvas::take_typed_place() {
  if (!typed_.begun()) return;
  if (now().reads_text()) return take_typed_text();
  const auto place = typed_.place(course_frame());
  if (!place) return;
  pointer_.at = now().steered(*place);
  pointer_.snap.reset();
}

void Canvas::place_typed() {
  if (now().reads_text()) {
    const QString trouble = now().take_text(typed_.text(), true);
    trouble.isEmpty() ? typed_.clear() : typed_.set_trouble(trouble);
    return tell_status();
  }
  if (take_typed_way()) return;
  pointer_ = pointer_from(pointer_.device, Qt::NoModifier);
  const auto place = typed_.place(course_frame());
  if (!place) {
    typed_.set_trouble(QString::fromStdString(place.error().message()));
    return tell_status();
  }
  typed_.clear();
  held_way_.reset();
  said_.clear();
  now().place(*place);
  key_placed_ = true;
  keep_in_view(*place);
  if (pointer_inside_ && !key_cursor_)
    pointer_ = pointer_from(pointer_.device, Qt::NoModifier);
  else
    lead_cursor_to(*place);
  tell_status();
}

void Canvas::mousePressEvent(QMouseEvent* event) {
  setFocus(Qt::MouseFocusReason);
  pointed_out_.clear();
  said_.clear();
  if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && space_held_)) {
    panning_from_ = event->position();
    return tell_status();
  }
  key_cursor_.reset();
  if (event->button() == Qt::RightButton) {
    if (typed_.begun()) return place_typed();
    if (now().busy()) now().finish();
    return tell_status();
  }
  if (event->button() != Qt::LeftButton) return;
  pointer_ = pointer_from(event->position(), event->modifiers());
  if (typed_.begun() && !now().held()) return place_typed();
  held_way_.reset();
  now().press(pointer_);
  tell_status();
}

void Canvas::mouseMoveEvent(QMouseEvent* event) {
  if (panning_from_) {
    pan_by(event->position() - *std::exchange(panning_from_, event->position()));
    return;
  }
  key_cursor_.reset();
  point_at(event->position(), event->modifiers());
}

void Canvas::mouseReleaseEvent(QMouseEvent* event) {
  if (panning_from_) {
    panning_from_.reset();
    return tell_status();
  }
  if (event->button() != Qt::LeftButton) return;
  pointer_ = pointer_from(event->position(), event->modifiers());
  if (now().held()) {
    take_typed_place();
    typed_.clear();
  }
  now().release(pointer_);
  tell_status();
}

void Canvas::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() == Qt::MiddleButton) return zoom_to_fit();
  if (event->button() != Qt::LeftButton || space_held_) return mousePressEvent(event);
  pointer_ = pointer_from(event->position(), event->modifiers());
  now().double_click(pointer_);
  tell_status();
}

void Canvas::wheelEvent(QWheelEvent* event) {
  const double notches = event->angleDelta().y() / 120.0;
  if (notches == 0) return;
  zoom_about(event->position(), std::pow(kWheelZoom, notches));
  if (!key_cursor_) point_at(event->position(), event->modifiers());
}

void Canvas::leaveEvent(QEvent*) {
  pointer_inside_ = key_cursor_.has_value();
  emit pointer_left();
  update();
}

void Canvas::focusInEvent(QFocusEvent*) {
  update();
}

void Canvas::focusOutEvent(QFocusEvent*) {
  space_held_ = false;
  tell_status();
}

bool Canvas::typing_key(const QKeyEvent& key) const {
  if (!now().takes_typing()) return false;
  if (typed_.begun()) return key.key() == Qt::Key_Backspace || TypedEntry::is_text(key);
  // With nothing in hand digits are keys of the view; @ begins an exact move.
  if (tool_id_ == ToolId::select && !now().busy()) return key.text() == QLatin1String("@");
  return TypedEntry::may_begin(key, now().from().has_value());
}

// Keys that commands have too, but which belong to the gesture while there is one.
bool Canvas::own_key(const QKeyEvent& key) const {
  if (typing_key(key)) return true;
  if (plain(key) && now().owns_key(key.key())) return true;
  const bool busy = now().busy() || typed_.begun();
  const bool half_drawn = now().half_drawn() || typed_.begun();
  switch (key.key()) {
    case Qt::Key_Escape:
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Backspace:
      return true;
    case Qt::Key_Z:
      return busy && key.modifiers() == Qt::ControlModifier;
    case Qt::Key_Delete:
      return busy;
    case Qt::Key_Space:
      return true;
    default:
      // A letter that means nothing here must not pick another tool and drop what is half drawn.
      return plain(key) && (arrow(key.key()).has_value() || (half_drawn && !key.text().trimmed().isEmpty()));
  }
}

bool Canvas::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && own_key(static_cast<QKeyEvent&>(*event))) {
    event->accept();
    return true;
  }
  if (event->type() == QEvent::KeyPress && tool_id_ == ToolId::select && !now().busy()) {
    const int key = static_cast<QKeyEvent&>(*event).key();
    // Past the last thing Tab goes on to the next widget, so that the drawing is no trap.
    if (key == Qt::Key_Tab && select_next(1)) return true;
    if (key == Qt::Key_Backtab && select_next(-1)) return true;
  }
  return QWidget::event(event);
}

void Canvas::keyPressEvent(QKeyEvent* event) {
  if (!event->isAutoRepeat()) said_.clear();
  const bool used = typing_key_press(*event) || gesture_key_press(*event) || now().key_press(*event) ||
                    cursor_key_press(*event);
  if (!used) return QWidget::keyPressEvent(event);
  event->accept();
  tell_status();
}

bool Canvas::typing_key_press(QKeyEvent& key) {
  if (!typing_key(key)) return false;
  if (!typed_.key_press(key)) return false;
  pointer_ = pointer_from(pointer_.device, Qt::NoModifier);
  if (now().reads_text()) {
    take_typed_text();
    return true;
  }
  take_typed_place();
  now().move(pointer_);
  return true;
}

bool Canvas::gesture_key_press(QKeyEvent& key) {
  switch (key.key()) {
    case Qt::Key_Escape:
      escape_pressed();
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      enter_pressed();
      // With Ctrl the point is the last one.
      if ((key.modifiers() & Qt::ControlModifier) && !typed_.begun() && now().busy()) now().finish();
      return true;
    case Qt::Key_Backspace:
      if (now().busy())
        now().step_back();
      else if (tool_id_ == ToolId::select)
        remove_selected();
      return true;
    case Qt::Key_Delete:
      remove_selected();
      return true;
    case Qt::Key_Z:
      if (!now().busy() || key.modifiers() != Qt::ControlModifier) return false;
      now().step_back();
      return true;
    case Qt::Key_Home:
      zoom_to_fit();
      return true;
    case Qt::Key_Space:
      if (!key.isAutoRepeat()) space_held_ = true;
      return true;
    default:
      return false;
  }
}

void Canvas::escape_pressed() {
  pointed_out_.clear();
  if (typed_.begun()) {
    typed_.clear();
    if (now().reads_text()) take_typed_text();
    if (pointer_inside_) point_at(pointer_.device, Qt::NoModifier);
  } else if (held_way_) {
    held_way_.reset();
    if (pointer_inside_) point_at(pointer_.device, Qt::NoModifier);
  } else if (now().busy()) {
    now().cancel();
  } else if (tool_id_ != ToolId::select) {
    set_tool(ToolId::select);
  } else {
    pick({});
  }
}

void Canvas::enter_pressed() {
  if (typed_.begun()) return place_typed();
  if (!key_cursor_ || key_placed_ || tool_id_ == ToolId::select) return now().finish();
  key_placed_ = true;
  held_way_.reset();
  now().place(pointer_.at);
}

// Arrow keys lead the pointer over a grid of round lengths, or, while selecting, move the view.
bool Canvas::cursor_key_press(QKeyEvent& key) {
  const auto way = arrow(key.key());
  if (!way || !plain(key)) return false;
  const double times = key.modifiers() & Qt::ShiftModifier ? 10 : 1;
  if (tool_id_ == ToolId::select || tool_id_ == ToolId::pan) {
    pan_by(QPointF(-way->x, way->y) * 40 * times);
    return true;
  }
  const double step = cursor_step(reach(kCursorStep), plan().units);
  const Point start = key_cursor_       ? *key_cursor_
                      : now().from()    ? *now().from()
                      : pointer_inside_ ? pointer_.raw
                                        : view_.centre;
  const auto on_grid = [step](double v) { return std::round(v / step) * step; };
  Point next = start + times * step * *way;
  // From a point off the grid only the way it goes is made round, so that the line stays upright.
  const bool free = !key_cursor_ && !now().from();
  if (free || way->x != 0) next.x = on_grid(next.x);
  if (free || way->y != 0) next.y = on_grid(next.y);
  lead_cursor_to(next);
  key_placed_ = false;
  return true;
}

void Canvas::lead_cursor_to(Point p) {
  key_cursor_ = p;
  QPointF at = view_.to_device(p);
  if (!in_view(at)) {
    pan_by(QRectF(rect()).center() - at);
    at = view_.to_device(p);
  }
  point_at(at, Qt::NoModifier);
}

void Canvas::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
    space_held_ = false;
    panning_from_.reset();
    return tell_status();
  }
  if (!now().key_release(*event)) return QWidget::keyReleaseEvent(event);
  tell_status();
}

}  // namespace underlawn
