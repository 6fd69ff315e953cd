// SPDX-License-Identifier: GPL-3.0-or-later
// Runs the checks against published figures and then judges whether every row of every table was tested
// or is listed as skipped. A run of chosen test cases is not judged: the others did not run.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_session.hpp>
#else
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>
#endif

#include "tests/outside/check_table.h"

#include <exception>
#include <iostream>

namespace {

int judge(bool whole_run) {
    const auto account = sumpbook::outside::account_of_this_run();
    for (const auto& line : summary_of(account))
        std::cout << line << '\n';
    if (!whole_run) return 0;
    const auto complaints = complaints_about(account);
    for (const auto& complaint : complaints)
        std::cout << "FAILED " << complaint << '\n';
    return complaints.empty() ? 0 : 1;
}

} // namespace

int main(int argc, char* argv[]) {
    Catch::Session session;
    if (const int wrong_usage = session.applyCommandLine(argc, argv); wrong_usage != 0) return wrong_usage;
    const auto& asked = session.configData();
    const int failed = session.run();
    if (asked.listTests || asked.listTags || asked.showHelp || asked.listReporters) return failed;
    try {
        const int unaccounted = judge(asked.testsOrTags.empty());
        return failed != 0 ? failed : unaccounted;
    } catch (const std::exception& error) {
        std::cout << "FAILED " << error.what() << '\n';
        return 1;
    }
}
