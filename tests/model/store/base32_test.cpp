// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/base32.h"

#include "tests/catch.h"

#include <algorithm>

using namespace sumpbook::store;

namespace {

std::vector<unsigned> example_numbers() {
    std::vector<unsigned> numbers;
    for (unsigned i = 0; i < 25; ++i)
        numbers.push_back((i * i * 7 + 3 * i + 5) % 32);
    return numbers;
}

bool fits(std::vector<unsigned> word) {
    const std::vector<unsigned> check(word.end() - 5, word.end());
    word.resize(word.size() - 5);
    return check_symbols(word, 5) == check;
}

std::vector<unsigned> example_word() {
    auto word = example_numbers();
    const auto check = check_symbols(word, 5);
    word.insert(word.end(), check.begin(), check.end());
    return word;
}

} // namespace

TEST_CASE("Five bits a symbol, highest first", "[base32]") {
    CHECK(base32_text(Bytes{0b00000'000, 0b01'00010'1, 0b1111'0000}, 5) == "012z0");
    CHECK(base32_text(Bytes{0xFF}, 2) == "zw");
    CHECK(base32_text({}, 3) == "000");
}

TEST_CASE("Symbols that are misread read as what they look like", "[base32]") {
    for (unsigned number = 0; number < 32; ++number)
        CHECK(base32_number(base32_symbols[number]) == number);
    CHECK(base32_number('Z') == 31U);
    CHECK(base32_number('O') == 0U);
    CHECK(base32_number('I') == 1U);
    CHECK(base32_number('l') == 1U);
    CHECK_FALSE(base32_number('u'));
    CHECK_FALSE(base32_number('-'));
    CHECK(base32_symbols.find_first_of("ilou") == std::string_view::npos);
}

TEST_CASE("Check symbols notice every one wrong symbol and every swap of neighbours", "[base32]") {
    const auto word = example_word();
    REQUIRE(word.size() == 30);
    REQUIRE(fits(word));
    for (std::size_t i = 0; i < word.size(); ++i) {
        for (unsigned other = 0; other < 32; ++other) {
            auto wrong = word;
            wrong[i] = other;
            CHECK(fits(wrong) == (other == word[i]));
        }
        if (i + 1 == word.size() || word[i] == word[i + 1]) continue;
        auto swapped = word;
        std::swap(swapped[i], swapped[i + 1]);
        CHECK_FALSE(fits(swapped));
    }
}

TEST_CASE("Check symbols notice two wrong symbols anywhere", "[base32]") {
    // The code is linear over GF(32): whether errors a and b go unnoticed depends on b / a alone, so a = 1
    // stands for all.
    const auto word = example_word();
    std::size_t tried = 0;
    std::size_t unnoticed = 0;
    for (std::size_t i = 0; i < word.size(); ++i) {
        for (std::size_t j = 0; j < word.size(); ++j) {
            for (unsigned b = 1; i != j && b < 32; ++b) {
                auto wrong = word;
                wrong[i] ^= 1U;
                wrong[j] ^= b;
                ++tried;
                if (fits(wrong)) ++unnoticed;
            }
        }
    }
    CHECK(tried == 30 * 29 * 31);
    CHECK(unnoticed == 0);
}
