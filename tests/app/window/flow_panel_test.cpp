// SPDX-License-Identifier: GPL-3.0-or-later
// The flow panel: what is chosen and typed is one entry of the history, what follows is said.
#include "window/flow_panel.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QPushButton>
#include <QTableWidget>
#include <QTest>

#include "app/support/wait.h"
#include "flow/antifreeze.h"
#include "plan/coldest_fluid.h"
#include "support/sample_plans.h"
#include "window/curve_table.h"

using namespace underlawn;

namespace {

// The widget that a reader of screens would call so.
template <class T>
T* called(QWidget& panel, const QString& name) {
  for (T* widget : panel.findChildren<T*>())
    if (widget->accessibleName() == name) return widget;
  return nullptr;
}

struct FlowPanelTest : testing::Test {
  Document document;

  void SetUp() override { document.commit(sample::half_acre(), "Drawn"); }
  bool solved() {
    return wait_until([&] { return !document.stale(); });
  }
  int entries() {
    int n = 0;
    while (document.can_undo()) document.undo(), ++n;
    for (int i = 0; i < n; ++i) document.redo();
    return n;
  }
  static void type(QLineEdit* edit, const QString& text) {
    ASSERT_NE(edit, nullptr);
    edit->selectAll();
    QTest::keyClicks(edit, text);
    QTest::keyClick(edit, Qt::Key_Return);
  }
};

}  // namespace

TEST_F(FlowPanelTest, ChoosingReverseReturnIsOneEntryAndAsksForIt) {
  FlowPanel panel(document);
  const int before = entries();
  QComboBox* box = called<QComboBox>(panel, "Arrangement");
  ASSERT_NE(box, nullptr);
  emit box->activated(box->findText("Reverse return"));
  EXPECT_EQ(document.plan().flow.arrangement, HeaderArrangement::reverse_return);
  EXPECT_EQ(entries(), before + 1);
}

TEST_F(FlowPanelTest, RecommendedConcentrationIsTakenAndIsEnough) {
  FlowPanel panel(document);
  type(called<QLineEdit>(panel, "Margin to freezing"), "8 K");
  const int before = entries();
  auto* take = panel.findChild<QPushButton*>("take_recommended");
  ASSERT_NE(take, nullptr);
  ASSERT_TRUE(take->isEnabled());
  take->click();
  EXPECT_EQ(entries(), before + 1);
  const FlowWishes& w = document.plan().flow;
  const auto freezes = freezing_point(w.fluid, w.mass_fraction);
  ASSERT_TRUE(freezes);
  const Outcome* outcome = document.outcome();
  const double limit =
      coldest_fluid(w, outcome == nullptr ? nullptr : outcome->temperatures.get()) - w.freeze_margin;
  EXPECT_LE(*freezes, limit);
  EXPECT_GT(*freezing_point(w.fluid, w.mass_fraction - 0.002), limit) << "no more than is needed";
  EXPECT_FALSE(take->isEnabled()) << "it is taken";
}

TEST_F(FlowPanelTest, WaterTakesNoAntifreezeAndTheNextFluidTakesWhatItNeeds) {
  FlowPanel panel(document);
  QComboBox* box = called<QComboBox>(panel, "Fluid");
  ASSERT_NE(box, nullptr);
  emit box->activated(static_cast<int>(Fluid::water));
  EXPECT_EQ(document.plan().flow.mass_fraction, 0);
  emit box->activated(static_cast<int>(Fluid::methanol));
  const FlowWishes& w = document.plan().flow;
  EXPECT_LE(*freezing_point(Fluid::methanol, w.mass_fraction), w.coldest_temperature - w.freeze_margin);
}

TEST_F(FlowPanelTest, EveryPipeHasItsRowAndUnitsFollow) {
  constexpr int kLength = 5;
  FlowPanel panel(document);
  ASSERT_TRUE(solved());
  const auto flow = document.outcome()->flow;
  ASSERT_NE(flow, nullptr);
  ASSERT_EQ(panel.pipes()->rowCount(), static_cast<int>(flow->loop.pipes.size()));
  EXPECT_TRUE(panel.pipes()->item(1, kLength)->text().contains("'"));
  Plan metric = document.committed();
  metric.units = UnitSystem::metric;
  document.commit(metric, "Units");
  ASSERT_TRUE(solved());
  EXPECT_TRUE(panel.pipes()->item(1, kLength)->text().endsWith(" m"));
  const double length = flow->loop.network.pipes[1].length;
  EXPECT_EQ(panel.pipes()->item(1, kLength)->text().toStdString(),
            print_quantity(Quantity::length, length, UnitSystem::metric));
}

