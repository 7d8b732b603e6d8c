// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/record/moment.h"
#include "plan/record/record_judge.h"

namespace underlawn {

namespace {

std::optional<Moment> moment(const std::string& text) {
  const auto m = moment_from_text(text, "");
  return m ? std::optional<Moment>(*m) : std::nullopt;
}

const char* kWhy = mark(
    "joints stay open until the loop has passed its test: common practice of the trade and of most codes");

class Order {
 public:
  Order(const JobRecord& record, const AsBuilt& built) : record_(record), built_(built) {}

  std::vector<RecordLine> judge() {
    tested_ = moment(record_.test.end);
    passed_ = record_.test.result == TestResult::passed;
    covered("order.joints", 0, record_.test.joints_covered);
    for (const BuiltTrench& t : built_.trenches)
      covered("order.trench_" + std::to_string(t.number), t.number, t.filled_on);
    filled();
    return std::move(lines_);
  }

 private:
  void add(std::string key, Tone tone, std::string title, std::string words, const std::string& source) {
    lines_.push_back({std::move(key), tone, std::move(title), std::move(words), source});
  }

  void covered(const std::string& key, int trench, const std::string& when) {
    const auto then = moment(when);
    if (!then) return;
    const std::string day = print_moment(*then);
    const std::string title = trench == 0 ? say("The joints and the pressure test")
                                          : say("Trench {} and the pressure test", trench);
    const std::string filled = trench == 0 ? say("The joints were filled in on {}", day)
                                           : say("Trench {} was filled in on {}", trench, day);
    if (!passed_)
      return add(
          key, Tone::bad, title,
          record_.test.result == TestResult::failed
              ? say("{}, though the test failed. Open the joints, or test again before anything else is "
                    "covered.",
                    filled)
              : say("{}; no test is recorded as passed. Open the joints, or test again before anything "
                    "else is covered.",
                    filled),
          translated(kWhy));
    if (!tested_)
      return add(key, Tone::doubt, title, say("{}; when the test ended is not recorded.", filled),
                 translated(kWhy));
    if (surely_before(*then, *tested_))
      return add(
          key, Tone::bad, title,
          say("{}, before the test ended on {}. Open the joints and test again while they can be seen.",
              filled, print_moment(*tested_)),
          translated(kWhy));
    add(key, Tone::good, title, say("{}, not before the test ended.", filled), translated(kWhy));
  }

  void filled() {
    const auto when = moment(record_.fill.when);
    if (!when) return;
    if (tested_ && surely_before(*when, *tested_))
      add("order.fill", Tone::bad, say("Antifreeze and the pressure test"),
          say("The loop was filled with antifreeze on {}, before the test ended on {}: test with water, so "
              "that a leak spills none.",
              print_moment(*when), print_moment(*tested_)),
          say("common practice, no source"));
    for (const FlushReading& f : record_.flush)
      if (const auto flushed = moment(f.when); flushed && surely_before(*when, *flushed))
        return add("order.flush", Tone::doubt, say("Antifreeze and flushing"),
                   say("A flushing on {} came after the fill on {}: it thins the antifreeze; read the "
                       "freezing point again.",
                       print_moment(*flushed), print_moment(*when)),
                   say("common practice, no source"));
  }

  const JobRecord& record_;
  const AsBuilt& built_;
  std::optional<Moment> tested_;
  bool passed_ = false;
  std::vector<RecordLine> lines_;
};

}  // namespace

std::vector<RecordLine> judge_order(const JobRecord& record, const AsBuilt& built) {
  return Order(record, built).judge();
}

}  // namespace underlawn
