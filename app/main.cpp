// SPDX-License-Identifier: GPL-3.0-or-later
#include <QHashSeed>

#include "cli/cli.h"

int main(int argc, char** argv) {
  // Qt writes the fonts of a PDF in the order of a hash: the same sheet has to be the same bytes in every
  // run.
  QHashSeed::setDeterministicGlobalSeed();
  return underlawn::cli::run_program(argc, argv);
}
