// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/actions.h"

#include <QAction>
#include <QMenu>
#include <QMenuBar>
#include <QToolButton>

#include "window/icons.h"
#include "window/theme_now.h"
#include "window/tool_strip.h"

namespace underlawn {

namespace {

QString menu_title(CommandGroup group) {
  switch (group) {
    case CommandGroup::file:
      return Actions::tr("&Plan");
    case CommandGroup::edit:
      return Actions::tr("&Edit");
    case CommandGroup::draw:
      return Actions::tr("&Draw");
    case CommandGroup::view:
      return Actions::tr("&View");
    case CommandGroup::panel:
      return Actions::tr("P&anels");
    case CommandGroup::help:
      return Actions::tr("&Help");
  }
  return {};
}

// Keys as they are engraved and as our own texts name them; QKeySequence says the others by Qt's catalogue.
[[maybe_unused]] constexpr const char* kKeyNames[] = {QT_TR_NOOP("Ctrl"), QT_TR_NOOP("Shift"),
                                                      QT_TR_NOOP("Del")};

}  // namespace

QString key_words(const Command& command) {
  return QKeySequence::fromString(QString::fromUtf8(command.shortcut), QKeySequence::PortableText)
      .toString(QKeySequence::NativeText);
}

Actions::Actions(QWidget* window) : QObject(window) {
  for (const Command& command : commands()) add(command, window);
  tint();
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &Actions::tint);
}

void Actions::add(const Command& command, QWidget* window) {
  auto* action = new QAction(title_of(command), window);
  const QString key = key_words(command);
  const QString title = title_of(command);
  action->setObjectName(QString::fromUtf8(command.id));
  action->setShortcut(
      QKeySequence::fromString(QString::fromUtf8(command.shortcut), QKeySequence::PortableText));
  action->setToolTip(QString("<b>%1</b>%2<br>%3")
                         .arg(title.toHtmlEscaped(),
                              key.isEmpty() ? QString() : QString("&nbsp;&nbsp; %1").arg(key.toHtmlEscaped()),
                              help_of(command).toHtmlEscaped()));
  action->setStatusTip(help_of(command));
  action->setCheckable(command.toggles);
  if (!command.set.empty()) {
    QActionGroup*& set = sets_[std::string(command.set)];
    if (set == nullptr) set = new QActionGroup(this);
    set->addAction(action);
  }
  connect(action, &QAction::triggered, this, [this, id = std::string(command.id)](bool on) {
    if (const auto run = runs_.find(id); run != runs_.end()) run->second(on);
  });
  window->addAction(action);
  actions_[std::string(command.id)] = action;
}

QAction* Actions::action(std::string_view id) const {
  const auto at = actions_.find(id);
  Q_ASSERT(at != actions_.end());
  return at->second;
}

void Actions::on(std::string_view id, std::function<void(bool)> run) {
  Q_ASSERT(actions_.contains(id));
  runs_[std::string(id)] = std::move(run);
}

void Actions::tint() {
  for (const Command& command : commands())
    if (!command.icon.empty())
      action(command.id)->setIcon(icon(command.icon, theme_now().text, theme_now().on_grass));
}

void Actions::fill_menus(QMenuBar* bar) const {
  for (const CommandGroup group : kCommandGroups) {
    QMenu* menu = bar->addMenu(menu_title(group));
    for (const Command& command : commands()) {
      if (command.group != group) continue;
      if (command.starts_part) menu->addSeparator();
      QAction* entry = action(command.id);
      // A checked icon is drawn in the colour that is read on grass; in a menu the tick says it.
      if (command.toggles) entry->setIconVisibleInMenu(false);
      menu->addAction(entry);
    }
  }
}

QToolButton* Actions::make_button(std::string_view id) const {
  auto* button = new QToolButton;
  button->setDefaultAction(action(id));
  button->setIconSize({22, 22});
  button->setFocusPolicy(Qt::TabFocus);
  button->setAccessibleName(title_of(*find_command(id)));
  return button;
}

QWidget* Actions::make_tool_strip() const {
  auto* strip = new ToolStrip;
  for (const Command& command : commands()) {
    if (command.group != CommandGroup::draw) continue;
    if (command.starts_part) strip->begin_part();
    strip->add(make_button(command.id));
  }
  for (const char* id : {"edit.undo", "edit.redo", "view.fit", "help.find"})
    strip->add_below(make_button(id));
  return strip;
}

}  // namespace underlawn
