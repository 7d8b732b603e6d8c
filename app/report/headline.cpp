// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/headline.h"

#include <QAbstractButton>
#include <QGridLayout>
#include <QPainter>
#include <algorithm>

#include "report/report_html.h"
#include "window/theme_now.h"

namespace underlawn {

class BigNumber : public QAbstractButton {
 public:
  explicit BigNumber(bool big) : big_(big) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  }

  // The ink is the theme's of the moment it is painted: themes change while a number stands.
  void set(const QString& value, const QString& caption, QColor Theme::*ink, const QString& key) {
    setText(value);
    caption_ = caption;
    ink_ = ink;
    key_ = key;
    setAccessibleName(caption + ": " + value);
    setToolTip(key.isEmpty() ? QString() : Headline::tr("How this number came about"));
    update();
  }
  const QString& key() const { return key_; }
  const QString& caption() const { return caption_; }
  QSize sizeHint() const override { return {big_ ? 150 : 310, big_ ? 48 : 30}; }
  QSize minimumSizeHint() const override { return {90, sizeHint().height()}; }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& t = theme_now();
    if (underMouse() || hasFocus()) {
      painter.setPen(hasFocus() ? QPen(t.focus, 2) : Qt::NoPen);
      painter.setBrush(t.sunken);
      painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);
    }
    const QRect inner = rect().adjusted(8, 4, -6, -4);
    QFont font = this->font();
    font.setPixelSize(big_ ? 18 : 13);
    font.setWeight(QFont::DemiBold);
    painter.setFont(font);
    painter.setPen(t.*ink_);
    const QString value = painter.fontMetrics().elidedText(text(), Qt::ElideRight, inner.width());
    painter.drawText(inner, (big_ ? Qt::AlignTop : Qt::AlignVCenter) | Qt::AlignLeft, value);
    if (!big_) return;
    font.setPixelSize(12);
    font.setWeight(QFont::Normal);
    painter.setFont(font);
    painter.setPen(t.faint);
    painter.drawText(inner, Qt::AlignBottom | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(caption_, Qt::ElideRight, inner.width()));
  }

  void enterEvent(QEnterEvent*) override { update(); }
  void leaveEvent(QEvent*) override { update(); }

 private:
  bool big_;
  QString caption_, key_;
  QColor Theme::*ink_ = &Theme::text;
};

namespace {

struct Shown {
  const char* key;
  QString caption;
};

// Lengths as fine as in the report below, so that nobody sees two different numbers.
QString value_of(const Figures& figures, const char* key, UnitSystem units) {
  const Figure* f = figures.find(key);
  if (f == nullptr) return "–";
  const Fineness fineness = f->quantity == Quantity::length ? Fineness::normal : Fineness::coarse;
  return QString::fromStdString(print_quantity(f->quantity, f->value, units, fineness));
}

QString count_words(int errors, int warnings, int accepted) {
  QStringList parts;
  if (errors > 0) parts << severity_mark(Severity::error) + " " + Headline::tr("%1 to put right").arg(errors);
  if (warnings > 0)
    parts << severity_mark(Severity::warning) + " " + Headline::tr("%1 to look at").arg(warnings);
  if (accepted > 0) parts << Headline::tr("%1 accepted").arg(accepted);
  return parts.isEmpty() ? Headline::tr("✓ The checks found nothing") : parts.join("   ");
}

// The family's one price has the heat pump in it and incentives taken off: under its name no other number.
QString price_caption(const Plan& plan) {
  return plan.pricing.running.unit_cost > 0       ? Headline::tr("loop alone, %1; %2 dug")
         : !plan.pricing.terms.incentives.empty() ? Headline::tr("before incentives, %1; %2 dug")
                                                  : Headline::tr("price in all, %1; %2 dug");
}

}  // namespace

