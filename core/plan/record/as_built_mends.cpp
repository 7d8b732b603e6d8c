// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/as_built_mends.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/say.h"
#include "layout/supply_coil.h"
#include "pipe/pipe_size.h"
#include "plan/circulation_of.h"
#include "plan/keeping.h"
#include "plan/record/added_leg.h"
#include "plan/record/built_header.h"
#include "plan/record/built_holds.h"
#include "plan/record/taped_text.h"
#include "plan/record/taping.h"
#include "thermal/loop_geometry.h"

namespace underlawn {

namespace {

constexpr double kLengthStep = 0.3;         // m, of lengths sought
constexpr double kShareStep = 0.001;        // of antifreeze
constexpr double kLeastTrench = 6;          // m: shorter is not worth a machine on the lot; our own choice
constexpr double kLeastPitchDiameters = 4;  // common practice, no source

bool fails(const std::vector<Hold>& holds, std::initializer_list<const char*> keys) {
  return std::any_of(holds.begin(), holds.end(), [&](const Hold& h) {
    return !h.holds && std::find(keys.begin(), keys.end(), h.key) != keys.end();
  });
}

class Mender {
 public:
  Mender(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built, LaidSolver& solver,
         const MendsProgress& progress, std::stop_token stop)
      : plan_(plan),
        planned_(planned),
        built_(built),
        solver_(solver),
        progress_(progress),
        stop_(std::move(stop)),
        unread_(plan) {
    unread_.record.fill.freezing_point.reset();
  }

  Mends find() {
    if (built_.outcome == nullptr || all_hold(built_.holds)) return {};
    if (fails(built_.holds, {"coldest", "warmest"})) {
      step(0.05, say("The planned coils in shorter trenches"), [this] { full_coils(); });
      step(0.2, say("A coil in the supply run"), [this] { run_coil(); });
      step(0.5, say("One more circuit"), [this] { more_circuit(); });
    }
    if (fails(built_.holds, {"balance"})) step(0.85, say("Valves"), [this] { throttle(); });
    if (fails(built_.holds, {"freezing"})) step(0.9, say("More antifreeze"), [this] { antifreeze(); });
    const bool one = std::any_of(made_.all.begin(), made_.all.end(), [](const Mend& m) { return m.enough; });
    if (!one && !made_.all.empty()) step(0.95, say("All of it together"), [this] { together(); });
    std::ranges::stable_sort(made_.all, {}, [](const Mend& m) { return !m.enough; });
    return std::move(made_);
  }

 private:
  template <class Do>
  void step(double share, const std::string& what, Do work) {
    if (stop_.stop_requested()) return;
    if (progress_) progress_(share, what);
    work();
  }

  std::string shown(Quantity q, double value) const { return print_quantity(q, value, plan_.units); }

  struct Tried {
    Layout layout;
    Outcome outcome;
    std::vector<Hold> holds;
  };

  Tried tried(const Layout& layout) const {
    Plan p = built_.plan;
    p.wishes.given = given_from(layout);
    Outcome outcome = solver_.solve(p, layout, stop_);
    std::vector<Hold> holds = holds_of(plan_, planned_, outcome);
    return {layout, std::move(outcome), std::move(holds)};
  }

  // All that the plan itself holds.
  static bool holds_again(const std::vector<Hold>& holds) {
    return std::all_of(holds.begin(), holds.end(), [](const Hold& h) { return h.holds || !h.held; });
  }

  static double value_of(const std::vector<Hold>& holds, const std::string& key) {
    for (const Hold& h : holds)
      if (h.key == key) return h.built;
    return 0;
  }

  // Something more holds, or it is warmer and nothing that held is lost.
  bool better(const std::vector<Hold>& holds) const {
    bool lost = false;
    for (const Hold& was : built_.holds) {
      const auto is = std::ranges::find(holds, was.key, &Hold::key);
      if (is == holds.end()) continue;
      if (is->holds && !was.holds) return true;
      lost |= was.holds && !is->holds;
    }
    return !lost && value_of(holds, "coldest") > value_of(built_.holds, "coldest") + 0.01;
  }

