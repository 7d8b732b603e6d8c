// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/record_panel.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLayout>
#include <QPushButton>
#include <QRegularExpression>
#include <cmath>

#include "dig/dig_words.h"
#include "flow/test_safety.h"
#include "plan/coil_watch.h"
#include "window/cells_table.h"
#include "window/maybe_field.h"
#include "window/record_lines.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

std::function<std::string*(Plan&)> test_text(std::string TestRecord::*field) {
  return [field](Plan& p) { return &(p.record.test.*field); };
}
std::function<std::string*(Plan&)> fill_text(std::string FillRecord::*field) {
  return [field](Plan& p) { return &(p.record.fill.*field); };
}
Form::Bound<std::optional<double>> of_test(std::optional<double> TestRecord::*field, const QString& what) {
  return {[field](const Plan& p) { return p.record.test.*field; },
          [field](Plan& p, std::optional<double> v) { p.record.test.*field = v; }, what};
}
Form::Bound<std::optional<double>> of_fill(std::optional<double> FillRecord::*field, const QString& what) {
  return {[field](const Plan& p) { return p.record.fill.*field; },
          [field](Plan& p, std::optional<double> v) { p.record.fill.*field = v; }, what};
}

}  // namespace

RecordPanel::RecordPanel(Document& document, QWidget* parent)
    : Form(document, parent),
      document_(document),
      test_(new RecordLines(tr("What the test's record tells"))),
      flush_(new RecordLines(tr("What the flushing tells"))),
      fill_(new RecordLines(tr("What the fill tells"))),
      flush_asked_(new Facts),
      fill_asked_(new Facts) {
  add_test();
  add_flush();
  add_fill();
  add_signatures();
  end();
  on_refresh([this] {
    show_choices();
    judge();
  });
  follow_outcome();
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &Form::refresh_when_seen);
  refresh();
}

void RecordPanel::add_test() {
  section(tr("Pressure test"));
  note([](const Plan&) {
    return tr(
        "Keep people out of the trench while the loop is under pressure, and let it down slowly. Test "
        "with water. Local code and the pipe maker's rules go first. The gauge's readings and their "
        "curve are on the Flow page.");
  });
  note([this](const Plan&) {
    const Outcome* outcome = document_.outcome();
    const std::vector<int> early = outcome == nullptr ? std::vector<int>{} : coils_covered_early(*outcome);
    return early.empty()
               ? QString()
               : tr("Covered before this test: %1. Each such coil is proved alone first; its boxes are "
                    "on the record form.")
                     .arg(QString::fromStdString(trenches_named(early)));
  });
  auto* readings = new QPushButton(tr("The gauge's readings, on the Flow page"));
  readings->setObjectName("plain");
  wide(readings);
  connect(readings, &QPushButton::clicked, this, &RecordPanel::readings_asked);
  moment_row(*this, document_, tr("Pumping began"), test_text(&TestRecord::start), tr("Start of the test"));
  moment_row(*this, document_, tr("Last reading"), test_text(&TestRecord::end), tr("End of the test"));
  choice(tr("Filled with"), {tr("Water"), tr("Air")},
         bound_to<int>(tr("Test medium"), &Plan::record, &JobRecord::test, &TestRecord::medium));
  choice(tr("Result"), {tr("Not said yet"), tr("Passed"), tr("Failed")},
         bound_to<int>(tr("Result of the test"), &Plan::record, &JobRecord::test, &TestRecord::result));
  words_row(*this, tr("Tested by"), test_text(&TestRecord::tester), tr("Tester"));
  words_row(*this, tr("Witnessed by"), test_text(&TestRecord::witness), tr("Witness"));
  words_row(*this, tr("What was tested"), test_text(&TestRecord::part), tr("What was tested"))
      ->edit()
      ->setPlaceholderText(tr("the whole loop"));
  words_row(*this, tr("Gauge"), test_text(&TestRecord::gauge), tr("Gauge"))
      ->edit()
      ->setPlaceholderText(tr("its number"));
  maybe_number(*this, document_, tr("Its full scale"), Quantity::pressure,
               of_test(&TestRecord::gauge_range, tr("Full scale of the gauge")));
  moment_row(*this, document_, tr("Calibrated on"), test_text(&TestRecord::gauge_checked),
             tr("Gauge calibrated"));
  words_row(*this, tr("Weather"), test_text(&TestRecord::weather), tr("Weather"));
  maybe_number(*this, document_, tr("Air temperature"), Quantity::temperature,
               of_test(&TestRecord::air_temperature, tr("Air temperature")));
  moment_row(*this, document_, tr("First joint covered"), test_text(&TestRecord::joints_covered),
             tr("Joints covered"));
  maybe_number(*this, document_, tr("Pressure kept while filling in"), Quantity::pressure,
               of_test(&TestRecord::pressure_while_filling, tr("Pressure while filling in")));
  words_row(*this, tr("Note"), test_text(&TestRecord::note), tr("Note on the test"));
  wide(test_);
}

