// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/ask_tool.h"

#include <utility>

namespace underlawn {

namespace {

constexpr double kCatch = 12;  // px

}  // namespace

void AskTool::ask(AskedPlaces asked) {
  cancel();
  places_.clear();
  asked_ = std::move(asked);
}

QString AskTool::status() const {
  if (!busy()) return tr("Nothing is asked for.");
  return tr("%1 Or lead there with the arrow keys and Enter, or type %2; Esc gives up.")
      .arg(asked_.words, places_.empty() ? QStringLiteral("x,y") : QStringLiteral("#x,y"));
}

Point AskTool::caught(Point p) const {
  return asked_.caught ? asked_.caught(p, context_.reach(kCatch)) : p;
}

void AskTool::place(Point p) {
  if (!busy()) return;
  places_.push_back(p);
  if (static_cast<int>(places_.size()) < asked_.count) {
    if (asked_.progress) asked_.progress(places_);
    return;
  }
  const AskedPlaces done = std::exchange(asked_, {});
  const std::vector<Point> places = std::exchange(places_, {});
  context_.back_to_select();
  if (done.then) done.then(places);
}

void AskTool::cancel() {
  if (!busy()) return;
  const AskedPlaces dropped = std::exchange(asked_, {});
  places_.clear();
  context_.back_to_select();
  if (dropped.given_up) dropped.given_up();
}

void AskTool::step_back() {
  if (places_.empty()) return cancel();
  places_.pop_back();
  if (asked_.progress) asked_.progress(places_);
}

std::optional<Point> AskTool::from() const {
  return places_.empty() ? std::nullopt : std::optional(places_.back());
}

void AskTool::paint(const ToolPaint& p) const {
  if (!busy()) return;
  p.painter.save();
  p.painter.setRenderHint(QPainter::Antialiasing);
  p.painter.setPen(QPen(p.look.selection, 2));
  p.painter.setBrush(Qt::NoBrush);
  std::vector<Point> marks = places_;
  marks.push_back(p.pointer.at);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const QPointF at = p.view.to_device(marks[i]);
    p.painter.drawEllipse(at, 5, 5);
    p.painter.drawLine(at - QPointF(10, 0), at + QPointF(10, 0));
    p.painter.drawLine(at - QPointF(0, 10), at + QPointF(0, 10));
    if (i > 0) p.painter.drawLine(p.view.to_device(marks[i - 1]), at);
  }
  p.painter.restore();
}

}  // namespace underlawn
