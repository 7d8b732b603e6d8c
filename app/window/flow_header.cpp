// SPDX-License-Identifier: GPL-3.0-or-later
// The header of the flow panel: arrangement, sizes, and what other arrangements would come to.
#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "flow/header_design.h"
#include "window/flow_bounds.h"
#include "window/flow_panel.h"
#include "window/pipe_choice.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr HeaderArrangement kArrangements[] = {
    HeaderArrangement::direct_return, HeaderArrangement::reverse_return, HeaderArrangement::home_runs};

QString name_of_arrangement(HeaderArrangement a) {
  return capital(QString::fromUtf8(header_arrangement_name(a)));
}

QStringList arrangement_names() {
  QStringList names;
  for (const HeaderArrangement a : kArrangements) names << name_of_arrangement(a);
  return names;
}

// 0 is "designed", then the sizes there are; -1 a name that is none.
int index_of_run(const Plan& plan) {
  if (plan.flow.run_size.empty()) return 0;
  const int at = index_of_pipe(plan.flow.run_size);
  return at < 0 ? -1 : at + 1;
}

// What is designed so far is kept as typed, so that the loop stays as it is.
void type_sizes(Plan& plan, const Flow* flow, bool typed) {
  auto& sizes = plan.flow.header_sizes;
  if (typed == !sizes.empty()) return;
  sizes.clear();
  if (!typed) return;
  if (flow != nullptr)
    for (const PipeSize& size : flow->sizes.steps) sizes.push_back(size.name);
  if (sizes.empty()) sizes.push_back(plan.wishes.header_pipe);
}

// Each size once, from the run outwards.
QString sizes_in_words(const std::vector<PipeSize>& steps) {
  QStringList names;
  for (const PipeSize& size : steps)
    if (const QString name = QString::fromStdString(size.name); names.isEmpty() || names.back() != name)
      names << name;
  return names.join(", ");
}

Plan with_open_arrangement(Plan plan) {
  plan.flow.arrangement = HeaderArrangement::direct_return;
  return plan;
}

}  // namespace

void FlowPanel::add_header() {
  section(tr("Header"));
  choice(tr("Arrangement"), arrangement_names(),
         bound_to<int>(tr("Arrangement of the header"), &Plan::flow, &FlowWishes::arrangement));
  choice(tr("Run size"), QStringList(tr("Designed")) + pipe_names(),
         {index_of_run,
          [](Plan& p, int i) {
            p.flow.run_size = i <= 0 ? std::string() : pipe_sizes()[static_cast<std::size_t>(i) - 1].name;
          },
          tr("Run size")});
  choice(tr("Header sizes"), {tr("Designed"), tr("Typed")},
         {[](const Plan& p) { return p.flow.header_sizes.empty() ? 0 : 1; },
          [this](Plan& p, int i) { type_sizes(p, flow().get(), i == 1); }, tr("Header sizes")});
  add_steps();
  check(tr("Narrower where it feeds fewer circuits"),
        {[](const Plan& p) { return p.flow.step_down; }, [](Plan& p, bool on) { p.flow.step_down = on; },
         tr("Step-down of the header")});
  only_when([](const Plan& p) { return p.flow.arrangement != HeaderArrangement::home_runs; });
  number(tr("Imbalance allowed"), Quantity::ratio,
         flow_wish(&FlowWishes::most_imbalance, tr("Imbalance allowed")));
  number(tr("Tail, trench to header"), Quantity::length, flow_wish(&FlowWishes::tail, tr("Tail")));
  facts(tr("What the header comes to"), [this](const Flow& f) {
    std::vector<Fact> all = {{tr("Run"), QString::fromStdString(f.sizes.run.name)},
                             {tr("Header"), sizes_in_words(f.sizes.steps)},
                             {tr("Imbalance of circuits"), say(Quantity::ratio, f.design.imbalance)},
                             {tr("at its coldest"), say(Quantity::ratio, f.coldest.imbalance)}};
    if (f.header) {
      all.push_back({tr("Polyethylene in run and header"), say(Quantity::mass, f.header->mass)});
      if (!f.header->holds()) all.push_back({tr("No sizes hold balance, head and purge all three."), {}});
    }
    for (const Remedy& r : f.remedies)
      all.push_back(
          {tr("Imbalance with %1").arg(QString::fromStdString(r.what)), say(Quantity::ratio, r.imbalance)});
    return all;
  });
  add_alternatives();
}

// A row for each step of the header, there while its sizes are typed.
void FlowPanel::add_steps() {
  steps_ = new QWidget;
  step_rows_ = new QGridLayout(steps_);
  step_rows_->setContentsMargins(3 * kGap, 0, 0, 0);
  step_rows_->setColumnStretch(0, 5);
  step_rows_->setColumnStretch(1, 6);
  wide(steps_);
  on_refresh([this] { show_steps(); });
}

