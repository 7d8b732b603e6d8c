// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/commands.h"

#include <QObject>
#include <QStringList>
#include <algorithm>

#include "window/actions.h"

namespace underlawn {

namespace {

using enum CommandGroup;

constexpr Command kCommands[] = {
    {"file.new", QT_TR_NOOP("New plan"), QT_TR_NOOP("Starts an empty plan."), "Ctrl+N", file, "new"},
    {"file.open", QT_TR_NOOP("Open…"), QT_TR_NOOP("Opens a plan file."), "Ctrl+O", file, "open"},
    {"file.save", QT_TR_NOOP("Save"), QT_TR_NOOP("Saves the plan to its file."), "Ctrl+S", file, "save", "",
     false, true},
    {"file.save_as", QT_TR_NOOP("Save as…"), QT_TR_NOOP("Saves the plan to another file."), "Ctrl+Shift+S",
     file, ""},
    {"file.import", QT_TR_NOOP("Bring in a drawing…"),
     QT_TR_NOOP("Reads DXF, GeoJSON, GeoPackage, Shapefile or KML and shows what would come onto the lot."),
     "Ctrl+I", file, "", "", false, true},
    {"file.picture", QT_TR_NOOP("Picture under the drawing…"),
     QT_TR_NOOP("Lays a PNG, JPEG or PDF page under the drawing, to be scaled and traced."), "Ctrl+Shift+I",
     file, ""},
    {"file.export", QT_TR_NOOP("Export…"),
     QT_TR_NOOP("Writes the plan as DXF, GeoJSON or GeoPackage, or its stake-out list as CSV."), "Ctrl+E",
     file, ""},
    {"file.sheet", QT_TR_NOOP("Write sheets…"),
     QT_TR_NOOP(
         "Pages for crew, permit and family, to scale, as PDF: pick sheets, paper, scale; look first."),
     "Ctrl+D", file, "sheet", "", false, true},
    {"file.print", QT_TR_NOOP("Print sheets…"), QT_TR_NOOP("Prints the sheets that are picked."), "Ctrl+P",
     file, "print"},
    {"file.quit", QT_TR_NOOP("Quit"), QT_TR_NOOP("Closes the window."), "Ctrl+Q", file, "", "", false, true},

    {"edit.undo", QT_TR_NOOP("Undo"), QT_TR_NOOP("Takes back the last change."), "Ctrl+Z", edit, "undo"},
    {"edit.redo", QT_TR_NOOP("Redo"), QT_TR_NOOP("Does again what was taken back."), "Ctrl+Shift+Z", edit,
     "redo"},
    {"edit.delete", QT_TR_NOOP("Delete"), QT_TR_NOOP("Removes what is selected from the lot."), "Del", edit,
     "delete", "", false, true},
    {"edit.hold", QT_TR_NOOP("Hold or let go"),
     QT_TR_NOOP("Locks the selected trench, header or run where it lies, or lets it go; the rest is arranged "
                "round it."),
     "K", edit, ""},
    {"edit.copy", QT_TR_NOOP("Copy"),
     QT_TR_NOOP("Copies what is selected, to be pasted here or in another window."), "Ctrl+C", edit, "copy",
     "", false, true},
    {"edit.cut", QT_TR_NOOP("Cut"), QT_TR_NOOP("Copies what is selected and removes it."), "Ctrl+X", edit,
     ""},
    {"edit.paste", QT_TR_NOOP("Paste"),
     QT_TR_NOOP("Hangs what was copied on the pointer; click or type where it goes."), "Ctrl+V", edit,
     "paste"},
    {"edit.join", QT_TR_NOOP("Join"), QT_TR_NOOP("Makes one of lines end to end, or of areas that meet."),
     "Ctrl+J", edit, ""},
    {"edit.name", QT_TR_NOOP("Name or edit"),
     QT_TR_NOOP("Puts the keyboard into the first field of what is selected."), "F2", edit, ""},
    {"edit.select_all", QT_TR_NOOP("Select all"),
     QT_TR_NOOP("Selects everything that was drawn and is shown."), "Ctrl+A", edit, "", "", false, true},
    {"edit.under", QT_TR_NOOP("Select what lies under"),
     QT_TR_NOOP("Picks what lies beneath the pointer, one after the other; repeated clicks do the same."),
     "B", edit, ""},
    {"edit.select_none", QT_TR_NOOP("Select nothing"), QT_TR_NOOP("Drops the selection."), "Ctrl+Shift+A",
     edit, ""},
    {"edit.next", QT_TR_NOOP("Select next on the lot"), QT_TR_NOOP("Walks through everything on the lot."),
     "Ctrl+Down", edit, ""},
    {"edit.previous", QT_TR_NOOP("Select previous on the lot"),
     QT_TR_NOOP("Walks back through everything on the lot."), "Ctrl+Up", edit, ""},
    {"edit.next_too", QT_TR_NOOP("Select next too"),
     QT_TR_NOOP("Takes the next thing on the lot into the selection."), "Ctrl+Shift+Down", edit, ""},
    {"edit.previous_too", QT_TR_NOOP("Select previous too"),
     QT_TR_NOOP("Takes the previous thing on the lot into the selection."), "Ctrl+Shift+Up", edit, ""},
    {"edit.select_kind", QT_TR_NOOP("Select all of this kind"),
     QT_TR_NOOP("Selects everything of the kind that is selected: every tree, every trench."), "Ctrl+B", edit,
     ""},
    {"edit.size_loop", QT_TR_NOOP("Size the loop"), QT_TR_NOOP("Finds how many circuits the loop needs."), "",
     edit, "", "", false, true},
    {"edit.find_ways", QT_TR_NOOP("Find other ways"),
     QT_TR_NOOP("Lays the loop out in other ways and compares them."), "Ctrl+Shift+F", edit, ""},
    {"edit.find_room", QT_TR_NOOP("Find room for missing circuits"),
     QT_TR_NOOP("What would bring the circuits that do not fit, with its price; shown in the report."),
     "Ctrl+F", edit, ""},
    {"edit.lot_by_deed", QT_TR_NOOP("Make the lot line by the deed"),
     QT_TR_NOOP("The lot line by the calls in the Survey panel."), "Alt+L", edit, ""},

    {"tool.select", QT_TR_NOOP("Select and move"), QT_TR_NOOP("Pick, move and reshape what is on the lot."),
     "V", draw, "select", "tool", true},
    {"tool.lot", QT_TR_NOOP("Lot line"),
     QT_TR_NOOP("Draw the lot line corner by corner; type lengths and bearings on the way."), "L", draw,
     "lot", "tool", true, true},
    {"tool.house", QT_TR_NOOP("House"), QT_TR_NOOP("Draw the outline of the house."), "H", draw, "house",
     "tool", true},
    {"tool.entry", QT_TR_NOOP("Entry point"), QT_TR_NOOP("Mark where the supply run enters the house wall."),
     "E", draw, "entry", "tool", true},
    {"tool.drive", QT_TR_NOOP("Drive"), QT_TR_NOOP("Draw a drive or other pavement."), "D", draw, "drive",
     "tool", true},
    {"tool.septic_tank", QT_TR_NOOP("Septic tank"), QT_TR_NOOP("Draw the septic tank."), "S", draw,
     "septic_tank", "tool", true, true},
    {"tool.drain_field", QT_TR_NOOP("Drain field"), QT_TR_NOOP("Draw the drain field."), "F", draw,
     "drain_field", "tool", true},
    {"tool.reserve_field", QT_TR_NOOP("Reserve field"),
     QT_TR_NOOP("Draw the ground kept for a second drain field."), "Shift+F", draw, "reserve_field", "tool",
     true},
    {"tool.well", QT_TR_NOOP("Well"), QT_TR_NOOP("Mark a well."), "W", draw, "well", "tool", true},
    {"tool.tree", QT_TR_NOOP("Tree"), QT_TR_NOOP("Mark a tree; its trunk gives the root zone."), "T", draw,
     "tree", "tool", true, true},
    {"tool.utility", QT_TR_NOOP("Utility line"),
     QT_TR_NOOP("Draw a buried line: electric, gas, water, sewer, communication."), "U", draw, "utility",
     "tool", true},
    {"tool.easement", QT_TR_NOOP("Easement"), QT_TR_NOOP("Draw an easement."), "A", draw, "easement", "tool",
     true},
    {"tool.no_dig", QT_TR_NOOP("No-dig area"),
     QT_TR_NOOP("Draw a garden, patio or anything to be left alone."), "N", draw, "no_dig", "tool", true},
    {"tool.trench", QT_TR_NOOP("Trench"),
     QT_TR_NOOP(
         "Draw a trench that stays where it is: from its head, bend by bend, along a lot line or a wall."),
     "G", draw, "trench", "tool", true},
    {"tool.height", QT_TR_NOOP("Spot height"),
     QT_TR_NOOP("Mark how high the ground is at a place; contours follow."), "J", draw, "height", "tool",
     true},
    {"tool.move", QT_TR_NOOP("Move"),
     QT_TR_NOOP("Move what is selected from one point to another, caught or typed."), "Ctrl+M", draw, "move",
     "tool", true, true},
    {"tool.copy", QT_TR_NOOP("Copy to places"),
     QT_TR_NOOP("Copy what is selected to one place after the other, caught or typed."), "Ctrl+Shift+C", draw,
     "copy", "tool", true},
    {"tool.turn", QT_TR_NOOP("Turn"),
     QT_TR_NOOP("Turn what is selected by a typed angle, or from one direction to another."), "Ctrl+R", draw,
     "turn", "tool", true},
    {"tool.parallel", QT_TR_NOOP("Parallel"),
     QT_TR_NOOP("Draw at a typed distance: an easement along a lot edge, a line beside a line, an outline "
                "round one."),
     "O", draw, "parallel", "tool", true},
    {"tool.split", QT_TR_NOOP("Split"), QT_TR_NOOP("Cut a line in two, or an area along a line."), "X", draw,
     "split", "tool", true},
    {"tool.dimension", QT_TR_NOOP("Dimension"),
     QT_TR_NOOP("Draw a measure that stays on the plan and is printed."), "I", draw, "dimension", "tool",
     true, true},
    {"tool.measure", QT_TR_NOOP("Measure"), QT_TR_NOOP("Measure a distance or an area on the drawing."), "M",
     draw, "measure", "tool", true},
    {"tool.clearance", QT_TR_NOOP("Clearance"),
     QT_TR_NOOP("Measure the shortest distance between two things."), "Shift+M", draw, "clearance", "tool",
     true},
    {"tool.why", QT_TR_NOOP("Why no trench"),
     QT_TR_NOOP("Point at a place to learn what keeps a trench out, and what that costs."), "Y", draw, "why",
     "tool", true, true},
    {"tool.access", QT_TR_NOOP("Machine access"), QT_TR_NOOP("Mark where machines come onto the lot."), "",
     draw, "access", "tool", true},
    {"tool.laydown", QT_TR_NOOP("Pipe laydown"),
     QT_TR_NOOP("Mark where pipe is laid down and coils are made."), "", draw, "laydown", "tool", true},

    {"view.fit", QT_TR_NOOP("Show the whole lot"), QT_TR_NOOP("Zooms so that the whole lot is seen."), "Z",
     view, "fit"},
    {"view.fit_selected", QT_TR_NOOP("Show what is selected"),
     QT_TR_NOOP("Zooms so that what is selected fills the drawing."), "Shift+Z", view, ""},
    {"view.scale", QT_TR_NOOP("Zoom to a scale…"), QT_TR_NOOP("Type a scale like 1:200 or 1 in = 20 ft."),
     "Ctrl+G", view, ""},
    {"view.zoom_in", QT_TR_NOOP("Closer"), QT_TR_NOOP("Zooms in."), "Ctrl++", view, ""},
    {"view.zoom_out", QT_TR_NOOP("Farther"), QT_TR_NOOP("Zooms out."), "Ctrl+-", view, ""},
    {"view.zones", QT_TR_NOOP("Zones"),
     QT_TR_NOOP("Setbacks, clearances and the ground that is left to build in."), "Ctrl+1", view, "", "",
     true, true},
    {"view.coils", QT_TR_NOOP("Coils"), QT_TR_NOOP("The loops of pipe in the trenches."), "Ctrl+2", view, "",
     "", true},
    {"view.labels", QT_TR_NOOP("Labels"), QT_TR_NOOP("Names, numbers and lengths."), "Ctrl+3", view, "", "",
     true},
    {"view.findings", QT_TR_NOOP("Findings"), QT_TR_NOOP("Places that the checks found."), "Ctrl+4", view, "",
     "", true},
    {"view.heights", QT_TR_NOOP("Heights of the ground"),
     QT_TR_NOOP("Spot heights, contours, and how steep the ground is."), "Ctrl+6", view, "", "", true},
    {"view.loop", QT_TR_NOOP("Loop"), QT_TR_NOOP("Trenches, header and supply run."), "Ctrl+7", view, "", "",
     true},
    {"view.dimensions", QT_TR_NOOP("Dimensions"), QT_TR_NOOP("The measures that were drawn."), "Ctrl+8", view,
     "", "", true},
    {"view.hide_kind", QT_TR_NOOP("Hide this kind"),
     QT_TR_NOOP("Hides everything of the kind that is selected; it stays in the plan and on every sheet."),
     "Ctrl+H", view, ""},
    {"view.show_all", QT_TR_NOOP("Show every kind"), QT_TR_NOOP("Shows again what was hidden."),
     "Ctrl+Shift+H", view, ""},
    {"view.heat", QT_TR_NOOP("Ground temperature"),
     QT_TR_NOOP("Colours the ground by how warm it is at the depth of the pipe, by day."), "Ctrl+5", view, "",
     "", true},
    {"view.dig", QT_TR_NOOP("Dig"),
     QT_TR_NOOP("Spoil, order and way of digging, ways of the machine, ladders."), "Ctrl+9", view, "", "",
     true},
    {"view.kitchen", QT_TR_NOOP("For the kitchen table"),
     QT_TR_NOOP(
         "The lot before, while it is dug and after, for its owners: large and quiet. Arrow keys, Esc."),
     "F5", view, ""},
    {"view.us", QT_TR_NOOP("Feet and inches"), QT_TR_NOOP("Shows and reads US units."), "", view, "", "units",
     true, true},
    {"view.metric", QT_TR_NOOP("Metres"), QT_TR_NOOP("Shows and reads metric units."), "", view, "", "units",
     true},
    {"view.units", QT_TR_NOOP("Switch units"), QT_TR_NOOP("From feet to metres or back."), "Ctrl+U", view,
     ""},
    {"view.light", QT_TR_NOOP("Light"), QT_TR_NOOP("Light window."), "", view, "", "theme", true, true},
    {"view.dark", QT_TR_NOOP("Dark"), QT_TR_NOOP("Dark window."), "", view, "", "theme", true},
    {"view.system", QT_TR_NOOP("Like the system"), QT_TR_NOOP("Light or dark as the system is."), "", view,
     "", "theme", true},
    {"view.english", "English", QT_TR_NOOP("The window speaks English from its next start."), "", view, "",
     "language", true, true},
    {"view.spanish", "Español", QT_TR_NOOP("The window speaks Spanish from its next start."), "", view, "",
     "language", true},

    {"panel.report", QT_TR_NOOP("Report"), QT_TR_NOOP("What the loop takes, and what the checks say."),
     "Alt+1", panel, ""},
    {"panel.loop", QT_TR_NOOP("Loop"), QT_TR_NOOP("What is asked for: coil, trenches, run."), "Alt+2", panel,
     ""},
    {"panel.selected", QT_TR_NOOP("Selected"), QT_TR_NOOP("What is selected, to be edited."), "Alt+3", panel,
     ""},
    {"panel.lot", QT_TR_NOOP("Lot"), QT_TR_NOOP("Everything on the lot as a list, to be found and picked."),
     "Alt+4", panel, ""},
    {"panel.survey", QT_TR_NOOP("Survey"),
     QT_TR_NOOP("Deed calls, and points by tape, notebook and satellite."), "Alt+5", panel, ""},
    {"panel.ground", QT_TR_NOOP("Ground"), QT_TR_NOOP("Soil, slopes, swell and frost."), "Alt+6", panel, ""},
    {"panel.heat", QT_TR_NOOP("Heat"), QT_TR_NOOP("Soil, weather, house and heat pump."), "Alt+7", panel, ""},
    {"panel.flow", QT_TR_NOOP("Flow"), QT_TR_NOOP("Fluid, pumps, header, purge and pressure test."), "Alt+8",
     panel, ""},
    {"panel.temperatures", QT_TR_NOOP("Charts"),
     QT_TR_NOOP("Temperatures of water and ground, and the load, through the year."), "Alt+9", panel, ""},
    {"panel.size", QT_TR_NOOP("Size"),
     QT_TR_NOOP("How large the loop has to be, and other ways to the same end."), "Alt+0", panel, ""},
    {"panel.ways", QT_TR_NOOP("Ways"), QT_TR_NOOP("Other ways to lay the loop, compared."), "Alt+W", panel,
     ""},
    {"panel.price", QT_TR_NOOP("Price"), QT_TR_NOOP("Price book, offer, running cost and payback."), "Alt+M",
     panel, ""},
    {"panel.crew", QT_TR_NOOP("Crew"), QT_TR_NOOP("Order of digging, crew calendar, machine and rates."),
     "Alt+C", panel, ""},
    {"panel.record", QT_TR_NOOP("Record"), QT_TR_NOOP("Pressure test, flushing and fill as they were done."),
     "Alt+R", panel, ""},
    {"panel.as_built", QT_TR_NOOP("As-built"), QT_TR_NOOP("What was really dug, and whether it still holds."),
     "Alt+B", panel, ""},
    {"panel.title", QT_TR_NOOP("Title"),
     QT_TR_NOOP("The title block: what is printed at the foot of every sheet."), "Alt+T", panel, ""},
    {"panel.drawing", QT_TR_NOOP("Go to the drawing"), QT_TR_NOOP("Puts the keyboard into the drawing."),
     "F6", panel, "", "", false, true},
    {"panel.notice", QT_TR_NOOP("Go to the notice"),
     QT_TR_NOOP("Puts the keyboard onto the notice above the drawing, where there is one."), "Shift+F6",
     panel, ""},

    {"help.find", QT_TR_NOOP("Find a command…"), QT_TR_NOOP("Type what you want to do."), "Ctrl+K", help,
     "find"},
    {"help.keys", QT_TR_NOOP("Keys"), QT_TR_NOOP("All commands and their keys on one page."), "F1", help, ""},
    {"help.about", QT_TR_NOOP("About Underlawn"), QT_TR_NOOP("Version, licence and cautions."), "", help, "",
     "", false, true},
};

// In small letters without accents, as words are typed in a hurry.
QString folded(const QString& text) {
  QString plain;
  for (const QChar c : text.normalized(QString::NormalizationForm_D))
    if (c.category() != QChar::Mark_NonSpacing) plain += c.toCaseFolded();
  return plain;
}

bool holds(const Command& c, const QStringList& words) {
  const QString all = folded(title_of(c) + ' ' + help_of(c) + ' ' + group_title(c.group) + ' ' +
                             QString::fromUtf8(c.shortcut) + ' ' + key_words(c));
  return std::all_of(words.begin(), words.end(), [&](const QString& w) { return all.contains(w); });
}

int rank(const Command& c, const QString& typed) {
  const QString title = folded(title_of(c));
  if (title.startsWith(typed)) return 0;
  return title.contains(typed) ? 1 : 2;
}

}  // namespace

QString title_of(const Command& command) {
  return QObject::tr(command.title.data());
}

QString help_of(const Command& command) {
  return QObject::tr(command.help.data());
}

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
  typed = folded(typed.simplified());
  const QStringList words = typed.split(' ', Qt::SkipEmptyParts);
  std::vector<const Command*> found;
  for (const Command& c : kCommands)
    if (holds(c, words)) found.push_back(&c);
  std::stable_sort(found.begin(), found.end(),
                   [&](const Command* a, const Command* b) { return rank(*a, typed) < rank(*b, typed); });
  return found;
}

}  // namespace underlawn
