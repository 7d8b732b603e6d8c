// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/form.h"
#include "window/size_service.h"

class QPushButton;
class QVBoxLayout;

namespace underlawn {

class WorkBox;

// How large the loop has to be: found on demand, beside other ways to the same end, each of which can be
// taken.
class SizePanel : public Form {
  Q_OBJECT

 public:
  explicit SizePanel(Document& document, QWidget* parent = nullptr);

  void start();  // sizes the plan as it stands; nothing while one is being sized
  SizeService& service() { return service_; }

 private:
  void build();
  void show_answer();
  void show_age();
  void add_sizes(const SizeAnswer& answer, QVBoxLayout& into);
  void add_size(const QString& name, const FieldSize& size, const Wishes* wishes, QVBoxLayout& into);
  void take(const Wishes& wishes);
  bool earlier() const;  // what is shown is of another plan than the document's

  Document& document_;
  SizeService service_;
  QComboBox* draws_;
  WorkBox* work_;
  QVBoxLayout* home_;         // of what was found
  QWidget* found_ = nullptr;  // made anew with each answer
  std::vector<QPushButton*> takers_;
};

}  // namespace underlawn
