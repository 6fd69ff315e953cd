// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/bodies.h"

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

void decode_fields(Part part, InArchive& in, Record& record) {
    PartIn walk(part, in);
    serialize(walk, record, 0);
}

void decode_open(InArchive& in, Record& record) {
    decode_fields(Part::open, in, record);
    if (std::ranges::adjacent_find(record.replaces, std::ranges::greater_equal{}) != record.replaces.end()) {
        in.set_fault("the versions it replaces are not in order");
    }
    if (std::holds_alternative<Withdrawal>(record.content) && record.replaces.empty()) {
        in.set_fault("it takes back nothing");
    }
}

void decode_closed(Part part, ByteView body, InArchive& in, Record& record) {
    bool there = false;
    in >> there;
    if (!there) return;
    const std::size_t from = in.at();
    decode_fields(part, in, record);
    if (all_zero(body.subspan(from, in.at() - from))) in.set_fault("an empty part is not left out");
}

Decoded decode_part(Part part, const Frame& frame, std::vector<Record>& records) {
    const ByteView body = frame.parts[slot_of(part)].body;
    InArchive in(body);
    for (std::size_t i = 0; i < frame.header.entry_count; ++i) {
        if (part == Part::open) {
            decode_open(in, records.emplace_back());
        } else {
            decode_closed(part, body, in, records[i]);
        }
        if (i + 1 == frame.header.entry_count) in.finish();
        if (!in.ok()) return tl::unexpected<BodyFault>(BodyFault{i, in.fault()});
    }
    if (part != Part::open && all_zero(body))
        return tl::unexpected<BodyFault>(BodyFault{0, "an empty part is not left out"});
    return {};
}

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

tl::expected<void, BodyFault> decode_records_into(const Frame& frame, std::vector<Record>& records) {
    records.clear();
    constexpr std::size_t shortest_record = 14; // an empty line of the data card
    const std::size_t at_most = frame.parts[slot_of(Part::open)].body.size() / shortest_record;
    records.reserve(std::min<std::size_t>(frame.header.entry_count, at_most));
    for (const Part part : {Part::open, Part::money, Part::personal}) {
        const auto slot = slot_of(part);
        if (!frame.exists(slot) || !frame.parts[slot].shown) continue;
        if (auto decoded = decode_part(part, frame, records); !decoded) return decoded;
    }
    return {};
}

tl::expected<std::vector<Record>, BodyFault> decode_records(const Frame& frame) {
    std::vector<Record> records;
    if (const auto decoded = decode_records_into(frame, records); !decoded)
        return tl::unexpected<BodyFault>(decoded.error());
    return records;
}

} // namespace sumpbook::store
