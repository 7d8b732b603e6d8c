// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/theme.h"

#include <QApplication>
#include <QFont>
#include <QPalette>
#include <QStyleFactory>
#include <cmath>

static void have_resources() {
  Q_INIT_RESOURCE(underlawn);  // must be called outside a namespace, since this library is linked statically
}

namespace underlawn {

Theme Theme::light() {
  return {.dark = false,
          .paper = "#fffefa",
          .ground = "#f5f2ea",
          .sunken = "#ece7da",
          .line = "#ddd6c5",
          .edge = "#8f8672",
          .text = "#2b261f",
          .faint = "#665e50",
          .grass = "#2f6b3a",
          .on_grass = "#ffffff",
          .tint = "#dfead6",
          .focus = "#2f6b3a",
          .error = "#a6271c",
          .warning = "#8a5200",
          .hint = "#35608a"};
}

Theme Theme::night() {
  return {.dark = true,
          .paper = "#1d1b17",
          .ground = "#262319",
          .sunken = "#312d22",
          .line = "#3e392c",
          .edge = "#857c66",
          .text = "#eee8da",
          .faint = "#b3aa96",
          .grass = "#8fc47c",
          .on_grass = "#152012",
          .tint = "#34452c",
          .focus = "#a9db95",
          .error = "#ff9a88",
          .warning = "#eab564",
          .hint = "#9cc4ea"};
}

namespace {

double linear(double channel) {
  return channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& c) {
  return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}

QPalette palette_of(const Theme& t) {
  QPalette p;
  p.setColor(QPalette::Window, t.ground);
  p.setColor(QPalette::Base, t.paper);
  p.setColor(QPalette::AlternateBase, t.ground);
  p.setColor(QPalette::Button, t.ground);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText})
    p.setColor(role, t.text);
  p.setColor(QPalette::ToolTipBase, t.paper);
  p.setColor(QPalette::PlaceholderText, t.faint);
  p.setColor(QPalette::Highlight, t.grass);
  p.setColor(QPalette::HighlightedText, t.on_grass);
  p.setColor(QPalette::Link, t.grass);
  p.setColor(QPalette::LinkVisited, t.grass);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    p.setColor(QPalette::Disabled, role, t.edge);
  return p;
}

constexpr const char* kSheet = R"(
* { font-size: 13px; }
QMainWindow, QWidget#column, QWidget#strip, QScrollArea, QWidget#page { background: @ground; }
QMenuBar { background: @ground; border-bottom: 1px solid @line; padding: 2px 8px; }
QMenuBar::item { padding: 5px 10px; border-radius: 4px; background: transparent; }
QMenuBar::item:selected { background: @tint; }
QMenu { background: @paper; border: 1px solid @line; padding: 6px; }
QMenu::item { padding: 6px 28px 6px 10px; border-radius: 4px; }
QMenu::item:selected { background: @tint; color: @text; }
QMenu::item:disabled { color: @edge; }
QMenu::icon { padding-left: 8px; }
QMenu::separator { height: 1px; background: @line; margin: 6px 8px; }
QToolTip { background: @paper; color: @text; border: 1px solid @edge; padding: 5px 7px; }

QWidget#strip { border-right: 1px solid @line; }
QWidget#strip QToolButton { border: 1px solid transparent; border-radius: 7px; padding: 6px; }
QWidget#strip QToolButton:hover { background: @sunken; }
QWidget#strip QToolButton:checked { background: @grass; }
QWidget#strip QToolButton:focus { border: 2px solid @focus; padding: 5px; }

QWidget#column { border-left: 1px solid @line; }
QTabBar { background: @ground; qproperty-drawBase: 0; }
QTabBar::tab { padding: 8px 4px 6px 4px; color: @faint; background: transparent;
  border-bottom: 2px solid transparent; margin-right: 1px; }
QTabBar::tab:selected { color: @text; border-bottom: 2px solid @grass; font-weight: 600; }
QTabBar::tab:hover { color: @text; }
QTabBar::tab:focus { color: @text; background: @tint; }

QLabel { background: transparent; }
QLabel#section { qproperty-indent: 0; font-size: 13px; font-weight: 600; padding-top: 6px; }
QLabel#faint { color: @faint; font-size: 12px; }
QLabel#source { color: @faint; font-size: 12px; }
QLabel#name { font-weight: 600; }
QLabel#plainer { font-size: 12px; }
QLabel#right { color: @grass; font-size: 12px; }
QLabel#wrong { color: @error; font-size: 12px; }
QLabel#big { font-size: 17px; font-weight: 600; }

QLineEdit, QComboBox, QPlainTextEdit, QSpinBox {
  background: @paper; border: 1px solid @edge; border-radius: 5px; padding: 4px 7px; min-height: 20px;
  selection-background-color: @grass; selection-color: @on_grass; }
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus { border: 2px solid @focus; padding: 3px 6px; }
QLineEdit[wrong="true"] { border: 2px solid @error; padding: 3px 6px; }
QLineEdit:read-only, QLineEdit:disabled { background: @sunken; border: 1px solid @line; color: @text; }
QLineEdit:read-only:focus { border: 2px solid @focus; }
QComboBox { combobox-popup: 0; }
QComboBox::drop-down { border: none; width: 20px; }
QComboBox::down-arrow { image: url(@down); width: 10px; height: 10px; }
QComboBox QAbstractItemView { background: @paper; border: 1px solid @edge; selection-background-color: @tint;
  selection-color: @text; padding: 0; outline: 0; }

