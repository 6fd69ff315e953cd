// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/time_stamp.h"

#include "tests/catch.h"
#include "tests/model/store/temp_folder.h"

#include <rapidcheck/catch.h>

#include <cstdlib>
#include <ctime>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Hash256 hash_of(std::uint8_t number) {
    Hash256 hash{};
    hash.fill(number);
    return hash;
}

/// Authorities of our own, made with the openssl command.
class Authorities {
public:
    Authorities() {
        run(std::string(SUMPBOOK_SOURCE_DIR) + "/tests/model/store/make_authority " + folder_.file(""));
    }

    /// What the authority answers to the question.
    [[nodiscard]] Bytes answer(const std::string& authority, const Bytes& query) {
        write_file(folder_.file("q.tsq"), query);
        run(folder_.file("answer ") + authority + " q.tsq a.tsr");
        return bytes_of_file(folder_.file("a.tsr"));
    }
    [[nodiscard]] std::string pem(const std::string& name) const {
        const auto bytes = bytes_of_file(folder_.file(name + ".pem"));
        return {bytes.begin(), bytes.end()};
    }
    /// What the openssl command itself says of an answer.
    [[nodiscard]] bool openssl_agrees(const Bytes& answer, const Hash256& fingerprint,
                                      const std::string& ca) const {
        write_file(folder_.file("v.tsr"), answer);
        const auto command = "openssl ts -verify -digest " + hex_text(fingerprint) + " -in " +
                             folder_.file("v.tsr") + " -CAfile " + folder_.file(ca + ".pem") +
                             " >/dev/null 2>&1";
        return std::system(command.c_str()) == 0; // NOLINT: a test
    }

private:
    static void run(const std::string& command) {
        if (std::system(command.c_str()) != 0)
            throw std::runtime_error("failed: " + command); // NOLINT: a test
    }
    TempFolder folder_;
};

Authorities& authorities() {
    static Authorities all;
    return all;
}

Bytes query_about(std::uint8_t number) {
    SystemRandom random;
    return time_stamp_query(hash_of(number), random);
}

std::string refusal(const Result<void>& result) { return result ? std::string() : result.error().sentence; }

} // namespace

TEST_CASE("A question is what RFC 3161, section 2.4.1, has", "[time-stamp]") {
    struct Fixed final : RandomSource {
        void fill(std::span<std::uint8_t> bytes) override { std::ranges::fill(bytes, std::uint8_t{0x11}); }
    } fixed;
    // TimeStampReq: version 1, SHA-256 (2.16.840.1.101.3.4.2.1) with NULL, the hash, the nonce, certReq true.
    CHECK(hex_text(time_stamp_query(hash_of(0xab), fixed)) == "3043"
                                                              "020101"
                                                              "3031300d060960864801650304020105000420" +
                                                                  hex_text(hash_of(0xab)) +
                                                                  "02081111111111111111"
                                                                  "0101ff");
}

