// SPDX-License-Identifier: GPL-3.0-or-later
// How the family's pages look: letters that are read without glasses, the lot before, during and after on one
// scale, names that point at what they name. Both samples, languages and papers, few and many trenches, long
// names.
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <cmath>

#include "app/support/painted_texts.h"
#include "base/say.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "files/plan_file.h"
#include "language/language.h"
#include "plan/solve.h"
#include "sheets/days_chart.h"
#include "sheets/lot_names.h"
#include "sheets/said_sheet.h"

using namespace underlawn;

namespace {

Plan sample_file(const std::string& name) {
  Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/" + name + ".underlawn")->value;
  plan.thermal.years = 1;
  return plan;
}

// Kestrel's lot made a field of it.
Plan fourteen() {
  Plan plan = sample_file("kestrel-bend");
  plan.wishes.circuits = 14;
  plan.site.lot = {{{0, 0}, 3}, {{110, 0}, 3}, {{110, 90}, 3}, {{0, 90}, 3}};
  return plan;
}

Plan three() {
  Plan plan = sample_file("alder-lane");
  plan.wishes.circuits = 3;
  return plan;
}

Plan long_names(Plan plan) {
  plan.title.address = "1421 North Old Willowbrook Orchard Road, Upper Fernhollow Township, Somerset County";
  plan.title.owner = "Maximiliana Featherstonehaugh-Wetherby and Bartholomew Featherstonehaugh the younger";
  plan.title.designer = "Cholmondeley, Featherstonehaugh and Daughters Ground Works and Well Drilling";
  for (Feature& f : plan.site.features)
    if (f.kind == FeatureKind::tree || f.kind == FeatureKind::no_dig)
      f.name = "The " + f.name + " that grandmother planted";
  for (OtherSystem& o : plan.pricing.running.others) o.name += " from the catalogue of last year";
  return plan;
}

struct Case {
  std::string name;
  Plan plan;
  Outcome outcome;
};

const std::vector<Case>& cases() {
  static const std::vector<Case> all = [] {
    std::vector<Case> made;
    const auto add = [&made](std::string name, Plan plan) {
      Outcome outcome = solve(plan);
      made.push_back({std::move(name), std::move(plan), std::move(outcome)});
    };
    add("alder", sample_file("alder-lane"));
    add("kestrel", sample_file("kestrel-bend"));
    add("three", three());
    add("fourteen", fourteen());
    add("long names", long_names(sample_file("alder-lane")));
    add("long names, kestrel", long_names(sample_file("kestrel-bend")));
    return made;
  }();
  return all;
}

struct Said {
  std::string name;
  SheetPtr sheet;
};

// Every case in both languages, on letter in feet and on A4 in metres.
std::vector<Said> all_proposals() {
  let_qt_speak();
  std::vector<Said> all;
  for (const Case& c : cases())
    for (const char* language : {"en", "es"})
      for (const bool metric : {false, true}) {
        SheetSetup setup{metric ? Paper::a4 : Paper::letter, {}, QDate(2026, 11, 1)};
        setup.units = metric ? SheetUnits::metric : SheetUnits::us;
        setup.language = language;
        all.push_back({c.name + ", " + language + (metric ? ", A4" : ", letter"),
                       make_sheet(*find_sheet_kind("proposal"), c.plan, c.outcome, setup)});
      }
  return all;
}

QString in_language(const char* language, const char* text) {
  const SpeakHere here(catalogue_of(language));
  return QObject::tr(text);
}

// Of the colour of a roof, in a third of the page's width; nothing where there is none.
QRect roof_in(const QImage& page, int third) {
  QRect box;
  const int from = third * page.width() / 3, to = (third + 1) * page.width() / 3;
  // Keys show the colour too, farther down.
  for (int y = 0; y < 26 * page.height() / 100; ++y)
    for (int x = from; x < to; ++x)
      if (page.pixelColor(x, y) == QColor("#c8775a")) box = box.united(QRect(x, y, 1, 1));
  return box;
}

}  // namespace

