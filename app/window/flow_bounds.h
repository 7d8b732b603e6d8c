// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of a form bound to what is asked of the flow.
#pragma once

#include "window/form.h"

namespace underlawn {

inline Form::Bound<double> flow_wish(double FlowWishes::*field, const QString& what) {
  return bound_to(what, &Plan::flow, field);
}

inline Form::Bound<double> loss_wish(FittedLoss FlowWishes::*loss, double FittedLoss::*field,
                                     const QString& what) {
  return bound_to(what, &Plan::flow, loss, field);
}

inline Form::Bound<QString> pump_name(Circulator FlowWishes::*pump, const QString& what) {
  return {[pump](const Plan& p) { return QString::fromStdString((p.flow.*pump).name); },
          [pump](Plan& p, const QString& v) { (p.flow.*pump).name = v.simplified().toStdString(); }, what};
}

}  // namespace underlawn
