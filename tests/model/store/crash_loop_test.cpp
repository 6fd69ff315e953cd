// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/crash_loop.h"

#include "tests/catch.h"

#include <cstdio>

using namespace sumpbook::store;

namespace {

void check(const CrashLoop& loop, int least_images) {
    INFO((loop.wrong.empty() ? "" : loop.wrong.front()));
    CHECK(loop.wrong == std::vector<std::string>{});
    CHECK(loop.images >= least_images);
}

void report_saves(std::uint64_t seeds) {
    CrashingSaves loop(seeds);
    loop.run();
    std::printf("crash loop: %d file operations, %d disks looked at: %d with the save under way, %d without, "
                "%d whose last action is complete and not right, %d of them recovered\n",
                loop.moments, loop.images, loop.with_new, loop.with_old, loop.not_right, loop.recovered);
    check(loop, 3000);
    CHECK(loop.with_new > 100);
    CHECK(loop.with_old > 100);
    CHECK(loop.not_right > 10);
    CHECK(loop.recovered == loop.not_right);
}

void report_maker(const StoreOperation& operation, std::uint64_t seeds) {
    CrashingMaker loop(operation, seeds);
    loop.run();
    std::printf(
        "crash loop, %s: %d file operations, %d disks looked at: %d with the new file, %d without, %d "
        "with a temporary one, older files gone on %d\n",
        operation.name.c_str(), loop.moments, loop.images, loop.with_new, loop.with_old, loop.temporary,
        loop.removed);
    check(loop, 300);
    CHECK(loop.with_new > 10);
    CHECK(loop.with_old > 50);
    CHECK(loop.temporary > 10);
    CHECK((loop.removed > 10) == !operation.removes.empty());
}

void report_makers(std::uint64_t seeds) {
    report_maker(merge_operation(), seeds);
    report_maker(recover_operation(), seeds);
    report_maker(hand_over_operation(), seeds);
    report_maker(back_up_operation(), seeds);
}

} // namespace

TEST_CASE("Promise 1: wherever a program dies, what was acknowledged is there and nothing is half",
          "[crash]") {
    report_saves(20);
}

TEST_CASE("Promise 1: wherever a program dies, a file made out of others is whole or not there", "[crash]") {
    report_makers(20);
}

TEST_CASE("Promise 1: wherever a program dies, with many more power cuts", "[.many]") {
    report_saves(500);
    report_makers(500);
}
