// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/deed_editor.h"

#include <QKeyEvent>
#include <QTextBlock>

#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kLines = 9;

}  // namespace

DeedEditor::DeedEditor(QWidget* parent) : QPlainTextEdit(parent) {
  setTabChangesFocus(true);
  setObjectName("boxed");
  setFixedHeight(fontMetrics().lineSpacing() * kLines + 14);
}

void DeedEditor::show_text(const QString& text) {
  if (hasFocus() && typing() && text == kept_) return;
  kept_ = text;
  if (toPlainText() != text) setPlainText(text);
}

void DeedEditor::enter() {
  if (!typing()) return;
  kept_ = toPlainText();
  emit entered(kept_);
}

// With nothing typed that is not kept, undo and redo are those of the plan.
bool DeedEditor::event(QEvent* event) {
  if (event->type() != QEvent::ShortcutOverride || typing()) return QPlainTextEdit::event(event);
  const auto* key = static_cast<QKeyEvent*>(event);
  if (!key->matches(QKeySequence::Undo) && !key->matches(QKeySequence::Redo))
    return QPlainTextEdit::event(event);
  event->ignore();
  return true;
}

void DeedEditor::keyPressEvent(QKeyEvent* event) {
  const bool enter_key = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter_key && event->modifiers().testFlag(Qt::ControlModifier)) return enter();
  if (event->key() == Qt::Key_Escape && typing()) return setPlainText(kept_);
  QPlainTextEdit::keyPressEvent(event);
}

void DeedEditor::focusOutEvent(QFocusEvent* event) {
  QPlainTextEdit::focusOutEvent(event);
  if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) enter();
}

void DeedEditor::mark_lines(const std::vector<int>& wrong, int picked) {
  QList<QTextEdit::ExtraSelection> all;
  const auto mark = [&](int line, const QColor& colour, int alpha) {
    const QTextBlock block = document()->findBlockByNumber(line - 1);
    if (!block.isValid()) return;
    QTextEdit::ExtraSelection s;
    QColor tint = colour;
    tint.setAlpha(alpha);
    s.format.setBackground(tint);
    s.format.setProperty(QTextFormat::FullWidthSelection, true);
    s.cursor = QTextCursor(block);
    all << s;
  };
  for (int line : wrong) mark(line, theme_now().error, 50);
  if (picked > 0) mark(picked, theme_now().grass, 60);
  setExtraSelections(all);
}

}  // namespace underlawn