  static bool warm_enough(const std::vector<Hold>& holds) { return !fails(holds, {"coldest", "warmest"}); }

  // Where `make` gives a layout for a length: the least in (0, most] that holds the temperatures, to
  // kLengthStep; that of `most` where none does.
  template <class Make>
  std::optional<std::pair<double, Tried>> least(double low, double most, Make make) const {
    const std::optional<Layout> largest = make(most);
    if (!largest) return std::nullopt;
    std::pair<double, Tried> best{most, tried(*largest)};
    if (!warm_enough(best.second.holds)) return best;
    while (most - low > kLengthStep && !stop_.stop_requested()) {
      const double middle = (low + most) / 2;
      const std::optional<Layout> layout = make(middle);
      if (!layout) {
        low = middle;
        continue;
      }
      Tried now = tried(*layout);
      (warm_enough(now.holds) ? most : low) = middle;
      if (most == middle) best = {middle, std::move(now)};
    }
    return best;
  }

  // One that leaves the loop no better than it is, is told to be of no help.
  void add(Mend mend) {
    mend.enough = holds_again(mend.holds);
    if (mend.enough || better(mend.holds)) return made_.all.push_back(std::move(mend));
    made_.not_found.push_back(say("{}: no better than it is, {} at the coldest.", mend.what,
                                  shown(Quantity::temperature, value_of(mend.holds, "coldest"))));
  }

  // Of the as-built: so much pipe in each of these trenches.
  static std::function<void(Plan&)> lay_pipe(std::vector<std::pair<int, double>> pipes) {
    return [pipes = std::move(pipes)](Plan& p) {
      for (const auto& [number, pipe] : pipes) said(p, number).pipe = pipe;
    };
  }

  static BuiltTrench& said(Plan& p, int number) {
    auto& all = p.as_built.trenches;
    const auto at = std::ranges::lower_bound(all, number, {}, &BuiltTrench::number);
    if (at != all.end() && at->number == number) return *at;
    BuiltTrench next;
    next.number = number;
    return *all.insert(at, std::move(next));
  }

  // The trench where it would go, with a leg of the header to it, written down as one more.
  std::function<void(Plan&)> dig_more(const Trench& t) const {
    const auto leg = leg_to(built_.plan.wishes, built_.loop.layout, t);
    const std::size_t legs = planned_.layout.header.legs.size();
    return [t, leg, legs, note = say("to be dug: one more circuit")](Plan& p) {
      BuiltTrench& b = said(p, t.number);
      b.fate = TrenchFate::added;
      b.head = BuiltPoint{{}, true, t.head};
      b.end = BuiltPoint{{}, true, t.end};
      b.depth = t.depth;
      b.pipe = t.coil.coil_length;
      b.note = note;
      if (!leg || p.as_built.header.size() > legs) return;
      p.as_built.header.resize(legs);
      BuiltLine more;
      for (Point at : *leg) more.points.push_back({{}, true, at});
      p.as_built.header.push_back(std::move(more));
    };
  }

  // ---- the planned coils ----

  std::optional<Trench> with_pipe(Trench t, double pipe) const {
    CoilRequest r;
    r.unknown = CoilUnknown::pitch;
    r.loop_diameter = t.coil.loop_diameter;
    r.coil_length = pipe;
    r.trench_length = length_of(t);
    if (const auto size = find_pipe(plan_.wishes.pipe)) r.pipe_diameter = size->outside_diameter;
    r.pattern = t.coil.pattern;
    r.level_distance = t.coil.level_distance > 0 ? t.coil.level_distance : r.level_distance;
    r.side_distance = t.coil.side_distance > 0 ? t.coil.side_distance : r.side_distance;
    r.return_on_top = t.coil.return_on_top;
    const auto coil = solve_coil(r);
    if (!coil || coil->pitch < kLeastPitchDiameters * r.pipe_diameter) return std::nullopt;
    t.coil = *coil;
    return t;
  }

