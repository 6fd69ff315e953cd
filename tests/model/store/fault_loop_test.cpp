// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/fault_loop.h"

#include "tests/catch.h"

#include <cstdio>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

void report(const StoreOperation& operation) {
    FaultLoop loop;
    loop.run(operation);
    INFO((loop.wrong.empty() ? "" : loop.wrong.front()));
    CHECK(loop.wrong == std::vector<std::string>{});
    CHECK(loop.points > 100);
    CHECK((loop.removed > 100) == !operation.removes.empty());
    std::printf("%s\n", loop.text(operation).c_str());
}

} // namespace

TEST_CASE("Promise 1: whatever file operation fails, a save is whole or not at all", "[faults]") {
    report(create_operation());
    report(append_operation());
    report(append_twice_operation());
    report(append_attachment_operation());
    report(take_fingerprint_operation());
    report(append_behind_torn_operation());
}

TEST_CASE("Promise 1: whatever file operation fails, a new file is whole or not there", "[faults]") {
    report(merge_operation());
    report(recover_operation());
    report(hand_over_operation());
    report(back_up_operation());
}
