// SPDX-License-Identifier: GPL-3.0-or-later
// Colours that mean something by themselves are told apart by eyes that see no red (protanopia) or no green
// (deuteranopia), about one man in fifty. Sources: the matrices for severity 1 on linear RGB of Machado,
// Oliveira and Fernandes, "A physiologically-based model for simulation of color vision deficiency", IEEE
// TVCG 15(6), 2009; the difference CIEDE2000 and its test data of Sharma, Wu and Dalal, Color Research and
// Application 30(1), 2005, table 1. That ten is plainly seen is a choice: one is just noticeable.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "canvas/look.h"

using namespace underlawn;

namespace {

using Triple = std::array<double, 3>;
using Matrix = std::array<Triple, 3>;

constexpr double kTold = 10;
constexpr double kRad = M_PI / 180;

constexpr std::array<Matrix, 3> kEyes = {
    {{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
     {{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
     {{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}}}};
constexpr std::array<const char*, 3> kEyeNames = {"all colours", "no red", "no green"};

double linear(double c) {
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

Triple times(const Matrix& m, const Triple& v) {
  Triple out{};
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j) out[i] += m[i][j] * v[j];
  return out;
}

// CIE L*a*b* under D65, from linear sRGB.
Triple lab(Triple rgb) {
  for (double& c : rgb) c = std::min(1.0, std::max(0.0, c));
  const Triple xyz = times({{{0.4124564, 0.3575761, 0.1804375},
                             {0.2126729, 0.7151522, 0.0721750},
                             {0.0193339, 0.1191920, 0.9503041}}},
                           rgb);
  const auto f = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116; };
  const double x = f(xyz[0] / 0.95047), y = f(xyz[1]), z = f(xyz[2] / 1.08883);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double hue(double a, double b) {
  const double h = std::atan2(b, a) / kRad;
  return h < 0 ? h + 360 : h;
}

double seventh(double c) {
  return std::sqrt(std::pow(c, 7) / (std::pow(c, 7) + std::pow(25.0, 7)));
}

double weight(double h) {
  return 1 - 0.17 * std::cos((h - 30) * kRad) + 0.24 * std::cos(2 * h * kRad) +
         0.32 * std::cos((3 * h + 6) * kRad) - 0.20 * std::cos((4 * h - 63) * kRad);
}

double ciede2000(const Triple& p, const Triple& q) {
  const double mean_c = (std::hypot(p[1], p[2]) + std::hypot(q[1], q[2])) / 2;
  const double g = 0.5 * (1 - seventh(mean_c));
  const double a1 = (1 + g) * p[1], a2 = (1 + g) * q[1];
  const double c1 = std::hypot(a1, p[2]), c2 = std::hypot(a2, q[2]);
  const double h1 = hue(a1, p[2]), h2 = hue(a2, q[2]);
  double dh = h2 - h1, h = h1 + h2;
  if (c1 * c2 == 0) {
    dh = 0;
  } else {
    if (std::abs(h1 - h2) > 180) h += h < 360 ? 360 : -360;
    h /= 2;
    if (dh > 180) dh -= 360;
    if (dh < -180) dh += 360;
  }
  const double l = (p[0] + q[0]) / 2, c = (c1 + c2) / 2;
  const double s_l = 1 + 0.015 * (l - 50) * (l - 50) / std::sqrt(20 + (l - 50) * (l - 50));
  const double s_c = 1 + 0.045 * c, s_h = 1 + 0.015 * c * weight(h);
  const double turn = 30 * std::exp(-std::pow((h - 275) / 25, 2));
  const double r = -std::sin(2 * turn * kRad) * 2 * seventh(c);
  const double dl = (q[0] - p[0]) / s_l, dc = (c2 - c1) / s_c;
  const double dhh = 2 * std::sqrt(c1 * c2) * std::sin(dh / 2 * kRad) / s_h;
  return std::sqrt(dl * dl + dc * dc + dhh * dhh + r * dc * dhh);
}

Triple seen(const QColor& colour, const Matrix& eye) {
  return lab(times(eye, {linear(colour.redF()), linear(colour.greenF()), linear(colour.blueF())}));
}

struct Named {
  std::string name;
  QColor colour;
};

void expect_told_apart(const std::vector<Named>& all, const std::string& where) {
  for (std::size_t e = 0; e < kEyes.size(); ++e)
    for (std::size_t i = 0; i < all.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        EXPECT_GE(ciede2000(seen(all[i].colour, kEyes[e]), seen(all[j].colour, kEyes[e])), kTold)
            << where << ": " << all[i].name << " and " << all[j].name << " to eyes that see " << kEyeNames[e];
}

}  // namespace

TEST(ColourVision, TheDifferenceIsThePublishedOne) {
  EXPECT_NEAR(ciede2000({50, 2.6772, -79.7751}, {50, 0, -82.7485}), 2.0425, 5e-5);
  EXPECT_NEAR(ciede2000({50, 2.5, 0}, {73, 25, -18}), 27.1492, 5e-5);
  EXPECT_NEAR(ciede2000({60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}), 1.2644, 5e-5);
}

TEST(ColourVision, UtilitiesAreToldApart) {
  for (const Look& look : {Look::light(), Look::night(), Look::paper()}) {
    std::vector<Named> all;
    for (int i = 0; i < 6; ++i) {
      const auto kind = static_cast<UtilityKind>(i);
      all.push_back({std::string(utility_name(kind)), apwa_colour(kind, look)});
    }
    expect_told_apart(all, look.dark ? "night" : "light");
  }
}

TEST(ColourVision, SeveritiesAreToldApart) {
  for (const Look& look : {Look::light(), Look::night(), Look::paper()})
    expect_told_apart({{"hint", look.hint}, {"warning", look.warning}, {"error", look.error}}, "severity");
}

TEST(ColourVision, WhatMovesWithThePointerIsToldFromWhatIsDrawn) {
  for (const Look& look : {Look::light(), Look::night()}) {
    expect_told_apart({{"selection", look.selection}, {"snap", look.snap}, {"ghost", look.ghost}}, "marks");
    expect_told_apart({{"selection", look.selection}, {"coil", look.coil}}, "marks on pipe");
    expect_told_apart({{"selection", look.selection}, {"lot line", look.lot_line}}, "marks on the lot line");
  }
}
