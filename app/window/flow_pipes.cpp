// SPDX-License-Identifier: GPL-3.0-or-later
// The pipes of the flow panel, each with what flows in it.
#include <QComboBox>
#include <QHeaderView>
#include <QTableWidget>
#include <cmath>

#include "window/flow_panel.h"

namespace underlawn {

namespace {

constexpr int kRowHeight = 36, kMostRowsSeen = 9;  // px: names take two lines
constexpr int kNames = 104;                        // px

QString regime_word(Regime regime) {
  switch (regime) {
    case Regime::laminar:
      return FlowPanel::tr("laminar");
    case Regime::transition:
      return FlowPanel::tr("uncertain");
    case Regime::turbulent:
      return FlowPanel::tr("turbulent");
    case Regime::still:
      break;
  }
  return FlowPanel::tr("still");
}

// "header supply, feeding 4": pieces of the header are told apart by what goes through them.
QString name_of_pipe(const LoopNetwork& loop, std::size_t i) {
  const LoopPipe& pipe = loop.pipes[i];
  const QString name = QString::fromStdString(loop.network.pipes[i].name);
  return pipe.step < 0 ? name : FlowPanel::tr("%1, feeding %2").arg(name).arg(pipe.carries);
}

}  // namespace

void FlowPanel::add_pipes() {
  section(tr("Pipes"));
  auto* when = choice_box({tr("At design"), tr("At its coldest")});
  row(tr("Flow in each pipe"), when);
  connect(when, &QComboBox::activated, this, [this](int i) {
    coldest_ = i == 1;
    refresh();
  });
  pipes_ = new QTableWidget;
  pipes_->setObjectName("boxed");
  pipes_->setAccessibleName(tr("Pipes"));
  pipes_->setTabKeyNavigation(false);
  pipes_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  pipes_->setColumnCount(7);
  pipes_->setHorizontalHeaderLabels(
      {tr("Flow"), tr("Velocity"), tr("Head"), tr("Regime"), tr("Reynolds"), tr("Length"), tr("Bore")});
  pipes_->verticalHeader()->setDefaultSectionSize(kRowHeight);
  pipes_->verticalHeader()->setFixedWidth(kNames);
  pipes_->verticalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter |
                                                static_cast<Qt::Alignment>(Qt::TextWordWrap));
  wide(pipes_);
  on_refresh([this] { fill_pipes(); });
  facts(tr("All pipes"), [this](const Flow& f) {
    double length = 0;
    for (std::size_t i = 1; i < f.loop.network.pipes.size(); ++i) length += f.loop.network.pipes[i].length;
    const FlowState& s = coldest_ ? f.coldest : f.design;
    return std::vector<Fact>{{tr("All pipe"), say(Quantity::length, length)},
                             {tr("Liquid in it"), say(Quantity::fluid_volume, f.volume)},
                             {tr("Flow"), say(Quantity::flow, s.flow.total_flow)},
                             {tr("Head of the whole loop"), say(Quantity::head, s.flow.head_loss)},
                             {tr("Fluid"), say(Quantity::temperature, s.temperature)}};
  });
}

// Only when something in it is another: it may have hundreds of rows.
void FlowPanel::fill_pipes() {
  const auto solved = flow();
  pipes_->setVisible(solved != nullptr);
  const std::pair as{document_.plan().units, coldest_};
  if (solved == nullptr || (solved == filled_ && as == filled_as_)) return;
  filled_ = solved;
  filled_as_ = as;
  const FlowState& s = coldest_ ? solved->coldest : solved->design;
  const auto& pipes = solved->loop.network.pipes;
  pipes_->setRowCount(static_cast<int>(pipes.size()));
  for (std::size_t i = 0; i < pipes.size(); ++i) {
    const PipeFlow& q = s.flow.pipes[i];
    const bool pump = i == 0;  // no pipe, but a loss
    const QStringList cells = {say(Quantity::flow, std::abs(q.flow)),
                               pump ? QString() : say(Quantity::velocity, q.velocity),
                               say(Quantity::head, std::abs(q.head_loss)),
                               pump ? QString() : regime_word(q.regime),
                               pump ? QString() : QString::number(std::lround(q.reynolds / 10) * 10),
                               pump ? QString() : say(Quantity::length, pipes[i].length),
                               pump ? QString() : say(Quantity::diameter, pipes[i].bore)};
    const int row = static_cast<int>(i);
    pipes_->setVerticalHeaderItem(row, new QTableWidgetItem(name_of_pipe(solved->loop, i)));
    for (int c = 0; c < pipes_->columnCount(); ++c) {
      auto* item = new QTableWidgetItem(cells[c]);
      item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      pipes_->setItem(row, c, item);
    }
  }
  pipes_->resizeColumnsToContents();
  const int rows = std::clamp(pipes_->rowCount(), 1, kMostRowsSeen);
  pipes_->setFixedHeight(pipes_->horizontalHeader()->sizeHint().height() + rows * kRowHeight + 16);
}

}  // namespace underlawn
