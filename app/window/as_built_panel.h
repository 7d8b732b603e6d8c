// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <stop_token>

#include "plan/record/as_built_mends.h"
#include "window/background.h"
#include "window/facts.h"
#include "window/form.h"

class QComboBox;
class QPushButton;

namespace underlawn {

class CellsTable;
class PhotoList;
class MendList;
class RecordLines;

// What was really dug: trench by trench, by tapes from house corners; solved again by itself, and what would
// mend it.
class AsBuiltPanel : public Form {
  Q_OBJECT

 public:
  explicit AsBuiltPanel(Document& document, QWidget* parent = nullptr);
  ~AsBuiltPanel() override;

  // What the loop is as built, to be drawn instead of the plan's; null while the page is not looked at,
  // nothing is recorded or it is not worked out yet.
  std::shared_ptr<const Outcome> shown() const;
  const Mends* mends() const { return mends_ ? &*mends_ : nullptr; }
  const AsBuiltAnswer* answer() const { return built_.get(); }
  bool at_work() const { return working_out_.busy(); }
  RecordLines* findings() const { return findings_; }
  void take_mend(std::size_t at);  // one entry of the history
  void choose_trench(int number);
  int trench() const { return number_; }
  // CSV, DXF, GeoJSON or GeoPackage, by the file's ending. What is wrong; empty when it was written.
  QString export_to(const QString& path);

 signals:
  void shown_changed();
  void answer_changed();

 protected:
  void hideEvent(QHideEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  struct Solved {
    std::shared_ptr<const AsBuiltAnswer> built;
    std::shared_ptr<Mends> mends;  // null: still to be found
  };

  void add_head();
  void add_trench();
  void add_place(const QString& label, std::optional<BuiltPoint> BuiltTrench::*field);
  Polyline planned_end(int number, std::optional<BuiltPoint> BuiltTrench::*field) const;
  void add_lines();
  void add_legs();
  void add_crossings();
  void add_answer();
  void add_mends();
  void settle_trench();
  void show_choices();
  void show_found();
  void ask_anew();
  void find_mends_of(std::shared_ptr<const AsBuiltAnswer> built);
  void show_answer();
  void show_holds();
  void show_mends();
  void fill_crossings();
  void ask_export();
  std::function<std::string*(Plan&)> trench_text(std::string BuiltTrench::*field) const;
  Bound<std::optional<double>> of_trench(std::optional<double> BuiltTrench::*field,
                                         const QString& what) const;

  Document& document_;
  QComboBox* which_;
  Facts *found_, *holds_, *changes_;
  RecordLines *remarks_, *findings_;
  MendList* mend_lines_;
  PhotoList* photos_;
  QPushButton* export_;
  int number_ = 0;       // of the trench whose fields are shown; 0: none yet
  bool chosen_ = false;  // by somebody; else it is the first
  QComboBox* which_leg_;
  std::size_t leg_ = 0;  // of the header, whose fields are shown
  std::optional<Plan> asked_;
  std::string asked_of_;  // fingerprint of the outcome it was asked with
  std::shared_ptr<const AsBuiltAnswer> built_;
  std::optional<Mends> mends_;
  std::stop_source stop_;
  std::shared_ptr<LaidSolver> solver_;      // used by one piece of work at a time
  Background<Result<Solved>> working_out_;  // last: it ends before what it tells goes
};

}  // namespace underlawn
