// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/record_judge.h"

#include <algorithm>

#include "base/say.h"
#include "plan/coldest_fluid.h"
#include "plan/record/moment.h"

namespace underlawn {

namespace {

std::vector<RecordLine> judge_test(const Plan& plan, const Flow* flow) {
  const TestRecord& t = plan.record.test;
  std::vector<RecordLine> lines;
  const auto shown = [&](double p) { return print_quantity(Quantity::pressure, p, plan.units); };
  if (t.medium == TestMedium::air)
    lines.push_back(
        {"test.medium", Tone::bad, say("What the loop was tested with"),
         say("Air stores hundreds of times the energy of water at the same pressure, and a fitting "
             "that lets go can kill. Test with water; with air only where the maker of the pipe and "
             "the local code allow it, from a distance."),
         say("stored energy p V/(k - 1) against that of water and pipe")});
  if (t.gauge_range && flow != nullptr) {
    const auto planned = planned_test(plan.test, volume_of(flow->loop));
    if (planned && *t.gauge_range < planned->pressure.at_gauge)
      lines.push_back({"test.gauge", Tone::bad, say("Range of the gauge"),
                       say("{} full scale; the test goes to {}: take a gauge that reaches it.",
                           shown(*t.gauge_range), shown(planned->pressure.at_gauge)),
                       ""});
  }
  const auto start = moment_from_text(t.start, ""), end = moment_from_text(t.end, "");
  if (start && end && surely_before(*end, *start))
    lines.push_back({"test.times", Tone::bad, say("Times of the test"),
                     say("It ended on {}, before it began on {}.", print_moment(*end), print_moment(*start)),
                     ""});
  else if (start && end && start->timed && end->timed) {
    const double lasted = 60.0 * static_cast<double>(end->minutes - start->minutes);
    const double asked = test_duration(plan.test.procedure);
    const auto hours = [&](double s) { return print_quantity(Quantity::duration, s, plan.units); };
    lines.push_back({"test.duration", lasted >= asked - 60 ? Tone::good : Tone::bad,
                     say("Duration of the test"),
                     say("{}; {} is asked ({}).", hours(lasted), hours(asked),
                         std::string(test_procedure_name(plan.test.procedure))),
                     ""});
  }
  return lines;
}

// What was typed as the result beside what the lines tell.
void judge_result(const TestRecord& test, std::vector<RecordLine>& lines) {
  if (test.result != TestResult::passed) return;
  std::string against;
  for (const RecordLine& line : lines)
    if (line.tone == Tone::bad) against = against.empty() ? line.title : say("{}; {}", against, line.title);
  if (!against.empty())
    lines.insert(lines.begin(),
                 {"test.result", Tone::bad, say("Result of the test"),
                  say("“Passed” is typed, but what is written down does not bear it out: {}. Test again, or "
                      "correct what is typed.",
                      against),
                  ""});
}

void judge_flushes(const Plan& plan, const Flow& flow, RecordJudgement& made) {
  bool forward = false, reverse = false;
  for (std::size_t i = 0; i < plan.record.flush.size(); ++i) {
    const FlushReading& reading = plan.record.flush[i];
    (reading.direction == FlushDirection::forward ? forward : reverse) = true;
    const std::string number = std::to_string(i + 1);
    auto judged = judge_flush(flow.loop, plan.flow, reading, say("Flushing {}", number), plan.units);
    if (!judged) {
      made.flush.emplace_back();
      made.flush_lines.push_back(
          {"flush." + number, Tone::bad, say("Flushing {}", number), judged.error().message(), ""});
      continue;
    }
    for (RecordLine line : judged->lines) {
      line.key.insert(6, number + ".");
      made.flush_lines.push_back(std::move(line));
    }
    made.flush.emplace_back(std::move(*judged));
  }
  if (forward != reverse)
    made.flush_lines.push_back(
        {"flush.directions", Tone::doubt, say("Direction of flushing"),
         forward ? say("Flushed forward only: flushing both ways frees what one way packs.")
                 : say("Flushed in reverse only: flushing both ways frees what one way packs."),
         say("common practice, no source")});
}

}  // namespace

std::vector<RecordLine> RecordJudgement::lines() const {
  std::vector<RecordLine> all = test;
  all.insert(all.end(), flush_lines.begin(), flush_lines.end());
  all.insert(all.end(), fill.lines.begin(), fill.lines.end());
  return all;
}

RecordJudgement judge_record(const Plan& plan, const Flow* flow, const Temperatures* temperatures) {
  RecordJudgement made;
  made.test = judge_test(plan, flow);
  judge_result(plan.record.test, made.test);
  const auto order = judge_order(plan.record, plan.as_built);
  made.test.insert(made.test.end(), order.begin(), order.end());
  if (flow == nullptr) return made;
  if (const auto asked = judge_flush(flow->loop, plan.flow, {}, say("Flushing"), plan.units))
    made.flush_asked = *asked;
  judge_flushes(plan, *flow, made);
  made.fill = judge_fill(plan, *flow, coldest_fluid(plan.flow, temperatures));
  return made;
}

}  // namespace underlawn
