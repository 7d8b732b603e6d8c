// SPDX-License-Identifier: GPL-3.0-or-later
// The price book on the Price page.
#include "window/price_panel.h"

#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QStandardPaths>

#include "cost/bill.h"
#include "files/atomic_file.h"
#include "files/price_csv.h"
#include "plots/chart_view.h"
#include "plots/cost_chart.h"
#include "report/report_html.h"
#include "window/price_table.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr std::size_t kRemarksTold = 3;
constexpr qsizetype kLinesNamed = 6;

QStringList without_price(const Bill& bill) {
  QStringList names;
  for (const BillLine& line : bill.lines)
    if (!line.price) names << QString::fromStdString(line.item);
  return names;
}

QPushButton* plain_button(const QString& words, const QString& help) {
  auto* button = new QPushButton(words);
  button->setObjectName("plain");
  button->setToolTip(help);
  return button;
}

QString folder_of(const Document& document) {
  return document.path().isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                                   : QFileInfo(document.path()).absolutePath();
}

}  // namespace

PricePanel::PricePanel(Document& document, QWidget* parent) : Form(document, parent), document_(document) {
  add_summary();
  add_book();
  add_terms();
  add_extras();
  add_incentives();
  add_running_costs();
  add_systems();
  add_result();
  add_counting();
  end();
  follow_outcome();
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &PricePanel::refresh_when_seen);
  refresh();
}

// A label of rich text whose numbers lead to how they came about.
QLabel* PricePanel::linked() {
  auto* label = new QLabel;
  label->setTextFormat(Qt::RichText);
  label->setWordWrap(true);
  // A long name in it does not make the column wider.
  QSizePolicy policy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  label->setSizePolicy(policy);
  label->setTextInteractionFlags(Qt::TextBrowserInteraction);
  connect(label, &QLabel::linkActivated, this, [this](const QString& link) {
    const QString prefix = kFigureLink;
    if (link.startsWith(prefix)) emit trace_asked(link.mid(prefix.size()));
  });
  return label;
}

void PricePanel::add_summary() {
  section(tr("Price"));
  QLabel* label = linked();
  wide(label);
  on_refresh([this, label] {
    const Outcome* outcome = document_.outcome();
    if (outcome == nullptr || outcome->bill == nullptr || outcome->figures.find("cost.total") == nullptr)
      return label->setText(tr("Nothing is laid yet, so there is nothing to price."));
    Page page(outcome->figures, document_.plan().units, theme_now());
    const Bill& bill = *outcome->bill;
    page.begin_table({});
    page.row({tr("Cost"), page.number("bill.cost", Fineness::coarse)});
    const bool apart = document_.outcome_plan()->pricing.running.unit_cost > 0;
    page.row({QString("<b>%1</b>").arg(apart ? tr("Loop alone") : tr("Price in all")),
              page.number("cost.total", Fineness::coarse)});
    if (!bill.incentives.empty())
      page.row({tr("After incentives"), page.number("cost.net", Fineness::coarse)});
    if (apart && page.has("run.loop.first")) {
      page.row({tr("Heat pump indoors"), page.number("run.loop.unit_cost", Fineness::coarse)});
      page.row({QString("<b>%1</b>").arg(tr("In all, heat pump in")),
                page.number("run.loop.first", Fineness::coarse)});
    }
    page.end_table();
    label->setText(page.html());
  });
  note([this](const Plan&) {
    const Outcome* outcome = document_.outcome();
    const QStringList missing =
        outcome != nullptr && outcome->bill != nullptr ? without_price(*outcome->bill) : QStringList();
    if (missing.isEmpty()) return tr("The report lists every line with where its count comes from.");
    const QString names =
        missing.mid(0, kLinesNamed).join("; ") + (missing.size() > kLinesNamed ? "; …" : "");
    return missing.size() == 1
               ? tr("One line has no price and counts for nothing: %1.").arg(names)
               : tr("%n lines have no price and count for nothing: %1.", "", static_cast<int>(missing.size()))
                     .arg(names);
  });
}

// ---- price book ----

void PricePanel::add_book() {
  section(tr("Price book"));
  auto* show = choice_box({tr("On this bill"), tr("Changed"), tr("All")});
  show->setToolTip(tr("Which rows of the book are shown"));
  row(tr("Show"), show);
  table_ = new PriceTable(document_);
  connect(show, &QComboBox::activated, this,
          [this](int which) { table_->show_only(static_cast<PriceTable::Show>(which)); });
  wide(table_);
  wide(book_buttons());
  on_refresh([this] { table_->refresh(); });
  note([](const Plan&) {
    return tr(
        "Pale prices are round figures of our own, no source: enter yours. What is weighed in the layout "
        "(digging, lawn, pavement, sand, pipe, joints, crew) is the same number there.");
  });
  text(tr("Date of the offer"),
       {[](const Plan& p) { return QString::fromStdString(p.pricing.book.date); },
        [](Plan& p, const QString& t) { p.pricing.book.date = t.trimmed().toStdString(); },
        tr("Date of the offer")})
      ->edit()
      ->setPlaceholderText(tr("e.g. 2026-03-01"));
  number(tr("Prices are old after, days"), Quantity::count,
         bound_to(tr("Age of prices"), &Plan::pricing, &Pricing::book, &PriceBook::oldest));
}

