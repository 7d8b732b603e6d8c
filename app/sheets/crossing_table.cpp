// SPDX-License-Identifier: GPL-3.0-or-later
// What header and run cross, how deep, and on which side of it our pipes pass.
#include "canvas/look.h"
#include "canvas/utility_tags.h"
#include "dig/dig.h"
#include "layout/crossing_tags.h"
#include "layout/passing.h"
#include "plane/region.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

QString passing_word(const Plan& plan, const Crossing& crossing) {
  switch (passing(crossing, plan.wishes.bedding)) {
    case Passing::over:
      return QObject::tr("over it");
    case Passing::under:
      return QObject::tr("under it");
    case Passing::level:
      break;
  }
  return QObject::tr("AT ITS DEPTH: ask the designer");
}

namespace {

// Utilities with any part in the area.
QStringList lines_in(const Plan& plan, const Feature& area) {
  QStringList names;
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::utility && f.points.size() > 1 && area.points.size() > 2 &&
        line_area_distance(f.points, area.points) < kSamePlace)
      names << QString("%1 (%2)").arg(text_of(display_name(f)), utility_tag(plan.site, f));
  return names;
}

class Crossings {
 public:
  Crossings(const Plan& plan, const Outcome& outcome) : plan_(plan), outcome_(outcome) {}

  BlockPtr table() {
    for (std::size_t i = 0; i < outcome_.layout.crossings.size(); ++i) add(i);
    if (rows_.empty()) return nullptr;
    return std::make_shared<Table>(QObject::tr("CROSSINGS: DIG BY HAND"),
                                   std::vector<Column>{{QObject::tr("No.")},
                                                       {QObject::tr("What is crossed"), Align::left, true},
                                                       {QObject::tr("Its depth"), Align::right},
                                                       {QObject::tr("Our depth"), Align::right},
                                                       {QObject::tr("Our pipes pass"), Align::left, true},
                                                       {QObject::tr("By hand, each side"), Align::right}},
                                   std::move(rows_), 10.5, note());
  }

 private:
  void add(std::size_t i) {
    const Crossing& x = outcome_.layout.crossings[i];
    const Feature* f = find_feature(plan_.site, x.feature_id);
    if (f != nullptr && f->kind == FeatureKind::easement) return add_easement(*f);
    const std::string tag = crossing_tag(plan_.site, outcome_.layout, i);
    const std::string key = "crossing." + std::to_string(i + 1);
    QString name = f != nullptr ? text_of(display_name(*f)) : "–";
    std::optional<QColor> swatch;
    const bool line = f != nullptr && f->kind == FeatureKind::utility;
    if (line) {
      hand_ = true;
      if (passing(x, plan_.wishes.bedding) == Passing::under)
        clear_ << QString("%1 %2").arg(
            text_of(tag), shown_length(plan_, x.trench_depth - plan_.wishes.bedding - x.utility_depth));
      swatch = apwa_colour(f->utility, Look::paper());
      name += QString(" (%1)").arg(utility_tag(plan_.site, *f));
    }
    rows_.push_back({{tag.empty() ? "–" : text_of(tag), std::nullopt, true},
                     {name, swatch},
                     {shown(plan_, outcome_, key + ".utility_depth")},
                     {shown(plan_, outcome_, key + ".trench_depth")},
                     {line ? passing_word(plan_, x) : QString("–"), std::nullopt, line},
                     {shown(plan_, outcome_, key + ".hand_dig"), std::nullopt, true}});
  }

  // Once, however often its edges are met: what is to be known of it is what lies in it.
  void add_easement(const Feature& f) {
    if (told_.contains(f.id)) return;
    told_ << f.id;
    const QStringList lines = lines_in(plan_, f);
    const QString name = text_of(display_name(f));
    const QString what = lines.isEmpty() ? QObject::tr("%1: no line in it is known to us").arg(name)
                                         : QObject::tr("%1: in it %2").arg(name, lines.join(", "));
    rows_.push_back({{"–"}, {what}, {"–"}, {"–"}, {"–"}, {"–"}});
  }

  // 1926.651(b)(4): what is laid bare is protected, supported or removed while the cut is open; the rest is
  // common practice, no source.
  QString how() const {
    const QString deep = shown_length(plan_, kProtectFrom);
    return QObject::
        tr("Who digs and who watches is named in NAMES AND EMERGENCY. From the top down, no machine at work "
           "meanwhile; from %1 of depth on nobody is in the hole without shield or shores on either side of "
           "the line: no shield passes through it. Then hold the line up from a beam across the cut as its "
           "owner says, 1926.651(b)(4). The machine stops before the hand-dug stretch, drives round and goes "
           "on beyond it. How much stays clear between the line and our pipes its owner says%2.")
            .arg(deep, clear_.isEmpty() ? QString()
                                        : QObject::tr("; as planned our bedding begins below its top: %1")
                                              .arg(clear_.join(", ")));
  }

  QString note() const {
    QStringList all;
    if (!told_.isEmpty()) all << QObject::tr("Easement: ask whoever holds the right before you dig there.");
    all << QObject::tr(
        "Depths of utilities are to their tops, as told to the designer, and are not proof. Expose each line "
        "by "
        "hand before any machine comes near; if it lies otherwise than told, stop and ask. The tolerance "
        "zone "
        "of your state governs where it is wider.");
    if (hand_) all << how();
    return all.join(" ");
  }

  const Plan& plan_;
  const Outcome& outcome_;
  std::vector<std::vector<Cell>> rows_;
  QList<int> told_;
  QStringList clear_;  // "X1 6\""
  bool hand_ = false;  // a line is met
};

}  // namespace

BlockPtr crossing_table(const Plan& plan, const Outcome& outcome) {
  return Crossings(plan, outcome).table();
}

}  // namespace underlawn::sheet
