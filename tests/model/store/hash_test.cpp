// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/hash.h"

#include "tests/catch.h"

using namespace sumpbook::store;

TEST_CASE("SHA-256 gives the published values", "[hash]") {
    const auto hash = [](std::string_view text) { return hex_text(sha256({as_bytes(text)})); };
    // NIST, Cryptographic Standards and Guidelines, Examples with Intermediate Values, SHA256.pdf (the
    // examples of FIPS 180-4): one-block message "abc" and two-block message of 448 bits.
    CHECK(hash("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(hash("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    // NIST, CAVP SHA test vectors for hashing byte-oriented messages, SHA256ShortMsg.rsp, Len = 0.
    CHECK(hash("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    // FIPS 180-2 appendix B.3: one million times "a".
    CHECK(hash(std::string(1'000'000, 'a')) ==
          "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("A message in pieces has the hash of the whole, and one object hashes many", "[hash]") {
    CHECK(sha256({as_bytes("a"), as_bytes(""), as_bytes("bc")}) == sha256({as_bytes("abc")}));
    Sha256 hasher;
    hasher.add(as_bytes("something else"));
    static_cast<void>(hasher.finish());
    hasher.add(as_bytes("abc"));
    CHECK(hasher.finish() == sha256({as_bytes("abc")}));
    CHECK(hasher.finish() == sha256({}));
}

TEST_CASE("Hex text and back", "[hash]") {
    const Bytes bytes{0x00, 0x7F, 0xA5, 0xFF};
    CHECK(hex_text(bytes) == "007fa5ff");
    CHECK(bytes_of_hex("007FA5ff") == bytes);
    CHECK(bytes_of_hex("") == Bytes{});
    CHECK_FALSE(bytes_of_hex("0"));
    CHECK_FALSE(bytes_of_hex("0g"));
    CHECK_FALSE(bytes_of_hex(" 0"));
}
