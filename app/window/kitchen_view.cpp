// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/kitchen_view.h"

#include <QApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QPushButton>
#include <QTextLayout>
#include <algorithm>
#include <cmath>

#include "window/theme_now.h"

namespace underlawn {

namespace {

const QColor kCard = "#f7f6ef";  // under the pictures, in either theme

// Sets text in lines no wider than `width`; returns the height. Paints where there is a painter.
double set_text(QPainter* painter, const QPointF& at, double width, const QString& text, const QFont& font) {
  QTextLayout layout(text, font);
  double y = 0;
  layout.beginLayout();
  for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
    line.setLineWidth(width);
    line.setPosition({0, y});
    y += 1.15 * line.height();
  }
  layout.endLayout();
  if (painter != nullptr) layout.draw(painter, at);
  return y;
}

QFont sized(QFont font, double pixels, bool bold) {
  font.setPixelSize(std::max(8, qRound(pixels)));
  font.setWeight(bold ? QFont::DemiBold : QFont::Normal);
  return font;
}

}  // namespace

KitchenView::KitchenView(Document& document, QWidget* window)
    : QWidget(window),
      document_(document),
      back_(new QPushButton(tr("Back"), this)),
      on_(new QPushButton(tr("Next"), this)),
      close_(new QPushButton(tr("Close"), this)) {
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("The plan for its owners"));
  for (QPushButton* button : {back_, on_, close_}) button->setFocusPolicy(Qt::NoFocus);
  connect(back_, &QPushButton::clicked, this, [this] { go(at_ - 1); });
  connect(on_, &QPushButton::clicked, this, [this] { go(at_ + 1); });
  connect(close_, &QPushButton::clicked, this, &KitchenView::leave);
  connect(&document, &Document::outcome_changed, this, [this] {
    if (isVisible() && !document_.stale()) take();
  });
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
  window->installEventFilter(this);
  hide();
}

void KitchenView::open() {
  if (isVisible()) return leave();
  before_ = QApplication::focusWidget();
  document_.when_current([this] {
    at_ = 0;
    take();
    setGeometry(parentWidget()->rect());
    raise();
    show();
    setFocus(Qt::PopupFocusReason);
  });
}

void KitchenView::leave() {
  hide();
  if (before_) before_->setFocus(Qt::PopupFocusReason);
}

void KitchenView::take() {
  if (document_.outcome() == nullptr) return;
  scenes_ = kitchen_scenes(document_.plan(), *document_.outcome());
  go(at_);
}

QString KitchenView::title() const {
  return scenes_.empty() ? QString() : scenes_[static_cast<std::size_t>(at_)].title;
}

void KitchenView::go(int scene) {
  if (scenes_.empty()) return;
  at_ = std::clamp(scene, 0, scenes() - 1);
  const KitchenScene& now = scenes_[static_cast<std::size_t>(at_)];
  setAccessibleDescription(now.title + ". " + now.words.join(" "));
  back_->setEnabled(at_ > 0);
  on_->setEnabled(at_ + 1 < scenes());
  update();
}

double KitchenView::text_size() const {
  return std::clamp(std::min(height() / 36.0, width() / 58.0), 14.0, 34.0);
}

void KitchenView::paint_words(QPainter& painter, const QRectF& room) const {
  const KitchenScene& now = scenes_[static_cast<std::size_t>(at_)];
  painter.setPen(theme_now().grass);
  double size = text_size();
  double y = room.top();
  y += set_text(&painter, {room.left(), y}, room.width(), now.title, sized(font(), 1.9 * size, true)) +
       0.8 * size;
  // Long words are set smaller rather than cut off.
  const auto needed = [&](double with) {
    double sum = 0;
    for (const QString& words : now.words)
      sum += set_text(nullptr, {}, room.width(), words, sized(font(), with, false)) + 0.7 * with;
    return sum;
  };
  while (size > 11 && y + needed(size) > room.bottom()) size -= 0.5;
  painter.setPen(theme_now().text);
  const QFont plain = sized(font(), size, false);
  for (const QString& words : now.words) {
    // In a very small window none is cut through: what has no room is left to the larger one.
    if (y + set_text(nullptr, {}, room.width(), words, plain) > room.bottom() + 0.5 * size) {
      set_text(&painter, {room.left(), y - 0.7 * size}, room.width(), "…", plain);
      break;
    }
    y += set_text(&painter, {room.left(), y}, room.width(), words, plain) + 0.7 * size;
  }
}

