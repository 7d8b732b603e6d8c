// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/as_built_panel.h"

#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QPushButton>

#include "base/say.h"
#include "exchange/export_as_built.h"
#include "files/atomic_file.h"
#include "pipe/pipe_size.h"
#include "plan/record/taped_text.h"
#include "plan/record/taping.h"
#include "window/as_built_words.h"
#include "window/cells_table.h"
#include "window/maybe_field.h"
#include "window/mend_list.h"
#include "window/photo_list.h"
#include "window/record_lines.h"
#include "window/theme_now.h"

namespace underlawn {

AsBuiltPanel::AsBuiltPanel(Document& document, QWidget* parent)
    : Form(document, parent),
      document_(document),
      which_(choice_box({})),
      found_(new Facts),
      holds_(new Facts),
      changes_(new Facts),
      remarks_(new RecordLines(tr("What cannot be used"))),
      findings_(new RecordLines(tr("Not as the plan asks"))),
      mend_lines_(new MendList(tr("What would mend it"))),
      photos_(new PhotoList(document)),
      export_(new QPushButton(tr("Save the as-built…"))),
      which_leg_(choice_box({})),
      solver_(std::make_shared<LaidSolver>()) {
  on_refresh([this] { settle_trench(); });  // before the fields show what is recorded of it
  add_head();
  add_answer();
  add_trench();
  add_lines();
  add_crossings();
  section(tr("Photos"));
  wide(photos_);
  on_refresh([this] { photos_->refresh(); });
  words_row(
      *this, tr("Note"), [](Plan& p) { return &p.as_built.note; }, tr("Note on the as-built"));
  add_mends();
  wide(export_);
  connect(export_, &QPushButton::clicked, this, &AsBuiltPanel::ask_export);
  connect(mend_lines_, &MendList::taken, this, &AsBuiltPanel::take_mend);
  connect(&document, &Document::replaced, this, [this] {  // nothing is left of what was looked at before
    chosen_ = false;
    leg_ = 0;
    refresh_when_seen();
  });
  end();
  on_refresh([this] {
    show_choices();
    ask_anew();
    show_answer();
  });
  follow_outcome();
  connect(&document, &Document::outcome_changed, this, [this] {
    if (!isVisible()) ask_anew();  // whether it holds is said above the panels too
  });
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &Form::refresh_when_seen);
  refresh();
}

AsBuiltPanel::~AsBuiltPanel() {
  stop_.request_stop();
}

void AsBuiltPanel::add_head() {
  section(tr("As built"));
  note([](const Plan&) {
    return tr(
        "What was really dug, before it is filled in: what is left empty is as planned. Tape every point "
        "from two house corners; a third tape checks it. Corners are lettered on the dig sheet.");
  });
  words_row(
      *this, tr("Measured by"), [](Plan& p) { return &p.as_built.measured_by; }, tr("Measured by"));
  moment_row(
      *this, document_, tr("on"), [](Plan& p) { return &p.as_built.measured_on; }, tr("Day of measuring"));
}

void AsBuiltPanel::add_answer() {
  section(tr("Does it still hold?"));
  holds_->setAccessibleName(tr("What it holds, planned and as built"));
  wide(holds_);
  wide(findings_);
  wide(remarks_);
}

void AsBuiltPanel::add_mends() {
  section(tr("What would mend it"));
  wide(mend_lines_);
  section(tr("Planned and as built"));
  changes_->setAccessibleName(tr("Planned and as built, side by side"));
  wide(changes_);
}

std::function<std::string*(Plan&)> AsBuiltPanel::trench_text(std::string BuiltTrench::*field) const {
  return [this, field](Plan& p) { return number_ > 0 ? &(said_of(p, number_).*field) : nullptr; };
}

Form::Bound<std::optional<double>> AsBuiltPanel::of_trench(std::optional<double> BuiltTrench::*field,
                                                           const QString& what) const {
  return {[this, field](const Plan& p) {
            const BuiltTrench* t = find_said(p, number_);
            return t == nullptr ? std::nullopt : t->*field;
          },
          [this, field](Plan& p, std::optional<double> v) {
            if (number_ > 0) said_of(p, number_).*field = v;
          },
          tr("As built: %1").arg(what)};
}

