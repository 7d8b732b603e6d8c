// SPDX-License-Identifier: GPL-3.0-or-later
// The program as a shell sees it: standard output, standard error and exit status, each exactly.
#include <gtest/gtest.h>

#include <QProcess>
#include <QTemporaryDir>

#include "files/atomic_file.h"
#include "files/json_text.h"
#include "files/plan_file.h"
#include "plan/edits.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;

// What solving the tiny lot says on standard error.
constexpr const char* kNoTrench =
    "underlawn: a.underlawn: Trenches placed is 0; it must be at least 1. Shorten the trench, lessen a "
    "setback or "
    "clearance where the code allows, or move what is in the way.\n";

struct Ran {
  std::string out, err;
  int status = -1;
};

// Two houses' worth of lot, 40 ft by 60 ft: no trench of the usual loop fits.
Plan tiny_lot() {
  Plan plan;
  const auto feet = [](double x, double y) { return Point{x * kFoot, y * kFoot}; };
  plan = edit::with_lot(plan, {feet(0, 0), feet(40, 0), feet(40, 60), feet(0, 60)}, 10 * kFoot);
  Feature house;
  house.kind = FeatureKind::house;
  house.name = "House";
  house.points = {feet(10, 12), feet(30, 12), feet(30, 30), feet(10, 30)};
  return edit::with_entry(edit::with_feature(plan, house), feet(20, 30));
}

class Cli : public testing::Test {
 protected:
  // In a folder of its own, without a display.
  Ran run(const QStringList& words) {
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) environment.remove(name);
    process.setProcessEnvironment(environment);
    process.setWorkingDirectory(folder_.path());
    process.start(UNDERLAWN_PROGRAM, words);
    EXPECT_TRUE(process.waitForFinished(120'000));
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
    return {process.readAllStandardOutput().toStdString(), process.readAllStandardError().toStdString(),
            process.exitCode()};
  }
  void expect(const QStringList& words, int status, const std::string& out, const std::string& err) {
    const Ran ran = run(words);
    const std::string command = words.join(' ').toStdString();
    EXPECT_EQ(ran.out, out) << command;
    EXPECT_EQ(ran.err, err) << command;
    EXPECT_EQ(ran.status, status) << command;
  }
  std::string path(const std::string& name) const { return (folder_.path() + "/").toStdString() + name; }
  void put(const std::string& name, std::string_view bytes) const {
    ASSERT_TRUE(write_file(path(name), bytes).has_value());
  }
  std::string get(const std::string& name) const {
    return read_file(path(name), 64 << 20).value_or("not there");
  }
  bool there(const std::string& name) const { return std::filesystem::exists(path(name)); }

  QTemporaryDir folder_;
};

std::string sample(const std::string& name) {
  return std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name;
}

using testing::HasSubstr;
using testing::StartsWith;

}  // namespace

TEST_F(Cli, PrintsItsVersion) {
  expect({"--version"}, 0, "underlawn 0.1.0\n", "");
}

