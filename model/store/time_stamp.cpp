// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/time_stamp.h"

#include "model/store/openssl_handle.h"

#include <openssl/asn1.h>
#include <openssl/err.h>
#include <openssl/pem.h>
#include <openssl/ts.h>
#include <openssl/x509.h>

#include <algorithm>
#include <stdexcept>

namespace sumpbook::store {
namespace {

using Query = OpensslHandle<TS_REQ, &TS_REQ_free>;
using Answer = OpensslHandle<TS_RESP, &TS_RESP_free>;
using Token = OpensslHandle<PKCS7, &PKCS7_free>;
using TokenInfo = OpensslHandle<TS_TST_INFO, &TS_TST_INFO_free>;
using Imprint = OpensslHandle<TS_MSG_IMPRINT, &TS_MSG_IMPRINT_free>;
using Algorithm = OpensslHandle<X509_ALGOR, &X509_ALGOR_free>;
using Number = OpensslHandle<ASN1_INTEGER, &ASN1_INTEGER_free>;
using BigNumber = OpensslHandle<BIGNUM, &BN_free>;
using Time = OpensslHandle<ASN1_TIME, &ASN1_TIME_free>;
using Store = OpensslHandle<X509_STORE, &X509_STORE_free>;
using Certificate = OpensslHandle<X509, &X509_free>;
using Check = OpensslHandle<TS_VERIFY_CTX, &TS_VERIFY_CTX_free>;

void require(bool worked) {
    if (!worked) throw std::runtime_error("RFC 3161 time stamps are not available in the installed OpenSSL");
}

/// What OpenSSL noted about an answer that was refused is not kept for the next one.
struct NoErrorsLeft {
    ~NoErrorsLeft() { ERR_clear_error(); }
};

Imprint imprint_of(const Hash256& fingerprint) {
    Imprint imprint(TS_MSG_IMPRINT_new());
    const Algorithm algorithm(X509_ALGOR_new());
    require(imprint != nullptr && algorithm != nullptr &&
            X509_ALGOR_set0(algorithm.get(), OBJ_nid2obj(NID_sha256), V_ASN1_NULL, nullptr) == 1 &&
            TS_MSG_IMPRINT_set_algo(imprint.get(), algorithm.get()) == 1);
    Hash256 bytes = fingerprint; // OpenSSL takes them as not const
    require(TS_MSG_IMPRINT_set_msg(imprint.get(), bytes.data(), static_cast<int>(bytes.size())) == 1);
    return imprint;
}

/// Absent: not a SHA-256 value.
std::optional<Hash256> fingerprint_in(TS_MSG_IMPRINT* imprint) {
    const ASN1_OBJECT* object = nullptr;
    X509_ALGOR_get0(&object, nullptr, nullptr, TS_MSG_IMPRINT_get_algo(imprint));
    const ASN1_OCTET_STRING* message = TS_MSG_IMPRINT_get_msg(imprint);
    const ByteView bytes(ASN1_STRING_get0_data(message),
                         static_cast<std::size_t>(ASN1_STRING_length(message)));
    if (OBJ_obj2nid(object) != NID_sha256 || bytes.size() != Hash256{}.size()) return std::nullopt;
    return get_array<32>(bytes, 0);
}

Bytes nonce_bytes(const ASN1_INTEGER* nonce) {
    if (nonce == nullptr) return {};
    return der_of(&i2d_ASN1_INTEGER, nonce);
}

std::optional<RecordedTime> time_of(const ASN1_TIME* time) {
    const Time origin(ASN1_TIME_set(nullptr, 0));
    int days = 0;
    int seconds = 0;
    if (time == nullptr || ASN1_TIME_diff(&days, &seconds, origin.get(), time) != 1) return std::nullopt;
    return RecordedTime{std::int64_t{days} * 86'400 + seconds};
}

/// The token of an answer, or the answer that is a bare token.
Result<Token> token_of(ByteView bytes) {
    if (bytes.size() > max_time_stamp_bytes) return refuse("This is too long to be a time stamp.");
    Answer answer(object_of(&d2i_TS_RESP, &TS_RESP_free, bytes));
    if (answer == nullptr) {
        Token token(object_of(&d2i_PKCS7, &PKCS7_free, bytes));
        if (token != nullptr && PKCS7_type_is_signed(token.get())) return token;
        return refuse("This is no answer of a time-stamp authority (RFC 3161, usually FILE.tsr).");
    }
    if (PKCS7* token = TS_RESP_get_token(answer.get()); token != nullptr) return Token(PKCS7_dup(token));
    const Bio words(BIO_new(BIO_s_mem()));
    TS_STATUS_INFO_print_bio(words.get(), TS_RESP_get_status_info(answer.get()));
    std::string said = text_in(words.get());
    std::ranges::replace(said, '\n', ' ');
    return refuse("The authority gave no time stamp. It answered: " + said);
}

std::string name_of(X509* certificate) {
    const Bio words(BIO_new(BIO_s_mem()));
    X509_NAME_print_ex(words.get(), X509_get_subject_name(certificate), 0,
                       XN_FLAG_ONELINE & ~ASN1_STRFLGS_ESC_MSB);
    return text_in(words.get());
}

/// The certificate that signed, if it came with the token.
void take_signer(TimeStamp& stamp, PKCS7* token) {
    auto* signers = PKCS7_get0_signers(token, nullptr, 0);
    if (signers == nullptr) return;
    if (sk_X509_num(signers) > 0) {
        X509* signer = sk_X509_value(signers, 0);
        stamp.signer = name_of(signer);
        stamp.signer_until = time_of(X509_get0_notAfter(signer));
    }
    sk_X509_free(signers);
}

/// Every certificate of the text; null where there is none.
Store store_of(std::string_view pem) {
    Store store(X509_STORE_new());
    require(store != nullptr);
    const Bio bio = bio_over(pem);
    int certificates = 0;
    while (const Certificate one{PEM_read_bio_X509(bio.get(), nullptr, &no_password, nullptr)}) {
        X509_STORE_add_cert(store.get(), one.get());
        ++certificates;
    }
    return certificates > 0 ? std::move(store) : Store{};
}

enum class Chain { at_that_time, at_any_time };

/// Certificates are looked at as of the time in the stamp.
bool holds(PKCS7* token, const TimeStamp& stamp, Store store, Chain chain) {
    auto* parameters = X509_STORE_get0_param(store.get());
    if (chain == Chain::at_any_time) {
        X509_VERIFY_PARAM_set_flags(parameters, X509_V_FLAG_NO_CHECK_TIME);
    } else {
        X509_VERIFY_PARAM_set_time(parameters, static_cast<std::time_t>(stamp.time.seconds_since_1970));
    }
    const Check check(TS_VERIFY_CTX_new());
    require(check != nullptr);
    TS_VERIFY_CTX_set_flags(check.get(), TS_VFY_SIGNATURE | TS_VFY_VERSION);
    TS_VERIFY_CTX_set_store(check.get(), store.release()); // freed with the check
    ERR_clear_error();
    return TS_RESP_verify_token(check.get(), token) == 1;
}

bool certificate_was_refused() {
    for (auto code = ERR_get_error(); code != 0; code = ERR_get_error()) {
        if (ERR_GET_LIB(code) == ERR_LIB_TS && ERR_GET_REASON(code) == TS_R_CERTIFICATE_VERIFY_ERROR)
            return true;
    }
    return false;
}

} // namespace

Bytes time_stamp_query(const Hash256& fingerprint, RandomSource& random) {
    const Query query(TS_REQ_new());
    require(query != nullptr && TS_REQ_set_version(query.get(), 1) == 1 &&
            TS_REQ_set_msg_imprint(query.get(), imprint_of(fingerprint).get()) == 1 &&
            TS_REQ_set_cert_req(query.get(), 1) == 1);
    const auto bits = random.sixteen();
    const BigNumber number(BN_bin2bn(bits.data(), 8, nullptr));
    const Number nonce(BN_to_ASN1_INTEGER(number.get(), nullptr));
    require(nonce != nullptr && TS_REQ_set_nonce(query.get(), nonce.get()) == 1);
    return der_of(&i2d_TS_REQ, query.get());
}

Result<TimeStamp> read_time_stamp(ByteView answer) {
    const NoErrorsLeft cleared;
    const auto token = token_of(answer);
    if (!token) return pass_on(token.error());
    const TokenInfo info(PKCS7_to_TS_TST_INFO(token->get()));
    if (info == nullptr) return refuse("This is signed, but it is no time stamp (RFC 3161).");
    TimeStamp stamp;
    const auto fingerprint = fingerprint_in(TS_TST_INFO_get_msg_imprint(info.get()));
    if (!fingerprint)
        return refuse("This time stamp is about a hash that is not SHA-256, so not about a fingerprint.");
    stamp.fingerprint = *fingerprint;
    const auto time = time_of(TS_TST_INFO_get_time(info.get()));
    if (!time) return refuse("This time stamp holds no time that can be read.");
    stamp.time = *time;
    stamp.nonce = nonce_bytes(TS_TST_INFO_get_nonce(info.get()));
    take_signer(stamp, token->get());
    return stamp;
}

Result<void> answers_query(const TimeStamp& stamp, ByteView query_bytes) {
    const NoErrorsLeft cleared;
    const Query query(object_of(&d2i_TS_REQ, &TS_REQ_free, query_bytes));
    if (query == nullptr)
        return refuse("This is no question for a time-stamp authority (RFC 3161, usually FILE.tsq).");
    if (fingerprint_in(TS_REQ_get_msg_imprint(query.get())) != stamp.fingerprint)
        return refuse("The time stamp is about another fingerprint than the question asked about.");
    const Bytes asked = nonce_bytes(TS_REQ_get_nonce(query.get()));
    if (asked != stamp.nonce) {
        return refuse(
            "The time stamp does not repeat the random number (nonce) of the question: it is the answer "
            "to another one, perhaps an old answer handed out again.");
    }
    return {};
}

Result<void> verify_time_stamp(ByteView answer, std::string_view ca_pem) {
    const NoErrorsLeft cleared;
    const auto stamp = read_time_stamp(answer);
    if (!stamp) return pass_on(stamp.error());
    const auto token = token_of(answer);
    if (!token) return pass_on(token.error());
    if (stamp->signer.empty()) {
        return refuse(
            "The time stamp does not hold the certificate of its authority, so it cannot be tested. Ask "
            "again with a question of \"sumpbook fingerprint --request\", which asks for it.");
    }
    Store authorities = store_of(ca_pem);
    if (authorities == nullptr)
        return refuse(
            "There is no certificate in this file. It begins with \"-----BEGIN CERTIFICATE-----\".");
    if (holds(token->get(), *stamp, std::move(authorities), Chain::at_that_time)) return {};
    if (!certificate_was_refused()) {
        return refuse(
            "The signature of the time stamp does not fit: it was changed since it was signed, or it "
            "was made with another key than its certificate says.");
    }
    if (holds(token->get(), *stamp, store_of(ca_pem), Chain::at_any_time)) {
        return refuse(
            "The time stamp was made at " + iso_text(stamp->time) +
            ", when a certificate of its authority was not valid: before it began or after it had run "
            "out. It proves nothing.");
    }
    return refuse(
        "The time stamp was not signed by an authority that this certificate vouches for. Anybody can "
        "make one like it.");
}

} // namespace sumpbook::store