template <class T>
Form::Bound<T> RecordPanel::of_flush(T FlushReading::*field, const QString& what) const {
  return {[this, field](const Plan& p) {
            return at_ < p.record.flush.size() ? p.record.flush[at_].*field : FlushReading{}.*field;
          },
          [this, field](Plan& p, T v) {
            if (at_ < p.record.flush.size()) p.record.flush[at_].*field = v;
          },
          what};
}

std::function<std::string*(Plan&)> RecordPanel::flush_text(std::string FlushReading::*field) const {
  return [this, field](Plan& p) -> std::string* {
    return at_ < p.record.flush.size() ? &(p.record.flush[at_].*field) : nullptr;
  };
}

void RecordPanel::add_flush() {
  section(tr("Flushing"));
  flush_asked_->setAccessibleName(tr("What flushing asks for"));
  wide(flush_asked_);
  which_ = choice_box({});
  which_->setAccessibleName(tr("Which flushing"));
  connect(which_, &QComboBox::activated, this,
          [this](int i) { choose_flushing(static_cast<std::size_t>(i)); });
  row(tr("Flushing"), which_);
  only_when([](const Plan& p) { return !p.record.flush.empty(); });
  add_flush_fields();
  auto* buttons = new QWidget;
  auto* line = new QHBoxLayout(buttons);
  line->setContentsMargins(0, 0, 0, 0);
  auto* add = new QPushButton(tr("Add a flushing"));
  remove_ = new QPushButton(tr("Remove this one"));
  line->addWidget(add);
  line->addWidget(remove_);
  line->addStretch(1);
  connect(add, &QPushButton::clicked, this, &RecordPanel::add_flushing);
  connect(remove_, &QPushButton::clicked, this, &RecordPanel::remove_flushing);
  wide(buttons);
  wide(flush_);
}

void RecordPanel::add_flush_fields() {
  const auto if_any = [this] { only_when([](const Plan& p) { return !p.record.flush.empty(); }); };
  const auto maybe = [&](const QString& label, Quantity q, std::optional<double> FlushReading::*field) {
    maybe_number(*this, document_, label, q, of_flush(field, tr("Flushing: %1").arg(label)));
    if_any();
  };
  circuits_ = text(tr("Circuits open"),
                   {[this](const Plan& p) {
                      QStringList numbers;
                      if (at_ < p.record.flush.size())
                        for (int n : p.record.flush[at_].open) numbers << QString::number(n);
                      return numbers.join(", ");
                    },
                    [this](Plan& p, const QString& typed) {
                      if (at_ >= p.record.flush.size()) return;
                      std::vector<int>& open = p.record.flush[at_].open;
                      open.clear();
                      for (const QString& n : typed.split(QRegularExpression("[^0-9]+"), Qt::SkipEmptyParts))
                        open.push_back(n.left(4).toInt());
                    },
                    tr("Circuits open")});
  circuits_->edit()->setPlaceholderText(tr("all; or as 1, 3"));
  if_any();
  choice(tr("Way"), {tr("As the loop runs"), tr("Reverse")},
         {[this](const Plan& p) {
            return at_ < p.record.flush.size() ? static_cast<int>(p.record.flush[at_].direction) : 0;
          },
          [this](Plan& p, int v) {
            if (at_ < p.record.flush.size()) p.record.flush[at_].direction = static_cast<FlushDirection>(v);
          },
          tr("Way of flushing")});
  if_any();
  moment_row(*this, document_, tr("Began"), flush_text(&FlushReading::when), tr("Start of flushing"));
  if_any();
  maybe(tr("It ran for"), Quantity::duration, &FlushReading::duration);
  maybe(tr("Flow read"), Quantity::flow, &FlushReading::flow);
  maybe(tr("Pressure drop read"), Quantity::pressure, &FlushReading::pressure_drop);
  maybe(tr("Water"), Quantity::temperature, &FlushReading::temperature);
  choice(tr("Water at the end"), {tr("Not noted"), tr("Clear"), tr("Cloudy"), tr("Dirty")},
         {[this](const Plan& p) {
            return at_ < p.record.flush.size() ? static_cast<int>(p.record.flush[at_].water) : 0;
          },
          [this](Plan& p, int v) {
            if (at_ < p.record.flush.size()) p.record.flush[at_].water = static_cast<WaterSeen>(v);
          },
          tr("Water at the end")});
  if_any();
  maybe(tr("Turbidity, NTU"), Quantity::count, &FlushReading::turbidity);
  choice(tr("Air at the end"), {tr("Not noted"), tr("None"), tr("Bubbles"), tr("Slugs")},
         {[this](const Plan& p) {
            return at_ < p.record.flush.size() ? static_cast<int>(p.record.flush[at_].air) : 0;
          },
          [this](Plan& p, int v) {
            if (at_ < p.record.flush.size()) p.record.flush[at_].air = static_cast<AirSeen>(v);
          },
          tr("Air at the end")});
  if_any();
  words_row(*this, tr("Note"), flush_text(&FlushReading::note), tr("Note on flushing"));
  if_any();
}

