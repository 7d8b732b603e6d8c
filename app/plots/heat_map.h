// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <QImage>
#include <memory>
#include <thread>

#include "plots/heat_colours.h"
#include "window/document.h"

class QComboBox;
class QLabel;
class QPainter;
class QSlider;

namespace underlawn {

class Canvas;
class HeatLegend;
struct View;

// The layer "Ground temperature": how warm the ground is at the depth of the coils, laid over the drawing
// within the lot line, with a card at the drawing's foot to choose the day and the year. Worked out beside
// the window, and only while it is on; what is of an earlier plan is pale and says so.
class HeatMap : public QFrame {
  Q_OBJECT

 public:
  HeatMap(Document& document, Canvas& canvas);
  ~HeatMap() override;
  void set_on(bool on);
  bool on() const { return on_; }
  bool ready() const { return made_ != nullptr; }  // something is shown
  bool current() const;                            // and it is of the plan that is drawn
  const QImage& image() const { return image_; }
  QSlider* day() const { return day_; }
  QComboBox* year() const { return year_; }
  QString words() const;  // what the card says

 signals:
  void closed();  // by Esc on the card

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Made;
  void build();
  void place();
  void take_outcome();  // starts the work where the outcome is another
  void take(std::shared_ptr<const Made> made);
  void offer_years(int years);
  void repaint_image();
  void tell();
  void paint(QPainter& painter, const View& view) const;

  Document& document_;
  Canvas& canvas_;
  bool on_ = false;
  QSlider* day_;
  QComboBox* year_;
  QLabel* date_;
  HeatLegend* legend_;
  QImage image_;
  UnitSystem units_ = UnitSystem::metric;      // of the scale and the words
  std::shared_ptr<const Temperatures> asked_;  // the outcome that is worked on, or shown
  std::shared_ptr<const Made> made_;
  std::jthread worker_;
};

}  // namespace underlawn
