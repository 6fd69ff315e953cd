// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/stamp.h"

#include "tests/catch.h"
#include "tests/model/store/example_records.h"

#include <rapidcheck/catch.h>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

PrivateKey key_number(std::uint8_t number) {
    std::array<std::uint8_t, 32> bytes{};
    bytes.fill(number);
    return PrivateKey(bytes);
}

TypedFingerprint fingerprint_number(std::uint8_t number) {
    Hash256 hash{};
    hash.fill(number);
    return TypedFingerprint::of(hash);
}

Stamp example(std::string_view name = "Workshop at the canal", std::string_view note = "24 000 km service") {
    const auto stamp = sign_stamp(key_number(1), fingerprint_number(0xab), day(2026, 5, 3), name, note);
    REQUIRE(stamp);
    return *stamp;
}

std::string replaced(std::string text, std::string_view what, std::string_view by) {
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), by);
}

bool reads_signed(const std::string& text) {
    const auto stamp = read_stamp(text);
    return stamp && is_signed(*stamp);
}

} // namespace

TEST_CASE("A stamp signs its kind, fingerprint, day, name, note and key, line by line", "[stamp]") {
    const auto stamp = example();
    CHECK(signed_text(stamp) == "sumpbook stamp 1\n" + fingerprint_number(0xab).text() +
                                    "\n2026-05-03\nWorkshop at the canal\n24 000 km service\n" +
                                    hex_text(public_key_of(key_number(1))) + "\n");
    CHECK(signature_fits(stamp.key, as_bytes(signed_text(stamp)), stamp.signature));
    CHECK(is_signed(stamp));
}

TEST_CASE("A stamp reads back from its text, also after mail and paper", "[stamp]") {
    for (const auto& stamp : {example(), example("", ""), example("Zoë Ünal, Größe 2", "")}) {
        const auto text = stamp_text(stamp);
        const auto back = read_stamp(text);
        REQUIRE(back);
        CHECK(stamp_text(*back) == text);
        CHECK(is_signed(*back));
        std::string mailed = "\r\n";
        for (const char c : text)
            mailed += c == '\n' ? std::string(" \r\n\r\n") : std::string(1, c);
        CHECK(reads_signed(mailed));
    }
    const auto text = stamp_text(example());
    CHECK(reads_signed(replaced(text, "24 000 km service", "24 000\n      km   service")));
    CHECK(reads_signed(text.substr(0, text.size() - 1)));
}

TEST_CASE("A fingerprint signed from paper is kept as it was printed", "[stamp]") {
    Hash256 hash{};
    hash.fill(7);
    const auto typed = TypedFingerprint::read(fingerprint_text(hash));
    REQUIRE(typed);
    CHECK(typed->text() == fingerprint_text(hash));
    const auto stamp = sign_stamp(key_number(1), *typed, day(2026, 5, 3), "", "");
    REQUIRE(stamp);
    const auto back = read_stamp(stamp_text(*stamp));
    REQUIRE(back);
    CHECK(is_signed(*back));
    CHECK(back->fingerprint.matches(hash));
}

TEST_CASE("Nothing on a stamp can be changed without breaking its signature", "[stamp]") {
    const auto text = stamp_text(example());
    CHECK_FALSE(reads_signed(replaced(text, "abab", "abac")));
    CHECK_FALSE(reads_signed(replaced(text, "2026-05-03", "2026-05-02")));
    CHECK_FALSE(reads_signed(replaced(text, "canal", "Canal")));
    CHECK_FALSE(reads_signed(replaced(text, "24 000", "25 000")));
    CHECK_FALSE(reads_signed(
        replaced(text, hex_text(public_key_of(key_number(1))), hex_text(public_key_of(key_number(2))))));
    // What moves from one field to another is another text.
    CHECK_FALSE(reads_signed(replaced(replaced(text, "canal", ""), "24 000", "canal 24 000")));
    std::size_t unnoticed = 0, tried = 0;
    for (std::size_t at = text.find("Fingerprint"); at < text.size(); ++at) {
        if (text[at] == ' ' || text[at] == '\n') continue;
        auto bad = text;
        bad[at] = bad[at] == '7' ? '8' : '7';
        ++tried;
        if (reads_signed(bad)) ++unnoticed;
    }
    CHECK(tried > 250);
    CHECK(unnoticed == 0);
}

TEST_CASE("A text that is no stamp is refused with its line", "[stamp]") {
    const auto text = stamp_text(example());
    CHECK_FALSE(read_stamp(""));
    CHECK_FALSE(read_stamp("Sumpbook stamp 2\n"));
    for (const auto* label : {"Fingerprint", "Signed on", "Key", "Signature"}) {
        const auto at = text.find(label);
        const auto end = text.find('\n', at);
        CHECK_FALSE(read_stamp(text.substr(0, at) + text.substr(end + 1)));
        CHECK_FALSE(read_stamp(text + text.substr(at, end - at) + "\n"));
    }
    const auto unknown = read_stamp("Sumpbook stamp 1\nMileage 12\n");
    REQUIRE_FALSE(unknown);
    CHECK(unknown.error().place.line == 2);
    CHECK_FALSE(read_stamp("Sumpbook stamp 1\n   going on with nothing\n"));
    CHECK_FALSE(read_stamp(replaced(text, "Signature    ", "Signature    00")));
}

TEST_CASE("Names and notes that would not stay one line are refused", "[stamp]") {
    const auto sign = [](std::string_view note) {
        return sign_stamp(key_number(1), fingerprint_number(1), day(2026, 5, 3), "", note).has_value();
    };
    CHECK(sign("plain"));
    CHECK_FALSE(sign("two\nlines"));
    CHECK_FALSE(sign("bell \a"));
    CHECK_FALSE(sign("\xff"));
    CHECK(sign(std::string(max_stamp_text_bytes, 'a')));
    CHECK_FALSE(sign(std::string(max_stamp_text_bytes + 1, 'a')));
}

TEST_CASE("Whatever bytes are read as a stamp, nothing worse than a refusal happens", "[stamp]") {
    rc::prop("changed and cut stamps", [] {
        auto text = stamp_text(example());
        text[*rc::gen::inRange<std::size_t>(0, text.size())] = *rc::gen::arbitrary<char>();
        text.resize(*rc::gen::inRange<std::size_t>(0, text.size() + 1));
        const auto stamp = read_stamp(text);
        RC_ASSERT(stamp.has_value() || !stamp.error().sentence.empty());
    });
}
