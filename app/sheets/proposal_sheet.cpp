// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/proposal_sheet.h"

#include <QRegularExpression>
#include <algorithm>
#include <array>
#include <utility>

#include "sheets/family_blocks.h"
#include "sheets/paper.h"
#include "sheets/proposal_blocks.h"
#include "sheets/proposal_parts.h"

namespace underlawn {

using namespace sheet;

namespace {

const double kSide = pt(44), kTop = pt(30), kFoot = pt(34);
const double kTitle = pt(62);  // over the first page's text
const double kPlaceLine = pt(16), kBesideDate = pt(120);
constexpr std::size_t kMostPages = 4;
constexpr double kLeastPoints = 9.5;
// Of the table of what is near, and of the words to it: the best liked first; then those that make the
// pictures of the second page small.
constexpr std::array<std::pair<int, int>, 3> kNearPages{{{3, 3}, {3, 4}, {4, 4}}};
constexpr std::array<std::pair<int, int>, 3> kNearBesidePictures{{{3, 2}, {4, 2}, {2, 2}}};

void append(std::vector<FlowPage>& pages, std::vector<FlowPage> more) {
  for (FlowPage& page : more)
    if (!page.empty()) pages.push_back(std::move(page));
}

// A project that is called as the address says nothing new: "Alder Lane 14" of "14 Alder Lane, Fernhollow".
QString place_of(const QString& project, const QString& address) {
  static const QRegularExpression blanks("[\\s,]+");
  const QStringList in_address = address.toLower().split(blanks);
  for (const QString& word : project.toLower().split(blanks, Qt::SkipEmptyParts))
    if (!in_address.contains(word)) return address.isEmpty() ? project : project + ", " + address;
  return address;
}

// The project's place under the title, on two lines at most.
QStringList place_lines(const Plan& plan, double width) {
  const QString project =
      plan.title.project.empty() ? QObject::tr("Your ground loop") : text_of(plan.title.project);
  return wrapped(place_of(project, text_of(plan.title.address)), type(12), width - kBesideDate, 2);
}

double title_height(const Plan& plan, double width) {
  return kTitle + static_cast<double>(place_lines(plan, width).size() - 1) * kPlaceLine;
}

}  // namespace

double ProposalSheet::larger() const {
  const bool metric = setup_.paper == Paper::a4 || setup_.paper == Paper::a3;
  return page_size().width() / size_of(metric ? Paper::a4 : Paper::letter, false).width();
}

QSizeF ProposalSheet::page_size() const {
  return size_of(setup_.paper, false);
}

QPageLayout ProposalSheet::page_layout() const {
  return QPageLayout(sheet::page_size(setup_.paper), QPageLayout::Portrait, QMarginsF(0, 0, 0, 0));
}

QRectF ProposalSheet::inner() const {
  const QSizeF size = page_size() / larger();
  return QRectF(kSide, kTop, size.width() - 2 * kSide, size.height() - kTop - kFoot);
}

std::vector<FlowPage> ProposalSheet::laid_out(const Setting& how) const {
  const QRectF room = inner();
  const double title = title_height(plan_, room.width());
  std::vector<FlowPage> pages;
  ProposalPage page{plan_, outcome_, facts_, room.width(), room.height() - title, *setup_.date};
  page.points = how.points;
  page.near_table = how.near_table;
  page.near_words = how.near_words;
  page.tight = how.tight;
  append(pages, flow_in_order(proposal_opening(page), room.adjusted(0, title, 0, 0), 1));
  if (outcome_.layout.trenches.empty()) return pages;
  page.height = room.height();
  append(pages, flow_in_order(proposal_lot(page), room, 1));
  append(pages, flow_in_order(proposal_warmth(page), room, 1));
  const auto before = static_cast<int>(pages.size());
  page.pages = before + 1;
  std::vector<FlowPage> last = flow_in_order(proposal_agreement(page), room, 1);
  if (last.size() > 1) {
    page.pages = before + static_cast<int>(last.size());
    last = flow_in_order(proposal_agreement(page), room, 1);
  }
  append(pages, std::move(last));
  return pages;
}

// One size of letters for all pages: the largest with which there are four, whatever page has room for what
// is near.
ProposalSheet::ProposalSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : plan_(plan), outcome_(outcome), facts_(family_facts(plan, outcome)), setup_(setup) {
  if (!setup_.date) setup_.date = QDate::currentDate();
  const auto set = [this](double points, const auto& places, bool tight) {
    return std::ranges::any_of(places, [&](const std::pair<int, int>& near) {
      pages_ = laid_out({points, near.first, near.second, tight});
      return pages_.size() <= kMostPages;
    });
  };
  for (const double points : {10.5, 10.0, kLeastPoints}) {
    // Without what is near there may be too many already.
    if (points > kLeastPoints && laid_out({points, 0, 0, false}).size() > kMostPages) continue;
    if (set(points, kNearPages, false)) return;
  }
  if (!set(kLeastPoints, kNearPages, true)) set(kLeastPoints, kNearBesidePictures, true);
}

void ProposalSheet::paint(QPainter& painter, int page) const {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(larger(), larger());
  const QRectF room = inner();
  const QString date = plain_date(*setup_.date);
  if (page == 0) {
    const QFont big = type(27, QFont::DemiBold);
    write(painter, room.topLeft() + QPointF(0, pt(24)),
          elided(QObject::tr("Heat from your own ground"), big, room.width()), big, kFamilyGreen);
    QPointF at = room.topLeft() + QPointF(0, pt(45));
    for (const QString& line : place_lines(plan_, room.width())) {
      write(painter, at, line, type(12));
      at.ry() += kPlaceLine;
    }
    write(painter, room.topRight() + QPointF(0, pt(45)), date, type(12), kInk, Align::right);
  }
  for (const Placed& placed : pages_[static_cast<std::size_t>(page)])
    placed.block->paint(painter, placed.room);
  const double y = room.bottom() + pt(19);
  painter.setPen(rule(0.5, "#c9d4b8"));
  painter.drawLine(QPointF(room.left(), y - pt(11)), QPointF(room.right(), y - pt(11)));
  QStringList who;
  for (const std::string& text : {plan_.title.designer, plan_.title.phone})
    if (!text.empty()) who << text_of(text);
  write_on_lines(painter, {room.left(), y}, who.join(", "), 0.6 * room.width(), {9.5, 9.5}, 2, "#444444");
  write(painter, {room.right(), y},
        QObject::tr("Plan %1, page %2 of %3").arg(text_of(outcome_.fingerprint)).arg(page + 1).arg(pages()),
        type(9.5), "#444444", Align::right);
  painter.restore();
}

}  // namespace underlawn
