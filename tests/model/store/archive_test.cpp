// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/archive.h"

#include "tests/catch.h"

#include <rapidcheck/catch.h>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

template <class T>
Bytes bytes_of(const T& value) {
    return encode(value).value();
}
template <class T>
std::string fault_of(const Bytes& bytes) {
    const auto value = decode<T>(bytes);
    return value ? "" : value.error();
}
Bytes with_length(std::size_t length) {
    Bytes bytes;
    OutArchive(bytes).save_length(length);
    return bytes;
}

} // namespace

TEST_CASE("Values have the bytes that the guide states", "[archive]") {
    CHECK(bytes_of(std::uint32_t{0x01020304}) == Bytes{4, 3, 2, 1});
    CHECK(bytes_of(std::int32_t{-2}) == Bytes{0xFE, 0xFF, 0xFF, 0xFF});
    CHECK(bytes_of(true) == Bytes{1});
    CHECK(bytes_of(std::string("ab")) == Bytes{2, 'a', 'b'});
    CHECK(bytes_of(std::optional<std::uint8_t>{}) == Bytes{0});
    CHECK(bytes_of(std::optional<std::uint8_t>{7}) == Bytes{1, 7});
    CHECK(bytes_of(std::vector<std::uint16_t>{1, 2}) == Bytes{2, 1, 0, 2, 0});
    CHECK(bytes_of(std::map<std::string, std::uint8_t>{{"b", 2}, {"a", 1}}) ==
          Bytes{2, 1, 'a', 1, 1, 'b', 2});
    CHECK(bytes_of(Decimal(-1250, 2)) == Bytes{0x1E, 0xFB, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 2});
    CHECK(bytes_of(Currency::from_code("EUR").value()) == Bytes{'E', 'U', 'R'});
    CHECK(bytes_of(Date(std::chrono::year{1970} / 1 / 2)) == Bytes{1, 0, 0, 0});
    CHECK(bytes_of(Written<DistanceUnit>{Decimal(5), DistanceUnit::mi}) ==
          Bytes{5, 0, 0, 0, 0, 0, 0, 0, 0, 1});
    CHECK(bytes_of(std::variant<std::uint8_t, bool>(true)) == Bytes{1, 1});
    CHECK(with_length(127) == Bytes{0x7F});
    CHECK(with_length(128) == Bytes{0x80, 0x01});
    CHECK(with_length(65'536) == Bytes{0x80, 0x80, 0x04});
}

TEST_CASE("What is written reads back as it was written", "[archive]") {
    rc::prop("texts that are UTF-8, numbers, lists and tables", [] {
        using Everything = std::variant<std::vector<std::string>, std::map<std::string, std::int64_t>,
                                        std::optional<std::uint32_t>>;
        Everything value;
        const auto ascii = rc::gen::container<std::string>(rc::gen::inRange('\0', '\x7F'));
        switch (*rc::gen::inRange(0, 3)) {
        case 0:
            value = *rc::gen::container<std::vector<std::string>>(ascii);
            break;
        case 1:
            value = *rc::gen::container<std::map<std::string, std::int64_t>>(
                ascii, rc::gen::arbitrary<std::int64_t>());
            break;
        default:
            value = std::optional(*rc::gen::arbitrary<std::uint32_t>());
        }
        const auto bytes = bytes_of(value);
        RC_ASSERT(decode<Everything>(bytes) == value);
    });
    rc::prop("whatever the bytes: refused, or they are the one encoding of what was read", [] {
        const auto bytes = *rc::gen::arbitrary<Bytes>();
        using Value = std::variant<std::map<std::string, Decimal>, std::optional<Date>,
                                   std::vector<std::optional<std::string>>, Currency>;
        const auto value = decode<Value>(bytes);
        const bool one_encoding = !value || bytes_of(*value) == bytes;
        RC_ASSERT(one_encoding);
    });
}

TEST_CASE("Values outside their range are refused", "[archive]") {
    CHECK(fault_of<bool>({2}) == "a yes-or-no is neither 0 nor 1");
    CHECK(fault_of<DistanceUnit>({2}) == "a number stands for no known word");
    CHECK(fault_of<DistanceUnit>({1}).empty());
    CHECK(fault_of<std::variant<bool, std::uint8_t>>({2, 0}) == "a kind is not known");
    CHECK(fault_of<Currency>({'E', 'U', 'Q'}) == "a currency is not known");
    CHECK(fault_of<Currency>({'e', 'u', 'r'}) == "a currency is not known");
    CHECK(fault_of<Currency>({'X', 'X', 'X'}).empty());
    CHECK(fault_of<std::uint8_t>({1, 2}) == "bytes are left over");
    CHECK(fault_of<std::uint32_t>({1, 2, 3}) == "it ends too early");
    CHECK(fault_of<std::map<std::string, bool>>({2, 1, 'b', 0, 1, 'a', 0}) == "a table is not in order");
    CHECK(fault_of<std::map<std::string, bool>>({2, 1, 'a', 0, 1, 'a', 0}) == "a table is not in order");
}

TEST_CASE("Numbers and dates: one under, at and one over the limit", "[archive]") {
    const auto decimal = [](std::int64_t coefficient, std::uint8_t scale) {
        Bytes bytes;
        put_number(bytes, coefficient);
        put_number(bytes, scale);
        return fault_of<Decimal>(bytes);
    };
    CHECK(decimal(999'999'999'999'999'999, 15).empty());
    CHECK(decimal(-999'999'999'999'999'999, 0).empty());
    CHECK(decimal(1'000'000'000'000'000'000, 0) == "a number has too many digits");
    CHECK(decimal(-1'000'000'000'000'000'000, 0) == "a number has too many digits");
    CHECK(decimal(INT64_MIN, 0) == "a number has too many digits");
    CHECK(decimal(1, 16) == "a number has too many digits");
    const auto date = [](std::int32_t days) {
        Bytes bytes;
        put_number(bytes, days);
        return fault_of<Date>(bytes);
    };
    // 1900-01-01 is 25,567 days before 1970-01-01; 2100-12-31 is 47,846 days after it.
    CHECK(date(-25'567).empty());
    CHECK(date(-25'568) == "a date is not a day of 1900 to 2100");
    CHECK(date(47'846).empty());
    CHECK(date(47'847) == "a date is not a day of 1900 to 2100");
    CHECK(date(INT32_MIN) == "a date is not a day of 1900 to 2100");
    CHECK_FALSE(encode(Date(std::chrono::year{2023} / 2 / 29)));
}

TEST_CASE("Texts and lists: one under, at and one over 64 Ki", "[archive]") {
    for (const std::size_t size : {65'535U, 65'536U, 65'537U}) {
        const bool fits = size <= 65'536;
        CHECK(encode(std::string(size, 'x')).has_value() == fits);
        CHECK(encode(std::vector<std::uint8_t>(size)).has_value() == fits);
        Bytes bytes = with_length(size);
        bytes.resize(bytes.size() + size, 'x');
        CHECK(fault_of<std::string>(bytes) == (fits ? "" : "a length is over its limit"));
        CHECK(fault_of<std::vector<std::uint8_t>>(bytes) == (fits ? "" : "a length is over its limit"));
    }
}

TEST_CASE("A length is checked against the bytes left before anything is set aside", "[archive]") {
    CHECK(fault_of<std::string>({5, 'a', 'b'}) == "a length is over the bytes left");
    CHECK(fault_of<std::vector<std::string>>({0xFF, 0xFF, 0x03}) == "a length is over the bytes left");
    CHECK(fault_of<std::string>({0xFF, 0xFF, 0xFF, 0x7F}) == "a length is over its limit");
    CHECK(fault_of<std::string>({0xFF, 0xFF, 0xFF, 0xFF, 0x01}) ==
          "a length is not written in its shortest form");
    CHECK(fault_of<std::string>({0x81, 0x00, 'a'}) == "a length is not written in its shortest form");
    CHECK(fault_of<std::string>({0x80}) == "it ends too early");
}

TEST_CASE("Texts that are not UTF-8 are neither written nor read", "[archive]") {
    CHECK_FALSE(encode(std::string("\xC0\x80")));
    CHECK(fault_of<std::string>({2, 0xC0, 0x80}) == "a text is not UTF-8");
    CHECK(fault_of<std::string>({3, 0xEF, 0xBF, 0xBD}).empty()); // U+FFFD itself
    CHECK(is_utf8("caf\u00e9 \u2603"));
}

TEST_CASE("After the first fault nothing more is read", "[archive]") {
    const Bytes bytes{2, 7};
    InArchive in(bytes);
    bool yes = false;
    std::uint8_t number = 42;
    in >> yes >> number;
    CHECK(std::string(in.fault()) == "a yes-or-no is neither 0 nor 1");
    CHECK(number == 42);
}

TEST_CASE("An amount, a distance or a volume past what is accepted is neither written nor read",
          "[archive]") {
    const auto euros = [](std::int64_t minor) { return Money{minor, Currency::from_code("EUR").value()}; };
    for (const auto sign : {1, -1}) {
        CHECK(decode<Money>(encode(euros(sign * most_minor)).value()) == euros(sign * most_minor));
        CHECK_FALSE(encode(euros(sign * (most_minor + 1))));
        Bytes too_much; // as somebody else could write it
        put_number(too_much, sign * (most_minor + 1));
        put_bytes(too_much, as_bytes("EUR"));
        CHECK(decode<Money>(too_much).error() == std::string("an amount of money is too large"));
    }
    const Written<DistanceUnit> longest{Decimal(10'000'000), DistanceUnit::km};
    CHECK(decode<Written<DistanceUnit>>(encode(longest).value()) == longest);
    CHECK_FALSE(encode(Written<DistanceUnit>{Decimal(10'000'001), DistanceUnit::km}));
    CHECK_FALSE(encode(Written<VolumeUnit>{Decimal(-1'000'001), VolumeUnit::l}));
    const auto whole_number = [](std::int64_t number) {
        Bytes bytes;
        put_number(bytes, number);
        put_bytes(bytes, Bytes{0, 0}); // no decimals; kilometres, or litres
        return bytes;
    };
    CHECK(decode<Written<DistanceUnit>>(whole_number(10'000'000)));
    CHECK_FALSE(decode<Written<DistanceUnit>>(whole_number(10'000'001)));
    CHECK(decode<Written<VolumeUnit>>(whole_number(-1'000'000)));
    CHECK_FALSE(decode<Written<VolumeUnit>>(whole_number(-1'000'001)));
}
