// SPDX-License-Identifier: GPL-3.0-or-later
// The second page: the lot before, while it is dug and after, on one scale; how long it takes.
#include <algorithm>

#include "language/language.h"
#include "sheets/contents.h"
#include "sheets/days_chart.h"
#include "sheets/proposal_parts.h"

namespace underlawn::sheet {

namespace {

constexpr double kPictureText = 9.5;  // points

LotPicture moment(LotMoment when) {
  LotPicture how;
  how.moment = when;
  how.names = false;
  how.text = pt(kPictureText);
  return how;
}

// Named with when it is: by the crew's calendar where there is one.
Pictures::Picture digging_picture(const ProposalPage& page) {
  LotPicture how = moment(LotMoment::digging);
  QString words = QObject::tr("Trenches open, the earth beside them, ground walked and driven on.");
  if (const auto most = most_open(page.outcome)) {
    how.at = most->at;
    words = QObject::tr("The evening of day %1, when most is open. Open: %2.")
                .arg(most->day)
                .arg(open_then(page.outcome, most->at));
  }
  return lot_picture(page, QObject::tr("While we dig"), words, how);
}

std::vector<Pictures::Picture> three_moments(const ProposalPage& page) {
  return {lot_picture(page, QObject::tr("Before"), QObject::tr("Your lot today."), moment(LotMoment::before)),
          digging_picture(page),
          lot_picture(
              page, QObject::tr("When we leave"),
              QObject::tr("All that was used is sown, the filled trenches too: lawn again in a season, but "
                          "where the ground settles."),
              moment(LotMoment::closed))};
}

// When it begins and ends, where a day is named.
void add_dates(std::vector<Prose::Line>& days, const ProposalPage& page) {
  const QString start = term(page.plan.proposal.start);
  if (start.isEmpty()) return;
  const QDate day = QDate::fromString(text_of(page.plan.proposal.start).trimmed(), Qt::ISODate);
  const auto last = last_days(page.plan, page.outcome, day);
  if (!last) {
    days.push_back({"", QObject::tr("We would begin:"), start});
    return;
  }
  QString ends = date_words(last->last) + ".";
  if (last->with_rain > last->last)
    ends = QObject::tr("%1; if rain takes every day that we keep for it, %2.")
               .arg(date_words(last->last), date_words(last->with_rain));
  if (const QString off = days_off(page.plan); !off.isEmpty())
    ends += " " + QObject::tr("No work on: %1.").arg(off);
  days.push_back({"", QObject::tr("We would begin:"),
                  date_words(last->first) + ". " + QObject::tr("Last day: %1").arg(ends)});
}

BlockPtr open_at_once(const ProposalPage& page) {
  std::vector<Prose::Line> days;
  const auto most = most_open(page.outcome);
  const auto trenches = page.outcome.layout.trenches.size();
  if (most && trenches > 1)
    days.push_back({"", QObject::tr("Open at once:"),
                    QObject::tr("never more than %1 of the %2 deep trenches, each in whole or in part.")
                        .arg(most->ever)
                        .arg(trenches)});
  if (const QString nights = nights_words(page.outcome); !nights.isEmpty())
    days.push_back({"", QObject::tr("Open at night:"), nights});
  add_dates(days, page);
  return days.empty() ? nullptr : std::make_shared<Prose>("", std::move(days), page.points);
}

QString bars_words(const ProposalPage& page) {
  const QString bars =
      page.facts.rain_days > 0
          ? QObject::tr("A bar is a trench that is open, from digging to filling; + is a day kept for rain.")
          : QObject::tr("A bar is a trench that is open, from digging to filling.");
  return days_chart_has_days_off(page.outcome) ? bars + " " + QObject::tr("Gray: no work.") : bars;
}

// The bars, under their heading what the bars are.
Blocks how_long(const ProposalPage& page) {
  Blocks blocks;
  const BlockPtr bars = days_chart(page.outcome);
  blocks.push_back(prose(QObject::tr("How long it takes"), bars ? bars_words(page) : QString(), page.points));
  if (bars) blocks.push_back(bars);
  if (BlockPtr open = open_at_once(page)) blocks.push_back(open);
  return blocks;
}

BlockPtr dug_and_put_back(const ProposalPage& page) {
  std::vector<Prose::Line> back;
  for (const QString& words : put_back_words(page.plan, page.outcome)) back.push_back({"", "", words});
  return std::make_shared<Beside>(
      Blocks{prose(QObject::tr("What is dug"), dug_words(page.plan, page.outcome), page.points)},
      Blocks{std::make_shared<Prose>(QObject::tr("What we put back"), std::move(back), page.points)},
      0.46 * (page.width - pt(16)));
}

Blocks words_of_lot(const ProposalPage& page) {
  Blocks blocks{std::make_shared<PictureKey>(picture_colours(page.plan, page.outcome))};
  for (BlockPtr& block : how_long(page)) blocks.push_back(std::move(block));
  blocks.push_back(dug_and_put_back(page));
  return blocks;
}

// Of three pictures side by side, drawn as large as their width lets them.
double whole_high(const ProposalPage& page, double most) {
  return picture_height(page, moment(LotMoment::digging), (page.width - pt(24)) / 3, most);
}

}  // namespace

// The pictures get what the words leave.
std::vector<BlockPtr> proposal_lot(const ProposalPage& page) {
  Blocks blocks = words_of_lot(page);
  for (BlockPtr& block : near_blocks(page, 2)) blocks.push_back(std::move(block));
  add_pictures(blocks, 0, three_moments(page), page, whole_high(page, page.tight ? pt(66) : pt(96)),
               whole_high(page, pt(330)));
  return blocks;
}

}  // namespace underlawn::sheet
