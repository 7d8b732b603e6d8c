// SPDX-License-Identifier: GPL-3.0-or-later
// What lies on the maps of the dig sheet, and on what nothing may lie.
#include <gtest/gtest.h>

#include "app/support/laid_out.h"
#include "app/support/written.h"
#include "canvas/plan_painter.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "files/plan_file.h"
#include "plan/solve.h"
#include "plane/region.h"
#include "plane/strip.h"
#include "sheets/contents.h"
#include "sheets/detail_parts.h"
#include "sheets/flow.h"
#include "sheets/map_parts.h"
#include "sheets/paper.h"
#include "sheets/tapes.h"

using namespace underlawn;

namespace {

const laid_out::Sample& sample(const std::string& name) {
  static std::map<std::string, laid_out::Sample> all;
  laid_out::Sample& s = all[name];
  if (s.outcome.order == nullptr) {
    s.plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/" + name + ".underlawn")->value;
    s.plan.thermal.years = 1;
    s.outcome = solve(s.plan);
  }
  return s;
}

struct Map {
  View view;
  std::vector<test::Written> texts;
};

// The whole lot at that scale, as the dig sheet paints it.
Map map_of(const laid_out::Sample& s, int scale, bool dig) {
  const Box box = bounds(lot_ring(s.plan.site));
  const double k = sheet::per_metre(scale);
  const QSizeF size((box.high.x - box.low.x) * k + 40, (box.high.y - box.low.y) * k + 40);
  Map map{View{0.5 * (box.low + box.high), k, size, 0}, {}};
  PaintOptions options;
  options.sheet = true;
  options.dig = dig;
  options.corner_tags = !dig;
  options.coils = options.zones = !dig;
  options.edge_lengths = options.findings = options.heights = !dig;
  map.texts = test::all_written_by(
      [&](QPainter& p) { paint_plan(p, s.plan, &s.outcome, map.view, sheet::sheet_look(), options); });
  return map;
}

bool covers(const test::Written& text, QPointF p, double r) {
  return text.ink.boundingRect().intersects(QRectF(p.x() - r, p.y() - r, 2 * r, 2 * r));
}

}  // namespace

// Heads are dots of 2.8 normal lines; a pixel's worth of what a label is painted on belongs to it.
TEST(DigMapPicture, NoNumberLiesOnAHeadOrOnTheHeader) {
  for (const auto& [name, scale] : {std::pair("alder-lane", 360), std::pair("kestrel-bend", 600)}) {
    const laid_out::Sample& s = sample(name);
    const Map map = map_of(s, scale, true);
    int numbers = 0;
    for (const test::Written& w : map.texts) {
      bool number = false;
      for (std::size_t i = 1; i <= s.outcome.order->steps.size(); ++i)
        number = number || w.text == QString::fromStdString(step_numeral(static_cast<int>(i)));
      numbers += number;
      if (!number) continue;
      for (const Trench& t : s.outcome.layout.trenches)
        EXPECT_FALSE(covers(w, map.view.to_device(t.head), 2.8)) << name << " " << w.text.toStdString();
      for (const Polyline& leg : s.outcome.layout.header.legs)
        for (int i = 0; i <= 50; ++i)
          EXPECT_FALSE(covers(w, map.view.to_device(place_along(leg, i / 50.0 * length(leg)).at), 1))
              << name << " " << w.text.toStdString();
    }
    EXPECT_GE(numbers, static_cast<int>(s.outcome.order->steps.size())) << name;
  }
}

// 45 ft round the well: said at the arc, and nowhere in a house.
TEST(DigMapPicture, NoStepOfHeaderOrRunStandsOnACoilTrench) {
  int seen = 0;
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const laid_out::Sample& s = sample(name);
    for (const int scale : {240, 360, 480, 750}) {
      const Map map = map_of(s, scale, true);
      for (std::size_t i = 0; i < s.outcome.order->steps.size(); ++i) {
        if (s.outcome.order->steps[i].kind == DigKind::trench) continue;
        const QString numeral = QString::fromStdString(step_numeral(static_cast<int>(i) + 1));
        for (const test::Written& text : map.texts) {
          if (text.text != numeral) continue;
          ++seen;
          for (const Trench& t : s.outcome.layout.trenches) {
            QPolygonF floor;
            for (Point p : strip_along(middle_line(t), t.width)) floor << map.view.to_device(p);
            EXPECT_FALSE(floor.intersects(QPolygonF(text.ink.boundingRect())))
                << name << " 1:" << scale << ", " << numeral.toStdString() << " on trench " << t.number;
          }
        }
      }
    }
  }
  EXPECT_GT(seen, 20);
}

