// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/own_bounds.h"

#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <cstring>

#include "base/say.h"

namespace underlawn::cli {

namespace {

constexpr rlim_t kMostMemory = rlim_t{4} << 30;  // bytes of address space

// Said beforehand: a signal may come at any moment, and then nothing can be looked up any more.
char last_words[400];

void out_of_time(int) {
  [[maybe_unused]] const auto written = ::write(2, last_words, std::strlen(last_words));
  ::_exit(3);
}

}  // namespace

void bound_this_process() {
  const std::string words =
      say("The file takes too long to read; save only the part of the drawing that holds the lot.");
  std::snprintf(last_words, sizeof last_words, "underlawn: %s\n", words.c_str());
  std::signal(SIGXCPU, out_of_time);
  const rlimit time{kMostReadingSeconds, kMostReadingSeconds + 5};
  ::setrlimit(RLIMIT_CPU, &time);
#if !defined(__SANITIZE_ADDRESS__)
  const rlimit memory{kMostMemory, kMostMemory};
  ::setrlimit(RLIMIT_AS, &memory);
#endif
  const rlimit core{0, 0};
  ::setrlimit(RLIMIT_CORE, &core);
}

}  // namespace underlawn::cli