TEST_F(Cli, PrintsHelpThatNamesEveryVerb) {
  const Ran ran = run({"--help"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_EQ(ran.err, "");
  for (const char* verb : {"solve", "check", "figures", "sheet", "resave", "new"})
    EXPECT_THAT(ran.out, HasSubstr("\n  underlawn " + std::string(verb) + " ")) << verb;
}

TEST_F(Cli, PrintsHelpForAVerb) {
  expect({"resave", "--help"}, 0,
         "Usage: underlawn resave PLAN [--strict]\n"
         "\n"
         "Brings PLAN to the newest format and the usual order. Leaves the file alone if\n"
         "something in it is not understood and would be lost.\n"
         "\n"
         "Options:\n"
         "  --strict        Write nothing; status 1 if saving would change the file.\n",
         "");
}

TEST_F(Cli, KeepsHelpWithinEightyColumns) {
  std::istringstream lines(run({"--help"}).out);
  for (std::string line; std::getline(lines, line);)
    EXPECT_LE(QString::fromStdString(line).size(), 80) << line;
}

TEST_F(Cli, PrintsTheManPageThatIsCommitted) {
  const auto committed = read_file(std::string(UNDERLAWN_SOURCE_DIR) + "/packaging/underlawn.1", 1 << 20);
  ASSERT_TRUE(committed.has_value());
  expect({"--man"}, 0, *committed, "");
}

TEST_F(Cli, RefusesWhatItDoesNotUnderstand) {
  expect({"--colour"}, 2, "", "underlawn: There is no option “--colour”. Try “underlawn --help”.\n");
  expect({"slove"}, 2, "", "underlawn: “slove” is neither a verb nor a plan. Try “underlawn --help”.\n");
  expect({"slove", "x"}, 2, "", "underlawn: There is no verb “slove”. Try “underlawn --help”.\n");
  expect({"solve"}, 2, "", "underlawn: Solve needs PLAN. Usage: underlawn solve PLAN [--out DIR]\n");
  expect({"check", "a", "b"}, 2, "",
         "underlawn: Check does not know what to do with “b”. Usage: underlawn check PLAN\n");
}

TEST_F(Cli, SaysThatThereIsNoDisplay) {
  expect({}, 2, "", "underlawn: There is no display to open the window on. Try “underlawn --help”.\n");
}

TEST_F(Cli, SolvesWhereThereIsNoDisplay) {
  ASSERT_TRUE(save_plan(tiny_lot(), path("tiny.underlawn")).has_value());
  const Ran ran = run({"tiny.underlawn"});
  EXPECT_THAT(
      ran.err,
      StartsWith("underlawn: There is no display to open the window on; solving the plan instead.\n"));
  EXPECT_THAT(ran.out, HasSubstr("tiny-out/results.json\n"));
  EXPECT_TRUE(there("tiny-out/results.json"));
}

TEST_F(Cli, SaysWhyAFileCannotBeRead) {
  expect({"check", "none.underlawn"}, 3, "",
         "underlawn: none.underlawn: The file “none.underlawn” is not read (No such file or directory). "
         "Check the name "
         "and whether you may read it.\n");
  put("broken.underlawn", "{\"format_version\": 2,\n");
  for (const char* verb : {"check", "solve", "figures", "sheet", "resave"})
    expect({verb, "broken.underlawn"}, 3, "",
           "underlawn: broken.underlawn: The plan ends too early, in line 2, column 1. Take it from a "
           "backup, or mend it "
           "there with a text editor.\n");
  EXPECT_EQ(get("broken.underlawn"), "{\"format_version\": 2,\n");
}

TEST_F(Cli, WritesANewPlanOnce) {
  expect({"new", "a.underlawn"}, 0, "a.underlawn\n", "");
  EXPECT_EQ(get("a.underlawn"), plan_to_text(Plan{}));
  expect({"new", "a.underlawn"}, 4, "",
         "underlawn: a.underlawn: The file is there already and was left as it is. Choose another name.\n");
  expect({"new", "none/a.underlawn"}, 4, "",
         "underlawn: none/a.underlawn: The file “none/a.underlawn” is not written (No such file or "
         "directory). What was "
         "there before is unchanged. Choose another folder or name.\n");
}

TEST_F(Cli, ChecksAPlanWithNothingDrawn) {
  ASSERT_TRUE(save_plan(Plan{}, path("a.underlawn")).has_value());
  const Ran ran = run({"check", "a.underlawn"});
  EXPECT_EQ(ran.status, 1);
  EXPECT_EQ(ran.err,
            "underlawn: a.underlawn: Lot line is not drawn; it must be an outline of at least 3 corners. "
            "Draw it corner by corner.\n");
}

TEST_F(Cli, ChecksAndAccepts) {
  Plan plan = tiny_lot();
  ASSERT_TRUE(save_plan(plan, path("a.underlawn")).has_value());
  const Ran open = run({"check", "a.underlawn"});
  EXPECT_EQ(open.status, 1);
  EXPECT_EQ(open.err, kNoTrench);
  EXPECT_EQ(
      open.out,
      "error: circuits_missing: No trench fits (0, required 4). Ask for a shorter trench, a closer spacing "
      "or "
      "fewer circuits.\n"
      "hint: bend_too_tight/coil: The loops are tighter than 3/4 in DR 11 may be bent cold (3'-0\", required "
      "4'-4 1/2\"). Use pipe delivered in coils and lay it in its own curve; tie the loops, force none, warm "
      "the "
      "coil in the cold.\n"
      "1 error, 0 warnings, 1 hint, 0 accepted\n");

  std::istringstream lines(open.out);
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with("error: ")) {
      const std::string key = line.substr(7, line.find(": ", 7) - 7);
      plan = edit::with_acceptance(plan, {key, "a test"});
    }
  ASSERT_TRUE(save_plan(plan, path("a.underlawn")).has_value());
  const Ran accepted = run({"check", "a.underlawn"});
  EXPECT_EQ(accepted.status, 0);
  EXPECT_THAT(accepted.out, HasSubstr(" [accepted: a test]\n"));
  EXPECT_THAT(accepted.out, HasSubstr("\n0 errors, "));
}

TEST_F(Cli, TellsHowAFigureCameAbout) {
  ASSERT_TRUE(save_plan(tiny_lot(), path("a.underlawn")).has_value());
  expect({"figures", "a.underlawn", "coil.length"}, 0,
         "coil.length = 800'-0\"\n"
         "    Coil length, return pipe included\n"
         "    how: typed\n",
         kNoTrench);
  expect({"figures", "a.underlawn", "no.such"}, 2, "",
         std::string(kNoTrench) +
             "underlawn: a.underlawn: There is no figure “no.such”. Without a key, “underlawn figures” lists "
             "them.\n");
}

TEST_F(Cli, ListsTheFiguresOfAGroup) {
  ASSERT_TRUE(save_plan(tiny_lot(), path("a.underlawn")).has_value());
  const Ran all = run({"figures", "a.underlawn"}), group = run({"figures", "a.underlawn", "coil"});
  EXPECT_EQ(group.status, 0);
  EXPECT_LT(group.out.size(), all.out.size());
  std::istringstream lines(group.out);
  for (std::string line; std::getline(lines, line);) EXPECT_THAT(line, StartsWith("coil."));
  EXPECT_THAT(group.out, HasSubstr("800'-0\""));
  expect({"figures", "a.underlawn", "ground"}, 0,
         "ground.swell        25 %         Swell of loose soil\n"
         "ground.shrinkage    10 %         Shrinkage of compacted soil\n"
         "ground.repose       37.00°       Angle of repose of spoil\n"
         "ground.frost_depth  2'-11 7/16\"  Frost depth\n",
         kNoTrench);
}

TEST_F(Cli, ResavesWithoutLosingAnything) {
  const std::string whole = plan_to_text(tiny_lot());
  std::string spaced = whole;
  spaced.insert(1, "\n\n");
  put("a.underlawn", spaced);
  expect({"resave", "a.underlawn", "--strict"}, 1, "a.underlawn: saving would change it\n", "");
  EXPECT_EQ(get("a.underlawn"), spaced);
  expect({"resave", "a.underlawn"}, 0, "a.underlawn\n", "");
  EXPECT_EQ(get("a.underlawn"), whole);
  expect({"resave", "--strict", "a.underlawn"}, 0, "a.underlawn: unchanged\n", "");

  std::string strange = whole;
  strange.insert(1, "\n  \"colour\": 1,");
  put("a.underlawn", strange);
  expect({"resave", "a.underlawn"}, 3, "",
         "underlawn: a.underlawn: The plan has “colour”, which is not understood. It was left out and is "
         "lost when the "
         "plan is saved over the file.\n"
         "underlawn: a.underlawn: Not saved: something in the file, named above, would be lost.\n");
  EXPECT_EQ(get("a.underlawn"), strange);
}

TEST_F(Cli, FindsTheSamplesAsSaved) {
  for (const char* name : {"alder-lane.underlawn", "kestrel-bend.underlawn"})
    expect({"resave", "--strict", QString::fromStdString(sample(name))}, 0, sample(name) + ": unchanged\n",
           "");
}

TEST_F(Cli, SolvesASampleIntoTheFolderItNames) {
  const Ran ran =
      run({"solve", QString::fromStdString(sample("alder-lane.underlawn")), "--out", "made/here"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_EQ(ran.out, "made/here/results.json\nmade/here/dig-sheet.pdf\n");
  EXPECT_EQ(ran.err, "");
  EXPECT_THAT(get("made/here/dig-sheet.pdf"), StartsWith("%PDF-"));
  const Json results = Json::parse(get("made/here/results.json"));
  EXPECT_EQ(results["project"], "Alder Lane 14");
  EXPECT_FALSE(results["layout"]["trenches"].empty());
}

TEST_F(Cli, SaysWhyItCannotWrite) {
  ASSERT_TRUE(save_plan(tiny_lot(), path("a.underlawn")).has_value());
  put("file", "x");
  const Ran ran = run({"solve", "a.underlawn", "--out", "file"});
  EXPECT_EQ(ran.status, 4);
  EXPECT_EQ(ran.out, "");
  EXPECT_THAT(ran.err, StartsWith("underlawn: file: The folder cannot be made"));
  EXPECT_EQ(get("file"), "x");
}

TEST_F(Cli, WritesTheSheetToThePaperAndScaleAsked) {
  const QString plan = QString::fromStdString(sample("alder-lane.underlawn"));
  expect({"sheet", plan, "--paper", "tabloid", "--scale", "1:360", "--out", "s.pdf"}, 0, "s.pdf\n", "");
  EXPECT_THAT(get("s.pdf"), StartsWith("%PDF-"));
}

TEST_F(Cli, WritesTheSheetsThatAreNamedInOneFileOrEachInItsOwn) {
  const QString plan = QString::fromStdString(sample("alder-lane.underlawn"));
  expect({"sheet", plan, "--kind", "proposal,dig", "--date", "2026-05-04", "--out", "both.pdf"}, 0,
         "both.pdf\n", "");
  expect({"sheet", plan, "--kind", "proposal,dig", "--each", "--out", "each"}, 0,
         "each/alder-lane-proposal.pdf\neach/alder-lane-dig-sheet.pdf\n", "");
  EXPECT_THAT(get("each/alder-lane-proposal.pdf"), StartsWith("%PDF-"));
  const std::string once = get("both.pdf");
  run({"sheet", plan, "--kind", "proposal,dig", "--date", "2026-05-04", "--out", "again.pdf"});
  EXPECT_EQ(get("again.pdf"), once);
}

TEST_F(Cli, RefusesAKindOfSheetOrADateThatIsNone) {
  const Ran kind = run({"sheet", "a", "--kind", "dig,napkin"});
  EXPECT_EQ(kind.status, 2);
  EXPECT_THAT(kind.err,
              StartsWith("underlawn: The kind of sheet is “napkin”; it must be proposal, permit, dig"));
  EXPECT_EQ(run({"sheet", "a", "--kind", ""}).status, 2);
  EXPECT_EQ(run({"sheet", "a", "--date", "2026-13-40"}).status, 2);
}

TEST_F(Cli, RefusesAPaperOrScaleThatIsNone) {
  expect({"sheet", "a", "--paper", "napkin"}, 2, "",
         "underlawn: The paper is “napkin”; it must be letter, tabloid, a4 or a3.\n");
  for (const char* scale : {"0", "-5", "x", "12x", "", "1:", "999999999999"})
    expect({"sheet", "a", "--scale", scale}, 2, "",
           "underlawn: The scale is “" + std::string(scale) +
               "”; it must be a whole number from 1 to 100000, for 1:N.\n");
}

TEST_F(Cli, WritesTheNetworkForEpanetToStandardOutputOrAFile) {
  const QString plan = QString::fromStdString(sample("alder-lane.underlawn"));
  const Ran ran = run({"epanet", plan});
  EXPECT_EQ(ran.status, 0);
  EXPECT_EQ(ran.err, "");
  EXPECT_THAT(ran.out, StartsWith("[TITLE]\n"));
  for (const char* part : {"[JUNCTIONS]", "[RESERVOIRS]", "[PIPES]", "UNITS LPS", "HEADLOSS D-W", "[END]"})
    EXPECT_NE(ran.out.find(part), std::string::npos) << part;
  EXPECT_NE(ran.out.find("IN 0 -0.57\n"), std::string::npos) << "9 gpm, typed as 5.7e-4 m3/s, go in";
  expect({"epanet", plan, "--out", "loop.inp"}, 0, "loop.inp\n", "");
  EXPECT_EQ(get("loop.inp"), ran.out);
}

TEST_F(Cli, SaysWhyThereIsNoNetwork) {
  ASSERT_TRUE(save_plan(tiny_lot(), path("a.underlawn")).has_value());
  expect({"epanet", "a.underlawn"}, 1, "", kNoTrench);
}

TEST_F(Cli, SaysThatItsOutputIsLost) {
  QProcess process;
  process.setStandardOutputFile("/dev/full");
  process.start(UNDERLAWN_PROGRAM, {"--help"});
  ASSERT_TRUE(process.waitForFinished());
  EXPECT_EQ(process.exitCode(), 4);
  EXPECT_EQ(process.readAllStandardError(), "underlawn: Standard output could not be written.\n");
}

TEST_F(Cli, TakesNamesWithBlanksAndAccents) {
  expect({"new", "Straße 7.underlawn"}, 0, "Straße 7.underlawn\n", "");
  EXPECT_TRUE(there("Straße 7.underlawn"));
}

TEST_F(Cli, SizeTellsTheNeedOfALotThatTakesNothing) {
  put("a.underlawn", plan_to_text(tiny_lot()));
  const Ran table = run({"size", "a.underlawn"});
  EXPECT_EQ(table.status, 0);
  EXPECT_NE(table.out.find(" needed, none drawn. The lot gives none"), std::string::npos) << table.out;
  const Ran json = run({"size", "a.underlawn", "--json"});
  const auto read = json_from_text(json.out, "the sizing");
  ASSERT_TRUE(read.has_value()) << json.out;
  EXPECT_FALSE(read->value["needed"]["on_lot"].get<bool>());
  EXPECT_GE(read->value["needed"]["circuits"].get<int>(), 1);
  EXPECT_FALSE(read->value.contains("chance"));
  EXPECT_EQ(run({"size", "a.underlawn", "--draws", "many"}).status, 2);
}

TEST_F(Cli, WaysCompareThePlanWithOthers) {
  const QString plan = QString::fromStdString(sample("alder-lane.underlawn"));
  const Ran table = run({"ways", plan});
  EXPECT_EQ(table.status, 0) << table.err;
  EXPECT_NE(table.out.find("\nAs planned "), std::string::npos) << table.out;
  EXPECT_NE(table.out.find("holds limits"), std::string::npos);
  const Ran json = run({"ways", plan, "--json"});
  const auto read = json_from_text(json.out, "the ways");
  ASSERT_TRUE(read.has_value()) << json.out;
  const auto& ways = read->value["ways"];
  ASSERT_GE(ways.size(), 3u);
  EXPECT_EQ(ways[0]["kind"], "as_planned");
  EXPECT_EQ(ways[0]["trenches"].size(), ways[0]["circuits"].get<std::size_t>());
  for (const auto& way : ways) EXPECT_GT(way["cost_money"].get<double>(), 0);
}

TEST_F(Cli, CalendarTellsOrderAndTasks) {
  const QString plan = QString::fromStdString(sample("alder-lane.underlawn"));
  const Ran table = run({"calendar", plan});
  EXPECT_EQ(table.status, 0) << table.err;
  EXPECT_NE(table.out.find("Digging trench 1"), std::string::npos) << table.out;
  EXPECT_NE(table.out.find("One more rack"), std::string::npos);
  const Ran json = run({"calendar", plan, "--json"});
  const auto read = json_from_text(json.out, "the calendar");
  ASSERT_TRUE(read.has_value()) << json.out;
  const auto& tree = read->value;
  ASSERT_GE(tree["order"].size(), 3u);
  EXPECT_GE(tree["tasks"].size(), tree["order"].size());
  EXPECT_GE(tree["filled_s"].get<double>(), tree["tested_s"].get<double>());
  put("a.underlawn", plan_to_text(Plan{}));
  EXPECT_EQ(run({"calendar", "a.underlawn"}).status, 1);
}

TEST_F(Cli, WaysTellTheBendsOfADrawnTrench) {
  Plan plan;
  for (Point p : {Point{0, 0}, {80, 0}, {80, 60}, {0, 60}}) plan.site.lot.push_back({p, 3});
  plan.wishes.given = {{{10, 30}, {40, 45}, 0, 0, {{30, 30}}}};
  put("a.underlawn", plan_to_text(plan));
  const auto read = json_from_text(run({"ways", "a.underlawn", "--json"}).out, "the ways");
  ASSERT_TRUE(read.has_value());
  const auto& trench = read->value["ways"][0]["trenches"][0];
  ASSERT_TRUE(trench.contains("bends_m")) << trench.dump();
  EXPECT_EQ(trench["bends_m"], (Json{{30, 30}}));
}

TEST_F(Cli, WaysOfAnEmptyPlanSayWhatIsMissing) {
  put("a.underlawn", plan_to_text(Plan{}));
  const Ran ran = run({"ways", "a.underlawn"});
  EXPECT_EQ(ran.status, 1);
  EXPECT_TRUE(ran.out.empty());
  EXPECT_FALSE(ran.err.empty());
}

TEST_F(Cli, AsBuiltTellsWhatStillHoldsAndMends) {
  Plan plan = plan_from_text(*read_file(sample("alder-lane.underlawn"), 1 << 22))->value;
  const std::string planned = plan_to_text(plan);
  put("planned.underlawn", planned);
  const Ran same = run({"as-built", "planned.underlawn"});
  EXPECT_NE(same.out.find("As built is as planned"), std::string::npos) << same.err;
  BuiltTrench t;
  t.number = 2;
  t.length = 12;
  plan.as_built.trenches = {t};
  put("built.underlawn", plan_to_text(plan));
  const Ran table = run({"as-built", "built.underlawn", "--csv", "built.csv"});
  EXPECT_EQ(table.status, 1) << table.err;
  EXPECT_NE(table.out.find("no longer holds"), std::string::npos) << table.out;
  EXPECT_NE(table.out.find("Throttle"), std::string::npos) << table.out;
  EXPECT_TRUE(there("built.csv"));
  const Ran json = run({"as-built", "built.underlawn", "--json"});
  const auto read = json_from_text(json.out, "the as-built");
  ASSERT_TRUE(read.has_value()) << json.out;
  EXPECT_FALSE(read->value["holds"].get<bool>());
  EXPECT_NE(read->value["plan"], read->value["as_built"]);
  EXPECT_GE(read->value["mends"].size(), 1u);
}

TEST_F(Cli, DeedPrintsTraverseClosureAndArea) {
  put("deed.txt", "N 0 E 100 ft\nN 90 E 200 ft\nS 0 E 100 ft\nN 90 W 199.90 ft to the point of beginning\n");
  const Ran ran = run({"deed", "deed.txt"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("Misclosure 0.10 ft, one part in 5999"));
  EXPECT_THAT(ran.out, HasSubstr("N 90°00'00\" E"));
  const auto json = json_from_text(run({"deed", "deed.txt", "--json", "--adjust"}).out, "the deed");
  ASSERT_TRUE(json.has_value());
  ASSERT_EQ(json->value["courses"].size(), 4u);
  EXPECT_NEAR(json->value["misclosure_m"].get<double>(), 0.1 * kFoot, 1e-9);
  EXPECT_NEAR(json->value["courses"][1]["departure_correction_m"].get<double>(), -0.1 * kFoot * 200 / 599.9,
              1e-9);
}

TEST_F(Cli, DeedNamesTheLineThatCannotBeRead) {
  put("deed.txt", "N 0 E 100 ft\nS 95 E 20 ft\n");
  const Ran ran = run({"deed", "deed.txt"});
  EXPECT_EQ(ran.status, 1);
  EXPECT_THAT(ran.err, HasSubstr("line 2"));
  EXPECT_EQ(run({"deed", "not-there.txt"}).status, 3);
  EXPECT_EQ(run({"deed", "deed.txt", "--units", "ells"}).status, 2);
}

TEST_F(Cli, UnknownUnitsOfASheetAreRefusedInWholeWords) {
  const Ran ran = run({"sheet", UNDERLAWN_SOURCE_DIR "/samples/alder-lane.underlawn", "--units", "si"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_THAT(ran.err, HasSubstr("The system of units is “si”; it must be us or metric."));
}

}  // namespace underlawn