void KitchenView::paint_amounts(QPainter& painter, const QRectF& room) const {
  const auto& amounts = scenes_[static_cast<std::size_t>(at_)].amounts;
  const double step = room.height() / std::max<double>(static_cast<double>(amounts.size()), 3);
  double size = text_size();
  // The height of one; paints where there is a painter.
  const auto set = [&](QPainter* on, double y, const std::pair<QString, QString>& amount) {
    double large = 3 * size;
    while (large > size &&
           QFontMetricsF(sized(font(), large, true)).horizontalAdvance(amount.first) > room.width())
      large -= 1;
    if (on != nullptr) on->setPen(theme_now().grass);
    const double used =
        set_text(on, {room.left(), y}, room.width(), amount.first, sized(font(), large, true));
    if (on != nullptr) on->setPen(theme_now().text);
    return used + set_text(on, {room.left(), y + used}, room.width(), amount.second,
                           sized(font(), 1.1 * size, false));
  };
  // Many of them are set smaller, never over one another.
  const auto fits = [&] {
    return std::ranges::all_of(amounts,
                               [&](const auto& amount) { return set(nullptr, 0, amount) < 0.94 * step; });
  };
  while (size > 9 && !fits()) size -= 0.5;
  double y = room.top();
  for (const auto& amount : amounts) {
    set(&painter, y, amount);
    y += step;
  }
}

// A dot for each scene; the one that is shown is filled.
void KitchenView::paint_steps(QPainter& painter) const {
  const double r = 0.22 * text_size(), step = std::min(4.5 * r, (width() - 420.0) / std::max(1, scenes()));
  const double left = width() / 2.0 - step * (scenes() - 1) / 2.0, y = height() - 26;
  for (int i = 0; i < scenes(); ++i) {
    painter.setPen(QPen(theme_now().grass, 1.4));
    painter.setBrush(i == at_ ? QBrush(theme_now().grass) : QBrush(Qt::NoBrush));
    painter.drawEllipse(QPointF(left + i * step, y), r, r);
  }
}

void KitchenView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter.fillRect(rect(), theme_now().paper);
  if (scenes_.empty()) return;
  const double gap = 1.6 * text_size(), foot = 56;
  const QRectF all = QRectF(rect()).adjusted(gap, gap, -gap, -foot);
  const KitchenScene& now = scenes_[static_cast<std::size_t>(at_)];
  // Words alone: no longer in a line than is read with ease.
  if (!now.picture && now.amounts.empty()) {
    paint_words(painter,
                QRectF(all.topLeft(), QSizeF(std::min(all.width(), 46 * text_size()), all.height())));
    return paint_steps(painter);
  }
  const bool wide = all.width() > 1.15 * all.height();
  const QRectF words(all.topLeft(), wide ? QSizeF(0.33 * all.width(), all.height())
                                         : QSizeF(all.width(), 0.3 * all.height()));
  const QRectF picture = wide ? QRectF(QPointF(words.right() + gap, all.top()), all.bottomRight())
                              : QRectF(QPointF(all.left(), words.bottom() + gap), all.bottomRight());
  paint_words(painter, words);
  if (now.picture) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(kCard);
    painter.drawRoundedRect(picture, 10, 10);
    now.picture(painter, picture.adjusted(10, 10, -10, -10), 0.72 * text_size());
  } else {
    paint_amounts(painter, picture);
  }
  paint_steps(painter);
}

bool KitchenView::event(QEvent* event) {
  if (event->type() != QEvent::ShortcutOverride || static_cast<QKeyEvent*>(event)->key() == Qt::Key_F5)
    return QWidget::event(event);
  event->accept();
  return true;
}

void KitchenView::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Escape:
      return leave();
    case Qt::Key_Right:
    case Qt::Key_Down:
    case Qt::Key_Space:
    case Qt::Key_Return:
    case Qt::Key_PageDown:
      return go(at_ + 1);
    case Qt::Key_Left:
    case Qt::Key_Up:
    case Qt::Key_Backspace:
    case Qt::Key_PageUp:
      return go(at_ - 1);
    case Qt::Key_Home:
      return go(0);
    case Qt::Key_End:
      return go(scenes() - 1);
    default:
      return QWidget::keyPressEvent(event);
  }
}

void KitchenView::mousePressEvent(QMouseEvent* event) {
  go(event->position().x() < 0.25 * width() ? at_ - 1 : at_ + 1);
}

void KitchenView::place_buttons() {
  int x = width() - 12;
  for (QPushButton* button : {close_, on_, back_}) {
    button->adjustSize();
    x -= button->width() + 8;
    button->move(x, height() - button->height() - 10);
  }
}

void KitchenView::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  place_buttons();
}

bool KitchenView::eventFilter(QObject* watched, QEvent* event) {
  if (isVisible() && watched == parentWidget() && event->type() == QEvent::Resize)
    setGeometry(parentWidget()->rect());
  return QWidget::eventFilter(watched, event);
}

}  // namespace underlawn
