// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of a form bound to what is asked of the flow.
#pragma once

#include "window/form.h"

namespace underlawn {

inline Form::Bound<double> flow_wish(double FlowWishes::*field, const QString& what) {
  return {[field](const Plan& p) { return p.flow.*field; }, [field](Plan& p, double v) { p.flow.*field = v; },
          what};
}

inline Form::Bound<double> loss_wish(FittedLoss FlowWishes::*loss, double FittedLoss::*field,
                                     const QString& what) {
  return {[=](const Plan& p) { return p.flow.*loss.*field; },
          [=](Plan& p, double v) { p.flow.*loss.*field = v; }, what};
}

inline Form::Bound<QString> pump_name(Circulator FlowWishes::*pump, const QString& what) {
  return {[pump](const Plan& p) { return QString::fromStdString((p.flow.*pump).name); },
          [pump](Plan& p, const QString& v) { (p.flow.*pump).name = v.simplified().toStdString(); }, what};
}

}  // namespace underlawn