TEST(ProposalLook, NoLettersAreSmallerThanNineAndAHalfPoints) {
  for (const Said& said : all_proposals())
    for (int page = 0; page < said.sheet->pages(); ++page)
      for (const painted::Text& text : painted::texts(*said.sheet, page))
        // To the rounding of a letter's size.
        EXPECT_GE(text.points, 9.5 - 0.06)
            << said.name << ", page " << page + 1 << ": " << text.text.toStdString();
}

TEST(ProposalLook, ThreeOrFourPagesWhateverTheNamesAndTheTrenches) {
  for (const Said& said : all_proposals()) {
    EXPECT_GE(said.sheet->pages(), 3) << said.name;
    EXPECT_LE(said.sheet->pages(), 4) << said.name;
  }
}

TEST(ProposalLook, BeforeDuringAndAfterStandSideBySide) {
  for (const Said& said : all_proposals()) {
    QVector<QRectF> titles;
    const bool spanish = said.name.find(", es") != std::string::npos;
    for (const painted::Text& text : painted::texts(*said.sheet, 1))
      for (const char* title : {"Before", "While we dig", "When we leave"})
        if (text.text == in_language(spanish ? "es" : "en", title)) titles.push_back(text.ink.boundingRect());
    ASSERT_EQ(titles.size(), 3) << said.name;
    EXPECT_NEAR(titles[0].bottom(), titles[1].bottom(), 0.5 * titles[0].height()) << said.name;
    EXPECT_NEAR(titles[1].left() - titles[0].left(), titles[2].left() - titles[1].left(),
                0.02 * said.sheet->page_size().width())
        << said.name;
  }
}

// The house is drawn as large and at the same place in each of them.
TEST(ProposalLook, TheThreeMomentsAreOnOneScale) {
  for (const char* name : {"alder", "kestrel"}) {
    const Case& c = *std::ranges::find(cases(), name, &Case::name);
    const SheetPtr sheet =
        make_sheet(*find_sheet_kind("proposal"), c.plan, c.outcome, {Paper::letter, {}, QDate(2026, 11, 1)});
    QImage page(1200, qRound(1200 * sheet->page_size().height() / sheet->page_size().width()),
                QImage::Format_RGB32);
    page.fill(Qt::white);
    QPainter painter(&page);
    painter.scale(1200 / sheet->page_size().width(), 1200 / sheet->page_size().width());
    sheet->paint(painter, 1);
    painter.end();
    const QRect before = roof_in(page, 0);
    ASSERT_GT(before.width(), 8) << name;
    for (const int third : {1, 2}) {
      const QRect then = roof_in(page, third);
      EXPECT_NEAR(then.width(), before.width(), 2) << name;
      EXPECT_NEAR(then.height(), before.height(), 2) << name;
      EXPECT_NEAR(then.top(), before.top(), 2) << name;
    }
  }
}

TEST(ProposalLook, ANameStandsInItsThingOrALineLeadsThere) {
  for (const Case& c : cases())
    for (const QSizeF size : {QSizeF(1400, 900), QSizeF(900, 900), QSizeF(1000, 500)}) {
      LotPicture how;
      how.moment = LotMoment::after;
      how.loop_below = how.frame = true;
      how.text = 22;
      const std::vector<NamePlace> names = place_names(c.plan, &c.outcome, size, how);
      ASSERT_GE(names.size(), 8u) << c.name;
      for (std::size_t i = 0; i < names.size(); ++i) {
        const NamePlace& name = names[i];
        const std::string who = c.name + ": " + name.name.toStdString();
        EXPECT_TRUE(QRectF(QPointF(0, 0), size).contains(name.box)) << who;
        if (name.leader) {
          EXPECT_TRUE(name.thing.containsPoint(name.leader->p2(), Qt::OddEvenFill)) << who;
          EXPECT_FALSE(name.thing.boundingRect().intersects(name.box)) << who;
        } else {
          EXPECT_TRUE(name.thing.containsPoint(name.box.center(), Qt::OddEvenFill)) << who;
        }
        for (std::size_t k = 0; k < i; ++k) {
          EXPECT_FALSE(names[k].box.adjusted(1, 1, -1, -1).intersects(name.box))
              << who << " on " << names[k].name.toStdString();
          if (name.leader && names[k].leader) {
            EXPECT_NE(name.leader->intersects(*names[k].leader, nullptr), QLineF::BoundedIntersection)
                << who << " crosses the line of " << names[k].name.toStdString();
          }
        }
      }
    }
}