void AsBuiltPanel::add_trench() {
  section(tr("Trench by trench"));
  row(tr("Trench"), which_);
  connect(which_, &QComboBox::activated, this, [this](int i) { choose_trench(which_->itemData(i).toInt()); });
  const auto maybe = [this](const QString& label, std::optional<double> BuiltTrench::*field) {
    return maybe_number(*this, document_, label, Quantity::length, of_trench(field, label));
  };
  choice(tr("It was"), {tr("Dug"), tr("Left out"), tr("Added")},
         {[this](const Plan& p) {
            const BuiltTrench* t = find_said(p, number_);
            return t == nullptr ? 0 : static_cast<int>(t->fate);
          },
          [this](Plan& p, int v) {
            if (number_ > 0) said_of(p, number_).fate = static_cast<TrenchFate>(v);
          },
          tr("As built: fate of a trench")});
  maybe(tr("Length dug"), &BuiltTrench::length)->edit()->setPlaceholderText(tr("as planned"));
  choice(tr("Stopped by"),
         {tr("Nothing"), tr("Rock"), tr("Water"), tr("Roots"), tr("A utility"), tr("Caving sides"),
          tr("Something else")},
         {[this](const Plan& p) {
            const BuiltTrench* t = find_said(p, number_);
            return t == nullptr ? 0 : static_cast<int>(t->stopped_by);
          },
          [this](Plan& p, int v) {
            if (number_ > 0) said_of(p, number_).stopped_by = static_cast<StopCause>(v);
          },
          tr("As built: what stopped a trench")});
  add_place(tr("Head, taped"), &BuiltTrench::head);
  add_place(tr("End, taped"), &BuiltTrench::end);
  found_->setAccessibleName(tr("Where the tapes put it"));
  wide(found_);
  maybe(tr("Depth at the head"), &BuiltTrench::depth)->edit()->setPlaceholderText(tr("as planned"));
  maybe(tr("Depth at the end"), &BuiltTrench::end_depth)->edit()->setPlaceholderText(tr("as at the head"));
  maybe(tr("Pipe laid"), &BuiltTrench::pipe)->edit()->setPlaceholderText(tr("as the pitch makes it"));
  maybe(tr("Pitch laid"), &BuiltTrench::pitch)->edit()->setPlaceholderText(tr("as planned"));
  moment_row(*this, document_, tr("Dug on"), trench_text(&BuiltTrench::dug_on), tr("Day of digging"));
  moment_row(*this, document_, tr("Filled in on"), trench_text(&BuiltTrench::filled_on),
             tr("Time of filling in"));
  words_row(*this, tr("Note"), trench_text(&BuiltTrench::note), tr("Note on a trench"));
  auto* add = new QPushButton(tr("Add a trench that was not planned"));
  wide(add);
  connect(add, &QPushButton::clicked, this, [this] {
    Plan plan = document_.committed();
    const int number = next_trench(plan, document_.outcome());
    said_of(plan, number).fate = TrenchFate::added;
    number_ = number;
    chosen_ = true;
    document_.commit(std::move(plan), tr("A trench added as built"));
    refresh();
  });
}

// Where that end of the trench was planned; nothing where it was not.
Polyline AsBuiltPanel::planned_end(int number, std::optional<BuiltPoint> BuiltTrench::*field) const {
  if (document_.outcome() == nullptr) return {};
  for (const Trench& t : document_.outcome()->layout.trenches)
    if (t.number == number) return {field == &BuiltTrench::head ? t.head : t.end};
  return {};
}

