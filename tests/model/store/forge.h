// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/action.h"
#include "model/store/fingerprint.h"
#include "model/store/scan.h"

#include <map>
#include <vector>

namespace sumpbook::store {

/// A garage file taken apart into its frames, so that it can be put together again as somebody who knows the
/// format would who wants to change the past: every hash and seal right, as far as he cares to.
class Forge final : public ScanHandler {
public:
    struct Piece {
        FrameHeader header;
        std::array<Salt, part_slots> salts{};
        std::array<Bytes, part_slots> bodies;
    };

    explicit Forge(const Bytes& file)
        : start_(file.begin(), file.begin() + file_header_bytes) {
        Window window(file, 0);
        const auto scan = scan_actions(window, file_header_bytes, 0, ScanDepth::everything, *this);
        if (scan.tail != Tail::whole || !scan.damages.empty())
            throw std::logic_error("a whole file is needed");
    }

    std::vector<Piece> frames; ///< In file order.
    std::vector<FingerprintRecord> records;

    /// Places of the frames of the longest chain: a bike's.
    [[nodiscard]] std::vector<std::size_t> longest_chain() const {
        std::map<ChainId, std::vector<std::size_t>> chains;
        for (std::size_t i = 0; i < frames.size(); ++i)
            chains[frames[i].header.chain].push_back(i);
        std::vector<std::size_t> longest;
        for (const auto& [id, places] : chains) {
            if (places.size() > longest.size()) longest = places;
        }
        return longest;
    }

    /// Another word in the note of a frame.
    void edit(std::size_t place) {
        for (auto& byte : frames[place].bodies[slot_of(Part::personal)]) {
            if (byte == 'F') byte = 'P';
        }
    }

    /// Sequence and hash of the frame before made right again in every chain.
    void relink() {
        std::map<ChainId, Hash256> last;
        std::map<ChainId, std::uint32_t> next;
        for (auto& piece : frames) {
            piece.header.sequence = next[piece.header.chain]++;
            piece.header.previous = last[piece.header.chain];
            last[piece.header.chain] = frame_hash(frame_of(piece));
        }
    }

    [[nodiscard]] Hash256 hash_of(std::size_t place) const { return frame_hash(frame_of(frames[place])); }

    /// One frame an action, then the records.
    [[nodiscard]] Bytes file() const {
        Bytes bytes = start_;
        for (const auto& piece : frames)
            put_bytes(bytes, encode_action({encode_frame(frame_of(piece))}));
        for (const auto& record : records)
            put_bytes(bytes, encode_fingerprint_action(encode_fingerprint_record(record)));
        return bytes;
    }

private:
    void frame(const VerifiedFrame& verified, std::uint64_t /*at*/) override {
        Piece piece{.header = verified.frame.header};
        for (std::size_t slot = 0; slot < part_slots; ++slot) {
            const auto& part = verified.frame.parts[slot];
            if (!verified.frame.exists(slot)) continue;
            piece.salts[slot] = part.salt;
            piece.bodies[slot].assign(part.body.begin(), part.body.end());
        }
        frames.push_back(std::move(piece));
    }
    void fingerprint_record(ByteView body) override {
        records.push_back(read_fingerprint_record(body).value());
    }
    void action_done(bool /*good*/) override {}

    [[nodiscard]] static Frame frame_of(const Piece& piece) {
        Frame frame{.header = piece.header};
        for (std::size_t slot = 0; slot < part_slots; ++slot) {
            if (frame.exists(slot))
                frame.parts[slot] = shown_part(slot, piece.salts[slot], piece.bodies[slot]);
        }
        return frame;
    }

    Bytes start_;
};

} // namespace sumpbook::store
