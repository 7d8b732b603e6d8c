// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/select_tool.h"

#include <QLineF>
#include <algorithm>

#include "canvas/hit.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

constexpr double kGripReach = 10;  // px
constexpr double kHitReach = 7;    // px
constexpr double kDragPixels = 4;
constexpr double kSameClick = 5;  // px

Kind kind_of(const SnapOwner& owner) {
  if (owner.kind == SnapOwner::Kind::lot) return Kind::lot;
  return owner.kind == SnapOwner::Kind::locked ? Kind::locked : Kind::feature;
}

Box spanned(Point a, Point b) {
  return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

}  // namespace

QString SelectTool::status() const {
  if (nudged_) return tr("Let go of the arrow key to keep it, Esc to put it back.");
  switch (state_) {
    case State::grip:
    case State::body:
      if (!stopped_by_.isEmpty()) return stopped_by_;
      return tr(
          "Drop it, or type where: 5, 5<90, 12 N45E, @10,5. Shift locks the angle, Alt or Ctrl stops "
          "catching, Esc "
          "puts it back.");
    case State::rubber:
      return tr("Everything wholly inside is selected.");
    default:
      break;
  }
  if (context_.picked().empty())
    return tr(
        "Click to select, again for what lies under it; drag a box round several; Tab walks through all.");
  if (hovered_ && hovered_->inserts) return tr("Drag to make a new corner here.");
  if (trench_at({1e9, 1e9}))
    return tr("Drag the trench or one of its ends: it stays where it is put. K locks it or lets it go.");
  if (!movable())
    return tr(
        "Drag the header, or a stretch of the run: it stays where it is put. K holds it or lets it go.");
  if (context_.picked().size() == 1 && handle_of(context_.picked().front()))
    return tr("Corner selected: drag it, arrow keys move it, @x,y moves it exactly, Del removes it.");
  return tr(
      "Drag to move, squares reshape, circles add a corner; arrow keys or @x,y move it; Del removes it.");
}

Qt::CursorShape SelectTool::cursor() const {
  if (state_ == State::body) return Qt::SizeAllCursor;
  return hovered_ || state_ == State::grip ? Qt::CrossCursor : Qt::ArrowCursor;
}

bool SelectTool::movable() const {
  const auto& all = context_.picked();
  return std::any_of(all.begin(), all.end(), can_move);
}

// What dragging the one trench that is selected would take hold of.
std::optional<TrenchHold> SelectTool::trench_at(Point p) const {
  const auto& picked = context_.picked();
  if (picked.size() != 1) return std::nullopt;
  const Selected& what = picked.front();
  if (what.kind == Kind::locked && what.index < 0) return hold_locked(context_.plan(), what.id);
  if (what.kind != Kind::trench || context_.outcome() == nullptr) return std::nullopt;
  return hold_trench(context_.plan(), *context_.outcome(), what.id, p, context_.reach(kGripReach));
}

std::optional<ConduitHold> SelectTool::conduit_at(Point p) const {
  const auto& picked = context_.picked();
  if (picked.size() != 1 || context_.outcome() == nullptr) return std::nullopt;
  return hold_conduit(context_.plan(), *context_.outcome(), picked.front(), p, context_.reach(kGripReach));
}

// Several things at once are moved, not reshaped: their grips would lie on one another.
std::optional<Grip> SelectTool::grip_under(const Pointer& pointer) const {
  if (context_.picked().size() != 1) return std::nullopt;
  std::optional<Grip> best;
  double nearest = context_.reach(kGripReach);
  for (const Grip& grip : grips(context_.plan(), context_.picked().front())) {
    // A corner wins over the middle of a short edge.
    const double away = distance(grip.at, pointer.raw) * (grip.inserts ? 1.5 : 1);
    if (away > nearest) continue;
    nearest = away;
    best = grip;
  }
  return best;
}