// Names of three lines each would be higher than the picture: fewer lines then, none over another or below
// it.
TEST(ProposalLook, ManyLongNamesStayBesideThePicture) {
  Case c = *std::ranges::find(cases(), "kestrel", &Case::name);
  for (Feature& f : c.plan.site.features)
    f.name = "Grandmother's old " + display_name(f) + " behind the barn of the neighbours";
  for (const QSizeF size : {QSizeF(1000, 420), QSizeF(1000, 300)}) {
    LotPicture how;
    how.moment = LotMoment::after;
    how.loop_below = true;
    how.text = 19;
    const std::vector<NamePlace> names = place_names(c.plan, &c.outcome, size, how);
    ASSERT_GE(names.size(), 8u);
    for (std::size_t i = 0; i < names.size(); ++i) {
      EXPECT_TRUE(QRectF(QPointF(0, 0), size).contains(names[i].box)) << names[i].name.toStdString();
      for (std::size_t k = 0; k < i; ++k)
        EXPECT_FALSE(names[k].box.adjusted(1, 1, -1, -1).intersects(names[i].box))
            << names[i].name.toStdString() << " on " << names[k].name.toStdString();
    }
  }
}

// Kestrel Bend's dogwood stands beside the house; a line from it has a way round.
TEST(ProposalLook, NoLineLeadsAcrossAHouse) {
  for (const char* which : {"alder", "kestrel", "long names"}) {
    const Case& c = *std::ranges::find(cases(), which, &Case::name);
    LotPicture how;
    how.moment = LotMoment::after;
    how.text = 22;
    const std::vector<NamePlace> names = place_names(c.plan, &c.outcome, QSizeF(1100, 700), how);
    QVector<QPair<QString, QPolygonF>> houses;
    for (const NamePlace& name : names)
      for (const Feature& f : c.plan.site.features)
        if (f.kind == FeatureKind::house && display_name(f) == name.name.toStdString())
          houses.push_back({name.name, name.thing});
    ASSERT_FALSE(houses.isEmpty());
    for (const NamePlace& name : names)
      for (const auto& [house, walls] : houses) {
        if (!name.leader || name.name == house) continue;
        for (int i = 0; i <= 200; ++i)
          EXPECT_FALSE(walls.containsPoint(name.leader->pointAt(i / 200.0), Qt::OddEvenFill))
              << c.name << ": " << name.name.toStdString();
      }
  }
}

// The bars are the calendar: minute by minute what is open there is open here.
TEST(ProposalLook, TheBarsOfTheDaysAreTheCalendar) {
  for (const Case& c : cases()) {
    const CrewCalendar& calendar = *c.outcome.calendar;
    const std::vector<DaysRow> rows = days_rows(c.outcome);
    ASSERT_EQ(rows.size(), c.outcome.layout.trenches.size() + 2) << c.name;
    for (double t = 30; t < calendar.filled; t += 600) {
      for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
        const bool smaller = i == c.outcome.layout.trenches.size();
        bool open = false, drawn = false;
        for (const OpenTrench& o : calendar.open) {
          const DigStep& step = c.outcome.order->steps[static_cast<std::size_t>(o.step)];
          const bool own =
              smaller ? step.kind != DigKind::trench
                      : step.kind == DigKind::trench && step.trench == c.outcome.layout.trenches[i].number;
          open = open || (own && o.from <= t && t < o.to);
        }
        for (const DaysRow::Bar& bar : rows[i].bars)
          drawn = drawn || (bar.from * calendar.day_length <= t && t < bar.to * calendar.day_length);
        ASSERT_EQ(open, drawn) << c.name << ", " << rows[i].name.toStdString() << " at " << t;
      }
    }
    EXPECT_TRUE(rows.back().test);
  }
}
