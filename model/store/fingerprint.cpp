// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/fingerprint.h"

#include "model/store/archive.h"
#include "model/store/base32.h"

#include <algorithm>
#include <set>

namespace sumpbook::store {
namespace {

constexpr std::string_view leaf_tag = "sbleaf-1";
constexpr std::string_view root_tag = "sbroot-1";
constexpr std::size_t printed_symbols = 25;
constexpr unsigned check_count = 5;
constexpr std::size_t group_symbols = 5;
constexpr std::size_t hex_symbols = 64;

std::vector<unsigned> numbers_of(std::string_view symbols) {
    std::vector<unsigned> numbers;
    for (const char symbol : symbols)
        numbers.push_back(base32_number(symbol).value_or(0));
    return numbers;
}

std::string with_check(const std::string& symbols) {
    std::string text = symbols;
    for (const auto number : check_symbols(numbers_of(symbols), check_count))
        text += base32_symbols[number];
    return text;
}

/// Without spaces and hyphens, in the letters that are printed; absent when a symbol is none.
std::optional<std::string> printed_form(const std::string& typed) {
    std::string symbols;
    for (const char c : typed) {
        const auto number = base32_number(c);
        if (!number) return std::nullopt;
        symbols += base32_symbols[*number];
    }
    return symbols;
}

std::string in_groups(const std::string& symbols) {
    std::string text;
    for (std::size_t i = 0; i < symbols.size(); ++i) {
        if (i > 0 && i % group_symbols == 0) text += '-';
        text += symbols[i];
    }
    return text;
}

bool strictly_sorted(const auto& list) {
    return std::ranges::adjacent_find(list, std::ranges::greater_equal{}) == list.end();
}

} // namespace

template <class Archive>
void serialize(Archive& ar, ChainHead& head, unsigned /*version*/) {
    ar& head.chain& head.sequence& head.hash;
}

/// 1, subject, heads; or 0, leaf.
template <class Archive>
void serialize(Archive& ar, FingerprintLeaf& leaf, unsigned /*version*/) {
    bool whole = !leaf.heads.empty();
    ar& whole;
    if (whole) {
        ar& leaf.subject& leaf.heads;
    } else {
        ar& leaf.leaf;
    }
    if constexpr (!Archive::saving) {
        if (whole && (leaf.heads.empty() || !strictly_sorted(leaf.heads)))
            ar.set_fault("heads are not in order");
        if (whole) leaf.leaf = leaf_hash(leaf.subject, leaf.heads);
    }
}

template <class Archive>
void serialize(Archive& ar, FingerprintRecord& record, unsigned /*version*/) {
    ar& record.printed& record.entries& record.leaves;
    bool stamped = !record.time_stamp.empty();
    if constexpr (!Archive::saving) stamped = ar.left() > 0;
    if (!stamped) return;
    ar& record.time_stamp;
    if (record.time_stamp.empty()) ar.set_fault("a time stamp is empty");
}

Hash256 leaf_hash(const SubjectId& subject, const std::vector<ChainHead>& sorted_heads) {
    Bytes hashed;
    put_bytes(hashed, as_bytes(leaf_tag));
    put_bytes(hashed, subject.bytes);
    put_number(hashed, static_cast<std::uint32_t>(sorted_heads.size()));
    for (const auto& head : sorted_heads) {
        put_bytes(hashed, head.chain.bytes);
        put_number(hashed, head.sequence);
        put_bytes(hashed, head.hash);
    }
    return sha256({hashed});
}

std::vector<FingerprintLeaf> leaves_of(const ChainIndex& index) {
    std::map<SubjectId, std::vector<ChainHead>> heads;
    for (const auto& [id, chain] : index.chains()) {
        for (const auto* head : index.heads(chain))
            heads[chain.subject].push_back({id, head->sequence, head->hash});
    }
    std::vector<FingerprintLeaf> leaves;
    for (auto& [subject, of_subject] : heads) {
        std::ranges::sort(of_subject);
        const Hash256 leaf = leaf_hash(subject, of_subject);
        leaves.push_back({leaf, subject, std::move(of_subject)});
    }
    std::ranges::sort(leaves, {}, &FingerprintLeaf::leaf);
    return leaves;
}

Hash256 fingerprint_of(const std::vector<FingerprintLeaf>& leaves) {
    Bytes hashed;
    put_bytes(hashed, as_bytes(root_tag));
    put_number(hashed, static_cast<std::uint32_t>(leaves.size()));
    for (const auto& leaf : leaves)
        put_bytes(hashed, leaf.leaf);
    return sha256({hashed});
}

Hash256 FingerprintRecord::fingerprint() const { return fingerprint_of(leaves); }

Bytes encode_fingerprint_record(const FingerprintRecord& record) { return encode(record).value_or(Bytes{}); }

std::optional<FingerprintRecord> read_fingerprint_record(ByteView body) {
    auto record = decode<FingerprintRecord>(body);
    if (!record) return std::nullopt;
    const auto leaf_order = [](const auto& a, const auto& b) { return a.leaf >= b.leaf; };
    if (std::ranges::adjacent_find(record->leaves, leaf_order) != record->leaves.end()) return std::nullopt;
    return *std::move(record);
}

std::string fingerprint_text(const Hash256& fingerprint) {
    return in_groups(with_check(base32_text(fingerprint, printed_symbols)));
}

Result<TypedFingerprint> TypedFingerprint::read(std::string_view text) {
    const Place place{.file = {}, .line = {}, .column = {}, .text = std::string(text)};
    std::string typed;
    std::ranges::copy_if(text, std::back_inserter(typed),
                         [](char c) { return c != ' ' && c != '-' && c != '\n' && c != '\t'; });
    TypedFingerprint fingerprint;
    if (typed.size() == hex_symbols) {
        const auto bytes = bytes_of_hex(typed);
        if (!bytes)
            return refuse("A fingerprint of 64 symbols holds only the digits 0 to 9 and a to f.", place);
        fingerprint.symbols_ = hex_text(*bytes);
        return fingerprint;
    }
    if (typed.size() != printed_symbols + check_count) {
        return refuse("A fingerprint has six groups of five symbols, or 64 hexadecimal digits. Type all of "
                      "it: a part of it proves nothing.",
                      place);
    }
    const auto symbols = printed_form(typed);
    if (!symbols || with_check(symbols->substr(0, printed_symbols)) != *symbols) {
        return refuse("A symbol of this fingerprint is mistyped: the last group does not fit the others. Compare it with "
                      "the paper group by group and type it again.",
                      place);
    }
    fingerprint.symbols_ = symbols->substr(0, printed_symbols);
    return fingerprint;
}

TypedFingerprint TypedFingerprint::of(const Hash256& fingerprint) {
    TypedFingerprint typed;
    typed.symbols_ = hex_text(fingerprint);
    return typed;
}

std::string TypedFingerprint::text() const {
    return symbols_.size() == hex_symbols ? symbols_ : in_groups(with_check(symbols_));
}

bool TypedFingerprint::matches(const Hash256& fingerprint) const {
    if (symbols_.size() == hex_symbols) return symbols_ == hex_text(fingerprint);
    return symbols_ == base32_text(fingerprint, printed_symbols);
}

} // namespace sumpbook::store