void RecordPanel::choose_flushing(std::size_t at) {
  at_ = at;
  refresh();
}

void RecordPanel::add_flushing() {
  Plan plan = document_.committed();
  FlushReading next;
  // The other way round from the last.
  if (!plan.record.flush.empty() && plan.record.flush.back().direction == FlushDirection::forward)
    next.direction = FlushDirection::reverse;
  plan.record.flush.push_back(next);
  at_ = plan.record.flush.size() - 1;
  document_.commit(std::move(plan), tr("A flushing"));
  refresh();
  circuits_->edit()->setFocus();
}

void RecordPanel::remove_flushing() {
  Plan plan = document_.committed();
  if (at_ >= plan.record.flush.size()) return;
  plan.record.flush.erase(plan.record.flush.begin() + static_cast<std::ptrdiff_t>(at_));
  if (at_ > 0 && at_ >= plan.record.flush.size()) --at_;
  document_.commit(std::move(plan), tr("A flushing removed"));
  refresh();
}

void RecordPanel::show_choices() {
  const auto& all = document_.plan().record.flush;
  if (at_ >= all.size()) at_ = all.empty() ? 0 : all.size() - 1;
  QStringList names;
  for (std::size_t i = 0; i < all.size(); ++i)
    names << (all[i].direction == FlushDirection::forward ? tr("%1, as the loop runs") : tr("%1, reverse"))
                 .arg(i + 1);
  which_->clear();
  which_->addItems(names);
  which_->setCurrentIndex(static_cast<int>(at_));
  remove_->setEnabled(!all.empty());
}

void RecordPanel::add_fill() {
  section(tr("Fill"));
  note([](const Plan& p) { return QString::fromUtf8(fluid_caution(p.flow.fluid)); });
  fill_asked_->setAccessibleName(tr("What the fill asks for"));
  wide(fill_asked_);
  moment_row(*this, document_, tr("Filled on"), fill_text(&FillRecord::when), tr("Time of the fill"));
  words_row(*this, tr("Filled by"), fill_text(&FillRecord::filled_by), tr("Filled by"));
  words_row(*this, tr("Product"), fill_text(&FillRecord::product), tr("Product"));
  words_row(*this, tr("Batch"), fill_text(&FillRecord::batch), tr("Batch"));
  maybe_number(*this, document_, tr("Antifreeze in it, by volume"), Quantity::ratio,
               of_fill(&FillRecord::strength, tr("Antifreeze in the product")))
      ->edit()
      ->setPlaceholderText("100 %");
  maybe_number(*this, document_, tr("Put in"), Quantity::fluid_volume,
               of_fill(&FillRecord::put_in, tr("Product put in")));
  words_row(*this, tr("Water from"), fill_text(&FillRecord::water), tr("Water of the fill"));
  maybe_number(*this, document_, tr("Freezing point read"), Quantity::temperature,
               of_fill(&FillRecord::freezing_point, tr("Freezing point read")));
  words_row(*this, tr("Refractometer"), fill_text(&FillRecord::refractometer), tr("Refractometer"));
  maybe_number(*this, document_, tr("pH"), Quantity::count, of_fill(&FillRecord::ph, tr("pH")));
  words_row(*this, tr("Inhibitor"), fill_text(&FillRecord::inhibitor), tr("Inhibitor"));
  maybe_number(*this, document_, tr("Fluid temperature"), Quantity::temperature,
               of_fill(&FillRecord::temperature, tr("Fluid temperature at the fill")));
  maybe_number(*this, document_, tr("Pressure left"), Quantity::pressure,
               of_fill(&FillRecord::pressure, tr("Pressure left on the loop")));
  check(tr("A label hangs at the ports"),
        bound_to<bool>(tr("Label"), &Plan::record, &JobRecord::fill, &FillRecord::labelled));
  words_row(*this, tr("Note"), fill_text(&FillRecord::note), tr("Note on the fill"));
  wide(fill_);
}

