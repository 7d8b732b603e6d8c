// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/probe.h"

#include <algorithm>
#include <array>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <span>

#include "base/say.h"

namespace underlawn {
namespace {

using Readings = std::span<const ProbeReading>;

constexpr int kFewest = 10, kFewestInHalf = 3;
constexpr int kStarts = 200;  // windows tried

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"probe_fit", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

std::string shown(double v, std::string_view unit) {
  if (!std::isfinite(v)) return say("not a number");
  char text[40];
  std::snprintf(text, sizeof text, "%.4g", v);
  return text + std::string(unit);
}

std::string shown(const ProbeWindow& w) {
  return say("{} to {}", shown(w.from, " s"), shown(w.to, " s"));
}

struct Line {
  double slope = 0, error = 0, r2 = 0;
};

// Least squares of T over ln t; two readings or more at different times.
Line line_through(Readings readings) {
  const double n = static_cast<double>(readings.size());
  double mean_x = 0, mean_y = 0, xx = 0, xy = 0, yy = 0, rest = 0;
  for (const ProbeReading& r : readings) {
    mean_x += std::log(r.time) / n;
    mean_y += r.temperature / n;
  }
  for (const ProbeReading& r : readings) {
    const double x = std::log(r.time) - mean_x, y = r.temperature - mean_y;
    xx += x * x, xy += x * y, yy += y * y;
  }
  const double slope = xy / xx;
  for (const ProbeReading& r : readings) {
    const double e = r.temperature - mean_y - slope * (std::log(r.time) - mean_x);
    rest += e * e;
  }
  return {slope, n > 2 ? std::sqrt(rest / (n - 2) / xx) : 0, yy > 0 ? 1 - rest / yy : 0};
}

Readings within(Readings readings, double from, double to) {
  const auto earlier = [](const ProbeReading& r, double t) { return r.time < t; };
  const auto later = [](double t, const ProbeReading& r) { return t < r.time; };
  const auto first = std::lower_bound(readings.begin(), readings.end(), from, earlier);
  const auto last = std::upper_bound(readings.begin(), readings.end(), to, later);
  return first < last ? Readings(first, last) : Readings();
}

// Slopes of the first, the middle and the last half in ln t; none where one has too few readings.
std::optional<std::array<double, 3>> slopes_of_halves(Readings readings, const ProbeWindow& w) {
  std::array<double, 3> slopes{};
  // The ends stay as they are: exp(log(x)) is not always x, and a reading stands on them.
  const auto at = [&](int quarter) {
    return quarter == 0 ? w.from : quarter == 4 ? w.to : w.from * std::pow(w.to / w.from, quarter / 4.0);
  };
  for (int i = 0; i < 3; ++i) {
    const Readings half = within(readings, at(i), at(i + 2));
    if (half.size() < kFewestInHalf) return {};
    slopes[i] = line_through(half).slope;
  }
  return slopes;
}

Result<void> check_log(const ProbeLog& log) {
  if (!(log.power > 0 && log.power <= 1000))
    return refuse(
        trouble(say("heater power"), shown(log.power, " W/m"), say("more than 0 and at most 1000 W/m"),
                say("Enter the power per metre of needle: volts times amperes by its heated length.")));
  for (std::size_t i = 0; i < log.readings.size(); ++i) {
    const ProbeReading& r = log.readings[i];
    const std::string number = std::to_string(i + 1);
    if (!std::isfinite(r.time) || (i > 0 && !(r.time > log.readings[i - 1].time)))
      return refuse(trouble(say("time of reading {}", number), shown(r.time, " s"),
                            say("more than that of the reading before"),
                            say("Keep one heating, in the order of time.")));
    if (!std::isfinite(r.temperature))
      return refuse(trouble(say("temperature of reading {}", number), say("not a number"),
                            say("a temperature"), say("Take the reading out.")));
  }
  return {};
}

Result<void> check_window(Readings readings, const ProbeWindow& w) {
  if (!(w.from > 0) || !(w.to > w.from) || !std::isfinite(w.to))
    return refuse(trouble(say("window"), shown(w), say("from above 0 s to a later time"),
                          say("The heater is switched on at 0 s; leave its first seconds out.")));
  const std::size_t count = within(readings, w.from, w.to).size();
  if (count >= kFewest && slopes_of_halves(readings, w)) return {};
  return refuse(trouble(say("number of readings from {}", shown(w)), std::to_string(count),
                        say("at least 10, with 3 or more in each half of ln t"),
                        say("Widen the window, or log more often.")));
}

double spread_of(const std::array<double, 3>& slopes, double slope) {
  const auto [least, most] = std::minmax_element(slopes.begin(), slopes.end());
  return slope / *least - slope / *most;  // k is 1/slope
}

Result<ProbeFit> fit_in(const ProbeLog& log, const ProbeWindow& w) {
  if (auto ok = check_window(log.readings, w); !ok) return refuse(ok.error());
  const Readings readings = within(log.readings, w.from, w.to);
  const Line line = line_through(readings);
  const std::array<double, 3> slopes = *slopes_of_halves(log.readings, w);
  const auto [least, most] = std::minmax_element(slopes.begin(), slopes.end());
  const double lowest = std::min(line.slope, *least);
  if (!(lowest > 0))
    return refuse(
        trouble(say("slope of the temperature from {}", shown(w)), say("{} K per ln t", shown(lowest, "")),
                say("more than 0 in the window and in its halves"),
                say("Choose a window in which the needle warms: the heater was off, or the power too low.")));
  const boost::math::students_t student(static_cast<double>(readings.size()) - 2);
  const double margin = boost::math::quantile(student, 0.975) * line.error;
  if (!(line.slope > margin))
    return refuse(
        trouble(say("slope of the temperature from {}", shown(w)),
                say("{} +- {} K per ln t", shown(line.slope, ""), shown(margin, "")),
                say("farther from 0 than its 95 % margin"),
                say("The readings are too scattered for a conductivity: more power, or a longer window.")));
  const double q = log.power / (4 * std::numbers::pi);
  ProbeFit fit{w, false, static_cast<int>(readings.size()), line.slope, line.error, q / line.slope};
  fit.low = q / (line.slope + margin);
  fit.high = q / (line.slope - margin);
  fit.r2 = line.r2;
  fit.part_low = q / *most;
  fit.part_high = q / *least;
  fit.spread = spread_of(slopes, line.slope);
  return fit;
}

bool is_steady(const ProbeLog& log, const ProbeWindow& w, double steady) {
  const Readings readings = within(log.readings, w.from, w.to);
  const auto slopes = slopes_of_halves(log.readings, w);
  if (readings.size() < kFewest || !slopes) return false;
  if (!(*std::min_element(slopes->begin(), slopes->end()) > 0)) return false;
  return spread_of(*slopes, line_through(readings).slope) <= steady;
}

Result<ProbeWindow> steady_window(const ProbeLog& log, double steady) {
  const auto heated = std::find_if(log.readings.begin(), log.readings.end(),
                                   [](const ProbeReading& r) { return r.time > 0; });
  const Readings readings(heated, log.readings.end());
  if (readings.size() < kFewest)
    return refuse(trouble(say("number of readings after 0 s"), std::to_string(readings.size()),
                          say("at least 10"), say("Log more often, or longer.")));
  const double first = readings.front().time, last = readings.back().time;
  if (!(last > first * kShortestRatio))
    return refuse(trouble(say("heated time of the log"), shown({first, last}),
                          say("at least three times its start"), say("Heat longer, or give the window.")));
  if (!(line_through(readings.last(kFewest)).slope > 0))
    return refuse(trouble(say("temperature at the end of the log"), say("falling"), say("rising"),
                          say("Give a window that ends before the heater was switched off.")));
  const double reach = last / kShortestRatio / first;
  for (int i = 0; i <= kStarts; ++i) {
    const ProbeWindow w{first * std::pow(reach, static_cast<double>(i) / kStarts), last};
    if (is_steady(log, w, steady)) return w;
  }
  return refuse(trouble(say("spread of the slope"), say("larger in every window up to the end of the log"),
                        say("at most {}", shown(100 * steady, " %")),
                        say("Look at the curve and give the window in which it is straight over ln t.")));
}

}  // namespace

Result<ProbeFit> fit_probe(const ProbeLog& log, std::optional<ProbeWindow> window, double steady) {
  if (auto ok = check_log(log); !ok) return refuse(ok.error());
  if (window) return fit_in(log, *window);
  const auto found = steady_window(log, steady);
  if (!found) return refuse(found.error());
  auto fit = fit_in(log, *found);
  if (fit) fit->window_found = true;
  return fit;
}

}  // namespace underlawn