QPushButton, QToolButton#word { background: @paper; border: 1px solid @edge; border-radius: 5px; padding: 5px 12px; }
QPushButton:hover, QToolButton#word:hover { background: @tint; }
QPushButton:pressed { background: @sunken; }
QPushButton:focus, QToolButton#word:focus { border: 2px solid @focus; padding: 4px 11px; }
QPushButton#main { background: @grass; color: @on_grass; border: 1px solid @grass; font-weight: 600; }
QPushButton#main:focus { border: 2px solid @text; }
QPushButton:disabled { color: @edge; border-color: @line; background: @ground; }
QPushButton#main:disabled { background: @ground; color: @edge; border: 1px solid @line; }
QPushButton#plain { border: 1px solid transparent; background: transparent; color: @grass; padding: 4px 6px; }
QPushButton#plain:hover { background: @tint; }
QPushButton#plain:focus { border: 2px solid @focus; padding: 3px 5px; }
QToolButton#follow { border: 1px solid @edge; border-radius: 5px; padding: 4px 7px; background: @paper; color: @faint; }
QToolButton#follow:checked { background: @grass; border-color: @grass; color: @on_grass; }
QToolButton#follow::menu-indicator { image: none; }
QToolButton#follow:focus { border: 2px solid @focus; padding: 3px 6px; }
QCheckBox { spacing: 8px; padding: 3px 2px; border: 2px solid transparent; border-radius: 5px; }
QCheckBox:focus { border: 2px solid @focus; }
QCheckBox::indicator { width: 15px; height: 15px; border: 1px solid @edge; border-radius: 4px; background: @paper; }
QCheckBox::indicator:checked { background: @grass; border: 1px solid @grass; image: url(@tick); }

QListView, QTableWidget, QTextBrowser, QTreeView { background: @paper; border: none; outline: 0; }
QFrame#boxed, QListView#boxed, QTableWidget#boxed { border: 1px solid @line; border-radius: 6px; }
QListView::item { padding: 6px 8px; border-radius: 5px; }
QListView::item:hover { background: @ground; }
QListView::item:selected { background: @tint; color: @text; }
QListView:focus, QTableWidget:focus, QFrame#boxed:focus, QListView#boxed:focus, QTableWidget#boxed:focus {
  border: 2px solid @focus; border-radius: 6px; }
QTextBrowser:focus { border: 2px solid @focus; }
QTextBrowser { border: 2px solid transparent; }
QTableWidget { gridline-color: @line; selection-background-color: @tint; selection-color: @text; }
QHeaderView::section { background: @ground; color: @faint; border: none; border-bottom: 1px solid @line; padding: 4px 6px; }
QTableCornerButton::section { background: @ground; border: none; }

QFrame#bar { background: @sunken; border-bottom: 1px solid @line; }
QFrame#foot { background: @ground; border-top: 1px solid @line; }
QFrame#sheetbar { background: @ground; border-top: 1px solid @line; }
QFrame#overlay { background: @paper; border: 1px solid @edge; border-radius: 10px; }
QFrame#way { background: @paper; border: 1px solid @line; border-radius: 8px; padding: 1px; }
QFrame#way:hover { background: @tint; }
QFrame#way[chosen="true"] { border: 2px solid @grass; padding: 0; }
QFrame#way:focus { border: 2px solid @focus; padding: 0; }
QFrame#way QPushButton { padding: 3px 10px; }
QFrame#card { background: @paper; border: 1px solid @line; border-radius: 10px; }

QScrollBar:vertical { background: transparent; width: 11px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 11px; margin: 0; }
QScrollBar::handle { background: @edge; border-radius: 3px; border: 0; margin: 2px; }
QScrollBar::handle:vertical { min-height: 28px; }
QScrollBar::handle:horizontal { min-width: 28px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QSplitter::handle { background: @line; }
QSplitter::handle:horizontal { width: 1px; }
)";

}  // namespace

double contrast(const QColor& a, const QColor& b) {
  const double one = luminance(a) + 0.05, two = luminance(b) + 0.05;
  return one > two ? one / two : two / one;
}

// Qt 6.4 does not say; what the platform made of its own palette does.
bool system_is_dark() {
  static const bool dark = [] {
    const QPalette p;
    return p.color(QPalette::Window).lightnessF() < p.color(QPalette::WindowText).lightnessF();
  }();
  return dark;
}

QString style_sheet(const Theme& t) {
  have_resources();  // the pictures it names
  QString sheet = QString::fromLatin1(kSheet);
  // Longer names first where one begins another.
  const std::pair<const char*, QColor> roles[] = {
      {"@paper", t.paper}, {"@ground", t.ground},  {"@sunken", t.sunken}, {"@line", t.line},
      {"@edge", t.edge},   {"@text", t.text},      {"@faint", t.faint},   {"@on_grass", t.on_grass},
      {"@grass", t.grass}, {"@tint", t.tint},      {"@focus", t.focus},   {"@error", t.error},
      {"@hint", t.hint},   {"@warning", t.warning}};
  for (const auto& [role, colour] : roles) sheet.replace(QLatin1String(role), colour.name());
  sheet.replace("@down", t.dark ? ":/underlawn/down-dark.svg" : ":/underlawn/down-light.svg");
  sheet.replace("@tick", t.dark ? ":/underlawn/tick-dark.svg" : ":/underlawn/tick-light.svg");
  return sheet;
}

void apply_theme(QApplication& application, const Theme& theme) {
  system_is_dark();  // asked before our own palette covers the answer
  application.setStyle(QStyleFactory::create("Fusion"));
  application.setPalette(palette_of(theme));
  QFont font("Inter");
  font.setPixelSize(13);
  application.setFont(font);
  application.setStyleSheet(style_sheet(theme));
}

}  // namespace underlawn
