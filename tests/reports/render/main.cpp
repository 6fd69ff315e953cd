// SPDX-License-Identifier: GPL-3.0-or-later
// Drawing needs an application object, not a screen.
#define CATCH_CONFIG_RUNNER
#include "tests/catch.h"

#include <QApplication>

#include <cstdlib>

int main(int argc, char* argv[]) {
    setenv("QT_QPA_PLATFORM", "offscreen", 1);
    int no_arguments = 1;
    const QApplication app(no_arguments, argv);
    return Catch::Session().run(argc, argv);
}
