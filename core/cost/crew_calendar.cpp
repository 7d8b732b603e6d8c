// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/crew_calendar.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/say.h"
#include "base/wording.h"
#include "cost/crew_shop.h"
#include "dig/cut_once.h"
#include "dig/dates.h"

namespace underlawn {

namespace {

constexpr double kHair = 1e-6;  // s

StationLoad load_of(CrewStation station, const std::vector<CrewTask>& tasks) {
  StationLoad load;
  load.station = station;
  std::map<WaitFor, double> waits;
  for (const CrewTask& t : tasks) {
    if (t.station != station) continue;
    load.hands = std::max(load.hands, t.who);
    load.busy += t.end - t.begin;
    load.waited += t.waited;
    if (t.waited > 0) waits[t.waited_for] += t.waited;
  }
  double most = 0;
  for (const auto& [what, time] : waits)
    if (time > most) {
      most = time;
      load.mostly = what;
    }
  return load;
}

double clock_of(const CrewWishes& crew, double t, bool end) {
  const double length = crew.day_length;
  const int day = static_cast<int>(std::floor((end ? t - kHair : t + kHair) / length));
  return calendar_day(crew, std::max(0, day)) * 86400.0 + (t - day * length);
}

int whole_days(double working, double day_length) {
  return static_cast<int>(std::ceil(working / day_length - 1e-9));
}

std::vector<CrewDay> days_of_work(const CrewWishes& crew, int worked) {
  const int reserve = static_cast<int>(std::ceil(crew.rain_slack * worked - 1e-9));
  const auto first = day_number(crew.start);
  std::vector<CrewDay> days;
  int shift = 0;
  if (first)
    while (!works_on(crew.weekdays, weekday_of(*first + shift))) ++shift;
  for (int i = 0; i < worked + reserve; ++i) {
    CrewDay day;
    day.reserve = i >= worked;
    if (first) {
      const int number = *first + shift + calendar_day(crew, i);
      day.date = date_text(number);
      day.weekday = weekday_of(number);
    }
    days.push_back(std::move(day));
  }
  return days;
}

std::vector<CrewSaving> savings_of(const CalendarAsk& ask, double filled) {
  struct More {
    const char* what;
    int CrewWishes::*hands;
  };
  constexpr More kMore[] = {{mark("One more rack"), &CrewWishes::racks},
                            {mark("A second excavator"), &CrewWishes::excavators},
                            {mark("One more laying crew"), &CrewWishes::laying_crews},
                            {mark("One more joiner"), &CrewWishes::joiners},
                            {mark("One more truck"), &CrewWishes::trucks}};
  const double now = filled / ask.crew.day_length;
  std::vector<CrewSaving> savings;
  const auto add = [&](const std::string& what, const CrewWishes& crew) {
    const double then =
        run_shop({ask.site, ask.layout, ask.order, ask.ground, ask.how, crew, ask.joints, ask.test}).filled;
    savings.push_back({what, now - then / crew.day_length, filled - then});
  };
  for (const More& more : kMore) {
    if (more.hands == &CrewWishes::trucks && ask.order.hauled == 0) continue;
    CrewWishes crew = ask.crew;
    ++(crew.*more.hands);
    const bool excavator = more.hands == &CrewWishes::excavators && ask.crew.excavators > 1;
    add(excavator ? say("One more excavator") : translated(more.what), crew);
  }
  CrewWishes longer = ask.crew;
  longer.day_length = std::min(86400.0, longer.day_length + 3600);
  add(say("One more hour a day"), longer);
  CrewWishes ready = ask.crew;
  ready.coils_ready = static_cast<int>(ask.layout.trenches.size());
  if (ready.coils_ready > ask.crew.coils_ready) add(say("All coils made before the first day"), ready);
  return savings;
}

}  // namespace

std::string station_name(CrewStation s) {
  switch (s) {
    case CrewStation::digging:
      return say("Excavator");
    case CrewStation::making:
      return say("Coil rack");
    case CrewStation::laying:
      return say("Layers");
    case CrewStation::joining:
      return say("Joiner");
    case CrewStation::testing:
      return say("Tester");
    case CrewStation::filling:
      return say("Loader");
    case CrewStation::hauling:
      return say("Truck");
  }
  return "";
}

std::string_view station_key(CrewStation s) {
  switch (s) {
    case CrewStation::digging:
      return "excavator";
    case CrewStation::making:
      return "coil_rack";
    case CrewStation::laying:
      return "layers";
    case CrewStation::joining:
      return "joiner";
    case CrewStation::testing:
      return "tester";
    case CrewStation::filling:
      return "loader";
    case CrewStation::hauling:
      return "truck";
  }
  return "";
}

std::string wait_words(WaitFor w) {
  switch (w) {
    case WaitFor::nothing:
      return "";
    case WaitFor::trench:
      return say("for the trench to be dug");
    case WaitFor::coil:
      return say("for the coil to be made");
    case WaitFor::laying:
      return say("for the coil before to be laid and bedded");
    case WaitFor::filling:
      return say("for the trench before to be filled in");
    case WaitFor::last_trench:
      return say("for the last trench and its coil");
    case WaitFor::joints:
      return say("for the joints");
    case WaitFor::test:
      return say("for the test");
    case WaitFor::morning:
      return say("for the next morning, so that the test is not left overnight");
    case WaitFor::trucks:
      return say("for the trucks");
    case WaitFor::proving:
      return say("for the coil to be held under pressure");
  }
  return "";
}

std::string task_words(const CrewTask& task, const DigOrder& order) {
  const bool one = task.step >= 0 && task.step < static_cast<int>(order.steps.size());
  const std::string name = one ? step_name(order.steps[static_cast<std::size_t>(task.step)]) : "";
  const std::string low = uncapitalised(name);
  switch (task.station) {
    case CrewStation::digging:
      return say("Digging {}", low);
    case CrewStation::making:
      return say("Making the coil of {}", low);
    case CrewStation::laying:
      return say("Laying the coil of {}", low);
    case CrewStation::joining:
      return say("Header and run laid, joints fused");
    case CrewStation::testing:
      return one ? say("Coil of {} alone filled and held under pressure", low)
                 : say("Filling, flushing, pressure test");
    case CrewStation::filling:
      if (!task.bedding) return say("Filling in {}", low);
      return run_comes_over(order.steps[static_cast<std::size_t>(task.step)].work)
                 ? say("Sand over the coil of {}, earth to the run's floor", low)
                 : say("Sand over the coil of {}", low);
    case CrewStation::hauling:
      return say("Spoil of {} trucked", low);
  }
  return name;
}

int calendar_day(const CrewWishes& crew, int which) {
  if (!is_weekdays(crew.weekdays)) return which;
  const auto first = day_number(crew.start);
  int weekday = first ? weekday_of(*first) : crew.weekdays[0] - '0';
  while (!works_on(crew.weekdays, weekday)) weekday = weekday % 7 + 1;
  int days = 0;
  for (int worked = 0; worked < which; ++days) {
    weekday = weekday % 7 + 1;
    worked += works_on(crew.weekdays, weekday);
  }
  return days;
}

CrewCalendar make_calendar(const CalendarAsk& ask) {
  CrewCalendar c;
  if (ask.order.steps.empty()) return c;
  ShopRun run = run_shop(ask);
  c.tasks = std::move(run.tasks);
  std::stable_sort(c.tasks.begin(), c.tasks.end(), [](const CrewTask& a, const CrewTask& b) {
    if (a.station != b.station) return a.station < b.station;
    return a.who != b.who ? a.who < b.who : a.begin < b.begin;
  });
  for (int s = 0; s < kCrewStations; ++s) {
    const auto station = static_cast<CrewStation>(s);
    if (station != CrewStation::hauling || ask.order.hauled > 0)
      c.stations.push_back(load_of(station, c.tasks));
  }
  c.open = std::move(run.open);
  for (OpenTrench& o : c.open) o.clock = clock_of(ask.crew, o.to, true) - clock_of(ask.crew, o.from, false);
  c.day_length = ask.crew.day_length;
  c.begins = ask.crew.begins;
  c.dug = run.dug;
  c.laid = run.laid;
  c.joined = run.joined;
  c.tested = run.tested;
  c.filled = run.filled;
  c.days_worked = whole_days(c.filled, c.day_length);
  c.days = days_of_work(ask.crew, c.days_worked);
  c.savings = savings_of(ask, c.filled);
  return c;
}

}  // namespace underlawn