TEST_CASE("An answer says whose fingerprint existed when, and an authority vouches for it", "[time-stamp]") {
    const auto query = query_about(1);
    const auto answer = authorities().answer("good", query);
    const auto stamp = read_time_stamp(answer);
    REQUIRE(stamp);
    CHECK(stamp->fingerprint == hash_of(1));
    CHECK(stamp->signer == "CN = Example time stamps");
    CHECK(stamp->signer_until == RecordedTime{3'786'912'000}); // 2090-01-01
    CHECK(std::abs(stamp->time.seconds_since_1970 - std::time(nullptr)) < 300);
    CHECK(answers_query(*stamp, query));
    CHECK(verify_time_stamp(answer, authorities().pem("ca")));
    CHECK(verify_time_stamp(answer, authorities().pem("stranger-ca") + authorities().pem("ca")));
    CHECK(authorities().openssl_agrees(answer, hash_of(1), "ca"));
}

TEST_CASE("An answer to another question is refused", "[time-stamp]") {
    const auto query = query_about(1);
    const auto stamp = read_time_stamp(authorities().answer("good", query));
    REQUIRE(stamp);
    const auto nonce = refusal(answers_query(*stamp, query_about(1)));
    CHECK(nonce.find("nonce") != std::string::npos);
    const auto hash = refusal(answers_query(*stamp, query_about(2)));
    CHECK(hash.find("another fingerprint") != std::string::npos);
    CHECK(refusal(answers_query(*stamp, Bytes{1, 2, 3})).find("no question") != std::string::npos);
}

TEST_CASE("An authority that the certificate does not vouch for is refused", "[time-stamp]") {
    const auto answer = authorities().answer("stranger", query_about(1));
    CHECK(verify_time_stamp(answer, authorities().pem("stranger-ca")));
    const auto why = refusal(verify_time_stamp(answer, authorities().pem("ca")));
    CHECK(why.find("not signed by an authority") != std::string::npos);
    CHECK_FALSE(authorities().openssl_agrees(answer, hash_of(1), "ca"));
    CHECK(refusal(verify_time_stamp(answer, "no certificate")).find("no certificate") != std::string::npos);
    CHECK(refusal(verify_time_stamp(answer, "")).find("no certificate") != std::string::npos);
}

TEST_CASE("A stamp made after its certificate had run out is refused", "[time-stamp]") {
    const auto answer = authorities().answer("old", query_about(1));
    const auto why = refusal(verify_time_stamp(answer, authorities().pem("ca")));
    CHECK(why.find("was not valid") != std::string::npos);
    CHECK(refusal(verify_time_stamp(answer, authorities().pem("stranger-ca")))
              .find("not signed by an authority") != std::string::npos);
}

TEST_CASE("Any changed byte of an answer is noticed", "[time-stamp]") {
    const auto good = authorities().answer("good", query_about(1));
    const auto ca = authorities().pem("ca");
    const auto stamp = read_time_stamp(good);
    REQUIRE(stamp);
    std::size_t tried = 0, unnoticed = 0, as_before = 0;
    for (std::size_t at = 0; at < good.size(); ++at) {
        auto bad = good;
        bad[at] ^= 1U;
        ++tried;
        if (!verify_time_stamp(bad, ca)) continue;
        // Some bytes are not signed (the status in front, a missing NULL): what is said must be the same
        // then.
        const auto read = read_time_stamp(bad);
        const bool same = read && read->fingerprint == stamp->fingerprint && read->time == stamp->time &&
                          read->nonce == stamp->nonce && read->signer == stamp->signer;
        same ? ++as_before : ++unnoticed;
    }
    INFO(tried << " bytes, " << as_before << " of them outside of what is signed");
    CHECK(tried == good.size());
    CHECK(unnoticed == 0);
    CHECK(as_before < 64);
    for (std::size_t length = 0; length < good.size(); length += 7)
        CHECK_FALSE(read_time_stamp(ByteView(good).first(length)));
}

TEST_CASE("An authority that declines is quoted", "[time-stamp]") {
    // PKIStatusInfo with status 2, rejection (RFC 3161, section 2.4.2), and no token.
    const auto declined = read_time_stamp(Bytes{0x30, 0x05, 0x30, 0x03, 0x02, 0x01, 0x02});
    REQUIRE_FALSE(declined);
    CHECK(declined.error().sentence.find("gave no time stamp") != std::string::npos);
    CHECK(declined.error().sentence.find("Rejected") != std::string::npos);
}

TEST_CASE("Whatever bytes are read as an answer, nothing worse than a refusal happens", "[time-stamp]") {
    const auto good = authorities().answer("good", query_about(1));
    rc::prop("changed, cut and lengthened answers", [&] {
        auto bytes = good;
        for (int i = 0; i < 3; ++i)
            bytes[*rc::gen::inRange<std::size_t>(0, bytes.size())] = *rc::gen::arbitrary<std::uint8_t>();
        bytes.resize(*rc::gen::inRange<std::size_t>(0, bytes.size() + 3));
        const auto stamp = read_time_stamp(bytes);
        RC_ASSERT(stamp.has_value() || !stamp.error().sentence.empty());
    });
    CHECK_FALSE(read_time_stamp(Bytes{}));
}

TEST_CASE("Answers of one under, exactly and one over the longest that is looked at", "[time-stamp]") {
    const auto said = [](std::size_t bytes) { return read_time_stamp(Bytes(bytes, 0x30)).error().sentence; };
    CHECK(said(max_time_stamp_bytes - 1).find("no answer of a time-stamp authority") != std::string::npos);
    CHECK(said(max_time_stamp_bytes).find("no answer of a time-stamp authority") != std::string::npos);
    CHECK(said(max_time_stamp_bytes + 1).find("too long") != std::string::npos);
}
