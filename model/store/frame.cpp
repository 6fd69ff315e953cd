// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/frame.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::string_view frame_tag = "sbframe1";
static_assert(frame_tag.size() == 8);
constexpr std::uint8_t record_bits = 1 | 2 | 4;
constexpr std::size_t parts_at = frame_unhashed_bytes + frame_header_bytes;

void put_header(Bytes& out, const FrameHeader& header) {
    put_number(out, static_cast<std::uint8_t>(header.kind));
    put_number(out, header.format);
    put_number(out, header.parts_exist);
    put_number(out, std::uint8_t{0});
    put_number(out, header.entry_count);
    put_bytes(out, header.subject.bytes);
    put_bytes(out, header.chain.bytes);
    put_number(out, header.sequence);
    put_bytes(out, header.previous);
}

FrameHeader get_header(ByteView bytes) {
    return {.kind = static_cast<FrameKind>(bytes[0]),
            .format = bytes[1],
            .parts_exist = bytes[2],
            .entry_count = get_number<std::uint32_t>(bytes, 4),
            .subject = {get_array<16>(bytes, 8)},
            .chain = {get_array<16>(bytes, 24)},
            .sequence = get_number<std::uint32_t>(bytes, 40),
            .previous = get_array<32>(bytes, 44)};
}

/// Smallest and largest length of a frame with these parts.
std::pair<std::size_t, std::size_t> length_range(const FrameStart& start) {
    std::size_t low = parts_at + seal_bytes;
    std::size_t high = low;
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if ((start.header.parts_exist & bit_of(slot)) == 0) continue;
        const bool shown = (start.parts_shown & bit_of(slot)) != 0;
        const std::size_t hash = !shown || slot == attachment_slot ? hash_bytes : 0;
        low += hash + (shown ? part_overhead_bytes : 0);
        high += hash + (shown ? part_overhead_bytes +
                                    (slot == attachment_slot ? max_attachment_bytes : max_part_bytes)
                              : 0);
    }
    return {low, high};
}

FrameFault fault_of(const FrameHeader& header) {
    if (header.kind == FrameKind::records) {
        if ((header.parts_exist & ~record_bits) != 0 || (header.parts_exist & 1U) == 0)
            return "names parts that do not exist";
        if (header.entry_count == 0) return "says that it holds no entry";
    } else if (header.kind == FrameKind::attachment) {
        if (header.parts_exist != bit_of(attachment_slot)) return "names parts that do not exist";
        if (header.entry_count != 0) return "is an attachment with entries";
    } else {
        return "is of a kind that does not exist";
    }
    if (header.format == 0) return "has an encoding that does not exist";
    if (header.sequence == 0 && !all_zero(header.previous)) return "is a first frame with one before it";
    return nullptr;
}

/// Cuts the parts out of the bytes between header and seal; false when they do not fill them exactly.
bool cut_parts(const FrameStart& start, ByteView rest, Frame& frame) {
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if (!frame.exists(slot)) continue;
        auto& part = frame.parts[slot];
        part.shown = (start.parts_shown & bit_of(slot)) != 0;
        if (!part.shown) {
            if (rest.size() < hash_bytes) return false;
            part = withheld_part(get_array<hash_bytes>(rest, 0));
            rest = rest.subspan(hash_bytes);
            continue;
        }
        if (rest.size() < part_overhead_bytes) return false;
        const std::size_t length = get_number<std::uint32_t>(rest, 0);
        if (length > max_part_bytes || length > rest.size() - part_overhead_bytes) return false;
        part.salt = get_array<salt_bytes>(rest, 4);
        part.body = rest.subspan(part_overhead_bytes, length);
        rest = rest.subspan(part_overhead_bytes + length);
    }
    return rest.empty();
}

/// `header`: its 76 bytes as they stand in the frame.
Hash256 hash_of(ByteView header, const Frame& frame) {
    std::array<std::uint8_t, frame_tag.size() + frame_header_bytes + part_slots * hash_bytes>
        hashed; // NOLINT(*-member-init): only what is filled is used
    auto end = std::ranges::copy(as_bytes(frame_tag), hashed.begin()).out;
    end = std::ranges::copy(header, end).out;
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if (frame.exists(slot)) end = std::ranges::copy(frame.parts[slot].hash, end).out;
    }
    return sha256({ByteView(hashed).first(static_cast<std::size_t>(end - hashed.begin()))});
}

/// `bytes` begins with the frame's first 84.
FrameFault seal_fault(VerifiedFrame& verified, ByteView bytes, ByteView seal) {
    verified.hash = hash_of(bytes.subspan(frame_unhashed_bytes, frame_header_bytes), verified.frame);
    if (std::ranges::equal(seal, ByteView(verified.hash).first(seal_bytes))) return nullptr;
    return "does not match its seal";
}