  double planned_pipe(int number) const {
    for (const Trench& t : planned_.layout.trenches)
      if (t.number == number) return t.coil.coil_length;
    return 0;
  }

  void full_coils() {
    Layout layout = built_.loop.layout;
    std::vector<int> changed;
    std::vector<std::pair<int, double>> pipes;
    std::string names;
    for (Trench& t : layout.trenches) {
      const double pipe = planned_pipe(t.number);
      if (is_straight(t.coil.pattern) || pipe < t.coil.coil_length + kLengthStep) continue;
      const auto full = with_pipe(t, pipe);
      if (!full) {
        made_.not_found.push_back(
            say("The planned coil does not go into trench {}: its loops would lie on one another.",
                std::to_string(t.number)));
        continue;
      }
      names += (names.empty() ? "" : "; ") + say("trench {}: {} at a pitch of {}", t.number,
                                                 shown(Quantity::length, pipe),
                                                 shown(Quantity::length, full->coil.pitch));
      changed.push_back(t.number);
      pipes.push_back({t.number, pipe});
      t = *full;
    }
    if (changed.empty()) return;
    Tried now = tried(layout);
    if (!better(now.holds))
      return made_.not_found.push_back(
          say("The planned coils, laid closer in what was dug ({}), make it no warmer: {} at the coldest. "
              "Heat is reckoned equal for every metre of pipe, which is on the safe side.",
              names, shown(Quantity::temperature, value_of(now.holds, "coldest"))));
    add({MendKind::full_coils, say("The planned coils, laid closer, in what was dug: {}", names),
         say("Only before the trench is filled, or by opening it again."), std::move(now.holds), false,
         std::move(layout), lay_pipe(std::move(pipes)), "", std::move(changed)});
  }

  // ---- a coil in the run ----

  void run_coil() {
    for (const Trench& t : built_.loop.layout.trenches)
      if (t.role == TrenchRole::supply) return more_in_run(t);
    Layout base = built_.loop.layout;
    std::vector<Segment> field;
    for (const Trench& t : base.trenches) {
      const Polyline line = middle_line(t);
      for (std::size_t i = 1; i < line.size(); ++i) field.push_back({line[i - 1], line[i]});
    }
    const auto make = [&](double length) -> std::optional<Layout> {
      const auto place =
          coil_in_run(built_.plan.site, built_.plan.wishes, base.run, base.header, field, length);
      return place ? with_trench(base, *place, TrenchRole::supply) : std::nullopt;
    };
    double most = base.run.length;
    while (most >= kLeastTrench && !make(most)) most -= 1;
    if (most < kLeastTrench) {
      made_.not_found.push_back(say("The supply run has no straight stretch of {} in which a coil may lie.",
                                    shown(Quantity::length, kLeastTrench)));
      return;
    }
    if (auto found = least(kLeastTrench - kLengthStep, most, make))
      add_trench(MendKind::run_coil, say("A coil in the trench of the supply run"), std::move(*found));
  }

  void more_in_run(const Trench& supply) {
    if (is_straight(supply.coil.pattern)) return;
    const auto make = [&](double pipe) -> std::optional<Layout> {
      Layout layout = built_.loop.layout;
      for (Trench& t : layout.trenches) {
        if (t.number != supply.number) continue;
        const auto full = with_pipe(t, pipe);
        if (!full) return std::nullopt;
        t = *full;
      }
      return layout;
    };
    double most = 3 * supply.coil.coil_length;
    while (most > supply.coil.coil_length + 1 && !make(most)) most -= 1;
    if (most <= supply.coil.coil_length + 1) return;
    auto found = least(supply.coil.coil_length, most, make);
    if (!found) return;
    add({MendKind::run_coil,
         say("A longer coil in the supply run: {} of pipe in trench {} instead of {}",
             shown(Quantity::length, found->first), std::to_string(supply.number),
             shown(Quantity::length, supply.coil.coil_length)),
         say("Only before that trench is filled, or by opening it again."),
         std::move(found->second.holds),
         false,
         std::move(found->second.layout),
         lay_pipe({{supply.number, found->first}}),
         "",
         {supply.number}});
  }