// What the tapes put nowhere is refused under the field with value and bound, and nothing typed is lost.
void AsBuiltPanel::add_place(const QString& label, std::optional<BuiltPoint> BuiltTrench::*field) {
  TypedField* place = text(label, {[this, field](const Plan& p) {
                                     const BuiltTrench* t = find_said(p, number_);
                                     return t == nullptr || !(t->*field)
                                                ? QString()
                                                : QString::fromStdString(print_taped(*(t->*field), p.units));
                                   },
                                   [](Plan&, const QString&) {}, label});
  const bool us = document_.plan().units == UnitSystem::us;
  place->edit()->setPlaceholderText(us ? tr("A 45'-3\", B 31'-6\"") : tr("A 13.79; B 9.60"));
  place->edit()->setToolTip(
      tr("Corner and distance, corner and distance; a third one checks; left or right of the line from the "
         "first corner to the second"));
  place->set_taker([this, field, label](const QString& typed) {
    Plan plan = document_.committed();
    if (number_ <= 0) return QString();
    const auto point = taped_from_text(typed.toStdString(), plan.units, label.toStdString());
    if (!point) return QString::fromStdString(point.error().message());
    std::optional<BuiltPoint> taken;
    if (!point->tapes.empty()) {
      taken = says_side(typed.toStdString())
                  ? *point
                  : on_likely_side(house_corners(plan.site), *point, planned_end(number_, field));
      const auto found =
          place_of(house_corners(plan.site), *taken, label.toLower().toStdString(), plan.units);
      if (!found) return QString::fromStdString(found.error().message());
    }
    said_of(plan, number_).*field = taken;
    document_.commit(std::move(plan), tr("As built: %1").arg(label));
    return QString();
  });
}

void AsBuiltPanel::add_lines() {
  section(tr("Header and run"));
  const auto maybe = [this](const QString& label, std::optional<double> AsBuilt::*field) {
    maybe_number(
        *this, document_, label, Quantity::length,
        {[field](const Plan& p) { return p.as_built.*field; },
         [field](Plan& p, std::optional<double> v) { p.as_built.*field = v; }, tr("As built: %1").arg(label)})
        ->edit()
        ->setPlaceholderText(tr("as planned"));
  };
  maybe(tr("Depth of the run"), &AsBuilt::run_depth);
  maybe(tr("Depth of the header, all legs"), &AsBuilt::header_depth);
  QStringList sizes{tr("as planned")};
  for (const PipeSize& s : pipe_sizes()) sizes << QString::fromStdString(s.name);
  const auto pipe = [&](const QString& label, std::string AsBuilt::*field) {
    choice(label, sizes,
           {[field](const Plan& p) {
              const auto& all = pipe_sizes();
              const auto at = std::ranges::find(all, p.as_built.*field, &PipeSize::name);
              return at == all.end() ? 0 : 1 + static_cast<int>(at - all.begin());
            },
            [field](Plan& p, int i) {
              p.as_built.*field = i <= 0 ? std::string() : pipe_sizes()[static_cast<std::size_t>(i - 1)].name;
            },
            tr("As built: %1").arg(label)});
  };
  pipe(tr("Pipe of the run"), &AsBuilt::run_pipe);
  pipe(tr("Pipe of the header"), &AsBuilt::header_pipe);
  add_taped_line(*this, document_, tr("Run, point by point"), tr("from the house on, | between points"),
                 [](Plan& p) { return &p.as_built.run; });
  add_legs();
}

