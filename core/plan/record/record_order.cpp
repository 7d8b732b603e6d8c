// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/moment.h"
#include "plan/record/record_judge.h"

namespace underlawn {

namespace {

std::optional<Moment> moment(const std::string& text) {
  const auto m = moment_from_text(text, "");
  return m ? std::optional<Moment>(*m) : std::nullopt;
}

const char* kWhy =
    "joints stay open until the loop has passed its test: common practice of the trade and of most codes";

class Order {
 public:
  Order(const JobRecord& record, const AsBuilt& built) : record_(record), built_(built) {}

  std::vector<RecordLine> judge() {
    tested_ = moment(record_.test.end);
    passed_ = record_.test.result == TestResult::passed;
    covered("order.joints", "The joints", record_.test.joints_covered);
    for (const BuiltTrench& t : built_.trenches)
      covered("order.trench_" + std::to_string(t.number), "Trench " + std::to_string(t.number), t.filled_on);
    filled();
    return std::move(lines_);
  }

 private:
  void add(std::string key, Tone tone, std::string title, std::string words, const char* source) {
    lines_.push_back({std::move(key), tone, std::move(title), std::move(words), source});
  }

  void covered(const std::string& key, const std::string& what, const std::string& when) {
    const auto then = moment(when);
    if (!then) return;
    const std::string title = what + " and the pressure test";
    const std::string filled =
        std::string(what == "The joints" ? "were" : "was") + " filled in on " + print_moment(*then);
    if (!passed_)
      return add(key, Tone::bad, title,
                 what + " " + filled +
                     (record_.test.result == TestResult::failed ? ", though the test failed."
                                                                : "; no test is recorded as passed.") +
                     " Open the joints, or test again before anything else is covered.",
                 kWhy);
    if (!tested_)
      return add(key, Tone::doubt, title, what + " " + filled + "; when the test ended is not recorded.",
                 kWhy);
    if (surely_before(*then, *tested_))
      return add(key, Tone::bad, title,
                 what + " " + filled + ", before the test ended on " + print_moment(*tested_) +
                     ". Open the joints and test again while they can be seen.",
                 kWhy);
    add(key, Tone::good, title, what + " " + filled + ", not before the test ended.", kWhy);
  }

  void filled() {
    const auto when = moment(record_.fill.when);
    if (!when) return;
    if (tested_ && surely_before(*when, *tested_))
      add("order.fill", Tone::bad, "Antifreeze and the pressure test",
          "The loop was filled with antifreeze on " + print_moment(*when) + ", before the test ended on " +
              print_moment(*tested_) + ": test with water, so that a leak spills none.",
          "common practice, no source");
    for (const FlushReading& f : record_.flush)
      if (const auto flushed = moment(f.when); flushed && surely_before(*when, *flushed))
        return add("order.flush", Tone::doubt, "Antifreeze and flushing",
                   "A flushing on " + print_moment(*flushed) + " came after the fill on " +
                       print_moment(*when) + ": it thins the antifreeze; read the freezing point again.",
                   "common practice, no source");
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