  // ---- one more circuit ----

  int next_number(const Layout& layout) const {
    int most = 0;
    for (const Layout* l : {&layout, &planned_.layout})
      for (const Trench& t : l->trenches) most = std::max(most, t.number);
    return most + 1;
  }

  // At the planned pitch.
  std::optional<Layout> with_trench(Layout layout, const Segment& place, TrenchRole role) const {
    if (planned_.layout.trenches.empty()) return std::nullopt;
    Trench t = planned_.layout.trenches.front();
    CoilRequest r;
    r.unknown = CoilUnknown::coil_length;
    r.loop_diameter = t.coil.loop_diameter;
    r.pitch = planned_.coil.pitch > 0 ? planned_.coil.pitch : t.coil.pitch;
    r.trench_length = distance(place.a, place.b);
    if (const auto size = find_pipe(plan_.wishes.pipe)) r.pipe_diameter = size->outside_diameter;
    r.pattern = t.coil.pattern;
    r.level_distance = plan_.wishes.level_distance;
    r.side_distance = plan_.wishes.side_distance;
    r.return_on_top = plan_.wishes.return_on_top;
    const auto coil = solve_coil(r);
    if (!coil) return std::nullopt;
    t.number = next_number(layout);
    t.role = role;
    t.head = place.a;
    t.end = place.b;
    t.bends.clear();
    t.locked = false;
    t.width = plan_.wishes.trench_width;
    t.depth = plan_.wishes.trench_depth;
    t.coil = *coil;
    if (role == TrenchRole::field)
      if (auto leg = leg_to(built_.plan.wishes, layout, t)) layout.header.legs.push_back(std::move(*leg));
    layout.trenches.push_back(t);
    BuiltLines lines{layout.run.line, layout.header.legs};
    make_lines_meet(lines, {}, layout.trenches, true, true);
    layout.header.legs = lines.legs;
    layout.header.length = 0;
    for (const Polyline& leg : lines.legs) layout.header.length += length(leg);
    return layout;
  }

  // Where the search puts a trench of this length beside those that lie.
  std::optional<Segment> room_for(double trench_length) const {
    Wishes w = built_.plan.wishes;
    w.given.clear();
    forget_shown(w);
    w.locked.clear();
    for (const Trench& t : built_.loop.layout.trenches)
      if (t.role == TrenchRole::field)
        w.locked.push_back({t.head, t.end, t.depth, t.coil.coil_length, t.bends});
    w.circuits = static_cast<int>(w.locked.size()) + 1;
    w.aim = Aim::digging;
    w.groups = 1;
    w.coil_in_run = false;
    w.trench_length = trench_length;
    Coil coil = planned_.coil;
    coil.trench_length = trench_length;
    const Layout made = make_layout(built_.plan.site, w, coil, stop_);
    for (const Trench& t : made.trenches)
      if (!t.locked && is_new(t)) return Segment{t.head, t.end};
    return std::nullopt;
  }

  bool is_new(const Trench& t) const {
    return std::none_of(built_.loop.layout.trenches.begin(), built_.loop.layout.trenches.end(),
                        [&](const Trench& b) {
                          return distance(b.head, t.head) < kSameStake && distance(b.end, t.end) < kSameStake;
                        });
  }

  std::size_t errors(const Outcome& outcome) const {
    std::size_t n = 0;
    for (const Finding& f : outcome.findings)
      n += f.severity == Severity::error && f.quantity == Quantity::length;
    return n;
  }

