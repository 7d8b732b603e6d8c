// SPDX-License-Identifier: GPL-3.0-or-later
// Every text that a window shows or would show: labels, fields, lists, tables, menus, tips, names for screen
// readers.
#pragma once

#include <QSet>
#include <QString>
#include <QStringList>
#include <QWidget>
#include <functional>

namespace underlawn {

class WindowTexts {
 public:
  using Take = std::function<void(const QString& text, const QString& where)>;
  explicit WindowTexts(Take take) : take_(std::move(take)) {}

  // The widget and all in it, shown now or not, but for what `leave_out` names; a text is taken once.
  void read(QWidget* widget, const std::function<bool(const QWidget*)>& leave_out);
  void read(const QString& text, const QString& where);

 private:
  void read_one(QWidget* widget);
  void read_field(QWidget* widget, const QString& where);
  void read_list(QWidget* widget, const QString& where);
  void read_table(QWidget* widget, const QString& where);
  void read_menu(QWidget* widget, const QString& where);

  Take take_;
  QSet<QString> seen_;
};

}  // namespace underlawn
