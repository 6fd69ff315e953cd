// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/crash_loop.h"

#include "tests/catch.h"

#include <cstdio>

using namespace sumpbook::store;

namespace {

void report(std::uint64_t seeds) {
    CrashLoop loop(seeds);
    loop.run();
    std::printf("crash loop: %d file operations, %d disks looked at: %d with the save under way, %d without, "
                "%d whose last action is complete and not right\n",
                loop.moments, loop.images, loop.with_new, loop.with_old, loop.not_right);
    INFO((loop.wrong.empty() ? "" : loop.wrong.front()));
    CHECK(loop.wrong == std::vector<std::string>{});
    CHECK(loop.images > 1000);
    CHECK(loop.with_new > 100);
    CHECK(loop.with_old > 100);
}

} // namespace

TEST_CASE("Promise 1: wherever a program dies, what was acknowledged is there and nothing is half",
          "[crash]") {
    report(20);
}

TEST_CASE("Promise 1: wherever a program dies, with many more power cuts", "[.many]") { report(500); }