  void more_circuit() {
    const auto make = [&](double length) -> std::optional<Layout> {
      const auto place = room_for(length);
      return place ? with_trench(built_.loop.layout, *place, TrenchRole::field) : std::nullopt;
    };
    double most = 1.5 * std::max(planned_.coil.trench_length, kLeastTrench);
    while (most >= kLeastTrench && !make(most) && !stop_.stop_requested()) most *= 0.8;
    if (most < kLeastTrench) {
      made_.not_found.push_back(say("No further trench of {} or more fits on the lot beside what lies.",
                                    shown(Quantity::length, kLeastTrench)));
      return;
    }
    auto found = least(kLeastTrench - kLengthStep, most, make);
    if (!found || stop_.stop_requested()) return;
    if (errors(found->second.outcome) > errors(*built_.outcome)) {
      made_.not_found.push_back(
          say("A further trench would fit, but no pipe leads to it without breaking a clearance."));
      return;
    }
    add_trench(MendKind::more_circuit, say("One more circuit"), std::move(*found));
  }

  void add_trench(MendKind kind, const std::string& words, std::pair<double, Tried> found) {
    const Trench t = found.second.layout.trenches.back();
    const bool field = kind == MendKind::more_circuit;
    add({kind,
         say("{}: {} of trench with {} of pipe, from {} to {}", words, shown(Quantity::length, length_of(t)),
             shown(Quantity::length, t.coil.coil_length), where(found.second.outcome, t.head),
             where(found.second.outcome, t.end)),
         say("Excavation rules and utility locating apply to it as to the first trenches."),
         std::move(found.second.holds),
         false,
         std::move(found.second.layout),
         field ? dig_more(t) : std::function<void(Plan&)>(),
         field ? ""
               : say("By hand: before the run is filled in, dig that stretch as wide and as deep as a coil "
                     "trench, lay the coil in the supply pipe's stead, and write it into the note."),
         {t.number}});
  }

  // By tapes from two house corners, as a stake is set; without them by the drawing.
  std::string where(const Outcome& outcome, Point p) const {
    for (const Tie& tie : outcome.stake_out.ties)
      if (distance(tie.at, p) < kSameStake) return print_taped(taped_from(tie), plan_.units);
    return say("x {}, y {} of the drawing", shown(Quantity::length, p.x), shown(Quantity::length, p.y));
  }

  // ---- valves, fluid ----

  void throttle() {
    const Flow* flow = built_.outcome->flow.get();
    if (flow == nullptr) return;
    const auto made = throttled(*flow, built_.plan.flow, plan_.flow.most_imbalance);
    if (!made) return made_.not_found.push_back(made.error().message());
    std::string names;
    std::vector<int> trenches;
    for (std::size_t c = 0; c < made->k.size(); ++c) {
      if (!(made->k[c] > 0)) continue;
      const int number = built_.loop.layout.trenches[c].number;
      trenches.push_back(number);
      names += (names.empty() ? "" : "; ") +
               say("circuit {} by {} at its design flow", number, shown(Quantity::head, made->head[c]));
    }
    const auto heat = heated(made->flow, built_.plan, built_.loop.layout, *built_.outcome);
    std::vector<Hold> holds = holds_of(
        plan_, does(planned_.flow.get(), planned_.purge.get(), planned_.temperatures.get()),
        does(&made->flow, built_.outcome->purge.get(), heat ? &*heat : built_.outcome->temperatures.get()));
    add({MendKind::throttle, say("Throttle {}", names),
         say("Needs a balancing valve in that circuit, where it can be reached; flush with it open."),
         std::move(holds), false, built_.loop.layout, note_valves(*made, built_.loop.layout),
         valves_by_hand(), std::move(trenches)});
  }

  std::optional<Temperatures> heated(const Flow& flow, const Plan& p, const Layout& layout,
                                     const Outcome& outcome) const {
    if (outcome.surroundings == nullptr) return std::nullopt;
    const Circulation c = circulation_of(p, &flow, layout);
    if (!(c.heat_flow_rate > 0)) return std::nullopt;
    KernelShelf shelf;
    return solve_temperatures(pipes_in_ground(layout, p.wishes), *outcome.surroundings, p.thermal, c, shelf,
                              stop_);
  }