void FlowPanel::show_steps() {
  const FlowWishes& w = document_.plan().flow;
  steps_->setVisible(!w.header_sizes.empty());
  const auto solved = flow();
  const bool one = !w.step_down || w.arrangement == HeaderArrangement::home_runs || solved == nullptr ||
                   solved->loop.steps.empty();
  const int rows = w.header_sizes.empty() ? 0 : one ? 1 : static_cast<int>(solved->loop.steps.size());
  for (int i = step_rows_->count() / 2; i < rows; ++i) {
    auto* box = choice_box(pipe_names());
    connect(box, &QComboBox::activated, this, [this, i, box] { choose_step(i, box->currentText()); });
    auto* label = new QLabel;
    label->setBuddy(box);
    step_rows_->addWidget(label, i, 0);
    step_rows_->addWidget(box, i, 1);
  }
  for (int i = 0; i < step_rows_->count() / 2; ++i) {
    auto* label = static_cast<QLabel*>(step_rows_->itemAtPosition(i, 0)->widget());
    auto* box = static_cast<QComboBox*>(step_rows_->itemAtPosition(i, 1)->widget());
    label->setVisible(i < rows);
    box->setVisible(i < rows);
    if (i >= rows) continue;
    const auto step = static_cast<std::size_t>(i);
    label->setText(w.arrangement == HeaderArrangement::home_runs ? tr("Leads")
                   : one                                         ? tr("Whole header")
                         : tr("Feeding %1").arg(solved->loop.steps[step]));
    box->setAccessibleName(label->text());
    box->setCurrentText(QString::fromStdString(w.header_sizes[std::min(step, w.header_sizes.size() - 1)]));
  }
}

void FlowPanel::choose_step(int step, const QString& name) {
  Plan plan = document_.committed();
  auto& sizes = plan.flow.header_sizes;
  if (sizes.empty()) return;
  const auto solved = flow();
  const std::size_t all = solved == nullptr ? 0 : solved->loop.steps.size();
  if (plan.flow.step_down && sizes.size() < all) sizes.resize(all, std::string(sizes.back()));
  if (static_cast<std::size_t>(step) >= sizes.size()) return;
  sizes[static_cast<std::size_t>(step)] = name.toStdString();
  if (!plan.flow.step_down || plan.flow.arrangement == HeaderArrangement::home_runs) sizes.resize(1);
  document_.commit(std::move(plan), tr("Header sizes"));
}

void FlowPanel::add_alternatives() {
  compare_ = new QPushButton(tr("Compare the arrangements"));
  compare_->setToolTip(tr("Each at the lightest sizes that hold balance, head and purge"));
  connect(compare_, &QPushButton::clicked, this, &FlowPanel::compare);
  wide(compare_);
  compared_ = new Facts;
  compared_->setAccessibleName(tr("Arrangements side by side"));
  wide(compared_);
  takers_ = new QWidget;
  auto* row = new QVBoxLayout(takers_);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(kGap);
  for (const HeaderArrangement a : kArrangements) {
    auto* take = new QPushButton(a == HeaderArrangement::direct_return    ? tr("Take direct")
                                 : a == HeaderArrangement::reverse_return ? tr("Take reverse")
                                                                          : tr("Take home runs"));
    connect(take, &QPushButton::clicked, this, [this, a] { take_alternative(a); });
    row->addWidget(take);
  }
  wide(takers_);
  on_refresh([this] { show_alternatives(); });
}

void FlowPanel::compare() {
  if (document_.outcome() == nullptr || document_.stale()) return;
  compared_plan_ = with_open_arrangement(document_.plan());
  alternatives_.reset();
  comparing_.start([layout = document_.outcome()->layout, wishes = document_.plan().wishes,
                    flow = document_.plan().flow] { return header_alternatives(layout, wishes, flow); },
                   [this](Alternatives made) {
                     alternatives_ = std::move(made);
                     show_alternatives();
                   });
  show_alternatives();
}

void FlowPanel::show_alternatives() {
  if (compared_plan_ && *compared_plan_ != with_open_arrangement(document_.plan())) {
    compared_plan_.reset();
    alternatives_.reset();
  }
  compare_->setVisible(!compared_plan_ && flow() != nullptr);
  takers_->setVisible(alternatives_ && *alternatives_);
  if (!compared_plan_) return compared_->show_facts({});
  if (!alternatives_) return compared_->show_facts({{tr("Working out all three …"), {}}});
  if (!*alternatives_)
    return compared_->show_facts({{QString::fromStdString(alternatives_->error().message()), {}}});
  std::vector<QStringList> rows = {{""},         {tr("Run")},        {tr("Header")},  {tr("Imbalance")},
                                   {tr("Head")}, {tr("Purge flow")}, {tr("PE pipe")}, {tr("Misses")}};
  for (const HeaderChoice& c : **alternatives_) {
    QStringList misses;
    if (!c.balanced) misses << tr("balance");
    if (!c.head_holds) misses << tr("head");
    if (!c.purge_holds) misses << tr("purge");
    const QStringList cells = {
        name_of_arrangement(c.arrangement), QString::fromStdString(c.sizes.run.name),
        sizes_in_words(c.sizes.steps),      say(Quantity::ratio, c.imbalance),
        say(Quantity::head, c.head),        say(Quantity::flow, c.purge().flow),
        say(Quantity::mass, c.mass),        misses.isEmpty() ? tr("nothing") : misses.join(", ")};
    for (std::size_t i = 0; i < rows.size(); ++i) rows[i] << cells[static_cast<qsizetype>(i)];
  }
  compared_->show_table(rows);
}

// Sizes that are left open go on being designed, and so come out as they were compared.
void FlowPanel::take_alternative(HeaderArrangement arrangement) {
  Plan plan = document_.committed();
  plan.flow.arrangement = arrangement;
  document_.commit(std::move(plan), tr("Arrangement of the header"));
}

}  // namespace underlawn
