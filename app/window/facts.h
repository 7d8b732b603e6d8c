// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <vector>

namespace underlawn {

// Something that follows, and its name. Without a value the name is a sentence of its own.
struct Fact {
  QString name, value;
};

// Names on the left, values on the right; sentences across. Hidden while there is nothing to say.
class Facts : public QLabel {
  Q_OBJECT

 public:
  explicit Facts(QWidget* parent = nullptr);
  void show_facts(const std::vector<Fact>& facts);
  // Rows of cells under a first row of heads.
  void show_table(const std::vector<QStringList>& rows);
  // The value of the first fact of that name; empty where there is none.
  QString value_of(const QString& name) const;

 private:
  void say(const QString& html);

  std::vector<Fact> facts_;
};

}  // namespace underlawn