  // On each trench that gets one, behind what is noted there.
  std::function<void(Plan&)> note_valves(const Throttled& made, const Layout& layout) const {
    std::vector<std::pair<int, std::string>> notes;
    for (std::size_t c = 0; c < made.k.size(); ++c)
      if (made.k[c] > 0)
        notes.push_back({layout.trenches[c].number,
                         say("balancing valve: {} at the design flow", shown(Quantity::head, made.head[c]))});
    return [notes](Plan& p) {
      for (const auto& [number, words] : notes) {
        std::string& note = said(p, number).note;
        if (note.find(words) == std::string::npos) note = note.empty() ? words : note + "; " + words;
      }
    };
  }

  static std::string valves_by_hand() {
    return say(
        "By hand: fit the valve and close it until the drop across it is that much. Taking this notes it on "
        "the trench; the as-built goes on reckoning without it.");
  }

  static double limit_of(const std::vector<Hold>& holds, const std::string& key) {
    for (const Hold& h : holds)
      if (h.key == key) return h.limit;
    return 0;
  }

  // A stronger solution is thicker and colder, so what it has to bear is asked again of each.
  void antifreeze() {
    Plan p = built_.plan;
    std::vector<Hold> holds = holds_of(unread_, planned_, *built_.outcome);
    if (!fails(holds, {"freezing"})) return bring_to_plan(std::move(holds));
    for (int i = 0; i < 6 && fails(holds, {"freezing"}) && !stop_.stop_requested(); ++i) {
      if (!raise_antifreeze(p, holds))
        return made_.not_found.push_back(
            say("No share of {} protects the loop at its coldest.", std::string(fluid_name(p.flow.fluid))));
      const Outcome outcome = solver_.solve(p, built_.loop.layout, stop_);
      holds = holds_of(unread_, planned_, outcome);
      if (outcome.flow != nullptr) concentrate_ = outcome.flow->antifreeze.concentrate;
    }
    add({MendKind::antifreeze,
         say("More antifreeze: {} by mass instead of {}, {} of concentrate in all",
             shown(Quantity::ratio, p.flow.mass_fraction), shown(Quantity::ratio, plan_.flow.mass_fraction),
             shown(Quantity::fluid_volume, concentrate_)),
         say("A thicker fluid takes more head; look at circulator and balance beside it."),
         std::move(holds),
         false,
         built_.loop.layout,
         share_of(p.flow.mass_fraction),
         read_again(),
         {}});
  }

  static std::function<void(Plan&)> share_of(double mass_fraction) {
    return [mass_fraction](Plan& p) { p.flow.mass_fraction = mass_fraction; };
  }

  // The reading stands until another is made.
  std::string read_again() const {
    return plan_.record.fill.freezing_point
               ? say("By hand: mix it in, read the freezing point again and type that on the Record page.")
               : "";
  }

  // The plan's share is enough, and what was read is not it.
  void bring_to_plan(std::vector<Hold> holds) {
    add({MendKind::antifreeze,
         say("The fluid brought to the {} of antifreeze by mass that is planned",
             shown(Quantity::ratio, plan_.flow.mass_fraction)),
         say("How much to take out and to put in is on the Record page, under the fill."),
         std::move(holds),
         false,
         built_.loop.layout,
         nullptr,
         read_again(),
         {}});
  }

  // ---- several at once ----

