// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/verbs.h"

#include <algorithm>

#include "base/say.h"

namespace underlawn::cli {

const std::vector<Verb>& verbs() {
  static const std::vector<Verb> kVerbs = {
      {"solve",
       {{"PLAN"}},
       {{"--out", "DIR",
         mark("Folder to write into; made if it is not there. Without it, PLAN's name with “-out” behind "
              "it.")}},
       mark("Solve a plan; write results.json and dig-sheet.pdf."),
       mark("Solves PLAN and writes everything that follows from it into a folder: results.json with every "
            "figure, and the "
            "dig sheet as dig-sheet.pdf, on the paper of the plan's units (letter or A4). Prints the names "
            "of the "
            "files."),
       run_solve},
      {"check",
       {{"PLAN"}},
       {},
       mark("List what the checks find; status 1 if unaccepted errors remain."),
       mark("Solves PLAN and prints one line for each finding: how grave it is, its key, what was measured "
            "and "
            "required, and "
            "what to do. Findings that the plan accepts are marked and give their reason."),
       run_check},
      {"figures",
       {{"PLAN"}, {"KEY", false}},
       {},
       mark("List the figures, or tell how one came about."),
       mark("Solves PLAN and prints every figure with its key. With the KEY of a figure, prints its formula "
            "and "
            "source, and "
            "those of every figure it came from; with the first part of keys (“dig”), lists that group."),
       run_figures},
      {"sheet",
       {{"PLAN"}},
       {{"--kind", "LIST", mark("Sheets with commas between them, or all. Without it, dig.")},
        {"--paper", "SIZE", mark("letter, tabloid, a4 or a3. Without it, letter or A4 by the plan's units.")},
        {"--language", "CODE",
         mark("Language of the sheets: en or es. Without it, as the plan asks, or that of the program.")},
        {"--units", "SYSTEM", mark("Units of the sheets: us or metric. Without it, as the plan asks.")},
        {"--scale", "N",
         mark("Draw at 1:N. Without it, as the plan asks, or at the largest usual scale at which it fits.")},
        {"--page-a-trench", "", mark("The dig sheet has a page for each trench as well.")},
        {"--each", "", mark("A file for each sheet, in a folder.")},
        {"--date", "DAY", mark("Date in the title block, as 2026-05-04. Without it, today.")},
        {"--out", "FILE", mark("PDF to write, or folder. Without it, named after PLAN and the sheet.")}},
       mark("Write sheets to scale, as vector PDF: for the crew, the permit, the family."),
       mark("Solves PLAN and writes its sheets: proposal (for the family), permit, dig (from which a crew "
            "sets "
            "out and digs), details, materials, record_form (empty boxes), record, as_built, report. Where a "
            "scale is too large for the paper, page and "
            "standard error say what lies off the page."),
       run_sheet},
      {"response",
       {{"PLAN"}},
       {{"--times", "LIST",
         mark("Times with commas between them, as 1h,30d. Without it, ten from an hour to 25 years.")},
        {"--out", "FILE", mark("CSV file to write. Without it, to standard output.")}},
       mark("Write how the ground answers a steady heat, as CSV."),
       mark("Solves PLAN and writes the step response of its loop: how much warmer the pipe wall is, in the "
            "mean, "
            "when every metre of pipe gives 1 W from time 0. Columns time_s and response_mk_w."),
       run_response},
      {"hours",
       {{"PLAN"}},
       {{"--year", "WHICH", mark("first, tenth or last of the design life. Without it, last.")},
        {"--out", "FILE", mark("CSV file to write. Without it, to standard output.")}},
       mark("Write loads, temperatures and power of every hour of a year, as CSV."),
       mark("Solves PLAN and writes 8760 rows: outdoor air, heating and cooling of the house, untouched "
            "ground, "
            "heat "
            "taken from the ground, water entering and leaving the heat pump, electric power, back-up heat "
            "and "
            "cooling not met."),
       run_hours},
      {"size",
       {{"PLAN"}},
       {{"--draws", "N", mark("Draws of soil and load for the chance, 0 for none. Without it, 300.")},
        {"--json", "", mark("Write everything as JSON.")}},
       mark("Find how many circuits the loop needs, and other ways to the same end."),
       mark("Sizes the loop of PLAN: the smallest number of its coils whose coldest and warmest entering "
            "water "
            "hold "
            "the limits over the design life, the least pipe in the drawn trenches, other coil lengths, "
            "depths "
            "and "
            "spacings, the classic length equations, and the chance that the loop as drawn holds. Status 1 "
            "where "
            "no size does."),
       run_size},
      {"ways",
       {{"PLAN"}},
       {{"--json", "", mark("Write everything as JSON.")}},
       mark("Lay the loop out in other ways and compare what they cost."),
       mark(
           "Solves PLAN and, in full, up to five other ways to lay its loop that differ in kind: another "
           "side of "
           "the house, another direction, two groups, a coil in the supply trench or none, fewer and deeper, "
           "upright coils, most metres. Lists circuits, cost, earth dug, days, lawn and water temperatures; "
           "those "
           "that hold the limits first, by cost. Status 1 where nothing can be laid."),
       run_ways},
      {"bill",
       {{"PLAN"}},
       {{"--prices", "FILE",
         mark("Price book to reckon with instead of the plan's: CSV as the verb prices writes it.")},
        {"--csv", "", mark("Write the bill as CSV.")},
        {"--json", "", mark("Write everything as JSON.")},
        {"--out", "FILE", mark("File to write. Without it, to standard output.")}},
       mark("List what the loop takes and what it costs, and when it pays."),
       mark("Solves PLAN and lists everything its loop takes, counted from the drawing and rounded up to "
            "what is "
            "sold, at the plan's price book, with overhead, markup, tax and incentives; then what the house "
            "costs "
            "to run over the years, beside the other ways to heat and cool that the plan describes, with "
            "simple "
            "and discounted payback. Status 1 where nothing is laid."),
       run_bill},
      {"stakes",
       {{"PLAN"}},
       {{"--out", "FILE", mark("CSV file to write. Without it, to standard output.")}},
       mark("Write the stake-out list, as CSV."),
       mark(
           "Solves PLAN and writes a row for each house corner and stake: coordinates, elevation between the "
           "spot heights, two taped distances from house corners, a third to prove them by, station and "
           "offset "
           "from "
           "a base line along the house. Feet or metres, by the plan's units."),
       run_stakes},
      {"prices",
       {{"PLAN"}},
       {{"--out", "FILE", mark("CSV file to write. Without it, to standard output.")}},
       mark("Write the plan's price book, as CSV."),
       mark("Writes every price that PLAN reckons with, in the units of the plan: key, item, unit, how many "
            "are "
            "sold "
            "together, price of one unit, its date and a note. The verb bill and the Price page read such "
            "files."),
       run_prices},
      {"calendar",
       {{"PLAN"}},
       {{"--json", "", mark("Write everything as JSON.")}},
       mark("Tell in which order to dig, who does what when, and what would save time."),
       mark("Solves PLAN and lists the order of digging with the way each trench is dug and where its spoil "
            "lies, "
            "what excavator, racks, layers, joiner, tester and loader do when and wait for, and what one "
            "more of "
            "something would save. Status 1 where nothing is laid."),
       run_calendar},
      {"as-built",
       {{"PLAN"}},
       {{"--json", "", mark("Write everything as JSON.")},
        {"--csv", "FILE", mark("Write where everything lies, with its ties, to FILE as CSV too.")},
        {"--dxf", "FILE", mark("Write the as-built plan to FILE as DXF too.")},
        {"--geojson", "FILE", mark("Write it as GeoJSON too.")},
        {"--gpkg", "FILE", mark("Write it as GeoPackage too.")}},
       mark("Solve the loop again as it was dug; tell whether it holds and what would mend it."),
       mark("Puts what PLAN records as built in the place of what was planned: trenches stopped short, moved "
            "by "
            "taped distances, deeper or shallower, with the pipe really laid. Tells where tapes put each "
            "point "
            "and how far a check tape is off, whether temperatures, balance, flows and freeze protection "
            "still "
            "hold, and what would mend what does not, each way worked out in full. Status 1 where something "
            "does not hold or cannot be used."),
       run_as_built},
      {"epanet",
       {{"PLAN"}},
       {{"--out", "FILE", mark("File to write. Without it, to standard output.")}},
       mark("Write the loop's pipes as an input file of EPANET."),
       mark("Solves PLAN and writes its network at the design flow and temperature, so that it can be worked "
            "out "
            "again with EPANET, the public-domain program of the US EPA."),
       run_epanet},
      {"drawing",
       {{"FILE"}},
       {{"--by", "ATTRIBUTE",
         mark("Attribute whose values split a layer. Without it, one called “type” or the like.")},
        {"--about", "LAT,LON,METRES", mark("Of a raster of heights only what lies so far round that place.")},
        {"--json", "", mark("Write everything as JSON, every shape included.")},
        {"--language", "CODE", mark("Language of the remarks in the JSON: en or es. Without it, en.")}},
       mark("List what a drawing file holds and what its layers are taken for."),
       mark("Reads FILE (DXF, GeoJSON, GeoPackage, Shapefile, KML; GeoTIFF, ESRI ASCII grid and other "
            "rasters of "
            "heights) and lists what it holds, what of it arrived, what was left out and why, its unit and "
            "coordinate system, and its layers with what each is taken "
            "for."),
       run_drawing},
      {"import",
       {{"FILE"}},
       {{"--out", "PLAN", mark("Plan file to write.")},
        {"--into", "PLAN", mark("Plan that the drawing is added to. Without it, an empty one.")},
        {"--unit", "UNIT",
         mark("Unit of the drawing: m, mm, cm, ft, in, yd, us-ft. Without it, the file's own.")},
        {"--heights-in-feet", "",
         mark("Heights of points and contours are in feet, whatever the unit of lengths.")},
        {"--by", "ATTRIBUTE",
         mark("Attribute whose values split a layer. Without it, one called “type” or the like.")},
        {"--map", "LIST",
         mark("What layers are, where that differs from the guess: “LAYER=lot;OTHER=house”.")}},
       mark("Bring a drawing file onto the lot."),
       mark("Reads FILE as “drawing” does and makes of its layers lot line, house, drive, septic system, "
            "wells, "
            "trees, "
            "utility lines, easements and spot heights. What lies more than 30 m from the lot is left out. "
            "Lists "
            "what came "
            "in, and what did not and why."),
       run_import},
      {"export",
       {{"PLAN"}},
       {{"--as", "FORM", mark("dxf, geojson or gpkg. Without it, dxf.")},
        {"--out", "FILE",
         mark("File to write. Without it, PLAN's name with the form's ending, in this folder.")}},
       mark("Write the plan for drawing and mapping programs."),
       mark(
           "Solves PLAN and writes lot, features, trenches, coils, header, supply run and stakes: as DXF on "
           "layers of "
           "the US National CAD Standard, in feet or metres by the plan's units; or as GeoJSON or GeoPackage "
           "where the "
           "plan knows its place on the Earth."),
       run_export},
      {"deed",
       {{"FILE"}},
       {{"--units", "SYSTEM",
         mark("us or metric: the unit of bare numbers and of what is printed. Without it, us.")},
        {"--adjust", "", mark("Share the misclosure out over the courses by the compass rule.")},
        {"--json", "", mark("Write everything as JSON.")}},
       mark("Read deed calls: the traverse, how it closes, its area."),
       mark("Reads the calls of a deed from a text file, one to a line or in prose, and prints every course, "
            "the "
            "linear misclosure, the precision and the area with its curves. Status 1 where a call cannot be "
            "read; "
            "each such line is named."),
       run_deed},
      {"resave",
       {{"PLAN"}},
       {{"--strict", "", mark("Write nothing; status 1 if saving would change the file.")}},
       mark("Load a plan and save it again in today's format."),
       mark("Brings PLAN to the newest format and the usual order. Leaves the file alone if something in it "
            "is "
            "not understood "
            "and would be lost."),
       run_resave},
      {"new",
       {{"FILE"}},
       {},
       mark("Write an empty plan."),
       mark("Writes a plan with nothing drawn and the usual wishes to FILE, which must not be there yet."),
       run_new},
  };
  return kVerbs;
}

const Verb* find_verb(const std::string& name) {
  const auto at = std::ranges::find(verbs(), name, &Verb::name);
  return at == verbs().end() ? nullptr : &*at;
}

}  // namespace underlawn::cli