// Depth and points of one leg of the header at a time.
void AsBuiltPanel::add_legs() {
  const auto leg = [this](Plan& p) {
    if (p.as_built.header.size() <= leg_) p.as_built.header.resize(leg_ + 1);
    return &p.as_built.header[leg_];
  };
  row(tr("Leg of the header"), which_leg_);
  connect(which_leg_, &QComboBox::activated, this, [this](int i) {
    leg_ = static_cast<std::size_t>(std::max(0, i));
    refresh();
  });
  maybe_number(*this, document_, tr("Depth of this leg"), Quantity::length,
               {[this](const Plan& p) {
                  return leg_ < p.as_built.header.size() ? p.as_built.header[leg_].depth : std::nullopt;
                },
                [leg](Plan& p, std::optional<double> v) {
                  leg(p)->depth = v;
                  drop_idle_legs(p.as_built);
                },
                tr("As built: %1").arg(tr("Depth of this leg"))})
      ->edit()
      ->setPlaceholderText(tr("as all legs"));
  add_taped_line(*this, document_, tr("Leg, point by point"), tr("| between points"),
                 [leg](Plan& p) { return &leg(p)->points; });
  on_refresh([this] {
    const Outcome* outcome = document_.outcome();
    const std::size_t planned = outcome == nullptr ? 0 : outcome->layout.header.legs.size();
    const std::size_t all = std::max({std::size_t{1}, planned, document_.plan().as_built.header.size()});
    leg_ = std::min(leg_, all - 1);
    which_leg_->clear();
    for (std::size_t i = 0; i < all; ++i)
      which_leg_->addItem(i < planned ? tr("%1, planned %2")
                                            .arg(i + 1)
                                            .arg(QString::fromStdString(print_quantity(
                                                Quantity::length, length(outcome->layout.header.legs[i]),
                                                document_.plan().units)))
                                      : tr("%1, not planned").arg(i + 1));
    which_leg_->setCurrentIndex(static_cast<int>(leg_));
  });
}

void AsBuiltPanel::add_crossings() {
  section(tr("Utilities and other things met"));
  CellsTable::Of of;
  of.what = tr("Things met");
  CellsTable::Column what;
  what.head = tr("What");
  what.get_text = [](const Plan& p, std::size_t i) { return name_of(p, p.as_built.crossings[i]); };
  what.set_text = [](Plan& p, std::size_t i, std::string text) {
    if (p.as_built.crossings[i].feature_id == 0) p.as_built.crossings[i].name = std::move(text);
  };
  of.columns.push_back(std::move(what));
  const auto depth = [&of](const QString& head, std::optional<double> BuiltCrossing::*field) {
    CellsTable::Column c;
    c.head = head;
    c.quantity = Quantity::length;
    c.high = 20;
    c.get = [field](const Plan& p, std::size_t i) { return (p.as_built.crossings[i].*field).value_or(0); };
    c.set = [field](Plan& p, std::size_t i, double v) {
      (p.as_built.crossings[i].*field).reset();
      if (v > 0) p.as_built.crossings[i].*field = v;
    };
    of.columns.push_back(std::move(c));
  };
  depth(tr("Its depth"), &BuiltCrossing::depth);
  depth(tr("Our pipe"), &BuiltCrossing::pipe_depth);
  of.rows = [](const Plan& p) { return p.as_built.crossings.size(); };
  of.add = [](Plan& p) { p.as_built.crossings.push_back({0, say("unknown line"), {}, {}, {}, {}, ""}); };
  of.remove = [](Plan& p, std::size_t i) {
    p.as_built.crossings.erase(p.as_built.crossings.begin() + static_cast<std::ptrdiff_t>(i));
  };
  auto* table = new CellsTable(document_, std::move(of));
  wide(table);
  on_refresh([table] { table->refresh(); });
  note([](const Plan&) {
    return tr(
        "Depths as measured, from the ground to the top; 0: not measured. A line that nobody knew of: "
        "stop, and call the utility before going on.");
  });
  auto* all = new QPushButton(tr("List the crossings of the plan"));
  wide(all);
  connect(all, &QPushButton::clicked, this, &AsBuiltPanel::fill_crossings);
}

void AsBuiltPanel::fill_crossings() {
  if (document_.outcome() == nullptr) return;
  Plan plan = document_.committed();
  for (const Crossing& c : document_.outcome()->layout.crossings) {
    const bool there = std::ranges::any_of(
        plan.as_built.crossings, [&](const BuiltCrossing& b) { return b.feature_id == c.feature_id; });
    if (!there) plan.as_built.crossings.push_back({c.feature_id, "", {}, {}, {}, {}, ""});
  }
  document_.commit(std::move(plan), tr("Crossings of the plan"));
  refresh();
}

void AsBuiltPanel::choose_trench(int number) {
  number_ = number;
  chosen_ = true;
  refresh();
}