QWidget* PricePanel::book_buttons() {
  auto* buttons = new QWidget;
  auto* row = new QGridLayout(buttons);  // two by two: more in a row are wider than the column
  row->setContentsMargins(0, 0, 0, 0);
  auto* import = plain_button(tr("Import…"), tr("Take prices from a CSV file"));
  auto* save = plain_button(tr("Export…"), tr("Write the whole book to a CSV file"));
  auto* usual = plain_button(tr("As usual"), tr("The row the keyboard is in gets its usual price again"));
  auto* add = plain_button(tr("Add"), tr("An item of your own, kept with the book"));
  auto* rolls = plain_button(
      tr("By the roll"), tr("The row the keyboard is in shows a price for each roll or pack it is sold by"));
  int place = 0;
  for (QPushButton* button : {import, save, usual, add, rolls}) {
    row->addWidget(button, place / 2, place % 2);
    ++place;
  }
  connect(usual, &QPushButton::clicked, this, [this] { table_->reset_current(); });
  connect(add, &QPushButton::clicked, this, [this] { table_->add_item(); });
  connect(rolls, &QPushButton::clicked, this, [this] { table_->show_rolls(); });
  const QString kinds = tr("Price books (*.csv)") + ";;" + tr("All files (*)");
  connect(import, &QPushButton::clicked, this, [this, kinds] {
    const QString path =
        QFileDialog::getOpenFileName(window(), tr("Import prices"), folder_of(document_), kinds);
    if (!path.isEmpty()) read_book(path);
  });
  connect(save, &QPushButton::clicked, this, [this, kinds] {
    const QString path = QFileDialog::getSaveFileName(window(), tr("Export prices"),
                                                      folder_of(document_) + "/prices.csv", kinds);
    if (!path.isEmpty()) write_book(path);
  });
  return buttons;
}

void PricePanel::read_book(const QString& path) {
  const QString name = QFileInfo(path).fileName();
  const auto refused = [&](const Trouble& t) {
    emit told(tr("%1 was not taken. %2").arg(name, QString::fromStdString(t.message())));
  };
  const auto text = read_file(path.toStdString(), kMostPriceText);
  if (!text) return refused(text.error());
  const auto csv = prices_from_csv(*text, document_.plan().units);
  if (!csv) return refused(csv.error());
  Plan plan = document_.committed();
  take_prices(plan.pricing.book, plan.wishes, csv->value);
  plan.pricing.book.name = QFileInfo(path).completeBaseName().toStdString();
  if (const QString wrong = new_trouble(document_.committed(), plan); !wrong.isEmpty()) {
    emit told(tr("%1 was not taken. %2").arg(name, wrong));
    return;
  }
  document_.commit(std::move(plan), tr("Price book"));
  QStringList lines;
  for (std::size_t i = 0; i < std::min(csv->remarks.size(), kRemarksTold); ++i)
    lines << QString::fromStdString(csv->remarks[i].message());
  if (csv->remarks.size() > kRemarksTold)
    lines << tr("And %n more.", "", static_cast<int>(csv->remarks.size() - kRemarksTold));
  emit told(lines.isEmpty() ? QString() : tr("%1 was taken, with remarks. %2").arg(name, lines.join(' ')));
}

void PricePanel::write_book(const QString& path) {
  const Plan& plan = document_.plan();
  const auto written = write_file(path.toStdString(), price_csv(plan.pricing.book, plan.wishes, plan.units));
  emit told(written
                ? tr("Written: %1").arg(path)
                : tr("%1 was not written. %2")
                      .arg(QFileInfo(path).fileName(), QString::fromStdString(written.error().message())));
}

// ---- what comes of it ----

void PricePanel::add_result() {
  chart_ = new ChartView(280);
  wide(chart_);
  QLabel* label = linked();
  wide(label);
  on_refresh([this, label] {
    const Outcome* outcome = document_.outcome();
    if (outcome == nullptr) return;
    const Plan& plan = *document_.outcome_plan();
    Chart chart = paid_chart(plan, *outcome);
    chart.stale = document_.stale();
    chart_->set_chart(std::move(chart));
    Page page(outcome->figures, document_.plan().units, theme_now());
    if (const QString dots = crossing_words(*outcome); !dots.isEmpty()) page.paragraph(page.faint(dots));
    add_running(page, plan, *outcome);
    label->setText(page.html());
  });
}

}  // namespace underlawn
