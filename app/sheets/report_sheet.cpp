// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/report_sheet.h"

#include <algorithm>
#include <charconv>

#include "plan/record/built_figures.h"
#include "sheets/contents.h"
#include "sheets/report_chapters.h"

namespace underlawn {

using namespace sheet;

namespace {

constexpr double kPoints = 8.5;
constexpr double kSmall = 7.5;
constexpr std::size_t kMostInputs = 24;  // named one by one; the rest by its number only

// The shortest text that reads back as the same number.
QString exact(double value) {
  char digits[40];
  const auto end = std::to_chars(digits, digits + sizeof digits, value).ptr;
  return QString::fromLatin1(digits, end - digits);
}

struct Words {
  QString text;
  double points = kPoints;
  bool bold = false;
  QColor colour = kInk;
};

// Paragraphs under one another; the first may have a text at its right end.
class Paragraphs : public Block {
 public:
  Paragraphs(std::vector<Words> words, QString right = {}, QString chapter = {})
      : words_(std::move(words)), right_(std::move(right)), chapter_(std::move(chapter)) {}

  double height(double width) const override {
    double sum = chapter_.isEmpty() ? 0 : heading_height();
    for (std::size_t i = 0; i < words_.size(); ++i)
      sum += static_cast<double>(lines(i, width).size()) * line_height(font(words_[i]));
    return sum + pt(4.5);
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    double y = room.top();
    if (!chapter_.isEmpty()) {
      paint_heading(painter, room, chapter_);
      y += heading_height();
    }
    if (!right_.isEmpty())
      write(painter, {room.right(), y + pt(words_[0].points)}, right_, type(words_[0].points, QFont::Bold),
            kInk, Align::right);
    for (std::size_t i = 0; i < words_.size(); ++i)
      for (const QString& line : lines(i, room.width())) {
        write(painter, {room.left(), y + pt(words_[i].points)}, line, font(words_[i]), words_[i].colour);
        y += line_height(font(words_[i]));
      }
  }

 private:
  static QFont font(const Words& w) { return type(w.points, w.bold ? QFont::DemiBold : QFont::Normal); }
  QStringList lines(std::size_t i, double width) const {
    const double right =
        i == 0 && !right_.isEmpty() ? width_of(right_, type(words_[0].points, QFont::Bold)) + pt(8) : 0;
    return wrapped(words_[i].text, font(words_[i]), std::max(width - right, pt(60)));
  }

