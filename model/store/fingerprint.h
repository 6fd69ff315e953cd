// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/problem.h"
#include "model/store/chain_index.h"

#include <string>
#include <vector>

namespace sumpbook::store {

// The fingerprint of a garage: SHA-256(tag, number of leaves, sorted leaves). A leaf speaks of one subject:
// SHA-256(tag, subject id, number of heads, sorted (chain id, sequence, hash) of all heads of all its
// chains). So a file that holds one bike only can still be shown to belong to the fingerprint of the whole
// garage: it carries that bike's heads and the bare leaves of the rest.

struct ChainHead {
    ChainId chain;
    std::uint32_t sequence = 0;
    Hash256 hash{};
    auto operator<=>(const ChainHead&) const = default;
};

/// One subject at the time of a fingerprint. `heads` is empty where only the leaf is known.
struct FingerprintLeaf {
    Hash256 leaf{};
    SubjectId subject; ///< Zeros where only the leaf is known.
    std::vector<ChainHead> heads;
    bool operator==(const FingerprintLeaf&) const = default;
};

/// What is saved when a fingerprint is printed. It proves itself: its leaves hash to the fingerprint.
struct FingerprintRecord {
    RecordedTime printed;                ///< By the clock of that computer; not covered by the fingerprint.
    std::uint64_t entries = 0;           ///< How many the garage held; not covered either.
    std::vector<FingerprintLeaf> leaves; ///< Sorted by leaf.
    /// The answer of a time-stamp authority about this fingerprint (RFC 3161, DER); empty: none. Each answer
    /// is kept in a record of its own.
    Bytes time_stamp;
    [[nodiscard]] Hash256 fingerprint() const;
    bool operator==(const FingerprintRecord&) const = default;
};

[[nodiscard]] Hash256 leaf_hash(const SubjectId& subject, const std::vector<ChainHead>& sorted_heads);
/// The state of all chains now.
[[nodiscard]] std::vector<FingerprintLeaf> leaves_of(const ChainIndex& index);
/// `leaves` sorted.
[[nodiscard]] Hash256 fingerprint_of(const std::vector<FingerprintLeaf>& leaves);

[[nodiscard]] Bytes encode_fingerprint_record(const FingerprintRecord& record);
[[nodiscard]] std::optional<FingerprintRecord> read_fingerprint_record(ByteView body);

/// What is printed: 125 bits in five groups of five symbols and a sixth group that notices any one to five
/// wrong symbols and any swap of neighbours: "7k2mf-9q0tz-...". 80 bits would be too few: the file's owner
/// could make two histories that share them.
[[nodiscard]] std::string fingerprint_text(const Hash256& fingerprint);

/// A fingerprint as somebody typed it: the 125 bits of the printed groups or all 256 in 64 hex digits.
class TypedFingerprint {
public:
    /// Spaces, hyphens and the case of letters do not matter. Refused: a wrong length, a mistyped symbol.
    [[nodiscard]] static Result<TypedFingerprint> read(std::string_view text);
    /// All 256 bits, known to the program.
    [[nodiscard]] static TypedFingerprint of(const Hash256& fingerprint);
    [[nodiscard]] bool matches(const Hash256& fingerprint) const;
    /// One way to write it for everybody: as printed, or 64 small hex digits. `read` takes it back.
    [[nodiscard]] std::string text() const;

private:
    std::string symbols_; ///< 25 symbols in base 32, or 64 in hex.
};

/// The answer of `verify`. None of them says that an entry is true.
enum class FingerprintAnswer {
    unchanged,   ///< Of every covered subject that this file holds, everything covered is here as it was.
    changed,     ///< `place` is the first frame known not to line up.
    missing,     ///< `place` is a covered frame that is not in this file; another copy may have it.
    not_found,   ///< Neither a saved record nor any earlier state that was searched has this fingerprint.
    not_covered, ///< It covers nothing of the one subject that was asked about.
    partly, ///< What it is known to cover is here as it was; of the subjects in `untold` nothing is known.
    cannot_tell, ///< Nothing is known of the one subject that was asked about: it is in `untold`.
};

struct FingerprintCheck {
    FingerprintAnswer answer = FingerprintAnswer::not_found;
    std::optional<RecordedTime> printed; ///< From the saved record.
    /// "frame 12 of the entries k7-..., behind the entry k7-142" (where that is known) or "everything it
    /// covers". Not found: where a chain of this file breaks by itself, empty where none does.
    std::string place;
    std::uint64_t covered_entries = 0;
    // Entries that the fingerprint does not cover:
    /// By their own clock, all of them where the date is not known; of the second of the printing itself what
    /// continues a covered chain.
    std::uint64_t recorded_later = 0;
    std::uint64_t recorded_earlier = 0; ///< By their own clock, but not seen by the copy that printed it.
    std::uint64_t forked_before = 0;    ///< That continue a chain from before its covered end.
    /// That it may cover or not: of subjects in `untold`, and in front of a covered frame that is not here.
    std::uint64_t entries_untold = 0;
    /// Subjects of which something covered is here, in order.
    std::vector<SubjectId> tested;
    /// Subjects held here that the saved record does not name and that fit none of its leaves, while leaves
    /// are left over: they are of another garage, were begun later, or were rewritten.
    std::vector<SubjectId> untold;
    /// The saved record names the heads of a subject held here: more than anybody's bare leaves.
    bool known_by_heads = false;
    /// Covered subjects (bikes, or the garage itself) that this file does not hold: the answer says nothing
    /// about them. More than 0 only where the saved record knows no more of them than their leaf.
    std::size_t subjects_not_held = 0;
    /// False: there are too many earlier states to search them all. Then `not_found` does not mean that none
    /// has this fingerprint, and a subject in `untold` may fit a leaf after all.
    bool searched = true;
    /// Unchanged, or partly where it is known by heads what is covered.
    [[nodiscard]] bool lines_up() const;
};

/// Searching every earlier state of a file takes time with frames x chains; past this it is left out.
inline constexpr std::size_t most_states_searched = 200'000'000;

/// `recorded` gives the time of recording of a record by its place in file order.
///
/// Without a saved record the earlier states of this file are searched: those that it had if its frames came
/// in the order in which they stand in it. In a merged file they stand in another order than they were
/// written, so there an earlier state may not be found although every frame of it is here.
///
/// A saved record may hold no more of a subject than its leaf, and anybody can write such a record. So a bare
/// leaf proves nothing by itself: it is matched against every state that the subjects held here ever had.
/// While one stays unmatched, the answer is no more than `partly` where a held subject matches none; and
/// where nothing held here is covered, it is `missing`.
///
/// `only`: the answer, and all that is counted, is about this subject alone.
[[nodiscard]] FingerprintCheck check_fingerprint(const TypedFingerprint& typed, const ChainIndex& index,
                                                 const std::vector<FingerprintRecord>& records,
                                                 const std::vector<RecordedTime>& recorded,
                                                 const std::optional<SubjectId>& only = {},
                                                 std::size_t search_limit = most_states_searched);

} // namespace sumpbook::store