void SelectTool::press(const Pointer& pointer) {
  pressed_ = pointer;
  picked_by_press_ = false;
  if (!(pointer.modifiers & Qt::ShiftModifier)) grip_ = grip_under(pointer);
  if (grip_) {
    state_ = State::pressed_grip;
    return;
  }
  const auto under = this->under(pointer.raw, kHitReach);
  if (under.empty()) {
    state_ = State::pressed_blank;
    return;
  }
  const bool known =
      std::any_of(under.begin(), under.end(), [&](auto& s) { return holds_thing(context_.picked(), s); });
  state_ = State::pressed_thing;
  if (known && !(pointer.modifiers & Qt::ShiftModifier)) return;
  pick_at(pointer, under);
  picked_by_press_ = true;
}

void SelectTool::pick_at(const Pointer& pointer, const std::vector<Selected>& under) {
  std::vector<Selected> picked = context_.picked();
  if (!(pointer.modifiers & Qt::ShiftModifier)) return context_.pick({under.front()});
  const auto there =
      std::find_if(picked.begin(), picked.end(), [&](auto& s) { return same_thing(s, under.front()); });
  if (there != picked.end())
    picked.erase(there);
  else
    picked.push_back(under.front());
  context_.pick(std::move(picked));
}

void SelectTool::move(const Pointer& pointer) {
  if (state_ == State::idle) {
    hovered_ = grip_under(pointer);
    return;
  }
  if (!dragging() && state_ != State::ended &&
      QLineF(pressed_.device, pointer.device).length() >= kDragPixels)
    begin_drag(pointer);
  if (state_ == State::grip || state_ == State::body) lead(pointer.at);
}

void SelectTool::lead(Point to) {
  Plan plan = dragged(to);
  stopped_by_ = conduit_ ? what_stopped_conduit(plan, wished(to), *conduit_) : what_stopped(plan, wished(to));
  context_.preview(std::move(plan));
}

void SelectTool::begin_drag(const Pointer&) {
  if (state_ == State::pressed_grip) {
    state_ = State::grip;
    hold_ = grip_->at;
    return;
  }
  // The lot line and what lies in areas are moved only when selected before; else a slip would move the lot.
  const auto& picked = context_.picked();
  const bool lot_by_chance = picked_by_press_ && picked.size() == 1 && picked.front().kind == Kind::lot_edge;
  if (state_ == State::pressed_thing && take_derived()) return;
  if (state_ == State::pressed_thing && movable() && !lot_by_chance) {
    state_ = State::body;
    hold_ = hold_of(pressed_.raw);
    return;
  }
  state_ = State::rubber;
}

// Trench, header or run, which follow from the plan until somebody takes hold of them.
bool SelectTool::take_derived() {
  trench_ = trench_at(pressed_.raw);
  conduit_ = conduit_at(pressed_.raw);
  if (!trench_ && !conduit_) return false;
  state_ = State::body;
  if (conduit_)
    hold_ = conduit_->from;
  else
    hold_ = trench_->part == TrenchHold::Part::end ? trench_->trench.end : trench_->trench.head;
  return true;
}

void SelectTool::let_go() {
  grip_.reset();
  trench_.reset();
  conduit_.reset();
  stopped_by_.clear();
}

// The corner nearest to where it was taken, so that dragging can lay corner on corner.
Point SelectTool::hold_of(Point p) const {
  std::optional<Point> best;
  for (const Selected& what : context_.picked())
    for (const Grip& grip : grips(context_.plan(), what))
      if (!grip.inserts && (!best || distance(grip.at, p) < distance(*best, p))) best = grip.at;
  return best && distance(*best, p) <= context_.reach(2 * kGripReach) ? *best : p;
}

// As far as it may go.
Plan SelectTool::dragged(Point to) const {
  if (state_ == State::grip) return stopped(context_.plan(), wished(to));
  if (trench_) return dragged_trench(context_.plan(), *trench_, to - hold_);
  if (conduit_) return dragged_conduit(context_.plan(), *conduit_, to - hold_);
  return wished(to);
}

