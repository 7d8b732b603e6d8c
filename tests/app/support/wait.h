// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QThread>

namespace underlawn {

// Lets the event loop run until it holds; the bound is only there so that a broken test ends.
template <class Holds>
bool wait_until(Holds holds, int most_ms = 120'000) {
  QElapsedTimer time;
  time.start();
  while (!holds()) {
    if (time.elapsed() > most_ms) return false;
    QCoreApplication::processEvents();
    QThread::msleep(1);
  }
  return true;
}

}  // namespace underlawn
