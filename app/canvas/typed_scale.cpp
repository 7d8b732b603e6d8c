// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/typed_scale.h"

#include <cmath>
#include <string>

#include "base/say.h"
#include "base/typed_text.h"

namespace underlawn {

namespace {

Trouble unread(std::string_view text, std::string bound) {
  return {"scale_unread", say("The scale"), in_quotes(text), std::move(bound),
          say("Type it like 1:200, 240 or 1 in = 20 ft.")};
}

}  // namespace

Result<double> typed_scale(std::string_view original, UnitSystem system) {
  std::string text = typed_text(original).plain;
  double scale = 0;
  if (const auto is = text.find('='); is != std::string::npos) {
    const auto paper = parse_quantity(Quantity::diameter, text.substr(0, is), system);
    if (!paper) return refuse(paper.error());
    const auto ground = parse_quantity(Quantity::length, text.substr(is + 1), system);
    if (!ground) return refuse(ground.error());
    scale = *ground / *paper;
  } else {
    const auto colon = text.find(':');
    const auto one = colon == std::string::npos
                         ? Result<double>(1.0)
                         : parse_quantity(Quantity::count, text.substr(0, colon), system);
    if (!one) return refuse(unread(original, say("a scale")));
    const auto to =
        parse_quantity(Quantity::count, colon == std::string::npos ? text : text.substr(colon + 1), system);
    if (!to) return refuse(unread(original, say("a scale")));
    scale = *to / *one;
  }
  if (!std::isfinite(scale) || scale < kLeastScale || scale > kMostScale)
    return refuse(unread(original, say("from 1:1 to 1:100000")));
  return scale;
}

QString scale_text(double scale) {
  return QStringLiteral("1:%1").arg(scale < 10 ? std::round(scale * 10) / 10 : std::round(scale), 0, 'g', 6);
}

}  // namespace underlawn
