// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/record_blocks.h"

#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <functional>

#include "canvas/look.h"
#include "flow/test_safety.h"
#include "plan/coil_watch.h"
#include "plots/chart_paint.h"
#include "plots/test_chart.h"
#include "sheets/form_block.h"

namespace underlawn::sheet {

namespace {

QString say(const RecordFacts& f, Quantity q, double value) {
  return text_of(print_quantity(q, value, f.plan.units));
}

QString said(const RecordFacts& f, Quantity q, const std::optional<double>& value) {
  return !f.blank && value ? say(f, q, *value) : QString();
}

QString written(const RecordFacts& f, const std::string& text) {
  return f.blank ? QString() : text_of(text);
}

FormRow row(const QString& what, const QString& asked, const QString& box) {
  return {what, asked, {box}};
}

QString minutes(double seconds) {
  return QObject::tr("%1 min").arg(std::ceil(seconds / 60 - 1e-6));
}

QString result_word(TestResult r) {
  return r == TestResult::passed   ? QObject::tr("passed", "a test")
         : r == TestResult::failed ? QObject::tr("failed", "a test")
                                   : QString();
}

// Of coils that are covered before the test.
QString kept_words(const RecordFacts& f) {
  const std::vector<CoilWatch> coils = coil_watches(f.plan, f.outcome);
  return coils.empty()
             ? QString()
             : QObject::tr("%1 on each coil").arg(say(f, Quantity::pressure, coils.front().hold.kept));
}

}  // namespace

BlockPtr record_cautions(const RecordFacts& f) {
  std::vector<Item> items;
  const LoopVolume loop = f.outcome.flow == nullptr ? LoopVolume{} : volume_of(f.outcome.flow->loop);
  for (const std::string& c :
       test_cautions(loop, f.curves ? f.curves->test.pressure.at_lowest : 0, f.plan.units))
    items.push_back({"•", "", text_of(c)});
  const std::string fluid(fluid_caution(f.plan.flow.fluid));
  if (!fluid.empty()) items.push_back({"•", "", text_of(fluid)});
  items.push_back(
      {"•", "",
       QObject::tr(
           "Joints stay open until the loop has passed its test. Local code, the pipe maker's rules and "
           "licensed practice go before this sheet.")});
  return std::make_shared<Items>(QObject::tr("CAUTIONS"), std::move(items), 9, 2);
}

BlockPtr test_form(const RecordFacts& f) {
  const TestRecord& t = f.plan.record.test;
  const QString at_gauge = f.curves ? say(f, Quantity::pressure, f.curves->test.pressure.at_gauge) : "–";
  const QString lowest = f.curves ? say(f, Quantity::pressure, f.curves->test.pressure.at_lowest) : "–";
  const QString lasts = say(f, Quantity::duration, test_duration(f.plan.test.procedure));
  std::vector<FormRow> rows = {
      row(QObject::tr("Procedure"), text_of(std::string(test_procedure_name(f.plan.test.procedure))), ""),
      row(QObject::tr("Filled with"), QObject::tr("water"),
          f.blank                       ? QString()
          : t.medium == TestMedium::air ? QObject::tr("AIR")
                                        : QObject::tr("water")),
      row(QObject::tr("Pressure at the gauge"),
          QObject::tr("%1 (%2 at the lowest point)").arg(at_gauge, lowest), ""),
      row(QObject::tr("Pumping began"), "", written(f, t.start)),
      row(QObject::tr("Last reading"), QObject::tr("after %1").arg(lasts), written(f, t.end)),
      row(QObject::tr("Tested by"), "", written(f, t.tester)),
      row(QObject::tr("Witnessed by"), "", written(f, t.witness)),
      row(QObject::tr("Gauge, full scale, calibrated"), "",
          f.blank ? ""
                  : QStringList({text_of(t.gauge), said(f, Quantity::pressure, t.gauge_range),
                                 text_of(t.gauge_checked)})
                        .filter(QRegularExpression("\\S"))
                        .join(", ")),
      row(QObject::tr("Weather, air"), "",
          f.blank ? ""
                  : QStringList({text_of(t.weather), said(f, Quantity::temperature, t.air_temperature)})
                        .filter(QRegularExpression("\\S"))
                        .join(", ")),
      row(QObject::tr("What was tested"), QObject::tr("the whole loop"), written(f, t.part)),
      row(QObject::tr("Passed or failed"), "", f.blank ? "" : result_word(t.result)),
      row(QObject::tr("First joint covered"), QObject::tr("after the test is passed"),
          written(f, t.joints_covered)),
      row(QObject::tr("Pressure kept while filling in"), kept_words(f),
          said(f, Quantity::pressure, t.pressure_while_filling))};
  if (!f.blank && !t.note.empty()) rows.push_back(row(QObject::tr("Note"), "", text_of(t.note)));
  return std::make_shared<FormBlock>(QObject::tr("PRESSURE TEST"), QObject::tr("Asked"),
                                     QStringList{QObject::tr("Done")}, std::move(rows));
}

namespace {

class Picture : public Block {
 public:
  explicit Picture(Chart chart) : chart_(std::move(chart)) {}
  double height(double) const override { return heading_height() + pt(230); }
  void paint(QPainter& painter, const QRectF& room) const override {
    paint_heading(painter, room, QObject::tr("WHAT THE GAUGE SHOWS ONCE THE VALVE IS SHUT"));
    painter.save();
    // Charts are painted in units of a screen.
    const double scale = pt(0.8);
    painter.translate(room.left(), room.top() + heading_height());
    painter.scale(scale, scale);
    painter.setFont(plan_font(11));
    Theme theme = Theme::light();
    theme.paper = Qt::white;
    paint_chart(painter, chart_, QRectF(0, 0, room.width() / scale, pt(226) / scale), theme);
    painter.restore();
  }

