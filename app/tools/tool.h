// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing tool: one small state machine. The canvas turns mouse, keyboard and typed text into these calls;
// a tool shows what it is doing by previewing a plan or painting, and ends a gesture with one commit.
#pragma once

#include <QKeyEvent>
#include <QObject>
#include <QPainter>
#include <optional>

#include "canvas/layers.h"
#include "canvas/look.h"
#include "canvas/snap.h"
#include "canvas/view.h"
#include "window/selection.h"

namespace underlawn {

// Where the pointer, or the keyboard's cursor, is.
struct Pointer {
  QPointF device;  // device-independent pixels
  Point raw;       // m, right under it
  Point at;        // m, what a click takes: snapped, locked or as typed
  std::optional<Snap> snap;
  Qt::KeyboardModifiers modifiers;
};

// What a tool may do to the world.
class ToolContext {
 public:
  virtual ~ToolContext() = default;
  virtual const Plan& plan() const = 0;  // without any preview: what a gesture starts from
  virtual const Outcome* outcome() const = 0;
  virtual const View& view() const = 0;
  virtual const Layers& layers() const = 0;  // what is hidden is neither picked nor caught
  virtual void preview(std::optional<Plan> plan) = 0;
  virtual void commit(Plan plan, QString what) = 0;
  virtual const std::vector<Selected>& picked() const = 0;  // the last is the one the panels show
  virtual void pick(std::vector<Selected> what) = 0;
  virtual void say(QString text) = 0;  // shown instead of the tool's status until the next key or click
  virtual void zoom_to_fit() = 0;
  virtual void pan_by(QPointF device) = 0;
  virtual void back_to_select() = 0;
  virtual QString length_text(double metres) const = 0;

  // Metres that this many pixels are now.
  double reach(double pixels) const { return pixels / view().scale; }
};

struct ToolPaint {
  QPainter& painter;
  const View& view;
  const Look& look;
  const Pointer& pointer;
};

class Tool {
  Q_DECLARE_TR_FUNCTIONS(Tool)

 public:
  explicit Tool(ToolContext& context) : context_(context) {}
  virtual ~Tool() = default;
  Tool(const Tool&) = delete;
  Tool& operator=(const Tool&) = delete;

  virtual QString title() const = 0;
  virtual QString status() const = 0;  // one line: what to do now
  virtual Qt::CursorShape cursor() const { return Qt::CrossCursor; }

  virtual void begin() {}  // it is taken in hand
  virtual void press(const Pointer&) {}
  virtual void move(const Pointer&) {}  // with the button up or down
  virtual void release(const Pointer&) {}
  virtual void double_click(const Pointer&) {}
  virtual bool key_press(QKeyEvent&) { return false; }  // whether it was of use
  virtual bool key_release(QKeyEvent&) { return false; }

  // A point given exactly, by typing or by the keyboard's cursor; the same as a click there.
  virtual void place(Point) {}
  virtual bool busy() const { return false; }  // a gesture is in hand
  // Something is lost when another tool is taken, so a letter that means nothing to this one takes none.
  virtual bool half_drawn() const { return busy(); }
  // A plain letter that is this tool's as long as it is in hand, though a command has it too.
  virtual bool owns_key(int) const { return false; }
  virtual bool held() const { return false; }  // by a mouse button: letting go ends it
  virtual void cancel() {}                     // drops it without a trace
  virtual void step_back() { cancel(); }       // takes back its last point
  virtual void finish() {}                     // Enter or C: ends it with what there is

  virtual bool snaps() const { return true; }
  virtual bool takes_typing() const { return true; }
  // Typed text that is no place but an angle or a distance. `keep`: Enter was pressed, else it is only shown;
  // an empty text is none any more. Gives what is wrong with it.
  virtual bool reads_text() const { return false; }
  virtual QString take_text(const QString&, bool) { return {}; }
  virtual std::optional<Point> from() const { return std::nullopt; }  // lengths and angles count from here
  virtual Point aimed(Point raw) const { return raw; }  // what is led by the pointer, held off it
  virtual Point steered(Point p) const { return p; }    // where the next point may be, next to p
  virtual SnapTargets targets() const {
    return context_.layers().all() ? snap_targets(context_.plan())
                                   : snap_targets(shown_part(context_.plan(), context_.layers()));
  }
  virtual void paint(const ToolPaint&) const {}

 protected:
  // What lies within so many pixels, what is hidden left out; with trenches, header and run where `derived`.
  std::vector<Selected> under(Point at, double pixels, bool derived = true) const;

  ToolContext& context_;
};

}  // namespace underlawn