TEST_F(FlowPanelTest, FlowVelocityHeadAndRegimeAreSeenWithoutScrollingInAColumnsWidth) {
  FlowPanel panel(document);
  ASSERT_TRUE(solved());
  panel.resize(352, 2000);
  panel.show();
  const QTableWidget& pipes = *panel.pipes();
  int seen = 0;
  for (int c = 0; c < pipes.columnCount(); ++c)
    if (pipes.columnViewportPosition(c) + pipes.columnWidth(c) <= pipes.viewport()->width()) ++seen;
  EXPECT_GE(seen, 3);
}

TEST_F(FlowPanelTest, NoHeadTypedIsShownAsNoneAndNotAsNought) {
  FlowPanel panel(document);
  ASSERT_TRUE(solved());
  auto* head = called<QLineEdit>(panel, "Head allowed");
  ASSERT_NE(head, nullptr);
  EXPECT_TRUE(head->text().isEmpty());
  type(head, "20 ft");
  EXPECT_NEAR(document.plan().flow.most_head, 6.096, 1e-9);
  head->selectAll();
  QTest::keyClick(head, Qt::Key_Delete);
  QTest::keyClick(head, Qt::Key_Return);
  EXPECT_EQ(document.plan().flow.most_head, 0);
}

TEST_F(FlowPanelTest, TypedHeaderSizesBeginWithWhatWasDesigned) {
  FlowPanel panel(document);
  ASSERT_TRUE(solved());
  const auto before = document.outcome()->flow->sizes;
  QComboBox* box = called<QComboBox>(panel, "Header sizes");
  emit box->activated(1);
  ASSERT_EQ(document.plan().flow.header_sizes.size(), before.steps.size());
  for (std::size_t i = 0; i < before.steps.size(); ++i)
    EXPECT_EQ(document.plan().flow.header_sizes[i], before.steps[i].name);
  emit box->activated(0);
  EXPECT_TRUE(document.plan().flow.header_sizes.empty());
}

TEST_F(FlowPanelTest, PointAddedToTheCurveLeavesTheCurveAsItWas) {
  CurveTable table(document, &FlowWishes::circulator, "Circulator curve");
  table.refresh();
  const Circulator before = document.plan().flow.circulator;
  table.findChildren<QPushButton*>().front()->click();
  const Circulator& after = document.plan().flow.circulator;
  ASSERT_EQ(after.curve.size(), before.curve.size() + 1);
  for (double flow = 0; flow < 1.5e-3; flow += 1e-4) {
    EXPECT_NEAR(pump_head(after, flow), pump_head(before, flow), 1e-9);
    EXPECT_NEAR(pump_power(after, flow), pump_power(before, flow), 1e-9);
  }
}

TEST_F(FlowPanelTest, HeadThatRisesIsSaidAndNotCommitted) {
  CurveTable table(document, &FlowWishes::circulator, "Circulator curve");
  table.refresh();
  const Plan before = document.plan();
  table.table()->item(2, 1)->setText("60 ft");
  EXPECT_EQ(document.plan(), before);
  EXPECT_TRUE(table.findChildren<QLabel*>().front()->text().contains("curve"));
}

TEST_F(FlowPanelTest, LoopThatCannotFlowSaysWhyOnTop) {
  Plan plan = document.committed();
  plan.flow.mass_fraction = 0.02;  // freezes above the coldest fluid
  document.commit(plan, "Thin");
  FlowPanel panel(document);
  ASSERT_TRUE(solved());
  auto* why = called<QLabel>(panel, "Why there is no flow");
  ASSERT_NE(why, nullptr);
  EXPECT_TRUE(why->text().contains("propylene glycol")) << why->text().toStdString();
  EXPECT_FALSE(why->isHidden());
}
