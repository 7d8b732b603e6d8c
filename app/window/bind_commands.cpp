// SPDX-License-Identifier: GPL-3.0-or-later
// What each command of the table does.
#include <QAction>
#include <QStackedWidget>

#include "canvas/canvas.h"
#include "language/language.h"
#include "plots/heat_map.h"
#include "report/report_panel.h"
#include "window/dig_legend.h"
#include "window/export_flow.h"
#include "window/import_card.h"
#include "window/kitchen_view.h"
#include "window/lot_list.h"
#include "window/main_window.h"
#include "window/overlay.h"
#include "window/picture_card.h"
#include "window/selected_panel.h"
#include "window/settings.h"
#include "window/sheet_strip.h"
#include "window/side_column.h"
#include "window/size_panel.h"
#include "window/survey_panel.h"
#include "window/theme_now.h"
#include "window/typed_field.h"
#include "window/ways_panel.h"

namespace underlawn {

void MainWindow::bind_file() {
  actions_->on("file.new", [this](bool) { files_->start_new(); });
  actions_->on("file.open", [this](bool) { files_->ask_open(); });
  actions_->on("file.save", [this](bool) { files_->save(); });
  actions_->on("file.save_as", [this](bool) { files_->save_as(); });
  actions_->on("file.sheet", [this](bool) { open_sheet(); });
  actions_->on("file.print", [this](bool) {
    open_sheet();
    document_.when_current([this] { sheet_strip_->print(); });
  });
  actions_->on("file.quit", [this](bool) { close(); });
}

void MainWindow::bind_exchange() {
  import_card_ = new ImportCard(document_, *canvas_, *bar_);
  picture_card_ = new PictureCard(document_, *canvas_, *bar_);
  const auto drawing_first = [this](CanvasCard* other) {
    if (sheet_strip_->isVisible()) sheet_strip_->close_strip();
    if (other->isVisible()) other->close_card();
  };
  actions_->on("file.import", [this, drawing_first](bool) {
    drawing_first(picture_card_);
    import_card_->ask_file();
  });
  actions_->on("file.picture", [this, drawing_first](bool) {
    drawing_first(import_card_);
    picture_card_->open();
  });
  actions_->on("file.export", [this](bool) { ask_and_export(document_, *bar_, this); });
}

void MainWindow::open_sheet() {
  middle_->setCurrentWidget(sheet_strip_);
  sheet_strip_->open();
}

void MainWindow::bind_edit() {
  actions_->on("edit.undo", [this](bool) { document_.undo(); });
  actions_->on("edit.redo", [this](bool) { document_.redo(); });
  actions_->on("edit.delete", [this](bool) { canvas_->remove_selected(); });
  actions_->on("edit.hold", [this](bool) { canvas_->turn_hold(); });
  actions_->on("edit.copy", [this](bool) { canvas_->copy_selected(); });
  actions_->on("edit.cut", [this](bool) { canvas_->cut_selected(); });
  actions_->on("edit.paste", [this](bool) {
    if (sheet_strip_->isVisible()) sheet_strip_->close_strip();
    canvas_->set_tool(ToolId::paste);
    canvas_->setFocus(Qt::ShortcutFocusReason);
  });
  actions_->on("edit.join", [this](bool) { canvas_->join_selected(); });
  actions_->on("edit.select_all", [this](bool) { canvas_->select_all(); });
  actions_->on("edit.under", [this](bool) { canvas_->pick_under(); });
  actions_->on("edit.name", [this](bool) { side_->show_tab(SideColumn::Tab::selected, true); });
  actions_->on("edit.select_none", [this](bool) { canvas_->select_none(); });
  actions_->on("edit.next", [this](bool) { side_->lot_list()->step(1); });
  actions_->on("edit.previous", [this](bool) { side_->lot_list()->step(-1); });
  actions_->on("edit.next_too", [this](bool) { side_->lot_list()->step(1, true); });
  actions_->on("edit.previous_too", [this](bool) { side_->lot_list()->step(-1, true); });
  actions_->on("edit.select_kind", [this](bool) { canvas_->select_kind(); });
}

void MainWindow::bind_tools() {
  for (const Command& command : commands()) {
    if (command.id.substr(0, kToolPrefix.size()) != kToolPrefix) continue;
    const auto id = tool_named(command.id.substr(kToolPrefix.size()));
    Q_ASSERT(id);
    actions_->on(command.id, [this, tool = *id](bool) {
      if (sheet_strip_->isVisible()) sheet_strip_->close_strip();
      canvas_->set_tool(tool);
      canvas_->setFocus(Qt::ShortcutFocusReason);
    });
  }
  actions_->action("tool.select")->setChecked(true);
}

void MainWindow::set_units(UnitSystem units) {
  Plan plan = document_.committed();
  plan.units = units;
  document_.commit(std::move(plan), tr("Units"));
}

void MainWindow::bind_layers() {
  const std::pair<const char*, bool Layers::*> layers[] = {{"view.loop", &Layers::loop},
                                                           {"view.dimensions", &Layers::dimensions}};
  for (const auto& [id, layer] : layers)
    actions_->on(id, [this, layer = layer](bool on) {
      Layers now = canvas_->layers();
      now.*layer = on;
      canvas_->set_layers(now);
    });
  const auto follow = [this] {
    actions_->action("view.loop")->setChecked(canvas_->layers().loop);
    actions_->action("view.dimensions")->setChecked(canvas_->layers().dimensions);
  };
  connect(canvas_, &Canvas::layers_changed, this, follow);
  follow();
  actions_->on("view.hide_kind", [this](bool) { canvas_->hide_kind_of_selected(); });
  actions_->on("view.show_all", [this](bool) { canvas_->set_layers({}); });
}

void MainWindow::bind_view() {
  actions_->on("view.fit", [this](bool) { canvas_->zoom_to_fit(); });
  actions_->on("view.fit_selected", [this](bool) { canvas_->zoom_to_selected(); });
  actions_->on("view.scale", [this](bool) {
    scale_->edit()->setFocus(Qt::ShortcutFocusReason);
    scale_->edit()->selectAll();
  });
  bind_layers();
  actions_->on("view.zoom_in", [this](bool) { canvas_->zoom_by(1.25); });
  actions_->on("view.zoom_out", [this](bool) { canvas_->zoom_by(0.8); });
  const std::pair<const char*, bool PaintOptions::*> layers[] = {
      {"view.zones", &PaintOptions::zones},     {"view.coils", &PaintOptions::coils},
      {"view.labels", &PaintOptions::labels},   {"view.findings", &PaintOptions::findings},
      {"view.heights", &PaintOptions::heights}, {"view.dig", &PaintOptions::dig}};
  for (const auto& [id, layer] : layers) {
    actions_->action(id)->setChecked(canvas_->paint_options().*layer);
    actions_->on(id, [this, layer = layer](bool on) {
      PaintOptions options = canvas_->paint_options();
      options.*layer = on;
      if (layer == &PaintOptions::labels) options.edge_lengths = on;
      canvas_->set_paint_options(options);
    });
  }
  new DigLegend(document_, *canvas_, *actions_->action("view.dig"));
  auto* heat = new HeatMap(document_, *canvas_);
  actions_->on("view.heat", [heat](bool on) { heat->set_on(on); });
  connect(heat, &HeatMap::closed, this, [this] {
    actions_->action("view.heat")->setChecked(false);
    canvas_->setFocus(Qt::OtherFocusReason);
  });
  auto* kitchen = new KitchenView(document_, this);
  actions_->on("view.kitchen", [kitchen](bool) { kitchen->open(); });
  actions_->on("view.us", [this](bool) { set_units(UnitSystem::us); });
  actions_->on("view.metric", [this](bool) { set_units(UnitSystem::metric); });
  actions_->on("view.units", [this](bool) {
    set_units(document_.plan().units == UnitSystem::us ? UnitSystem::metric : UnitSystem::us);
  });
  const std::pair<const char*, ThemeChoice> themes[] = {{"view.light", ThemeChoice::light},
                                                        {"view.dark", ThemeChoice::dark},
                                                        {"view.system", ThemeChoice::system}};
  for (const auto& [id, choice] : themes) {
    actions_->action(id)->setChecked(ThemeKeeper::instance().choice() == choice);
    actions_->on(id, [choice = choice](bool) {
      ThemeKeeper::instance().choose(choice);
      settings::keep_theme(choice);
    });
  }
  bind_languages();
}

// The tick is at the language of the next start; where that is not the one spoken now the menu says so.
void MainWindow::bind_languages() {
  static constexpr std::pair<const char*, const char*> kTongues[] = {{"view.english", "en"},
                                                                     {"view.spanish", "es"}};
  const auto follow = [this] {
    for (const auto& [id, code] : kTongues) {
      const bool next = settings::language() == code, now = language_spoken() == code;
      const QString name = title_of(*find_command(id));
      QAction* action = actions_->action(id);
      action->setChecked(next);
      action->setText(next == now ? name
                      : next      ? tr("%1, from the next start").arg(name)
                                  : tr("%1, until then").arg(name));
    }
  };
  follow();
  for (const auto& [id, code] : kTongues)
    actions_->on(id, [this, follow, code = code](bool) {
      settings::keep_language(code);
      follow();
      if (code == language_spoken()) return bar_->withdraw("language");
      bar_->tell("language",
                 tr("The window speaks %1 when Underlawn is started again; sheets have their own choice.")
                     .arg(QString::fromUtf8(find_language(code)->name.data())),
                 {{tr("Start again now"), [this] { close_to_start_again(); }}, {tr("Later"), {}}});
    });
}

void MainWindow::bind_panels() {
  const std::pair<const char*, SideColumn::Tab> tabs[] = {
      {"panel.report", SideColumn::Tab::report},
      {"panel.loop", SideColumn::Tab::loop},
      {"panel.selected", SideColumn::Tab::selected},
      {"panel.lot", SideColumn::Tab::lot},
      {"panel.ground", SideColumn::Tab::ground},
      {"panel.heat", SideColumn::Tab::heat},
      {"panel.temperatures", SideColumn::Tab::temperatures},
      {"panel.flow", SideColumn::Tab::flow},
      {"panel.size", SideColumn::Tab::size},
      {"panel.ways", SideColumn::Tab::ways},
      {"panel.price", SideColumn::Tab::price},
      {"panel.crew", SideColumn::Tab::crew},
      {"panel.record", SideColumn::Tab::record},
      {"panel.as_built", SideColumn::Tab::as_built},
      {"panel.survey", SideColumn::Tab::survey},
      {"panel.title", SideColumn::Tab::title}};
  for (const auto& [id, tab] : tabs)
    actions_->on(id, [this, tab = tab](bool) { side_->show_tab(tab, true); });
  actions_->on("edit.find_ways", [this](bool) {
    side_->show_tab(SideColumn::Tab::ways, false);
    side_->ways_panel()->start();
  });
  actions_->on("edit.find_room", [this](bool) {
    const Outcome* outcome = document_.outcome();
    if (outcome != nullptr && !document_.stale() && !outcome->layout.trenches.empty() &&
        static_cast<int>(outcome->layout.trenches.size()) >= outcome->layout.wanted)
      return canvas_->say_for_now(tr("All circuits asked for have found room."));
    side_->show_tab(SideColumn::Tab::report, true);
    side_->report()->show_findings();
    side_->report()->find_remedies();
  });
  actions_->on("edit.lot_by_deed", [this](bool) {
    side_->show_tab(SideColumn::Tab::survey, false);
    side_->survey_panel()->make_lot_line();
  });
  actions_->on("edit.size_loop", [this](bool) {
    side_->show_tab(SideColumn::Tab::size, false);
    side_->size_panel()->start();
  });
  actions_->on("panel.notice", [this](bool) {
    if (!bar_->take_keyboard()) canvas_->say_for_now(tr("There is no notice."));
  });
  actions_->on("panel.drawing", [this](bool) {
    if (sheet_strip_->isVisible()) sheet_strip_->close_strip();
    canvas_->setFocus(Qt::ShortcutFocusReason);
  });
}

void MainWindow::bind_help() {
  auto* finder = new Finder(this, *actions_);
  auto* keys = new KeySheet(this);
  auto* about = new About(this);
  actions_->on("help.find", [finder](bool) { finder->open(); });
  actions_->on("help.keys", [keys](bool) { keys->open(); });
  actions_->on("help.about", [about](bool) { about->open(); });
}

}  // namespace underlawn
