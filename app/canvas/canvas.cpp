// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/canvas.h"

#include <QCursor>
#include <algorithm>
#include <utility>

#include "base/quantity.h"
#include "canvas/hit.h"
#include "canvas/pictures.h"
#include "layout/header_groups.h"
#include "plan/dimensions.h"
#include "plane/region.h"
#include "tools/grips.h"
#include "tools/make_tool.h"
#include "tools/trench_drag.h"

namespace underlawn {

namespace {

constexpr double kViewEdge = 20;                     // px
constexpr double kFitMargin = 48;                    // px
constexpr double kFarthest = 0.05, kClosest = 4000;  // px per metre

// A house lot's worth of ground around the origin, while nothing is drawn.
constexpr Box kEmptyGround{{-5, -5}, {45, 40}};

void stretch(Box& box, Point p) {
  if (!std::isfinite(p.x) || !std::isfinite(p.y)) return;
  box = {{std::min(box.low.x, p.x), std::min(box.low.y, p.y)},
         {std::max(box.high.x, p.x), std::max(box.high.y, p.y)}};
}

Box everything(const Plan& plan, const std::vector<Point>& more) {
  constexpr double kFar = 1e300;
  Box box{{kFar, kFar}, {-kFar, -kFar}};
  for (const LotCorner& c : plan.site.lot) stretch(box, c.at);
  for (const Feature& f : plan.site.features)
    for (Point p : f.points) stretch(box, p);
  for (const Dimension& d : plan.dimensions)
    if (const auto line = line_of(d))
      for (Point p : {d.from, d.to, line->a, line->b}) stretch(box, p);
  for (Point p : more) stretch(box, p);
  const bool bare = box.low.x > box.high.x;
  for (const Picture& picture : plan.pictures)
    if (bare && !picture.hidden)
      for (Point p : corners_of(picture)) stretch(box, p);
  return box.low.x > box.high.x ? kEmptyGround : box;
}

}  // namespace

Canvas::Canvas(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent), document_(document), gesture_(document), selection_(selection) {
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setMinimumSize(240, 180);
  setAccessibleName(tr("Drawing of the lot"));
  for (ToolId id : all_tools()) tools_[id] = make_tool(id, *this);
  connect(&document_, &Document::plan_changed, this, [this] {
    forget_missing();
    plan_redrawn();
  });
  connect(&document_, &Document::outcome_changed, this, [this] {
    follow_trenches();
    plan_redrawn();
  });
  connect(&gesture_, &GestureRest::rested, this, &Canvas::plan_redrawn);
  connect(&document_, &Document::history_changed, this, [this] {
    if (!committing_) drop_gesture();  // the plan it began on is no longer the one there is
  });
  connect(&document_, &Document::replaced, this, [this] {
    drop_gesture();
    zoom_to_fit();
  });
  connect(&selection_, &Selection::changed, this, &Canvas::selection_changed);
  connect(&selection_, &Selection::pointed_out, this, &Canvas::point_out);
  setCursor(now().cursor());
}

Canvas::~Canvas() = default;

void Canvas::set_tool(ToolId id) {
  drop_gesture();
  said_.clear();
  if (std::exchange(tool_id_, id) != id) emit tool_changed(id);
  now().begin();
  if (pointer_inside_ && !key_cursor_) point_at(pointer_.device, Qt::NoModifier);
  tell_status();
}

void Canvas::ask_places(AskedPlaces asked) {
  set_tool(ToolId::ask);
  static_cast<AskTool&>(now()).ask(std::move(asked));
  tell_status();
}

QString Canvas::status() const {
  return said_.isEmpty() ? now().status() : said_;
}

void Canvas::tell_status() {
  setCursor(panning_from_ || space_held_ ? Qt::ClosedHandCursor : now().cursor());
  emit status_text(status());
  update();
}

void Canvas::drop_gesture() {
  typed_.clear();
  held_way_.reset();
  now().cancel();
  document_.preview(std::nullopt);
  tell_status();
}

void Canvas::set_look(const Look& look) {
  look_ = look;
  plan_redrawn();
}

void Canvas::set_paint_options(const PaintOptions& options) {
  options_ = options;
  plan_redrawn();
}

void Canvas::set_drawn(std::shared_ptr<const Outcome> outcome) {
  if (outcome == drawn_) return;
  drawn_ = std::move(outcome);
  plan_redrawn();
}

void Canvas::set_ghosts(std::vector<Ghost> ghosts) {
  const bool dim = dim_what_is_drawn(ghosts_);
  ghosts_ = std::move(ghosts);
  if (dim != dim_what_is_drawn(ghosts_)) plan_redrawn();
  update();
}

void Canvas::set_guest(std::function<void(QPainter&, const View&)> guest) {
  guest_ = std::move(guest);
  update();
}

void Canvas::look_at(const Box& box, int covered) {
  covered = std::min(covered, width() / 2);
  const View fit =
      fit_view(box, QSizeF(width() - covered, height()), std::min(kFitMargin, width() / 8.0), view_.turn);
  view_.scale = std::clamp(fit.scale, kFarthest, kClosest);
  view_.centre = fit.centre;
  view_.centre = view_.to_lot(QPointF((width() + covered) / 2.0, height() / 2.0));
  fitted_ = false;
  plan_redrawn();
}

void Canvas::set_survey(SurveyMarks survey) {
  survey_ = std::move(survey);
  if (fitted_) zoom_to_fit();
  update();
}

void Canvas::set_veil(std::function<void(QPainter&, const View&)> veil) {
  veil_ = std::move(veil);
  plan_redrawn();
}

void Canvas::plan_redrawn() {
  picture_old_ = true;
  update();
}

void Canvas::zoom_to_fit() {
  view_ = fit_view(everything(document_.plan(), places_of(survey_)), size(),
                   std::min(kFitMargin, width() / 8.0), view_.turn);
  view_.scale = std::min(view_.scale, 200.0);
  fitted_ = true;
  plan_redrawn();
  emit view_changed();
}

void Canvas::fit_box(const Box& box) {
  view_ = fit_view(box, size(), std::min(kFitMargin, width() / 8.0), view_.turn);
  view_.scale = std::clamp(view_.scale, kFarthest, kClosest);
  fitted_ = false;
  plan_redrawn();
  emit view_changed();
}

void Canvas::zoom_by(double factor) {
  zoom_about({width() / 2.0, height() / 2.0}, factor);
}

void Canvas::zoom_about(QPointF device, double factor) {
  const Point fixed = view_.to_lot(device);
  view_.scale = std::clamp(view_.scale * factor, kFarthest, kClosest);
  view_.centre = view_.centre + (fixed - view_.to_lot(device));
  fitted_ = false;
  plan_redrawn();
  emit view_changed();
}

bool Canvas::in_view(QPointF device) const {
  return QRectF(rect()).adjusted(kViewEdge, kViewEdge, -kViewEdge, -kViewEdge).contains(device);
}

// A typed point may lie far off: zooms out just so far that it is seen together with what was seen before.
void Canvas::keep_in_view(Point p) {
  if (in_view(view_.to_device(p))) return;
  Box box{p, p};
  for (QPointF corner : {rect().topLeft(), rect().topRight(), rect().bottomLeft(), rect().bottomRight()})
    stretch(box, view_.to_lot(corner));
  view_ = fit_view(box, size(), kFitMargin, view_.turn);
  view_.scale = std::max(view_.scale, kFarthest);
  fitted_ = false;
  plan_redrawn();
  emit view_changed();
}

void Canvas::pan_by(QPointF device) {
  const QPointF middle(width() / 2.0, height() / 2.0);
  view_.centre = view_.to_lot(middle - device);
  fitted_ = false;
  plan_redrawn();
}

// Brings the places into view, without coming nearer than needed, and marks them until the next click.
void Canvas::point_out(const std::vector<Polyline>& places) {
  pointed_out_ = places;
  constexpr double kFar = 1e300;
  Box box{{kFar, kFar}, {-kFar, -kFar}};
  for (const Polyline& place : places)
    for (Point p : place) stretch(box, p);
  if (box.low.x <= box.high.x) {
    const QRectF seen = QRectF(rect()).adjusted(40, 40, -40, -40);
    const QPointF a = view_.to_device(box.low), b = view_.to_device(box.high);
    if (!seen.contains(a) || !seen.contains(b)) {
      const View fit = fit_view(box, size(), 2 * kFitMargin, view_.turn);
      view_.centre = fit.centre;
      view_.scale = std::min(view_.scale, fit.scale);
      fitted_ = false;
    }
  }
  plan_redrawn();
}

void Canvas::preview(std::optional<Plan> plan) {
  document_.preview(std::move(plan));
}

void Canvas::commit(Plan plan, QString what) {
  committing_ = true;
  document_.commit(std::move(plan), std::move(what));
  committing_ = false;
}

void Canvas::pick(std::vector<Selected> what) {
  selection_.select_several(std::move(what));
  tell_status();
}

void Canvas::say(QString text) {
  said_ = std::move(text);
  tell_status();
}

QString Canvas::length_text(double metres) const {
  return QString::fromStdString(print_quantity(Quantity::length, metres, plan().units, Fineness::fine));
}

void Canvas::remove_selected() {
  drop_gesture();
  if (picked().empty()) return;
  const std::vector<Selected> what = picked();
  const Plan after = without_things(plan(), what);
  if (after == plan() && what.size() == 1 && is_locked_trench(what.front())) return turn_hold();
  if (after == plan()) return say(remove_refusal(what.back()));
  commit(after, things_action(plan(), tr("Remove"), what));
  std::vector<Selected> left;
  for (Selected s : what)
    if (s.index = -1; handle_of(what.back()) && is_there(plan(), s)) left.push_back(s);
  pick(left);
}

bool Canvas::is_locked_trench(const Selected& what) const {
  if (what.kind != Selected::Kind::trench || outcome() == nullptr) return false;
  const Trench* t = trench_numbered(outcome()->layout, what.id);
  return t != nullptr && locked_index(plan(), *t).has_value();
}

// Of several trenches all are locked, unless all are already.
void Canvas::turn_holds_of_trenches() {
  std::vector<Trench> all;
  for (const Selected& s : picked())
    if (const Trench* t = trench_numbered(outcome()->layout, s.id);
        t != nullptr && t->role != TrenchRole::supply)
      all.push_back(*t);
  const bool locked = std::all_of(all.begin(), all.end(),
                                  [this](const Trench& t) { return locked_index(plan(), t).has_value(); });
  commit(with_locks(plan(), all, !locked), locked ? tr("Let trenches go") : tr("Lock trenches"));
}

void Canvas::turn_hold() {
  drop_gesture();
  const bool trenches = std::all_of(picked().begin(), picked().end(),
                                    [](const Selected& s) { return s.kind == Selected::Kind::trench; });
  if (trenches && picked().size() > 1 && !document_.stale() && plan().wishes.given.empty())
    return turn_holds_of_trenches();
  if (document_.stale() || picked().size() != 1) return say(tr("Select one trench, the header or the run."));
  const Layout& layout = outcome()->layout;
  const Selected what = picked().front();
  if (what.kind == Selected::Kind::trench) {
    const Trench* t = trench_numbered(layout, what.id);
    if (t == nullptr) return;
    if (!plan().wishes.given.empty()) return say(tr("Every trench of this plan is where the file gives it."));
    if (t->role == TrenchRole::supply) return say(tr("This trench follows the run: hold the run instead."));
    const bool locked = locked_index(plan(), *t).has_value();
    return commit(with_lock_turned(plan(), *t), locked ? tr("Let a trench go") : tr("Lock a trench"));
  }
  if (what.kind == Selected::Kind::locked) {
    commit(edit::without_locked(plan(), what.id), tr("Let a trench go"));
    return pick({});  // another trench may have its place in the list now
  }
  if (what.kind == Selected::Kind::header)
    return commit(with_header_lock_turned(plan(), layout, what.id), header_is_held(plan().wishes, what.id)
                                                                        ? tr("Let the header go")
                                                                        : tr("Hold the header's line"));
  if (what.kind == Selected::Kind::run)
    return commit(with_run_lock_turned(plan(), layout),
                  plan().wishes.run_by.empty() ? tr("Lead the run") : tr("Let the run go"));
  say(tr("Only trenches, header and run are held; what is drawn stays anyway."));
}

QString Canvas::remove_refusal(const Selected& what) const {
  if (what.kind == Selected::Kind::lot_edge)
    return tr(
        "One edge cannot be removed alone: select a corner and remove that, or the whole lot line in the lot "
        "list.");
  if (handle_of(what))
    return tr("This is the least number of corners it can have. Select the whole thing to remove it.");
  return tr("Trenches, header and run follow from the plan and cannot be removed. Change the loop instead.");
}

}  // namespace underlawn
