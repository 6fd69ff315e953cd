// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/bodies.h"

#include "model/store/part_check.h"
#include "model/store/record_fields.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

using Parts = std::array<Bytes, 3>;
using Decoded = tl::expected<void, BodyFault>;

/// Open: the fields. Money and personal: 0 when all their fields are absent (their encoding is zeros
/// only), else 1 and the fields.
ArchiveFault encode_part(Part part, const Record& record, Bytes& body) {
    Bytes fields;
    OutArchive out(fields);
    PartOut walk(part, out);
    serialize(walk, const_cast<Record&>(record), 0); // NOLINT: saving changes nothing
    if (part == Part::open) {
        body = std::move(fields);
    } else if (all_zero(fields)) {
        body = {0};
    } else {
        body = {1};
        put_bytes(body, fields);
    }
    return out.fault();
}

/// In the one form that is written: versions sorted, without repeats.
Record canonical(Record record) {
    std::ranges::sort(record.replaces);
    const auto repeats = std::ranges::unique(record.replaces);
    record.replaces.erase(repeats.begin(), repeats.end());
    return record;
}

Result<Parts> encode_record(const Record& record) {
    if (std::holds_alternative<Withdrawal>(record.content) && record.replaces.empty()) {
        return refuse("A withdrawal must name what it takes back.");
    }
    Parts parts;
    const Record written = canonical(record);
    for (const Part part : {Part::open, Part::money, Part::personal}) {
        auto& body = parts[slot_of(part)];
        if (const auto fault = encode_part(part, written, body)) {
            return refuse(fmt::format("The entry cannot be saved: {}.", fault));
        }
        if (body.size() > max_part_bytes) {
            return refuse("The entry cannot be saved: it is longer than 1 MiB. Shorten it or write it as "
                          "several entries.");
        }
    }
    return parts;
}

bool fits(const Batch& batch, const Parts& parts) {
    for (std::size_t slot = 0; slot < parts.size(); ++slot) {
        if (batch.parts[slot].size() + parts[slot].size() > max_part_bytes) return false;
    }
    return true;
}

/// Money and personal bodies that say nothing about any record are left out.
void drop_empty_parts(Batch& batch) {
    for (std::size_t slot = 1; slot < batch.parts.size(); ++slot) {
        if (all_zero(batch.parts[slot])) batch.parts[slot].clear();
    }
}

/// `walk` reads the fields of one part; `withdraws` tells, after that, whether it is a withdrawal.
template <class Walk, class Withdraws>
void read_open(Walk walk, InArchive& in, Record& record, Withdraws withdraws) {
    serialize(walk, record, 0);
    if (std::ranges::adjacent_find(record.replaces, std::ranges::greater_equal{}) != record.replaces.end()) {
        in.set_fault("the versions it replaces are not in order");
    }
    if (record.replaces.empty() && withdraws()) in.set_fault("it takes back nothing");
}

template <class Walk>
void read_closed(Walk walk, ByteView body, InArchive& in, Record& record) {
    bool there = false;
    in >> there;
    if (!there) return;
    const std::size_t from = in.at();
    serialize(walk, record, 0);
    if (all_zero(body.subspan(from, in.at() - from))) in.set_fault("an empty part is not left out");
}

void decode_one(Part part, ByteView body, InArchive& in, Record& record) {
    if (part != Part::open) return read_closed(PartIn(part, in), body, in, record);
    read_open(PartIn(part, in), in, record,
              [&] { return std::holds_alternative<Withdrawal>(record.content); });
}

Decoded decode_part(Part part, const Frame& frame, const std::function<Record&(std::size_t)>& place) {
    const ByteView body = frame.parts[slot_of(part)].body;
    InArchive in(body);
    for (std::size_t i = 0; i < frame.header.entry_count; ++i) {
        decode_one(part, body, in, place(i));
        if (i + 1 == frame.header.entry_count) in.finish();
        if (!in.ok()) return tl::unexpected<BodyFault>(BodyFault{i, in.fault()});
    }
    if (part != Part::open && all_zero(body))
        return tl::unexpected<BodyFault>(BodyFault{0, "an empty part is not left out"});
    return {};
}

/// Reads the records of a frame one after the other, all parts of each, into nothing.
class FrameCheck {
public:
    explicit FrameCheck(const Frame& frame)
        : frame_(frame)
        , in_{InArchive(frame.parts[0].body), InArchive(frame.parts[1].body),
              InArchive(frame.parts[2].body)} {}

    bool run() {
        for (std::size_t i = 0; i < frame_.header.entry_count; ++i) {
            if (!one_record()) return false;
        }
        for (std::size_t slot = 0; slot < in_.size(); ++slot) {
            if (!is_here(slot)) continue;
            in_[slot].finish();
            if (!in_[slot].ok() || (slot != slot_of(Part::open) && all_zero(frame_.parts[slot].body)))
                return false;
        }
        return true;
    }

private:
    [[nodiscard]] bool is_here(std::size_t slot) const {
        return frame_.exists(slot) && frame_.parts[slot].shown;
    }

    bool one_record() {
        static const std::size_t withdrawal = RecordContent(Withdrawal{}).index();
        auto& in = in_[slot_of(Part::open)];
        shape_.forget();
        read_open(PartCheck<Part::open>(in, shape_), in, any<Record>(),
                  [&] { return shape_.content() == withdrawal; });
        return in.ok() && closed<Part::money>() && closed<Part::personal>();
    }

    template <Part part>
    bool closed() {
        constexpr auto slot = slot_of(part);
        if (!is_here(slot)) return true;
        shape_.rewind();
        read_closed(PartCheck<part>(in_[slot], shape_), frame_.parts[slot].body, in_[slot], any<Record>());
        return in_[slot].ok();
    }

    const Frame& frame_;
    std::array<InArchive, 3> in_;
    Shape& shape_ = any<Shape>();
};

} // namespace

Result<std::vector<Batch>> encode_records(const std::vector<Record>& records) {
    std::vector<Batch> batches;
    for (const auto& record : records) {
        const auto parts = encode_record(record);
        if (!parts) return pass_on(parts.error());
        if (batches.empty() || !fits(batches.back(), *parts)) batches.emplace_back();
        auto& batch = batches.back();
        ++batch.count;
        for (std::size_t slot = 0; slot < parts->size(); ++slot)
            put_bytes(batch.parts[slot], (*parts)[slot]);
    }
    std::ranges::for_each(batches, drop_empty_parts);
    return batches;
}

Decoded decode_records_into(const Frame& frame, const std::function<Record&(std::size_t)>& place) {
    for (const Part part : {Part::open, Part::money, Part::personal}) {
        const auto slot = slot_of(part);
        if (!frame.exists(slot) || !frame.parts[slot].shown) continue;
        if (auto decoded = decode_part(part, frame, place); !decoded) return decoded;
    }
    return {};
}

tl::expected<std::vector<Record>, BodyFault> decode_records(const Frame& frame) {
    std::vector<Record> records;
    constexpr std::size_t shortest_record = 14; // an empty line of the data card
    const std::size_t at_most = frame.parts[slot_of(Part::open)].body.size() / shortest_record;
    records.reserve(std::min<std::size_t>(frame.header.entry_count, at_most));
    const auto place = [&records](std::size_t i) -> Record& {
        return i == records.size() ? records.emplace_back() : records[i];
    };
    if (const auto decoded = decode_records_into(frame, place); !decoded)
        return tl::unexpected<BodyFault>(decoded.error());
    return records;
}

bool can_be_decoded(const Frame& frame) { return FrameCheck(frame).run(); }

} // namespace sumpbook::store