// The lot's own trees and well, cut off before, and what the ways are drawn for.
TEST(DigMapPicture, ShowsTheWholeLotAndSaysHowWideTheMachineIs) {
  const laid_out::Sample& s = sample("alder-lane");
  const sheet::BlockPtr block = sheet::dig_map(s.plan, s.outcome);
  const double width = sheet::size_of(Paper::letter, false).width() * 0.93;
  const auto fitted = block->for_pages(QSizeF(width, width * 1.2));
  const auto texts = test::all_written_by(
      [&](QPainter& p) { fitted->paint(p, QRectF(0, 0, width, fitted->height(width))); });
  const auto has = [&](const QString& part) {
    return std::ranges::any_of(texts, [&](const test::Written& t) { return t.text.contains(part); });
  };
  for (const char* name : {"Birch", "Well", "Reserve field", "Septic tank"}) EXPECT_TRUE(has(name)) << name;
  EXPECT_TRUE(has("6'-3\"")) << "1.9 m, the usual excavator of the plan";
  EXPECT_TRUE(has("8'-6\"")) << "102 in, a truck";
  EXPECT_FALSE(has(QString(QChar(0x2026)))) << "nothing of the key is cut";
  EXPECT_TRUE(has("the loader carries"));
}

// Over the corner it is taped from, where the tape has room for it farther on: a letter and more away.
constexpr double kLongEnough = 20;  // m, for its words at the scales of these pages
TEST(TrenchPage, NoTapesLengthLiesOnItsOwnCorner) {
  int seen = 0;
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const laid_out::Sample& s = sample(name);
    const QSizeF page = sheet::size_of(Paper::letter, false);
    for (const sheet::BlockPtr& block : sheet::trench_pages(s.plan, s.outcome)) {
      const auto texts = test::all_written_by(
          [&](QPainter& p) { block->paint(p, QRectF(0, 0, page.width() * 0.93, page.height() * 0.83)); });
      for (const Tie& tie : s.outcome.stake_out.ties) {
        const sheet::PrintedTapes tapes = sheet::printed_tapes(s.plan, s.outcome.stake_out, tie);
        if (std::min(tie.first_distance, tie.second_distance) < kLongEnough) continue;
        for (const auto& [tag, tape] :
             {std::pair(tie.first, tapes.first), std::pair(tie.second, tapes.second)})
          for (const test::Written& length : texts)
            for (const test::Written& corner : texts) {
              const QRectF ink = length.ink.boundingRect();
              const bool turned =
                  length.text == tape && ink.height() > 1.5 * corner.ink.boundingRect().height();
              if (!turned || corner.text != QString::fromStdString(tag)) continue;
              ++seen;
              const double letter = corner.ink.boundingRect().height();
              EXPECT_FALSE(ink.adjusted(-1.2 * letter, -1.2 * letter, 1.2 * letter, 1.2 * letter)
                               .intersects(corner.ink.boundingRect()))
                  << name << ": " << tape.toStdString() << " at " << tag;
            }
      }
    }
  }
  EXPECT_GT(seen, 10);
}

TEST(DigMapPicture, TheClearanceOfAWellIsNotWrittenIntoAHouse) {
  int all = 0;
  for (const auto& [name, scale] : {std::pair("alder-lane", 480), std::pair("kestrel-bend", 600)}) {
    const laid_out::Sample& s = sample(name);
    const Map map = map_of(s, scale, false);
    int found = 0;
    for (const test::Written& w : map.texts) {
      if (w.text != "45'-0\"") continue;
      ++found;
      for (const Feature& f : s.plan.site.features)
        if (f.kind == FeatureKind::house) {
          EXPECT_FALSE(contains(f.points, map.view.to_lot(w.ink.boundingRect().center()))) << name;
        }
    }
    EXPECT_LE(found, 1) << name;
    all += found;
  }
  EXPECT_GE(all, 1);  // where it has room
}