void RecordPanel::add_signatures() {
  section(tr("Papers and signatures"));
  words_row(
      *this, tr("Permit"), [](Plan& p) { return &p.record.permit; }, tr("Permit"));
  words_row(
      *this, tr("Locate ticket"), [](Plan& p) { return &p.record.locate_ticket; }, tr("Locate ticket"));
  CellsTable::Of of;
  of.what = tr("Signatures");
  const auto column = [&of](const QString& head, std::string Signature::*field) {
    CellsTable::Column c;
    c.head = head;
    c.get_text = [field](const Plan& p, std::size_t i) { return p.record.signatures[i].*field; };
    c.set_text = [field](Plan& p, std::size_t i, std::string text) {
      p.record.signatures[i].*field = std::move(text);
    };
    of.columns.push_back(std::move(c));
  };
  column(tr("As"), &Signature::role);
  column(tr("Name"), &Signature::name);
  column(tr("Licence"), &Signature::licence);
  column(tr("Date"), &Signature::date);
  of.rows = [](const Plan& p) { return p.record.signatures.size(); };
  of.add = [](Plan& p) {
    static constexpr const char* roles[] = {QT_TR_NOOP("Installer"), QT_TR_NOOP("Inspector"),
                                            QT_TR_NOOP("Owner")};
    const char* role = roles[std::min<std::size_t>(p.record.signatures.size(), 2)];
    p.record.signatures.push_back({tr(role).toStdString(), "", "", ""});
  };
  of.remove = [](Plan& p, std::size_t i) {
    p.record.signatures.erase(p.record.signatures.begin() + static_cast<std::ptrdiff_t>(i));
  };
  auto* table = new CellsTable(document_, std::move(of));
  wide(table);
  on_refresh([table] { table->refresh(); });
  words_row(
      *this, tr("Note"), [](Plan& p) { return &p.record.note; }, tr("Note on the record"));
}

void RecordPanel::judge() {
  const Outcome* outcome = document_.outcome();
  const bool solved = outcome != nullptr;
  const RecordJudgement judged = judge_record(document_.plan(), solved ? outcome->flow.get() : nullptr,
                                              solved ? outcome->temperatures.get() : nullptr);
  test_->show_lines(judged.test);
  flush_->show_lines(judged.flush_lines);
  const bool filled = document_.plan().record.fill != FillRecord{};
  fill_->show_lines(filled ? judged.fill.lines : std::vector<RecordLine>{});
  show_asked(judged);
}

void RecordPanel::show_asked(const RecordJudgement& judged) {
  const auto say = [this](Quantity q, double v) { return printed(q, v, document_.plan()); };
  if (!(judged.flush_asked.asked > 0)) {
    flush_asked_->show_facts({});
    return fill_asked_->show_facts({});
  }
  flush_asked_->show_facts(
      {{tr("Least flow, all circuits open"), say(Quantity::flow, judged.flush_asked.asked)},
       {tr("Pressure drop then"), say(Quantity::pressure, judged.flush_asked.expected_at_asked)},
       {tr("for at least"), tr("%1 min").arg(std::ceil(judged.flush_asked.time_asked / 60))}});
  std::vector<Fact> fill;
  if (document_.plan().flow.fluid != Fluid::water) {
    fill = {{tr("Product to put in"), say(Quantity::fluid_volume, judged.fill.asked_product)},
            {tr("Freezing point planned"), say(Quantity::temperature, judged.fill.asked_freezing)},
            {tr("at most"), say(Quantity::temperature, judged.fill.wanted_freezing)}};
  }
  if (judged.fill.asked_charge)
    fill.push_back({tr("Pressure to leave"), say(Quantity::pressure, judged.fill.asked_charge->at_fill)});
  fill_asked_->show_facts(fill);
}

}  // namespace underlawn
