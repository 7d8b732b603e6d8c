// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/fill_judge.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr double kSameReading = 1;     // K: what a refractometer and its reader err; our own choice
constexpr double kSamePressure = 5e3;  // Pa: what a gauge of the trade errs; our own choice
constexpr double kMuchStronger = 4;    // K
constexpr double kSameVolume = 0.10;   // of what was asked; our own choice
constexpr double kLowPh = 7.5, kHighPh = 10.5;
const char* kMelinder = mark("freezing point by concentration: Melinder 2010, IIR");
const char* kPhSource =
    mark("common practice of inhibited glycols, no source; the product's own sheet goes first");

class Judge {
 public:
  Judge(const Plan& plan, const Flow& flow, double coldest)
      : plan_(plan), fill_(plan.record.fill), flow_(flow), coldest_(coldest) {}

  FillJudgement judge() {
    made_.asked_freezing = flow_.antifreeze.freezing_point;
    made_.wanted_freezing = flow_.antifreeze.wanted_freezing;
    made_.asked_product = flow_.antifreeze.concentrate / strength();
    if (plan_.flow.fluid != Fluid::water) {
      judge_freezing();
      judge_amount();
      judge_ph();
    }
    judge_pressure();
    return std::move(made_);
  }

 private:
  std::string shown(Quantity q, double value) const { return print_quantity(q, value, plan_.units); }
  double strength() const { return fill_.strength.value_or(1); }
  void add(const std::string& key, Tone tone, const std::string& title, std::string words,
           const std::string& source = "") {
    made_.lines.push_back({"fill." + std::string(key), tone, title, std::move(words), source});
  }

  void judge_freezing() {
    const std::string asked =
        say("{} is planned, at most {} is needed", shown(Quantity::temperature, made_.asked_freezing),
            shown(Quantity::temperature, made_.wanted_freezing));
    if (!fill_.freezing_point)
      return add("freezing", Tone::open, say("Freezing point"), say("Not read; {}.", asked));
    const double read = *fill_.freezing_point;
    const auto x = concentration_for(plan_.flow.fluid, std::min(read, 0.0));
    if (x) made_.mass_fraction = *x;
    const std::string words = say("{} read; {}", shown(Quantity::temperature, read), asked);
    if (read > made_.wanted_freezing + 1e-6) return too_weak(words);
    if (read < made_.asked_freezing - kMuchStronger)
      return add(
          "freezing", Tone::doubt, say("Freezing point"),
          say("{}. It is much stronger than planned: it takes more head and carries less heat.", words),
          translated(kMelinder));
    add("freezing", Tone::good, say("Freezing point"),
        std::abs(read - made_.asked_freezing) <= kSameReading ? words + "."
                                                              : say("{}: not as planned, but enough.", words),
        translated(kMelinder));
  }

  // Taken out and replaced by product: V (b - a)/(s - a) in shares by volume.
  void too_weak(const std::string& words) {
    const auto needed = concentration_for(plan_.flow.fluid, made_.wanted_freezing);
    if (needed && made_.mass_fraction) {
      const double have = volume_fraction(plan_.flow.fluid, *made_.mass_fraction);
      const double want = volume_fraction(plan_.flow.fluid, *needed);
      if (strength() > want && want > have)
        made_.exchange = flow_.volume * (want - have) / (strength() - have);
    }
    add("freezing", Tone::bad, say("Freezing point"),
        made_.exchange ? say("{}. Take out {} and put in as much of the product, mix and read again.", words,
                             shown(Quantity::fluid_volume, *made_.exchange))
                       : words + ".",
        translated(kMelinder));
  }

  void judge_amount() {
    const std::string asked = say("{} asked", shown(Quantity::fluid_volume, made_.asked_product));
    if (!fill_.put_in) return add("amount", Tone::open, say("Product put in"), say("Not noted; {}.", asked));
    const double share = *fill_.put_in / made_.asked_product - 1;
    std::string words = say("{} put in, {}", shown(Quantity::fluid_volume, *fill_.put_in), asked);
    if (made_.mass_fraction && *made_.mass_fraction > 0)
      made_.volume = *fill_.put_in * strength() / volume_fraction(plan_.flow.fluid, *made_.mass_fraction);
    const bool volume_off = made_.volume && std::abs(*made_.volume / flow_.volume - 1) > 2 * kSameVolume;
    if (volume_off) words = volume_words(words);
    add("amount", volume_off || std::abs(share) > kSameVolume ? Tone::doubt : Tone::good,
        say("Product put in"), words + ".",
        say("volumes before mixing at 20 °C: CRC Handbook (from memory)"));
  }