// A header of 90 m has to fit the width of a page, 450 points, as one of 9 m has, and is drawn as large as
// that allows: the next scale is no more than twice as large.
TEST(DigMapPicture, AHeaderOfAnyLengthFitsItsPage) {
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric})
    for (double metres : {3.0, 9.0, 30.0, 66.0, 90.0, 150.0}) {
      const double drawn = metres * sheet::per_metre(sheet::detail_scale(units, metres, sheet::pt(450)));
      EXPECT_LE(drawn, sheet::pt(450)) << metres;
      EXPECT_GE(drawn, 0.5 * sheet::pt(450)) << metres;
    }
}

// A long name is begun on paper and stands whole in the window.
TEST(DigMapPicture, LongNamesAreCutOnPaperOnly) {
  laid_out::Sample s = sample("kestrel-bend");
  for (Feature& f : s.plan.site.features)
    if (f.kind == FeatureKind::drain_field) f.name = "Drain field along the old stone wall of the neighbours";
  const auto said = [&](bool on_paper) {
    const View view = fit_view(bounds(lot_ring(s.plan.site)), {12'000, 12'000}, 400);
    PaintOptions options;
    options.sheet = on_paper;
    return test::written_by(
        [&](QPainter& p) { paint_plan(p, s.plan, &s.outcome, view, sheet::sheet_look(), options); });
  };
  EXPECT_TRUE(said(true).contains("Drain field along the old…")) << said(true).join("|").toStdString();
  EXPECT_FALSE(said(false).contains("Drain field along the old…"));
}

TEST(DigMapPicture, TheLegendHasEveryMarkOfFindingsThatIsOnThePlan) {
  const laid_out::Sample& s = sample("kestrel-bend");
  const auto said = [](const Outcome& outcome) {
    return test::written_by([&](QPainter& p) {
      sheet::paint_legend(p, {0, 0, sheet::pt(600), sheet::pt(900)}, sample("kestrel-bend").plan, outcome);
    });
  };
  EXPECT_TRUE(said(s.outcome).contains("warning: see the findings; shaded: where"));
  EXPECT_TRUE(said(s.outcome).contains("note: see the findings; shaded: where"));
  Outcome warnings = s.outcome;
  std::erase_if(warnings.findings, [](const Finding& f) { return f.severity == Severity::hint; });
  EXPECT_FALSE(said(warnings).contains("note: see the findings; shaded: where"));
}

namespace {

// So many lines of ten units; a part is any whole number of them.
class Lines : public sheet::Block {
 public:
  explicit Lines(int count, bool parts = true) : count_(count), parts_(parts) {}
  double height(double) const override { return 10 * count_; }
  void paint(QPainter&, const QRectF&) const override {}
  std::optional<std::pair<sheet::BlockPtr, sheet::BlockPtr>> split(double, double room) const override {
    const int fit = static_cast<int>(room / 10);
    if (!parts_ || fit < 1 || fit >= count_) return std::nullopt;
    return std::pair<sheet::BlockPtr, sheet::BlockPtr>(std::make_shared<Lines>(fit),
                                                       std::make_shared<Lines>(count_ - fit));
  }

 private:
  int count_;
  bool parts_;
};

}  // namespace

// A block of 40 lines before it fills most of the left column, so the right one is the emptier: what is
// parted begins on the left all the same, and goes on at its right and on the next page.
TEST(Flow, TheRestOfABlockStandsAtTheRightOfItsBeginningOrOnALaterPage) {
  for (int first : {0, 5, 20, 40}) {
    std::vector<sheet::Piece> pieces;
    if (first > 0) sheet::add(pieces, std::make_shared<Lines>(first, false));
    sheet::add(pieces, std::make_shared<Lines>(130));
    const auto pages = sheet::flow(pieces, {0, 0, 1000, 500}, 2);
    std::vector<std::pair<std::size_t, double>> at;  // page, left edge of the parts, in order
    for (std::size_t page = 0; page < pages.size(); ++page)
      for (const sheet::Placed& placed : pages[page])
        if (!(page == 0 && first > 0 && &placed == &pages[page].front()))
          at.emplace_back(page, placed.room.left());
    ASSERT_GE(at.size(), 3u);
    EXPECT_TRUE(std::is_sorted(at.begin(), at.end())) << first;
  }
}
