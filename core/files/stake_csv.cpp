// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/stake_csv.h"

#include <cstdio>
#include <numbers>

#include "base/csv.h"
#include "plan/tie_check.h"
#include "site/terrain.h"

namespace underlawn {

namespace {

class StakeWriter {
 public:
  StakeWriter(const Plan& plan, const StakeOut& stake_out)
      : site_(plan.site),
        stake_out_(stake_out),
        terrain_(plan.site.heights),
        us_(plan.units == UnitSystem::us) {
    base_ = base_line(site_, stake_out);
  }

  std::string text() {
    const std::string unit = us_ ? " ft" : " m";
    std::string text =
        csv_line({"kind", "name", "x" + unit, "y" + unit, "elevation" + unit, "tie 1", "tape 1" + unit,
                  "tie 2", "tape 2" + unit, "side", "cut deg", "check", "check tape" + unit, "base from",
                  "base to", "station" + unit, "offset" + unit});
    for (const HouseCorner& corner : stake_out_.corners)
      text += row("corner", corner.tag, corner.at, {"", "", "", "", "", "", "", ""});
    for (const Tie& tie : stake_out_.ties) text += row("stake", tie.point, tie.at, ties(tie));
    return text;
  }

 private:
  std::string number(double metres) const {
    char out[40];
    std::snprintf(out, sizeof out, "%.3f", us_ ? metres / 0.3048 : metres);
    return std::string(out) == "-0.000" ? "0.000" : out;
  }

  std::string elevation(Point p) const { return terrain_.is_known() ? number(terrain_.height(p)) : ""; }

  std::vector<std::string> ties(const Tie& tie) const {
    char cut[20];
    std::snprintf(cut, sizeof cut, "%.1f", tie.cut * 180 / std::numbers::pi);
    std::vector<std::string> fields = {tie.first,
                                       number(tie.first_distance),
                                       tie.second,
                                       number(tie.second_distance),
                                       tie.left_of_base ? "left" : "right",
                                       cut};
    const auto [corner, tape] = check_of(tie);
    fields.push_back(corner);
    fields.push_back(corner.empty() ? "" : number(tape));
    return fields;
  }

  // A corner of the second pair that is none of the first.
  std::pair<std::string, double> check_of(const Tie& tie) const {
    const auto second = second_tie(site_, stake_out_, tie);
    if (!second) return {"", 0};
    if (second->first != tie.first && second->first != tie.second)
      return {second->first, second->first_distance};
    return {second->second, second->second_distance};
  }

  std::string row(const char* kind, const std::string& name, Point at, std::vector<std::string> ties) const {
    std::vector<std::string> fields = {kind, name, number(at.x), number(at.y), elevation(at)};
    fields.insert(fields.end(), ties.begin(), ties.end());
    if (base_) {
      const Offset offset = offset_from(*base_, at);
      fields.insert(fields.end(), {base_->from.tag, base_->to.tag, number(offset.along), number(offset.off)});
    } else {
      fields.insert(fields.end(), 4, "");
    }
    return csv_line(fields);
  }

  const Site& site_;
  const StakeOut& stake_out_;
  Terrain terrain_;
  bool us_;
  std::optional<BaseLine> base_;
};

}  // namespace

std::string stake_csv(const Plan& plan, const Outcome& outcome) {
  return StakeWriter(plan, outcome.stake_out).text();
}

}  // namespace underlawn