void AsBuiltPanel::settle_trench() {
  const std::vector<int> numbers = trench_numbers(document_.plan(), document_.outcome());
  if (!chosen_ || std::ranges::find(numbers, number_) == numbers.end())
    number_ = numbers.empty() ? 0 : numbers.front();
}

void AsBuiltPanel::show_choices() {
  const Plan& plan = document_.plan();
  const std::vector<int> numbers = trench_numbers(plan, document_.outcome());
  photos_->set_trench(number_);
  which_->clear();
  for (int n : numbers) {
    const BuiltTrench* said = find_said(plan, n);
    BuiltTrench idle;
    idle.number = n;
    const bool own = said != nullptr && *said != idle;
    which_->addItem(own ? tr("%1, recorded").arg(n) : tr("%1, as planned").arg(n), n);
    if (n == number_) which_->setCurrentIndex(which_->count() - 1);
  }
  show_found();
}

void AsBuiltPanel::show_found() {
  std::vector<Fact> facts;
  if (built_ != nullptr)
    for (const BuiltPlace& p : built_->loop.places)
      if (p.trench == number_) add_place_facts(facts, p, document_.plan());
  found_->show_facts(facts);
}

// ---- solving ----

namespace {

// The plan without what no answer follows from: words, moments, photos, the record.
Plan without_words(Plan plan) {
  AsBuilt& b = plan.as_built;
  b.measured_by = b.measured_on = b.note = "";
  b.photos.clear();
  for (BuiltTrench& t : b.trenches) t.dug_on = t.filled_on = t.note = "";
  FillRecord fill;  // of the record all but the fluid that was read
  fill.freezing_point = plan.record.fill.freezing_point;
  plan.record = {};
  plan.record.fill = fill;
  return plan;
}

}  // namespace

void AsBuiltPanel::ask_anew() {
  const Outcome* outcome = document_.outcome();
  const Plan& plan = document_.plan();
  if (!anything_built(plan) || outcome == nullptr || outcome->layout.trenches.empty()) {
    stop_.request_stop();
    asked_.reset();
    built_.reset();
    mends_.reset();
    emit answer_changed();
    return;
  }
  if (document_.stale()) return;
  if (asked_ && asked_of_ == outcome->fingerprint && without_words(*asked_) == without_words(plan)) return;
  stop_.request_stop();
  stop_ = {};
  asked_ = plan;
  asked_of_ = outcome->fingerprint;
  const auto planned = std::make_shared<const Outcome>(*outcome);
  working_out_.start(
      [plan, planned, solver = solver_, stop = stop_.get_token()]() -> Result<Solved> {
        return Solved{std::make_shared<const AsBuiltAnswer>(solve_as_built(plan, *planned, *solver, stop)),
                      nullptr};
      },
      [this, stop = stop_.get_token()](Result<Solved> made) {
        if (!made || stop.stop_requested()) return;
        built_ = made->built;
        mends_.reset();
        find_mends_of(built_);
        show_answer();
        show_found();
        emit answer_changed();
        emit shown_changed();
      });
}

void AsBuiltPanel::find_mends_of(std::shared_ptr<const AsBuiltAnswer> built) {
  if (all_hold(built->holds) || !asked_ || !isVisible()) return;
  const auto planned = std::make_shared<const Outcome>(*document_.outcome());
  working_out_.start(
      [plan = *asked_, planned, built, solver = solver_, stop = stop_.get_token()]() -> Result<Solved> {
        return Solved{built, std::make_shared<Mends>(find_mends(plan, *planned, *built, *solver, {}, stop))};
      },
      [this, stop = stop_.get_token()](Result<Solved> made) {
        if (!made || stop.stop_requested() || made->built != built_) return;
        mends_ = *made->mends;
        show_answer();
      });
}

