// SPDX-License-Identifier: GPL-3.0-or-later
// Linked to everything the command is linked to, and does nothing: what starting a program costs.
#include "app/cli/command_line.h"

int main(int argc, char* argv[]) {
    // One use, so that the linker keeps the libraries.
    return argc > 1000 ? static_cast<int>(sumpbook::cli::exit_status(sumpbook::ProblemKind::io)) + *argv[0]
                       : 0;
}
