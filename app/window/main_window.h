// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>

#include "window/actions.h"
#include "window/document.h"
#include "window/file_flow.h"
#include "window/kept_aside.h"
#include "window/selection.h"

class QLabel;
class QStackedWidget;

namespace underlawn {

class Canvas;
class Finder;
class ImportCard;
class NoticeBar;
class PictureCard;
class SheetStrip;
class SideColumn;
class TypedField;

// The window: the drawing fills it, a slim strip of tools left, the panels right. Nothing in it is modal.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  // `kept_folder`: where unsaved work is kept aside.
  explicit MainWindow(QString kept_folder = KeptAside::usual_folder());
  ~MainWindow() override;

  Document& document() { return document_; }
  Selection& selection() { return selection_; }
  Actions& actions() { return *actions_; }
  FileFlow& files() { return *files_; }
  Canvas* canvas() const { return canvas_; }
  SideColumn* side() const { return side_; }
  NoticeBar* bar() const { return bar_; }
  SheetStrip* sheet_strip() const { return sheet_strip_; }
  ImportCard* import_card() const { return import_card_; }
  PictureCard* picture_card() const { return picture_card_; }
  bool wants_to_start_again() const { return start_again_; }  // once it is closed

 protected:
  void closeEvent(QCloseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void build();
  QWidget* make_middle();
  QWidget* make_foot();
  void set_up_scale();
  void connect_canvas();
  void bind_file();
  void bind_exchange();
  void bind_edit();
  void bind_tools();
  void bind_layers();
  void bind_view();
  void bind_languages();
  void bind_panels();
  void bind_help();
  void close_to_start_again();
  void set_units(UnitSystem units);
  void follow_document();
  void follow_theme();
  void open_sheet();
  void show_hint();
  void update_title();

  Document document_;
  Selection selection_;
  KeptAside kept_;
  FileWatch watch_;
  Actions* actions_;
  NoticeBar* bar_;
  FileFlow* files_;
  Canvas* canvas_;
  SideColumn* side_;
  SheetStrip* sheet_strip_;
  ImportCard* import_card_ = nullptr;
  PictureCard* picture_card_ = nullptr;
  QStackedWidget* middle_;
  QLabel* hint_;
  QLabel* says_;
  QLabel* where_;
  TypedField* scale_;  // of the view
  bool may_close_ = false;
  bool start_again_ = false;
};

}  // namespace underlawn