Plan SelectTool::wished(Point to) const {
  if (state_ == State::grip) return moved_grip(context_.plan(), *grip_, to);
  if (trench_) return wished_trench(context_.plan(), *trench_, to - hold_);
  if (conduit_) return wished_conduit(context_.plan(), *conduit_, to - hold_);
  std::vector<Selected> whole = context_.picked();
  for (Selected& s : whole)
    if (s.kind != Kind::lot_edge) s.index = -1;
  return moved_things(context_.plan(), whole, to - hold_);
}

QString SelectTool::drag_name() const {
  if (state_ == State::grip) return grip_action(*grip_);
  if (trench_) return tr("Move a trench");
  if (conduit_) return conduit_->header ? tr("Move the header") : tr("Move the run");
  std::vector<Selected> whole = context_.picked();
  for (Selected& s : whole) s.index = -1;
  return things_action(context_.plan(), tr("Move"), whole);
}

void SelectTool::release(const Pointer& pointer) {
  const State was = state_;
  if (was == State::grip || was == State::body) {
    place(pointer.at);
  } else if (was == State::rubber) {
    std::vector<Selected> picked;
    if (pressed_.modifiers & Qt::ShiftModifier) picked = context_.picked();
    for (const Selected& s : inside(context_.plan(), spanned(pressed_.raw, pointer.raw)))
      if (!holds_thing(picked, s) && is_shown(context_.plan(), s, context_.layers())) picked.push_back(s);
    context_.pick(std::move(picked));
  } else if (was != State::idle && was != State::ended) {
    click(pointer);
  }
  state_ = State::idle;
  let_go();
}

void SelectTool::click(const Pointer& pointer) {
  const bool again = QLineF(last_click_, pointer.device).length() <= kSameClick;
  last_click_ = pointer.device;
  if (state_ == State::pressed_grip && !grip_->inserts && grip_->handle.kind != edit::Handle::Kind::entry) {
    return context_.pick({owner_of(grip_->handle)});
  }
  if (pointer.modifiers & Qt::ShiftModifier) return;
  if (state_ == State::pressed_blank) return context_.pick({});
  if (picked_by_press_) return;
  const auto under = this->under(pointer.raw, kHitReach);
  if (under.empty()) return;
  const auto now = std::find_if(under.begin(), under.end(), [&](auto& s) {
    return !context_.picked().empty() && same_thing(s, context_.picked().back());
  });
  const auto at = now == under.end() ? 0 : static_cast<std::size_t>(now - under.begin());
  const std::size_t next = now == under.end() ? 0 : again ? (at + 1) % under.size() : at;
  context_.pick({under[next]});
}

void SelectTool::double_click(const Pointer& pointer) {
  press(pointer);
  if (state_ == State::pressed_blank) {
    context_.zoom_to_fit();
    state_ = State::ended;
  }
}

void SelectTool::place(Point p) {
  if (state_ == State::grip || state_ == State::body) {
    const Plan plan = dragged(p);
    const QString name = drag_name();
    const auto grip = grip_;
    state_ = State::ended;
    context_.commit(plan, name);
    if (grip && grip->handle.kind != edit::Handle::Kind::entry) {
      Selected point = owner_of(grip->handle);
      point.index += grip->inserts ? 1 : 0;
      context_.pick({point});
    }
    return;
  }
  if (const auto start = from(); start && movable())
    context_.commit(moved_things(context_.plan(), context_.picked(), p - *start),
                    things_action(context_.plan(), tr("Move"), context_.picked()));
}

void SelectTool::cancel() {
  context_.preview(std::nullopt);
  nudged_.reset();
  state_ = state_ == State::idle ? State::idle : State::ended;
  let_go();
}

bool SelectTool::takes_typing() const {
  return movable() && state_ != State::rubber;
}

std::optional<Point> SelectTool::from() const {
  if (state_ == State::grip || state_ == State::body) return hold_;
  if (dragging() || context_.picked().empty()) return std::nullopt;
  const Selected& last = context_.picked().back();
  if (const auto corner = handle_of(last)) return edit::handle_position(context_.plan(), *corner);
  const auto all = grips(context_.plan(), last);
  return all.empty() ? std::nullopt : std::optional(all.front().at);
}

