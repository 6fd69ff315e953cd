// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_copy.h"
#include "model/store/handover.h"
#include "model/store/merge.h"
#include "tests/fuzz/targets.h"
#include "tests/model/store/memory_disk.h"

#include <algorithm>
#include <set>

namespace sumpbook::fuzz {

using namespace store;

namespace {

using Paths = std::vector<std::string>;

/// Merges files of one disk into ever new ones.
class Merges {
public:
    Merges(ByteView a, ByteView b) {
        disk_.put("/g/a", a);
        disk_.put("/g/b", b);
    }

    /// The bytes of the merged file; absent where it is refused, which takes a sentence.
    std::optional<Bytes> of(const Paths& paths) {
        const auto plan = plan_merge(disk_, paths, Patience{0});
        if (!plan) return refused(plan.error());
        return written(plan->set);
    }
    /// The bytes of a file of this set.
    std::optional<Bytes> written(const FrameSet& set) {
        const auto path = "/g/" + std::to_string(++made_);
        const auto done = write_out(disk_, set, path);
        if (!done) return refused(done.error());
        return disk_.bytes(path);
    }
    /// The path of what was made last.
    [[nodiscard]] std::string last() const { return "/g/" + std::to_string(made_); }
    [[nodiscard]] MemoryDisk& disk() { return disk_; }

private:
    static std::nullopt_t refused(const Problem& problem) {
        must(!problem.sentence.empty(), "a refusal has a sentence");
        return std::nullopt;
    }

    MemoryDisk disk_;
    int made_ = 0;
};

GarageCopy readable(Merges& merges, const std::string& path) {
    auto copy = read_copy(merges.disk(), path, Patience{0});
    must(copy.has_value(), "a file that merges, and what was merged, can be read");
    return *std::move(copy);
}

/// Every record of both is in the union, but for those that one of them says were erased.
void loses_nothing(Merges& merges, const std::string& merged) {
    std::set<RecordName> names;
    const auto all = readable(merges, merged);
    for (const auto& record : all.contents.records())
        names.insert(record.name);
    const auto a = readable(merges, "/g/a"), b = readable(merges, "/g/b");
    for (const auto* copy : {&a, &b}) {
        for (const auto& record : copy->contents.records()) {
            const EmptiedFrame frame{record.subject, record.name.frame_hash};
            const bool erased = a.set.erased().contains(frame) || b.set.erased().contains(frame);
            must(erased != names.contains(record.name), "a merge loses nothing, and shows nothing that was erased");
        }
    }
}

/// A hand-over of each subject, with parts withheld, merged back into its garage changes nothing.
void hand_overs_bring_nothing(Merges& merges, const Bytes& canonical, std::uint8_t withheld) {
    const auto copy = read_copy(merges.disk(), "/g/a", Patience{0});
    must(copy.has_value(), "a file that merges can be read");
    std::set<SubjectId> subjects;
    for (const auto& frame : copy->set.frames())
        subjects.insert(frame.header.subject);
    for (const auto& subject : subjects) {
        const auto given = merges.written(copy->set.hand_over(subject, withheld));
        must(given.has_value(), "a hand-over can be written");
        must(merges.of({"/g/a", merges.last()}) == canonical, "a hand-over brings its garage nothing");
        const Withheld choice{.money = (withheld & 2U) != 0,
                              .personal = (withheld & 4U) != 0,
                              .attachments = (withheld & 8U) != 0};
        const auto plan = plan_hand_over(merges.disk(), "/g/a", subject, choice, Patience{0});
        if (!plan) must(!plan.error().sentence.empty(), "a refusal has a sentence");
    }
}

} // namespace

void try_merge(ByteView bytes) {
    if (bytes.size() < merge_head_bytes) return;
    const auto [a, b] = files_of_merge(bytes);
    Merges merges(a, b);
    const auto a_alone = merges.of({"/g/a"});
    const auto ab = merges.of({"/g/a", "/g/b"});
    const auto path = merges.last();
    const auto ba = merges.of({"/g/b", "/g/a"});
    must(ab == ba, "A and B is B and A");
    if (a_alone) {
        must(merges.of({"/g/a", "/g/a"}) == a_alone, "A and A is A");
        hand_overs_bring_nothing(merges, *a_alone, bytes[4] & 14U);
    }
    if (!ab) return;
    must(merges.of({path, "/g/a"}) == ab && merges.of({"/g/b", path}) == ab, "merging again brings nothing");
    loses_nothing(merges, path);
}

std::pair<ByteView, ByteView> files_of_merge(ByteView bytes) {
    const auto rest = bytes.subspan(merge_head_bytes);
    const auto first = std::min<std::size_t>(get_number<std::uint32_t>(bytes, 0), rest.size());
    return {rest.first(first), rest.subspan(first)};
}

Bytes bytes_of_merge(ByteView a, ByteView b, std::uint8_t withheld) {
    Bytes bytes;
    put_number(bytes, static_cast<std::uint32_t>(a.size()));
    bytes.push_back(withheld);
    put_bytes(bytes, a);
    put_bytes(bytes, b);
    return bytes;
}

} // namespace sumpbook::fuzz