void AsBuiltPanel::show_answer() {
  const Plan& plan = document_.plan();
  export_->setEnabled(built_ != nullptr);
  std::vector<RecordLine> remarks;
  if (built_ != nullptr)
    for (const Trouble& t : built_->loop.remarks)
      remarks.push_back({t.code, Tone::bad, t.thing, t.message(), ""});
  remarks_->show_lines(remarks);
  findings_->show_lines(built_ == nullptr ? std::vector<RecordLine>() : finding_rows(built_->findings, plan));
  if (built_ == nullptr) {
    holds_->show_facts(
        {{!anything_built(plan) ? tr("Nothing is recorded yet: as planned.") : tr("Working it out …"), {}}});
    changes_->show_facts({});
    return mend_lines_->show_mends({}, nullptr);
  }
  holds_->show_table(hold_rows(built_->holds, plan));
  changes_->show_table(change_rows(built_->changes, plan));
  show_mends();
}

void AsBuiltPanel::show_mends() {
  const Plan& plan = document_.plan();
  if (all_hold(built_->holds))
    return mend_lines_->show_mends(
        {{"holds", Tone::good, tr("As built, the loop holds").toStdString(),
          built_->findings.empty() ? tr("Everything the plan asks for.").toStdString()
                                   : tr("Its heat and its flow; what lies elsewhere is above.").toStdString(),
          ""}},
        nullptr);
  if (!mends_)
    return mend_lines_->show_mends({{"busy", Tone::open, tr("What would mend it").toStdString(),
                                     tr("Working it out …").toStdString(), ""}},
                                   nullptr);
  mend_lines_->show_mends(mend_rows(*mends_, plan), &*mends_);
}

void AsBuiltPanel::take_mend(std::size_t at) {
  if (!mends_ || at >= mends_->all.size() || !mends_->all[at].take) return;
  Plan plan = document_.committed();
  mends_->all[at].take(plan);
  const bool trench = !mends_->all[at].trenches.empty();
  if (trench) number_ = mends_->all[at].trenches.front();
  chosen_ |= trench;
  document_.commit(std::move(plan), tr("A mend of the as-built"));
  refresh();
}

// ---- what is shown and written ----

std::shared_ptr<const Outcome> AsBuiltPanel::shown() const {
  return isVisible() && built_ != nullptr ? built_->outcome : nullptr;
}

void AsBuiltPanel::hideEvent(QHideEvent* event) {
  Form::hideEvent(event);
  emit shown_changed();
}

void AsBuiltPanel::showEvent(QShowEvent* event) {
  Form::showEvent(event);
  if (built_ != nullptr && !mends_ && !working_out_.busy()) find_mends_of(built_);
  emit shown_changed();
}

QString AsBuiltPanel::export_to(const QString& path) {
  if (built_ == nullptr || document_.outcome() == nullptr) return tr("Nothing is worked out yet.");
  const auto bytes = as_built_file(QFileInfo(path).suffix().toLower().toStdString(), document_.plan(),
                                   *document_.outcome(), *built_);
  if (!bytes) return QString::fromStdString(bytes.error().message());
  const auto done = write_file(path.toStdString(), *bytes);
  return done ? QString() : QString::fromStdString(done.error().message());
}

void AsBuiltPanel::ask_export() {
  struct Kind {
    QString filter, ending;
  };
  const Kind kinds[] = {{tr("Drawing, DXF (*.dxf)"), ".dxf"},
                        {tr("Map, GeoJSON (*.geojson)"), ".geojson"},
                        {tr("Map, GeoPackage (*.gpkg)"), ".gpkg"},
                        {tr("Table, CSV (*.csv)"), ".csv"}};
  QStringList filters;
  for (const Kind& kind : kinds) filters << kind.filter;
  QString chosen;
  QString path = QFileDialog::getSaveFileName(this, tr("Save the as-built"), {}, filters.join(";;"), &chosen);
  if (path.isEmpty()) return;
  for (const Kind& kind : kinds)
    if (kind.filter == chosen && QFileInfo(path).suffix().isEmpty()) path += kind.ending;
  const QString wrong = export_to(path);
  export_->setToolTip(wrong.isEmpty() ? tr("Written to %1").arg(path) : wrong);
  export_->setText(wrong.isEmpty() ? tr("Saved. Save again…") : wrong);
}

}  // namespace underlawn