  std::vector<Words> words_;
  QString right_, chapter_;
};

using Numbers = std::map<std::string, std::string>;

QString inputs(const Plan& plan, const Outcome& outcome, const Figure& f, const Numbers& numbers) {
  QStringList names;
  for (std::size_t i = 0; i < f.from.size(); ++i) {
    const Figure* input = outcome.figures.find(f.from[i]);
    if (input == nullptr) continue;
    const QString number = "[" + text_of(numbers.at(input->key)) + "]";
    names << (i < kMostInputs
                  ? QString("%1 %2, %3").arg(number, text_of(input->label), shown(plan, outcome, input->key))
                  : number);
  }
  return names.join("; ");
}

BlockPtr entry_block_of(const Plan& plan, const Outcome& outcome, const ReportEntry& entry,
                        const Numbers& numbers, const QString& chapter) {
  const Figure& f = *entry.figure;
  std::vector<Words> words{{text_of(entry.number) + "  " + text_of(f.label), kPoints, true}};
  words.push_back({text_of(key_with_unit(f)) + " = " + exact(f.value), kSmall, false, kFaint});
  if (f.method == "typed")
    words.back().text += "   " + QObject::tr("(entered, drawn, or left as usual)");
  else if (!f.method.empty())
    words.push_back({QObject::tr("How: %1").arg(text_of(f.method))});
  if (const QString from = inputs(plan, outcome, f, numbers); !from.isEmpty())
    words.push_back({QObject::tr("From: %1").arg(from), kSmall});
  if (!f.source.empty()) words.push_back({QObject::tr("Source: %1").arg(text_of(f.source)), kSmall});
  return std::make_shared<Paragraphs>(std::move(words), shown(plan, outcome, f.key), chapter);
}

struct Pages {
  std::map<std::string, int> chapter;  // page of each, from 1
  std::map<std::string, int> figure;   // by number
  int index = 0;
};

std::vector<BlockPtr> contents_list(const std::vector<ReportChapter>& chapters, const Pages& pages) {
  std::vector<BlockPtr> blocks;
  QString heading = QObject::tr("CONTENTS");
  for (std::size_t i = 0; i < chapters.size(); ++i) {
    const auto page = pages.chapter.find(chapters[i].title);
    const QString at = page == pages.chapter.end() ? "00" : QString::number(page->second);
    blocks.push_back(std::make_shared<Paragraphs>(std::vector<Words>{{QObject::tr("%1  %2, %3 figures")
                                                                          .arg(i + 1)
                                                                          .arg(text_of(chapters[i].title))
                                                                          .arg(chapters[i].entries.size()),
                                                                      9.5}},
                                                  at, heading));
    heading.clear();
  }
  blocks.push_back(std::make_shared<Paragraphs>(std::vector<Words>{{QObject::tr("Index"), 9.5}, {" ", 9.5}},
                                                QString::number(pages.index)));
  blocks.push_back(std::make_shared<Items>(
      QObject::tr("HOW TO READ IT"),
      std::vector<Item>{
          {"", "",
           QObject::tr("Every number on the sheets of this plan stands here once, with how it came about. "
                       "Under its name "
                       "stand its key and its value in SI units, the unit at the end of the key; the same "
                       "keys are in "
                       "the results file. “From” names the inputs by their numbers in this report.")},
          {"", "",
           QObject::tr("Where no source is named, the figure is plain arithmetic or geometry on its inputs. "
                       "“Common practice, no source” means what it says. Local codes and licensed practice "
                       "govern.")}},
      9));
  return blocks;
}

std::vector<BlockPtr> index_list(const std::vector<ReportChapter>& chapters, const Pages& pages) {
  std::vector<const ReportEntry*> all;
  for (const ReportChapter& chapter : chapters)
    for (const ReportEntry& entry : chapter.entries) all.push_back(&entry);
  std::ranges::sort(all, {}, [](const ReportEntry* e) { return e->figure->key; });
  std::vector<BlockPtr> blocks;
  QString heading = QObject::tr("INDEX BY KEY: number, page");
  for (const ReportEntry* entry : all) {
    const auto page = pages.figure.find(entry->number);
    const int at = page == pages.figure.end() ? 0 : page->second;
    blocks.push_back(std::make_shared<Paragraphs>(std::vector<Words>{{text_of(entry->figure->key), 7}},
                                                  QString("%1, %2").arg(text_of(entry->number)).arg(at),
                                                  heading));
    heading.clear();
  }
  return blocks;
}

// What was really dug stands behind what was planned.
Outcome with_built_figures(const Plan& plan, const Outcome& outcome) {
  Outcome all = outcome;
  if (plan.as_built != AsBuilt{}) all.figures = with_built(outcome.figures, solve_as_built(plan, outcome));
  return all;
}

}  // namespace

ReportSheet::ReportSheet(const Plan& plan_given, const Outcome& outcome_given, const SheetSetup& setup)
    : BlockSheet(plan_given, with_built_figures(plan_given, outcome_given), setup,
                 {QObject::tr("Calculation report"), QObject::tr("CALCULATION REPORT")}, 2) {
  const std::vector<ReportChapter> chapters = report_chapters(outcome().figures);
  const Numbers numbers = numbers_of(chapters);
  std::vector<BlockPtr> body;
  std::map<const Block*, std::pair<std::string, std::string>> what;  // chapter and number of each
  for (std::size_t c = 0; c < chapters.size(); ++c)
    for (const ReportEntry& entry : chapters[c].entries) {
      const bool first = &entry == &chapters[c].entries.front();
      const QString heading =
          first ? QString("%1  %2").arg(c + 1).arg(text_of(chapters[c].title)) : QString();
      body.push_back(entry_block_of(plan(), outcome(), entry, numbers, heading));
      what[body.back().get()] = {chapters[c].title, entry.number};
    }
  Pages pages;
  // Twice: first to learn the pages, which take the same room once they are known.
  std::vector<FlowPage> all;
  for (int pass = 0; pass < 2; ++pass) {
    all = flow_in_order(contents_list(chapters, pages), inner(), columns());
    for (FlowPage& page : flow_in_order(body, inner(), columns())) all.push_back(std::move(page));
    for (std::size_t p = 0; p < all.size(); ++p)
      for (const Placed& placed : all[p])
        if (const auto at = what.find(placed.block.get()); at != what.end()) {
          pages.chapter.try_emplace(at->second.first, static_cast<int>(p) + 1);
          pages.figure[at->second.second] = static_cast<int>(p) + 1;
        }
    pages.index = static_cast<int>(all.size()) + 1;
    for (FlowPage& page : flow_in_order(index_list(chapters, pages), inner(), columns() + 1))
      all.push_back(std::move(page));
  }
  set(std::move(all));
}

}  // namespace underlawn
