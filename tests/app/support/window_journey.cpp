// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/support/window_journey.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QImage>
#include <QTest>

#include "app/support/wait.h"
#include "canvas/canvas.h"
#include "support/drawing_files.h"
#include "support/sample_plans.h"
#include "window/as_built_panel.h"
#include "window/drawing_reader.h"
#include "window/import_card.h"
#include "window/kitchen_view.h"
#include "window/notice_bar.h"
#include "window/picture_card.h"
#include "window/sheet_strip.h"
#include "window/side_column.h"
#include "window/size_panel.h"
#include "window/ways_panel.h"

namespace underlawn {

namespace {

// Names of the plan in brackets, so that they are told from words.
std::string named(const std::string& name) {
  return name.empty() ? name : "⟦" + name + "⟧";
}

void name_things(Plan& plan) {
  for (Feature& f : plan.site.features) f.name = named(f.name);
  plan.title = {named("Alder"),    named("14 Alder Lane"), named("Owner"),
                named("Designer"), named("555"),           named("note")};
}

// Something of every kind on the lot, and something on every page.
Plan rich_plan() {
  Plan plan = sample::half_acre();
  plan.thermal.years = 1;
  name_things(plan);
  plan.site.heights = {{sample::feet(10, 10), 1}, {sample::feet(90, 90), 1.5}, {sample::feet(20, 100), 2}};
  Dimension d;
  d.from = sample::feet(10, 10);
  d.to = sample::feet(40, 10);
  plan.dimensions = {d};
  plan.survey.deed.text = "N 0 E 30 m\nN 90 E 40 m\nS 0 E 30 m\nN 90 W 39.9 m\n";
  Sighting s;
  s.name = named("P1");
  s.method = SightingMethod::two_distances;
  s.from = "lot 1";
  s.to = "lot 2";
  s.first = s.second = 30;
  plan.survey.notebook = {s};
  plan.test.readings = {{0, 620'000, {}}, {600, 610'000, {}}, {1800, 600'000, 15.0}};
  plan.record.test.start = "2026-05-14 09:30";
  plan.record.test.end = "2026-05-14 10:00";
  plan.record.flush = {FlushReading{}};
  plan.record.flush[0].flow = 0.002;
  plan.record.fill.freezing_point = -3;
  BuiltTrench short_one;
  short_one.number = 1;
  short_one.length = 20;
  plan.as_built.trenches = {short_one};
  return plan;
}

// Other sides of the pages: what shows only under another choice.
std::vector<Plan> other_sides(const Plan& rich) {
  std::vector<Plan> all(4, rich);
  all[0].units = UnitSystem::metric;
  all[0].thermal.load_source = LoadSource::hours;
  all[0].wishes.aim = Aim::mix;
  all[1].thermal.climate_source = ClimateSource::typed;
  all[1].thermal.weather_source = WeatherSource::file;
  all[1].flow.fluid = Fluid::propylene_glycol;
  all[1].flow.mass_fraction = 0.2;
  all[1].wishes.level_floor = !rich.wishes.level_floor;
  all[2].wishes.trench_depth = -1;  // refused everywhere
  all[2].wishes.direction = 0.3;
  all[3].wishes.pattern = CoilPattern::four_pipes;
  all[3].dig.slope = 1.0;
  all[3].dig.coil_sides = Sides::slope;
  all[3].flow.header_sizes = {rich.wishes.header_pipe};
  return all;
}

// A lot on a layer without letters, so that nothing in it reads like a word.
sample::DxfValues square() {
  sample::DxfValues all;
  const std::vector<Point> corners = {{0, 0}, {50, 0}, {50, 40}, {0, 40}};
  for (std::size_t i = 0; i < 4; ++i)
    for (const auto& value : sample::dxf_line("1", corners[i], corners[(i + 1) % 4])) all.push_back(value);
  return all;
}

}  // namespace

void write_file_of(const QString& path, const std::string& bytes) {
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(bytes.data(), static_cast<qint64>(bytes.size()));
}

WindowJourney::WindowJourney(const QString& folder, WindowTexts& texts)
    : folder_(folder), window_(folder + "/kept"), texts_(texts) {
  DrawingReader::set_program(UNDERLAWN_PROGRAM);
  window_.resize(1600, 1000);
  window_.show();
  QApplication::setActiveWindow(&window_);
}

WindowJourney::~WindowJourney() {
  window_.document().start_new();
}

void WindowJourney::go() {
  look();
  take(rich_plan());
  tabs();
  for (const Plan& plan : other_sides(rich_plan())) {
    take(plan);
    tabs();
  }
  take(rich_plan());
  things();
  tools();
  over_the_window();
  sheets();
  cards();
  notices();
}

void WindowJourney::searches() {
  take(rich_plan());
  run("edit.find_ways");
  ASSERT_TRUE(wait_until([&] { return !window_.side()->ways_panel()->service().busy(); }));
  look();
  run("edit.size_loop");
  ASSERT_TRUE(wait_until([&] { return !window_.findChild<SizePanel*>()->service().busy(); }, 600'000));
  look();
}

void WindowJourney::run(std::string_view id) {
  window_.actions().action(id)->trigger();
  QCoreApplication::processEvents();
}

// What tools have just drawn is solved first: a number on the way would be seen on a slow machine only.
void WindowJourney::look() {
  ASSERT_TRUE(wait_until([&] { return !window_.document().stale(); }));
  QCoreApplication::processEvents();
  texts_.read(&window_, [](const QWidget* w) { return qobject_cast<const KitchenView*>(w) != nullptr; });
}

void WindowJourney::take(const Plan& plan) {
  window_.document().commit(plan, "");
  ASSERT_TRUE(wait_until([&] { return !window_.document().stale(); }));
}

void WindowJourney::tabs() {
  for (const Command& c : commands()) {
    if (c.group != CommandGroup::panel || c.id == "panel.drawing") continue;
    run(c.id);
    const Outcome* outcome = window_.document().outcome();
    if (c.id == "panel.as_built" && outcome != nullptr && !outcome->layout.trenches.empty()) {
      ASSERT_TRUE(wait_until([&] { return window_.side()->as_built_panel()->shown() != nullptr; }));
    }
    look();
  }
}

void WindowJourney::things() {
  using Kind = Selected::Kind;
  const auto pick = [&](Selected what) {
    window_.selection().select(what);
    look();
  };
  for (const Feature& f : window_.document().plan().site.features) pick({Kind::feature, f.id, -1});
  for (Kind kind : {Kind::lot, Kind::entry, Kind::height, Kind::header, Kind::run, Kind::dimension})
    pick({kind, 0, -1});
  pick({Kind::lot_edge, 0, 0});
  pick({Kind::trench, 1, -1});
  std::vector<std::vector<Selected>> several(5);
  for (const Feature& f : window_.document().plan().site.features) {
    several[0].push_back({Kind::feature, f.id, -1});
    if (f.kind == FeatureKind::utility) several[1].push_back({Kind::feature, f.id, -1});
    if (f.kind == FeatureKind::tree) several[2].push_back({Kind::feature, f.id, -1});
  }
  for (int i : {0, 1}) several[3].push_back({Kind::height, i, -1});
  for (int i : {1, 2}) several[4].push_back({Kind::trench, i, -1});
  for (const auto& some : several) {
    window_.selection().select_several(some);
    look();
  }
  window_.selection().select_several({{Kind::feature, several[0].front().id, -1}, {Kind::lot, 0, -1}});
  look();
  window_.selection().clear();
}

void WindowJourney::tools() {
  for (const Command& c : commands()) {
    if (!c.id.starts_with(kToolPrefix)) continue;
    run(c.id);
    texts_.read(window_.canvas()->status(), QString::fromUtf8(c.id.data()));
    QTest::mouseClick(window_.canvas(), Qt::LeftButton, Qt::NoModifier, window_.canvas()->rect().center());
    texts_.read(window_.canvas()->status(), QString::fromUtf8(c.id.data()));
    QTest::keyClick(window_.canvas(), Qt::Key_Escape);
  }
  run("tool.select");
}

void WindowJourney::over_the_window() {
  for (const char* id : {"help.find", "help.keys", "help.about"}) {
    run(id);
    look();
    ASSERT_NE(QApplication::focusWidget(), nullptr) << id;
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
  }
}

void WindowJourney::sheets() {
  run("file.sheet");
  look();
  window_.sheet_strip()->close_strip();
}

void WindowJourney::cards() {
  const QString path = folder_ + "/⟦lot⟧.dxf";
  write_file_of(path, sample::dxf_text(sample::dxf_drawing(square())));
  window_.import_card()->read(path);
  ASSERT_TRUE(wait_until([&] { return !window_.import_card()->reading(); }));
  look();
  window_.import_card()->close_card();
  picture();
  look();
  window_.picture_card()->close_card();
}

// By its file: asking for one opens a dialog of the system.
void WindowJourney::picture() {
  const QString path = folder_ + "/⟦plat⟧.png";
  QImage image(400, 200, QImage::Format_RGB32);
  image.fill(Qt::red);
  ASSERT_TRUE(image.save(path));
  window_.picture_card()->add(path);
}

void WindowJourney::notices() {
  window_.files().open(folder_ + "/none.underlawn");
  look();
  window_.bar()->take(1);
  look();
}

}  // namespace underlawn