/// Cuts the parts out, computes their hashes and compares the seal.
FrameFault verify_parts(const FrameStart& start, ByteView bytes, VerifiedFrame& verified) {
    auto& frame = verified.frame;
    const auto rest = bytes.subspan(parts_at, bytes.size() - parts_at - seal_bytes);
    if (!cut_parts(start, rest, frame)) return "has parts that do not fill it";
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        auto& part = frame.parts[slot];
        if (frame.exists(slot) && part.shown) part.hash = part_hash(slot, part.salt, part.body);
    }
    const auto& open = frame.parts[slot_of(Part::open)];
    if (open.shown && frame.header.entry_count > open.body.size() / min_entry_bytes)
        return "says that it holds more entries than fit";
    return seal_fault(verified, bytes, bytes.last(seal_bytes));
}

} // namespace

std::uint8_t Frame::parts_shown() const {
    std::uint8_t shown = 0;
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if (exists(slot) && parts[slot].shown) shown |= bit_of(slot);
    }
    return shown;
}

std::size_t encoded_length(const VerifiedFrame& verified) {
    std::size_t length = parts_at + seal_bytes + verified.attachment_bytes;
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if (!verified.frame.exists(slot)) continue;
        const auto& part = verified.frame.parts[slot];
        if (!part.shown || slot == attachment_slot) length += hash_bytes;
        if (part.shown) length += part_overhead_bytes + part.body.size();
    }
    return length;
}

Hash256 part_hash(std::size_t slot, const Salt& salt, ByteView body) {
    const std::array<std::uint8_t, 1> number{bit_of(slot)};
    return sha256({number, salt, body});
}

Hash256 frame_hash(const Frame& frame) {
    Bytes header;
    put_header(header, frame.header);
    return hash_of(header, frame);
}

PartView shown_part(std::size_t slot, const Salt& salt, ByteView body) {
    return {.shown = true, .hash = part_hash(slot, salt, body), .salt = salt, .body = body};
}

PartView withheld_part(const Hash256& hash) { return {.shown = false, .hash = hash, .salt = {}, .body = {}}; }

Bytes encode_frame(const Frame& frame) {
    Bytes out(frame_unhashed_bytes, 0);
    put_header(out, frame.header);
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if (!frame.exists(slot)) continue;
        const auto& part = frame.parts[slot];
        if (!part.shown || slot == attachment_slot) put_bytes(out, part.hash);
        if (!part.shown) continue;
        out[4] |= bit_of(slot);
        put_number(out, static_cast<std::uint32_t>(part.body.size()));
        put_bytes(out, part.salt);
        put_bytes(out, part.body);
    }
    put_bytes(out, ByteView(frame_hash(frame)).first(seal_bytes));
    Bytes length;
    put_number(length, static_cast<std::uint32_t>(out.size()));
    std::ranges::copy(length, out.begin());
    return out;
}

tl::expected<FrameStart, FrameFault> read_frame_start(ByteView bytes) {
    const FrameStart start{.length = get_number<std::uint32_t>(bytes, 0),
                           .parts_shown = bytes[4],
                           .header = get_header(bytes.subspan(frame_unhashed_bytes))};
    if (!all_zero(bytes.subspan(5, 3)) || bytes[frame_unhashed_bytes + 3] != 0) {
        return tl::unexpected<FrameFault>("has a reserved byte that is not zero");
    }
    if (const auto fault = fault_of(start.header)) return tl::unexpected<FrameFault>(fault);
    if ((start.parts_shown & ~start.header.parts_exist) != 0) {
        return tl::unexpected<FrameFault>("shows a part that it does not have");
    }
    const auto [low, high] = length_range(start);
    if (start.length < low || start.length > high)
        return tl::unexpected<FrameFault>("has a length that cannot be");
    if (start.header.entry_count > max_part_bytes / min_entry_bytes) {
        return tl::unexpected<FrameFault>("says that it holds more entries than fit");
    }
    return start;
}

tl::expected<VerifiedFrame, FrameFault> verify_frame(const FrameStart& start, ByteView bytes) {
    // Filled in place: this runs for every frame of a file.
    tl::expected<VerifiedFrame, FrameFault> verified(tl::in_place);
    verified->frame.header = start.header;
    if (const auto fault = verify_parts(start, bytes, *verified))
        verified = tl::unexpected<FrameFault>(fault);
    return verified;
}

std::size_t attachment_head_bytes(const FrameStart& start) {
    return parts_at + hash_bytes + (start.parts_shown != 0 ? part_overhead_bytes : 0);
}

tl::expected<VerifiedFrame, FrameFault> verify_attachment(const FrameStart& start, ByteView head,
                                                          ByteView seal) {
    tl::expected<VerifiedFrame, FrameFault> verified(tl::in_place);
    verified->frame.header = start.header;
    auto& part = verified->frame.parts[attachment_slot];
    part.shown = start.parts_shown != 0;
    part.hash = get_array<hash_bytes>(head, parts_at);
    if (part.shown) {
        verified->attachment_bytes = start.length - head.size() - seal_bytes;
        if (get_number<std::uint32_t>(head, parts_at + hash_bytes) != verified->attachment_bytes) {
            return tl::unexpected<FrameFault>("has an attachment that does not fill it");
        }
        part.salt = get_array<salt_bytes>(head, parts_at + hash_bytes + 4);
    }
    if (const auto fault = seal_fault(*verified, head, seal)) verified = tl::unexpected<FrameFault>(fault);
    return verified;
}

} // namespace sumpbook::store