// What is held keeps its distance from the pointer, so that it does not jump as the drag begins.
Point SelectTool::aimed(Point raw) const {
  return snaps() ? raw - (pressed_.raw - hold_) : raw;
}

Point SelectTool::steered(Point p) const {
  if (state_ != State::grip || grip_->handle.kind != edit::Handle::Kind::entry) return p;
  const Plan moved = edit::with_entry(context_.plan(), p);
  return moved.site.entry ? moved.site.entry->at : p;
}

SnapTargets SelectTool::targets() const {
  SnapTargets t = Tool::targets();
  const auto held = [this](const SnapOwner& owner) {
    const Selected thing{kind_of(owner), owner.feature_id};
    // A locked trench may be in hand as one of the outcome's: it does not catch on itself.
    if (trench_ && trench_->locked)
      return thing == Selected{Kind::locked, static_cast<int>(*trench_->locked)};
    if (state_ == State::body) return holds_thing(context_.picked(), thing);
    return grip_ && same_thing(owner_of(grip_->handle), thing);
  };
  // Of what is being reshaped only the corner in hand and its two edges move; the rest may still catch.
  const auto moving = [&](const SnapOwner& owner, std::size_t count, bool edge) {
    if (!held(owner)) return false;
    if (state_ == State::body) return true;
    const int i = grip_->handle.index, last = static_cast<int>(count) - 1;
    if (grip_->inserts) return edge && owner.index == i;
    return owner.index == i || (edge && owner.index == (i == 0 ? last : i - 1));
  };
  const auto places = std::count_if(t.places.begin(), t.places.end(), [&](auto& p) { return held(p.owner); });
  std::erase_if(t.places, [&](auto& p) { return moving(p.owner, static_cast<std::size_t>(places), false); });
  std::erase_if(t.edges, [&](auto& e) { return moving(e.owner, static_cast<std::size_t>(places), true); });
  return t;
}

bool SelectTool::key_press(QKeyEvent& key) {
  return nudge(key);
}

bool SelectTool::nudge(QKeyEvent& key) {
  Point way;
  switch (key.key()) {
    case Qt::Key_Left:
      way = {-1, 0};
      break;
    case Qt::Key_Right:
      way = {1, 0};
      break;
    case Qt::Key_Up:
      way = {0, 1};
      break;
    case Qt::Key_Down:
      way = {0, -1};
      break;
    default:
      return false;
  }
  if (!movable() || state_ != State::idle || (key.modifiers() & Qt::ControlModifier)) return false;
  const bool us = context_.plan().units == UnitSystem::us;
  const double step = (us ? 0.3048 : 0.1) * (key.modifiers() & Qt::ShiftModifier ? 10 : 1);
  nudged_ = nudged_.value_or(Point{}) + step * way;
  context_.preview(moved_things(context_.plan(), context_.picked(), *nudged_));
  return true;
}

bool SelectTool::key_release(QKeyEvent& key) {
  if (!nudged_ || key.isAutoRepeat()) return false;
  const Point by = *std::exchange(nudged_, std::nullopt);
  context_.commit(moved_things(context_.plan(), context_.picked(), by),
                  things_action(context_.plan(), tr("Move"), context_.picked()));
  return true;
}

void SelectTool::paint(const ToolPaint& p) const {
  if (dragging() && !stopped_by_.isEmpty())
    paint_plate(p, p.view.to_device(p.pointer.raw) + QPointF(18, -14), {stopped_by_}, p.look.text);
  if (state_ != State::rubber) return;
  QColor fill = p.look.selection;
  fill.setAlphaF(0.12F);
  p.painter.setPen(QPen(p.look.selection, 1, Qt::DashLine));
  p.painter.setBrush(fill);
  p.painter.drawRect(QRectF(pressed_.device, p.pointer.device).normalized());
}

}  // namespace underlawn