 private:
  Chart chart_;
};

}  // namespace

BlockPtr test_picture(const RecordFacts& f) {
  if (!f.curves) return nullptr;
  TestPicture p{f.curves->test.programme, f.plan.test.procedure, f.curves->band,
                f.curves->leak,           f.curves->smallest,    {}};
  if (!f.blank) p.readings = f.plan.test.readings;
  if (!f.blank && f.curves->judgement) {
    p.programme = f.curves->judgement->programme;
    p.band = f.curves->judgement->band;
  }
  return std::make_shared<Picture>(test_chart(p, f.plan.units));
}

namespace {

constexpr int kReadingRows = 9;

// Of the readings the one nearest in time, where one is near.
QString read_at(const RecordFacts& f, double since_shut, double step) {
  const PressureReading* best = nullptr;
  for (const PressureReading& r : f.plan.test.readings)
    if (best == nullptr || std::abs(r.time - since_shut) < std::abs(best->time - since_shut)) best = &r;
  if (best == nullptr || std::abs(best->time - since_shut) > step / 2) return {};
  QString text = say(f, Quantity::pressure, best->pressure);
  if (best->temperature) text += ", " + say(f, Quantity::temperature, *best->temperature);
  return text;
}

}  // namespace

BlockPtr readings_form(const RecordFacts& f) {
  if (!f.curves) return nullptr;
  const bool judged = !f.blank && f.curves->judgement;
  const TestProgramme& programme = judged ? f.curves->judgement->programme : f.curves->test.programme;
  const TestBand& band = judged ? f.curves->judgement->band : f.curves->band;
  const double start = shut_in_start(programme), end = programme_end(programme);
  const double step = (end - start) / (kReadingRows - 1);
  std::vector<FormRow> rows;
  for (int i = 0; i < kReadingRows; ++i) {
    const double t = start + step * i;
    rows.push_back(
        {QObject::tr("%1 min").arg(std::round((t - start) / 6) / 10),
         QObject::tr("%1  (%2 to %3)")
             .arg(say(f, Quantity::pressure, band.expected.pressure_at(t)),
                  say(f, Quantity::pressure, band.low_at(t)), say(f, Quantity::pressure, band.high_at(t))),
         {f.blank ? "" : read_at(f, t - start, step), ""}});
  }
  return std::make_shared<FormBlock>(
      QObject::tr("READINGS SINCE THE VALVE WAS SHUT"), QObject::tr("A sound loop (from – to)"),
      QStringList{QObject::tr("Pressure; pipe's temperature"), QObject::tr("Note")}, std::move(rows),
      QObject::tr("Polyethylene creeps: a sound loop loses pressure. A leak shows as a "
                  "curve that leaves the band and goes on falling. %1")
          .arg(text_of(band_words({}, f.plan.units))));
}

namespace {

QString seen(WaterSeen w) {
  return w == WaterSeen::clear    ? QObject::tr("clear", "water")
         : w == WaterSeen::cloudy ? QObject::tr("cloudy", "water")
         : w == WaterSeen::dirty  ? QObject::tr("dirty", "water")
                                  : QString();
}
QString seen(AirSeen a) {
  return a == AirSeen::none      ? QObject::tr("none", "air")
         : a == AirSeen::bubbles ? QObject::tr("bubbles", "air")
         : a == AirSeen::slugs   ? QObject::tr("slugs", "air")
                                 : QString();
}

QString circuits_of(const FlushReading& r) {
  if (r.open.empty()) return QObject::tr("all", "circuits");
  QStringList all;
  for (int n : r.open) all << QString::number(n);
  return all.join(", ");
}

using FlushText = std::function<QString(const FlushReading&)>;

FormRow flush_row(const RecordFacts& f, const QString& what, const QString& asked, std::size_t from,
                  std::size_t columns, const FlushText& text) {
  FormRow r{what, asked, {}};
  for (std::size_t i = from; i < from + columns; ++i)
    r.boxes << (!f.blank && i < f.plan.record.flush.size() ? text(f.plan.record.flush[i]) : QString());
  return r;
}

}  // namespace

BlockPtr flush_form(const RecordFacts& f) {
  if (!(f.judged.flush_asked.asked > 0)) return nullptr;
  constexpr std::size_t kColumns = 3;
  const FlushJudgement& asked = f.judged.flush_asked;
  const std::size_t all = f.blank ? kColumns : std::clamp<std::size_t>(f.plan.record.flush.size(), 1, 4);
  const auto number = [&](Quantity q, std::optional<double> FlushReading::*field) {
    return [&f, q, field](const FlushReading& r) { return said(f, q, r.*field); };
  };
  const auto add = [&](const QString& what, const QString& wanted, const FlushText& text) {
    return flush_row(f, what, wanted, 0, all, text);
  };
  std::vector<FormRow> rows = {
      add(QObject::tr("Circuits open"), QObject::tr("all, then one by one where they have valves"),
          circuits_of),
      add(QObject::tr("Way"), QObject::tr("both", "ways of flow"),
          [](const FlushReading& r) {
            return r.direction == FlushDirection::forward ? QObject::tr("as it runs")
                                                          : QObject::tr("reverse", "way of flow");
          }),
      add(QObject::tr("Began"), "", [](const FlushReading& r) { return text_of(r.when); }),
      add(QObject::tr("Ran for"), QObject::tr("at least %1").arg(minutes(asked.time_asked)),
          [&f](const FlushReading& r) { return !f.blank && r.duration ? minutes(*r.duration) : QString(); }),
      add(QObject::tr("Flow"), QObject::tr("at least %1").arg(say(f, Quantity::flow, asked.asked)),
          number(Quantity::flow, &FlushReading::flow)),
      add(QObject::tr("Pressure drop between the ports"),
          QObject::tr("%1 at that flow").arg(say(f, Quantity::pressure, asked.expected_at_asked)),
          number(Quantity::pressure, &FlushReading::pressure_drop)),
      add(QObject::tr("Water temperature"), "", number(Quantity::temperature, &FlushReading::temperature)),
      add(QObject::tr("Water at the end"), QObject::tr("clear", "water"),
          [](const FlushReading& r) { return seen(r.water); }),
      add(QObject::tr("Air at the end"), QObject::tr("none", "air"),
          [](const FlushReading& r) { return seen(r.air); }),
      add(QObject::tr("Note"), "", [](const FlushReading& r) { return text_of(r.note); })};
  QStringList heads;
  for (std::size_t i = 1; i <= all; ++i) heads << QObject::tr("Flushing %1").arg(i);
  return std::make_shared<FormBlock>(QObject::tr("FLUSHING"), QObject::tr("Asked"), heads, std::move(rows));
}

// Beside the gauges, so that a blocked circuit shows while the cart still runs.
BlockPtr drop_table(const RecordFacts& f) {
  const Flow* flow = f.outcome.flow.get();
  if (flow == nullptr || !(f.judged.flush_asked.asked > 0)) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (double share : {0.6, 0.8, 1.0, 1.2, 1.4}) {
    FlushReading reading;
    reading.flow = share * f.judged.flush_asked.asked;
    const auto judged = judge_flush(flow->loop, f.plan.flow, reading, "", f.plan.units);
    if (!judged || judged->drops.empty()) return nullptr;
    std::vector<Cell> cells = {{say(f, Quantity::flow, *reading.flow), std::nullopt, share == 1.0},
                               {say(f, Quantity::pressure, judged->drops[0].least), std::nullopt, true}};
    const auto range = [&](std::size_t i) {
      return judged->drops.size() > i ? QObject::tr("%1 to %2")
                                            .arg(say(f, Quantity::pressure, judged->drops[i].least),
                                                 say(f, Quantity::pressure, judged->drops[i].most))
                                      : QString("–");
    };
    cells.push_back({range(1)});
    cells.push_back({range(2)});
    rows.push_back(std::move(cells));
  }
  return std::make_shared<Table>(
      QObject::tr("PRESSURE DROP BETWEEN THE FLUSH PORTS, WATER, WITHOUT THE HEAT PUMP"),
      std::vector<Column>{{QObject::tr("Flow"), Align::right},
                          {QObject::tr("All circuits flow"), Align::right},
                          {QObject::tr("One does not"), Align::right},
                          {QObject::tr("Two do not"), Align::right}},
      std::move(rows), 9.5,
      QObject::tr("More drop than all circuits make at that flow: one is shut, blocked or "
                  "holds air. Less: water passes the loop by."));
}

BlockPtr fill_form(const RecordFacts& f) {
  const FillRecord& r = f.plan.record.fill;
  const FillJudgement& asked = f.judged.fill;
  const bool water = f.plan.flow.fluid == Fluid::water;
  std::vector<FormRow> rows = {row(QObject::tr("Filled on, by"), QObject::tr("after flushing"),
                                   f.blank ? ""
                                           : QStringList({text_of(r.when), text_of(r.filled_by)})
                                                 .filter(QRegularExpression("\\S"))
                                                 .join(", "))};
  if (!water) {
    rows.push_back(row(QObject::tr("Antifreeze"),
                       QObject::tr("%1, %2 by mass")
                           .arg(text_of(std::string(fluid_name(f.plan.flow.fluid))),
                                say(f, Quantity::ratio, f.plan.flow.mass_fraction)),
                       f.blank ? ""
                               : QStringList({text_of(r.product), text_of(r.batch)})
                                     .filter(QRegularExpression("\\S"))
                                     .join(", ")));
    rows.push_back(row(
        QObject::tr("Put in"),
        (r.strength && !f.blank ? QObject::tr("%1 of this product") : QObject::tr("%1 of pure antifreeze"))
            .arg(say(f, Quantity::fluid_volume, asked.asked_product)),
        said(f, Quantity::fluid_volume, r.put_in)));
    rows.push_back(row(QObject::tr("Freezing point by refractometer"),
                       QObject::tr("%1; at most %2")
                           .arg(say(f, Quantity::temperature, asked.asked_freezing),
                                say(f, Quantity::temperature, asked.wanted_freezing)),
                       said(f, Quantity::temperature, r.freezing_point)));
    rows.push_back(row(QObject::tr("Refractometer"), "", written(f, r.refractometer)));
    rows.push_back(row("pH", QObject::tr("by the product's sheet"), said(f, Quantity::count, r.ph)));
    rows.push_back(
        row(QObject::tr("Inhibitor"), QObject::tr("by the product's sheet"), written(f, r.inhibitor)));
  }
  rows.push_back(row(QObject::tr("Water from"), "", written(f, r.water)));
  rows.push_back(row(QObject::tr("Fluid temperature"), "", said(f, Quantity::temperature, r.temperature)));
  rows.push_back(
      row(QObject::tr("Pressure left on the loop"),
          asked.asked_charge
              ? QObject::tr("at least %1").arg(say(f, Quantity::pressure, asked.asked_charge->at_fill))
              : "–",
          said(f, Quantity::pressure, r.pressure)));
  rows.push_back(row(QObject::tr("Label at the ports"), QObject::tr("fluid and freezing point"),
                     f.blank      ? QString()
                     : r.labelled ? QObject::tr("yes")
                                  : QObject::tr("no")));
  if (!f.blank && !r.note.empty()) rows.push_back(row(QObject::tr("Note"), "", text_of(r.note)));
  return std::make_shared<FormBlock>(QObject::tr("FILL"), QObject::tr("Asked"),
                                     QStringList{QObject::tr("Done")}, std::move(rows));
}

BlockPtr record_verdicts(const RecordFacts& f) {
  if (f.blank) return nullptr;
  std::vector<Item> items;
  if (f.curves && f.curves->judgement) {
    const Judgement& j = *f.curves->judgement;
    const QString word = j.verdict == Verdict::sound            ? QObject::tr("Sound.")
                         : j.verdict == Verdict::leak_suspected ? QObject::tr("A leak is suspected.")
                                                                : QObject::tr("Cannot tell.");
    items.push_back({j.verdict == Verdict::sound            ? "✓"
                     : j.verdict == Verdict::leak_suspected ? "✗"
                                                            : "?",
                     QObject::tr("Readings of the gauge: %1").arg(word), text_of(j.reason + " " + j.next)});
  }
  for (const RecordLine& line : f.judged.lines()) {
    if (line.tone == Tone::open) continue;
    items.push_back({line.tone == Tone::good    ? "✓"
                     : line.tone == Tone::doubt ? "?"
                                                : "✗",
                     text_of(line.title) + ":", text_of(line.words)});
  }
  return items.empty() ? nullptr
                       : std::make_shared<Items>(QObject::tr("WHAT THE RECORD TELLS"), std::move(items), 9.5);
}

BlockPtr signature_form(const RecordFacts& f) {
  std::vector<FormRow> rows;
  if (!f.blank)
    for (const Signature& s : f.plan.record.signatures)
      rows.push_back({text_of(s.role), "", {text_of(s.name), text_of(s.licence), text_of(s.date), ""}});
  if (rows.empty())
    for (const QString& role : {QObject::tr("Installer"), QObject::tr("Inspector"), QObject::tr("Owner")})
      rows.push_back({role, "", {"", "", "", ""}});
  QStringList notes;
  if (!f.plan.record.permit.empty()) notes << QObject::tr("Permit %1.").arg(text_of(f.plan.record.permit));
  if (!f.plan.record.locate_ticket.empty())
    notes << QObject::tr("Locate ticket %1.").arg(text_of(f.plan.record.locate_ticket));
  if (!f.blank && !f.plan.record.note.empty()) notes << text_of(f.plan.record.note);
  return std::make_shared<FormBlock>(
      QObject::tr("SIGNATURES"), "",
      QStringList{QObject::tr("Name"), QObject::tr("Licence"), QObject::tr("Date"), QObject::tr("Signature")},
      std::move(rows), notes.join("  "));
}

}  // namespace underlawn::sheet