  // The first mend of the temperatures, valves on what it leaves out of balance, and antifreeze for the
  // temperatures of all that.
  void together() {
    const auto warm = std::ranges::find_if(made_.all, [](const Mend& m) {
      return warm_enough(m.holds) && (m.kind == MendKind::more_circuit || m.kind == MendKind::run_coil ||
                                      m.kind == MendKind::full_coils);
    });
    const bool any = warm != made_.all.end();
    if (!any && fails(built_.holds, {"coldest", "warmest"})) return;
    Plan p = built_.plan;
    const Layout layout = any ? warm->layout : built_.loop.layout;
    p.wishes.given = given_from(layout);
    std::string words = any ? warm->what : "";
    std::vector<int> trenches = any ? warm->trenches : std::vector<int>{};
    std::vector<Hold> holds;
    std::string valves;
    std::function<void(Plan&)> noted;
    for (int i = 0; i < 6 && !stop_.stop_requested(); ++i) {
      const Outcome outcome = solver_.solve(p, layout, stop_);
      holds = throttled_holds(p, layout, outcome, valves, noted);
      if (!fails(holds, {"freezing"}) || !raise_antifreeze(p, holds)) break;
    }
    const auto join = [&](const std::string& more) {
      if (!more.empty()) words = words.empty() ? more : say("{}; and {}", words, more);
    };
    join(valves);
    const bool more = p.flow.mass_fraction > built_.plan.flow.mass_fraction;
    if (more || fails(built_.holds, {"freezing"}))
      join(say("{} of antifreeze by mass", shown(Quantity::ratio, p.flow.mass_fraction)));
    std::string by_hand = any ? warm->by_hand : "";
    if (!valves.empty())
      by_hand = by_hand.empty() ? valves_by_hand() : say("{} {}", by_hand, valves_by_hand());
    std::function<void(Plan&)> take;
    const auto first = any ? warm->take : nullptr;
    const auto share = more ? share_of(p.flow.mass_fraction) : nullptr;
    if (first || share || noted)
      take = [steps = std::array{first, noted, share}](Plan& plan) {
        for (const auto& step : steps)
          if (step) step(plan);
      };
    if (fails(built_.holds, {"freezing"}) && !read_again().empty())
      by_hand = by_hand.empty() ? read_again() : say("{} {}", by_hand, read_again());
    add({MendKind::together, say("Together: {}", words), say("See the cautions of each."), std::move(holds),
         false, layout, std::move(take), std::move(by_hand), std::move(trenches)});
  }

  // What the loop does with valves where it needs them.
  std::vector<Hold> throttled_holds(const Plan& p, const Layout& layout, const Outcome& outcome,
                                    std::string& valves, std::function<void(Plan&)>& noted) const {
    std::vector<Hold> holds = holds_of(unread_, planned_, outcome);
    valves.clear();
    noted = nullptr;
    if (!fails(holds, {"balance"}) || outcome.flow == nullptr) return holds;
    const auto made = throttled(*outcome.flow, p.flow, plan_.flow.most_imbalance);
    if (!made) return holds;
    for (std::size_t c = 0; c < made->k.size(); ++c) {
      if (!(made->k[c] > 0)) continue;
      const std::string head = shown(Quantity::head, made->head[c]);
      valves = valves.empty() ? say("a valve in circuit {} taking {}", layout.trenches[c].number, head)
                              : say("{}, in circuit {} taking {}", valves, layout.trenches[c].number, head);
    }
    noted = note_valves(*made, layout);
    const auto heat = heated(made->flow, p, layout, outcome);
    return holds_of(unread_, does(planned_.flow.get(), planned_.purge.get(), planned_.temperatures.get()),
                    does(&made->flow, outcome.purge.get(), heat ? &*heat : outcome.temperatures.get()));
  }

  bool raise_antifreeze(Plan& p, const std::vector<Hold>& holds) const {
    const auto needed = concentration_for(p.flow.fluid, limit_of(holds, "freezing"));
    if (!needed || p.flow.fluid == Fluid::water) return false;
    p.flow.mass_fraction =
        std::max(std::ceil(*needed / kShareStep) * kShareStep, p.flow.mass_fraction + kShareStep);
    return p.flow.mass_fraction <= kMostConcentration;
  }

  const Plan& plan_;
  const Outcome& planned_;
  const AsBuiltAnswer& built_;
  LaidSolver& solver_;
  const MendsProgress& progress_;
  std::stop_token stop_;
  Plan unread_;  // for fluids other than the one that was read
  double concentrate_ = 0;
  Mends made_;
};

}  // namespace

Mends find_mends(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built, LaidSolver& solver,
                 const MendsProgress& progress, std::stop_token stop) {
  return Mender(plan, planned, built, solver, progress, std::move(stop)).find();
}

}  // namespace underlawn