Headline::Headline(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      gesture_(document),
      state_(new BigNumber(false)),
      built_(new BigNumber(false)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, kGap);
  grid->setHorizontalSpacing(kGap);
  grid->setVerticalSpacing(kGap);
  for (int i = 0; i < 4; ++i) {
    auto* number = new BigNumber(true);
    numbers_.push_back(number);
    grid->addWidget(number, i / 2, i % 2);
    connect(number, &QAbstractButton::clicked, this, [this, number] {
      if (!number->key().isEmpty()) emit trace_asked(number->key());
    });
  }
  grid->setColumnStretch(0, 3);
  grid->setColumnStretch(1, 4);
  grid->addWidget(state_, 2, 0, 1, 2);
  connect(state_, &QAbstractButton::clicked, this, &Headline::findings_asked);
  grid->addWidget(built_, 3, 0, 1, 2);
  built_->hide();
  connect(built_, &QAbstractButton::clicked, this, &Headline::as_built_asked);
  connect(&document, &Document::outcome_changed, this, &Headline::refresh);
  connect(&gesture_, &GestureRest::rested, this, &Headline::refresh);
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &Headline::refresh);
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, built_, qOverload<>(&QWidget::update));
  refresh();
}

void Headline::refresh() {
  const Outcome* outcome = document_.outcome();
  if (outcome == nullptr) return state_->set(tr("Working…"), tr("State"), &Theme::faint, {});
  const UnitSystem units = document_.outcome_plan()->units;
  const Figures& f = outcome->figures;
  QColor Theme::*const ink = gesture_.unsettled() ? &Theme::faint : &Theme::text;
  const bool short_of =
      !document_.plan().site.lot.empty() &&
      outcome->layout.trenches.size() < static_cast<std::size_t>(std::max(outcome->layout.wanted, 0));
  numbers_[0]->set(
      tr("%1 of %2")
          .arg(value_of(f, "layout.circuits_placed", units), value_of(f, "layout.circuits_wanted", units)),
      tr("circuits placed"),
      gesture_.unsettled() ? &Theme::faint
      : short_of           ? &Theme::error
                           : &Theme::text,
      "layout.circuits_placed");
  numbers_[1]->set(value_of(f, "dig.length", units), tr("of trench to dig"), ink, "dig.length");
  numbers_[2]->set(value_of(f, "buy.pipe", units), tr("of pipe to buy"), ink, "buy.pipe");
  numbers_[3]->set(value_of(f, "cost.total", units),
                   price_caption(*document_.outcome_plan())
                       .arg(QString::fromStdString(document_.outcome_plan()->wishes.prices.currency),
                            value_of(f, "dig.total.bank_volume", units)),
                   ink, "cost.total");
  show_findings(*outcome);
}

void Headline::show_findings(const Outcome& outcome) {
  if (gesture_.unsettled()) return state_->set(tr("Working…"), tr("State"), &Theme::faint, {});
  if (document_.plan().site.lot.empty())
    return state_->set(tr("The lot line is still to be drawn"), tr("State"), &Theme::faint, {});
  int errors = static_cast<int>(outcome.troubles.size()), warnings = 0, accepted = 0;
  for (const Finding& f : outcome.findings)
    ++(f.accepted ? accepted : f.severity == Severity::error ? errors : warnings);
  state_->set(count_words(errors, warnings, accepted), tr("Findings"),
              errors > 0     ? &Theme::error
              : warnings > 0 ? &Theme::warning
                             : &Theme::grass,
              {});
}

void Headline::show_as_built(bool holds) {
  built_->set(severity_mark(Severity::error) + " " + tr("As built it does not hold"), tr("As-built"),
              &Theme::error, {});
  built_->setVisible(!holds);
}

QString Headline::words() const {
  QStringList all;
  for (const BigNumber* n : numbers_) all << n->text() + " " + n->caption();
  all << state_->text();
  if (!built_->isHidden()) all << built_->text();
  return all.join("; ");
}

}  // namespace underlawn
