// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/commands.h"

#include <QObject>
#include <QStringList>
#include <algorithm>

namespace underlawn {

namespace {

using enum CommandGroup;

constexpr Command kCommands[] = {
    {"file.new", "New plan", "Starts an empty plan.", "Ctrl+N", file, "new"},
    {"file.open", "Open…", "Opens a plan file.", "Ctrl+O", file, "open"},
    {"file.save", "Save", "Saves the plan to its file.", "Ctrl+S", file, "save", "", false, true},
    {"file.save_as", "Save as…", "Saves the plan to another file.", "Ctrl+Shift+S", file, ""},
    {"file.import", "Bring in a drawing…",
     "Reads DXF, GeoJSON, GeoPackage, Shapefile or KML and shows what would come onto the lot.", "Ctrl+I",
     file, "", "", false, true},
    {"file.picture", "Picture under the drawing…",
     "Lays a PNG, JPEG or PDF page under the drawing, to be scaled and traced.", "Ctrl+Shift+I", file, ""},
    {"file.export", "Export…", "Writes the plan as DXF, GeoJSON or GeoPackage.", "Ctrl+E", file, ""},
    {"file.sheet", "Write sheets…",
     "Pages for crew, permit and family, to scale, as PDF: pick sheets, paper, scale; look first.", "Ctrl+D",
     file, "sheet", "", false, true},
    {"file.print", "Print sheets…", "Prints the sheets that are picked.", "Ctrl+P", file, "print"},
    {"file.quit", "Quit", "Closes the window.", "Ctrl+Q", file, "", "", false, true},

    {"edit.undo", "Undo", "Takes back the last change.", "Ctrl+Z", edit, "undo"},
    {"edit.redo", "Redo", "Does again what was taken back.", "Ctrl+Shift+Z", edit, "redo"},
    {"edit.delete", "Delete", "Removes what is selected from the lot.", "Del", edit, "delete", "", false,
     true},
    {"edit.hold", "Hold or let go",
     "Locks the selected trench, header or run where it lies, or lets it go; the rest is arranged round it.",
     "K", edit, ""},
    {"edit.copy", "Copy", "Copies what is selected, to be pasted here or in another window.", "Ctrl+C", edit,
     "copy", "", false, true},
    {"edit.cut", "Cut", "Copies what is selected and removes it.", "Ctrl+X", edit, ""},
    {"edit.paste", "Paste", "Hangs what was copied on the pointer; click or type where it goes.", "Ctrl+V",
     edit, "paste"},
    {"edit.join", "Join", "Makes one of lines end to end, or of areas that meet.", "Ctrl+J", edit, ""},
    {"edit.name", "Name or edit", "Puts the keyboard into the first field of what is selected.", "F2", edit,
     ""},
    {"edit.select_all", "Select all", "Selects everything that was drawn and is shown.", "Ctrl+A", edit, "",
     "", false, true},
    {"edit.under", "Select what lies under",
     "Picks what lies beneath the pointer, one after the other; repeated clicks do the same.", "B", edit, ""},
    {"edit.select_none", "Select nothing", "Drops the selection.", "Ctrl+Shift+A", edit, ""},
    {"edit.next", "Select next on the lot", "Walks through everything on the lot.", "Ctrl+Down", edit, ""},
    {"edit.previous", "Select previous on the lot", "Walks back through everything on the lot.", "Ctrl+Up",
     edit, ""},

    {"tool.select", "Select and move", "Pick, move and reshape what is on the lot.", "V", draw, "select",
     "tool", true},
    {"tool.lot", "Lot line", "Draw the lot line corner by corner; type lengths and bearings on the way.", "L",
     draw, "lot", "tool", true, true},
    {"tool.house", "House", "Draw the outline of the house.", "H", draw, "house", "tool", true},
    {"tool.entry", "Entry point", "Mark where the supply run enters the house wall.", "E", draw, "entry",
     "tool", true},
    {"tool.drive", "Drive", "Draw a drive or other pavement.", "D", draw, "drive", "tool", true},
    {"tool.septic_tank", "Septic tank", "Draw the septic tank.", "S", draw, "septic_tank", "tool", true,
     true},
    {"tool.drain_field", "Drain field", "Draw the drain field.", "F", draw, "drain_field", "tool", true},
    {"tool.reserve_field", "Reserve field", "Draw the ground kept for a second drain field.", "R", draw,
     "reserve_field", "tool", true},
    {"tool.well", "Well", "Mark a well.", "W", draw, "well", "tool", true},
    {"tool.tree", "Tree", "Mark a tree; its trunk gives the root zone.", "T", draw, "tree", "tool", true,
     true},
    {"tool.utility", "Utility line", "Draw a buried line: electric, gas, water, sewer, communication.", "U",
     draw, "utility", "tool", true},
    {"tool.easement", "Easement", "Draw an easement.", "A", draw, "easement", "tool", true},
    {"tool.no_dig", "No-dig area", "Draw a garden, patio or anything to be left alone.", "N", draw, "no_dig",
     "tool", true},
    {"tool.trench", "Trench",
     "Draw a trench that stays where it is: from its head, bend by bend, along a lot line or a wall.", "G",
     draw, "trench", "tool", true},
    {"tool.height", "Spot height", "Mark how high the ground is at a place; contours follow.", "J", draw,
     "height", "tool", true},
    {"tool.move", "Move", "Move what is selected from one point to another, caught or typed.", "Ctrl+M", draw,
     "move", "tool", true, true},
    {"tool.copy", "Copy to places", "Copy what is selected to one place after the other, caught or typed.",
     "Ctrl+Shift+C", draw, "copy", "tool", true},
    {"tool.turn", "Turn", "Turn what is selected by a typed angle, or from one direction to another.",
     "Ctrl+R", draw, "turn", "tool", true},
    {"tool.parallel", "Parallel",
     "Draw at a typed distance: an easement along a lot edge, a line beside a line, an outline round one.",
     "O", draw, "parallel", "tool", true},
    {"tool.split", "Split", "Cut a line in two, or an area along a line.", "X", draw, "split", "tool", true},
    {"tool.dimension", "Dimension", "Draw a measure that stays on the plan and is printed.", "I", draw,
     "dimension", "tool", true, true},
    {"tool.measure", "Measure", "Measure a distance or an area on the drawing.", "M", draw, "measure", "tool",
     true},
    {"tool.clearance", "Clearance", "Measure the shortest distance between two things.", "Shift+M", draw,
     "clearance", "tool", true},
    {"tool.why", "Why no trench", "Point at a place to learn what keeps a trench out, and what that costs.",
     "Y", draw, "why", "tool", true, true},
    {"tool.access", "Machine access", "Mark where machines come onto the lot.", "", draw, "access", "tool",
     true},
    {"tool.laydown", "Pipe laydown", "Mark where pipe is laid down and coils are made.", "", draw, "laydown",
     "tool", true},

    {"view.fit", "Show the whole lot", "Zooms so that the whole lot is seen.", "Z", view, "fit"},
    {"view.fit_selected", "Show what is selected", "Zooms so that what is selected fills the drawing.",
     "Shift+Z", view, ""},
    {"view.scale", "Zoom to a scale…", "Type a scale like 1:200 or 1 in = 20 ft.", "Ctrl+G", view, ""},
    {"view.zoom_in", "Closer", "Zooms in.", "Ctrl++", view, ""},
    {"view.zoom_out", "Farther", "Zooms out.", "Ctrl+-", view, ""},
    {"view.zones", "Zones", "Setbacks, clearances and the ground that is left to build in.", "Ctrl+1", view,
     "", "", true, true},
    {"view.coils", "Coils", "The loops of pipe in the trenches.", "Ctrl+2", view, "", "", true},
    {"view.labels", "Labels", "Names, numbers and lengths.", "Ctrl+3", view, "", "", true},
    {"view.findings", "Findings", "Places that the checks found.", "Ctrl+4", view, "", "", true},
    {"view.heights", "Heights of the ground", "Spot heights, contours, and how steep the ground is.",
     "Ctrl+6", view, "", "", true},
    {"view.loop", "Loop", "Trenches, header and supply run.", "Ctrl+7", view, "", "", true},
    {"view.dimensions", "Dimensions", "The measures that were drawn.", "Ctrl+8", view, "", "", true},
    {"view.hide_kind", "Hide this kind",
     "Hides everything of the kind that is selected; it stays in the plan and on every sheet.", "Ctrl+H",
     view, ""},
    {"view.show_all", "Show every kind", "Shows again what was hidden.", "Ctrl+Shift+H", view, ""},
    {"view.heat", "Ground temperature",
     "Colours the ground by how warm it is at the depth of the pipe, by day.", "Ctrl+5", view, "", "", true},
    {"view.dig", "Dig", "Spoil, order and way of digging, ways of the machine, ladders.", "Ctrl+9", view, "",
     "", true},
    {"view.kitchen", "For the kitchen table",
     "The lot before, while it is dug and after, for its owners: large and quiet. Arrow keys, Esc.", "F5",
     view, ""},
    {"view.us", "Feet and inches", "Shows and reads US units.", "", view, "", "units", true, true},
    {"view.metric", "Metres", "Shows and reads metric units.", "", view, "", "units", true},
    {"view.units", "Switch units", "From feet to metres or back.", "Ctrl+U", view, ""},
    {"view.light", "Light", "Light window.", "", view, "", "theme", true, true},
    {"view.dark", "Dark", "Dark window.", "", view, "", "theme", true},
    {"view.system", "Like the system", "Light or dark as the system is.", "", view, "", "theme", true},

    {"panel.report", "Report", "What the loop takes, and what the checks say.", "Alt+1", panel, ""},
    {"panel.loop", "Loop", "What is asked for: coil, trenches, run.", "Alt+2", panel, ""},
    {"panel.selected", "Selected", "What is selected, to be edited.", "Alt+3", panel, ""},
    {"panel.lot", "Lot list", "Everything on the lot, to be found and picked.", "Alt+4", panel, ""},
    {"panel.ground", "Ground", "Soil, slopes, swell and frost.", "Alt+5", panel, ""},
    {"panel.heat", "Heat", "Soil, weather, house and heat pump.", "Alt+7", panel, ""},
    {"panel.flow", "Flow", "Fluid, pumps, header, purge and pressure test.", "Alt+8", panel, ""},
    {"panel.title", "Title block", "What is printed at the foot of every sheet.", "Alt+6", panel, ""},
    {"panel.temperatures", "Temperatures", "Charts of water, ground and load through the year.", "Alt+9",
     panel, ""},
    {"panel.size", "Size", "How large the loop has to be, and other ways to the same end.", "Alt+0", panel,
     ""},
    {"panel.ways", "Ways", "Other ways to lay the loop, compared.", "Alt+W", panel, ""},
    {"panel.price", "Price", "Price book, offer, running cost and payback.", "Alt+M", panel, ""},
    {"panel.crew", "Crew", "Order of digging, crew calendar, machine and rates.", "Alt+C", panel, ""},
    {"panel.survey", "Survey", "Deed calls, and points by tape, notebook and satellite.", "Alt+Y", panel, ""},
    {"panel.lot_by_deed", "Make the lot line by the deed", "The lot line by the calls in the Survey panel.",
     "", panel, ""},
    {"panel.find_ways", "Find other ways", "Lays the loop out in other ways and compares them.", "", panel,
     ""},
    {"panel.record", "Record", "Pressure test, flushing and fill as they were done.", "Alt+R", panel, ""},
    {"panel.as_built", "As-built", "What was really dug, and whether it still holds.", "Alt+B", panel, ""},
    {"panel.size_loop", "Size the loop", "Finds how many circuits the loop needs.", "", panel, ""},
    {"panel.drawing", "Go to the drawing", "Puts the keyboard into the drawing.", "F6", panel, "", "", false,
     true},

    {"help.find", "Find a command…", "Type what you want to do.", "Ctrl+K", help, "find"},
    {"help.keys", "Keys", "All commands and their keys on one page.", "F1", help, ""},
    {"help.about", "About Underlawn", "Version, licence and cautions.", "", help, "", "", false, true},
};

bool holds(const Command& c, const QStringList& words) {
  const QString all = QString::fromUtf8(c.title) + ' ' + QString::fromUtf8(c.help) + ' ' +
                      group_title(c.group) + ' ' + QString::fromUtf8(c.shortcut);
  return std::all_of(words.begin(), words.end(),
                     [&](const QString& w) { return all.contains(w, Qt::CaseInsensitive); });
}

int rank(const Command& c, const QString& typed) {
  const QString title = QString::fromUtf8(c.title);
  if (title.startsWith(typed, Qt::CaseInsensitive)) return 0;
  return title.contains(typed, Qt::CaseInsensitive) ? 1 : 2;
}

}  // namespace

QString group_title(CommandGroup group) {
  switch (group) {
    case file:
      return QObject::tr("Plan");
    case edit:
      return QObject::tr("Edit");
    case draw:
      return QObject::tr("Draw");
    case view:
      return QObject::tr("View");
    case panel:
      return QObject::tr("Panels");
    case help:
      return QObject::tr("Help");
  }
  return {};
}

std::span<const Command> commands() {
  return kCommands;
}

const Command* find_command(std::string_view id) {
  const auto at =
      std::find_if(std::begin(kCommands), std::end(kCommands), [id](const Command& c) { return c.id == id; });
  return at == std::end(kCommands) ? nullptr : at;
}

std::vector<const Command*> find_commands(QString typed) {
  typed = typed.simplified();
  const QStringList words = typed.split(' ', Qt::SkipEmptyParts);
  std::vector<const Command*> found;
  for (const Command& c : kCommands)
    if (holds(c, words)) found.push_back(&c);
  std::stable_sort(found.begin(), found.end(),
                   [&](const Command* a, const Command* b) { return rank(*a, typed) < rank(*b, typed); });
  return found;
}

}  // namespace underlawn