  // Weaker than so much product makes the loop drawn: it is spread over more water, or was not all in it.
  std::string volume_words(const std::string& words) const {
    const std::string meant = shown(Quantity::fluid_volume, *made_.volume);
    const std::string drawn = shown(Quantity::fluid_volume, flow_.volume);
    return *made_.volume > flow_.volume
               ? say("{}. With the freezing point read it means {} of loop, {} is drawn: it is not mixed "
                     "yet, "
                     "some of the product was spilt or is weaker than typed, or more pipe lies than is drawn",
                     words, meant, drawn)
               : say("{}. With the freezing point read it means {} of loop, {} is drawn: it is not mixed "
                     "yet, "
                     "part of the loop was not filled or holds air, or less pipe lies than is drawn",
                     words, meant, drawn);
  }

  void judge_ph() {
    if (!fill_.ph) return;
    const bool usual = *fill_.ph >= kLowPh && *fill_.ph <= kHighPh;
    add("ph", usual ? Tone::good : Tone::doubt, "pH",
        usual ? say("{} read, 7.5 to 10.5 is usual.", shown(Quantity::count, *fill_.ph))
              : say("{} read, 7.5 to 10.5 is usual: ask the maker of the antifreeze; its inhibitor may be "
                    "spent or "
                    "the water hard.",
                    shown(Quantity::count, *fill_.ph)),
        translated(kPhSource));
  }

  ExpansionLoop loop() const {
    return {volume_of(flow_.loop), plan_.flow.fluid, plan_.flow.mass_fraction, PipeHold::held, {}};
  }

  void judge_pressure() {
    const Seasons seasons{coldest_, fill_.temperature.value_or(plan_.test.temperature),
                          plan_.thermal.warmest_allowed};
    ChargeWishes wishes;
    wishes.bottom_below_gauge = std::clamp(plan_.test.gauge_height, 0.0, 300.0);
    if (const auto least = least_charge(loop(), seasons, wishes)) made_.asked_charge = *least;
    if (!made_.asked_charge) return;
    const std::string asked =
        say("at least {} is asked", shown(Quantity::pressure, made_.asked_charge->at_fill));
    if (!fill_.pressure)
      return add("pressure", Tone::open, say("Pressure left on the loop"), say("Not read; {}.", asked));
    const auto then = charge_to(loop(), seasons, wishes, *fill_.pressure);
    std::string words = say("{} left, {}", shown(Quantity::pressure, *fill_.pressure), asked);
    if (then)
      words = say("{}; then {} in winter, {} in summer", words, shown(Quantity::pressure, then->winter),
                  shown(Quantity::pressure, then->summer));
    const double short_of = made_.asked_charge->at_fill - *fill_.pressure;
    const bool low = short_of > kSamePressure;
    const bool little =
        !low && short_of > 0 &&
        shown(Quantity::pressure, *fill_.pressure) != shown(Quantity::pressure, made_.asked_charge->at_fill);
    const bool high = then && then->highest + 1e4 * wishes.bottom_below_gauge > wishes.most_at_bottom;
    add("pressure",
        low || high ? Tone::bad
        : little    ? Tone::doubt
                    : Tone::good,
        say("Pressure left on the loop"),
        low    ? say("{}: too little, some season will draw air.", words)
        : high ? say("{}: too much for the weakest part.", words)
        : little
            ? say("{}: less than asked, by no more than a gauge errs. Put it up while the pump is there.",
                  words)
            : words + ".",
        say("least charge that keeps 70 kPa (10 psi) at the top in every season; common practice, no "
            "source"));
  }

  const Plan& plan_;
  const FillRecord& fill_;
  const Flow& flow_;
  double coldest_;  // deg C
  FillJudgement made_;
};

}  // namespace

FillJudgement judge_fill(const Plan& plan, const Flow& flow, double coldest) {
  return Judge(plan, flow, coldest).judge();
}

}  // namespace underlawn
