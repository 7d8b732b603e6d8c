// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/held_troubles.h"

#include "base/say.h"
#include "layout/header_groups.h"
#include "layout/setting.h"

namespace underlawn {

std::vector<LetGo> each_let_go(const Site& site, const Wishes& w) {
  std::vector<LetGo> all;
  for (std::size_t i = 0; i < w.locked.size(); ++i) {
    all.push_back({say("locked trench {}", std::to_string(i + 1)), say("Move it or unlock it."), w});
    all.back().wishes.locked.erase(all.back().wishes.locked.begin() + static_cast<std::ptrdiff_t>(i));
  }
  if (w.header_on) {
    all.push_back(
        {say("the line held for the header"), say("Move or lengthen it, or let the header go."), w});
    all.back().wishes.header_on.reset();
  }
  for (const GroupHeader& h : w.group_headers) {
    if (h.group > w.groups) continue;
    all.push_back({say("the line held for the header of group {}", std::to_string(h.group)),
                   say("Move or lengthen it, or let that header go."),
                   with_header_line(w, h.group, std::nullopt)});
  }
  if (!w.run_by.empty()) {
    all.push_back({say("the places held for the run"), say("Move them, or let the run go."), w});
    all.back().wishes.run_by.clear();
  }
  for (std::size_t i = 0; i < w.closed.size(); ++i) {
    const Feature* house = find_feature(site, w.closed[i].house_id);
    all.push_back({say("the closed side at wall {} of {}", std::to_string(w.closed[i].wall + 1),
                       (house != nullptr ? display_name(*house) : say("a house"))),
                   say("Open it."), w});
    all.back().wishes.closed.erase(all.back().wishes.closed.begin() + static_cast<std::ptrdiff_t>(i));
  }
  if (w.direction && !w.header_on) {
    all.push_back({say("the direction held for the trenches"), say("Choose another, or let it go."), w});
    all.back().wishes.direction.reset();
  }
  return all;
}

namespace {

int most_placed(const Site& site, const Wishes& w, const Coil& coil, const Region& routable,
                const std::stop_token& stop) {
  const Setting setting(site, w, coil, routable);
  const FieldSearch search(setting.keeping(), coil, setting.wishes.circuits, false);
  return static_cast<int>(setting.locked.size()) + std::min(setting.wishes.circuits, search.most(stop));
}

}  // namespace

std::vector<Trouble> held_troubles(const Site& site, const Wishes& w, const Coil& coil,
                                   const Region& routable, int placed, const std::stop_token& stop) {
  std::vector<Trouble> troubles;
  if (placed >= w.circuits) return troubles;
  for (const LetGo& one : each_let_go(site, w)) {
    if (stop.stop_requested()) break;
    const int without = most_placed(site, one.wishes, coil, routable, stop);
    if (without <= placed) continue;
    troubles.push_back(
        {"held_leaves_no_room", say("room left by {}", one.thing),
         placed == 1 ? say("{} circuit", placed) : say("{} circuits", placed),
         say("{}, as asked for; {} fit without it", std::to_string(w.circuits), std::to_string(without)),
         one.advice});
  }
  return troubles;
}

}  // namespace underlawn
