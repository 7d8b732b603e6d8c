// SPDX-License-Identifier: GPL-3.0-or-later
// Run and header as they were dug: past which heads each leg runs, how deep, in which pipe.
#include "flow/header_tree.h"
#include "plane/region.h"
#include "sheets/as_built_blocks.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

QString size_carrying(const Flow& flow, LoopPart part, int circuits) {
  for (const LoopPipe& pipe : flow.loop.pipes)
    if (pipe.part == part && (part == LoopPart::run_supply || pipe.carries == circuits))
      return text_of(pipe.size.name);
  return {};
}

// Whether a head that the tee joins lies on the line.
bool on_line(const Layout& layout, const Tee& tee, const Polyline& line) {
  return line.size() > 1 && std::ranges::any_of(tee.trenches, [&](int t) {
           return line_distance({layout.trenches[static_cast<std::size_t>(t)].head}, line) <= kHeadReach;
         });
}

class Lines {
 public:
  explicit Lines(const BuiltFacts& f)
      : f_(f), layout_(f.built.loop.layout), flow_(f.built.outcome->flow.get()) {
    if (auto tree = header_tree(layout_)) tree_ = *tree;
  }

  std::vector<std::vector<Cell>> rows() const {
    const double usual = f_.plan.wishes.run_depth;
    std::vector<std::vector<Cell>> all{
        row(QObject::tr("Supply run"), layout_.run.length, layout_.run.depth.value_or(usual), run_sizes())};
    const auto& legs = layout_.header.legs;
    for (std::size_t i = 0; i < legs.size(); ++i) {
      const QString name =
          legs.size() == 1 ? QObject::tr("Header") : QObject::tr("Header, leg %1").arg(i + 1);
      const QString heads = heads_on(legs[i]);
      all.push_back(row(heads.isEmpty() ? name : QObject::tr("%1: heads %2").arg(name, heads),
                        length(legs[i]), depth_of_leg(layout_.header, i, usual), sizes_on(legs[i])));
    }
    return all;
  }

 private:
  std::vector<Cell> row(const QString& name, double metres, double depth, const QString& pipe) const {
    return {{name, std::nullopt, true},
            {shown_length(f_.plan, metres)},
            {shown_length(f_.plan, depth)},
            {pipe.isEmpty() ? QString("–") : pipe}};
  }

  QString heads_on(const Polyline& leg) const {
    std::vector<std::pair<double, int>> heads;  // m along the leg, number
    for (const Trench& t : layout_.trenches)
      if (line_distance({t.head}, leg) <= kHeadReach)
        heads.emplace_back(distance(leg.front(), t.head), t.number);
    std::ranges::sort(heads);
    QStringList numbers;
    for (const auto& [along, number] : heads) numbers << QString::number(number);
    return numbers.join(", ");
  }

  // Of the ways between two heads on the line; of all header pipe where none is told so.
  QString sizes_on(const Polyline& line) const {
    if (flow_ == nullptr) return {};
    QStringList sizes = pieces_on(line);
    if (sizes.isEmpty())
      for (const PipeSize& s : flow_->sizes.steps) sizes << text_of(s.name);
    sizes.removeDuplicates();
    return sizes.join(", ");
  }

  QString run_sizes() const {
    if (flow_ == nullptr) return {};
    QStringList sizes = QStringList(text_of(flow_->sizes.run.name)) + pieces_on(layout_.run.line);
    sizes.removeDuplicates();
    return sizes.join(", ");
  }

  QStringList pieces_on(const Polyline& line) const {
    QStringList sizes;
    for (const Tee& tee : tree_)
      if (tee.parent >= 0 && on_line(layout_, tee, line) &&
          on_line(layout_, tree_[static_cast<std::size_t>(tee.parent)], line))
        sizes << size_carrying(*flow_, LoopPart::header_supply, tee.feeds);
    sizes.removeAll({});
    return sizes;
  }

  const BuiltFacts& f_;
  const Layout& layout_;
  const Flow* flow_;
  HeaderTree tree_;
};

}  // namespace

BlockPtr built_lines(const BuiltFacts& f) {
  return std::make_shared<Table>(QObject::tr("SUPPLY RUN AND HEADER, TWO PIPES EACH"),
                                 std::vector<Column>{{""},
                                                     {QObject::tr("Trench"), Align::right},
                                                     {QObject::tr("Floor below ground"), Align::right},
                                                     {QObject::tr("Pipe"), Align::left, true}},
                                 Lines(f).rows(), 9.5);
}

}  // namespace underlawn::sheet
