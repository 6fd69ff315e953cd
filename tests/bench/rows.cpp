// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/rows.h"

#include "model/store/action.h"
#include "model/store/bodies.h"
#include "model/store/random_source.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

namespace sumpbook::bench {
namespace {

using namespace store;

/// The ends of the three chains, one a bike.
class Chains {
public:
    [[nodiscard]] Bytes next_frame(const SubjectId& bike, const Batch& batch) {
        auto& [sequence, previous] = ends_[bike.bytes[0]];
        Frame frame;
        frame.header.entry_count = batch.count;
        frame.header.subject = bike;
        frame.header.chain.bytes.fill(bike.bytes[0]);
        frame.header.sequence = sequence++;
        frame.header.previous = previous;
        for (std::size_t slot = 0; slot < batch.parts.size(); ++slot) {
            if (batch.parts[slot].empty()) continue;
            frame.header.parts_exist |= bit_of(slot);
            frame.parts[slot] = shown_part(slot, random_.sixteen(), batch.parts[slot]);
        }
        previous = frame_hash(frame);
        return encode_frame(frame);
    }

private:
    struct End {
        std::uint32_t sequence = 0;
        Hash256 previous{};
    };
    std::array<End, 256> ends_;
    SeededRandom random_{"bench"};
};

std::vector<Bytes> frames_of(std::size_t first, std::size_t count, Chains& chains) {
    std::array<std::vector<Record>, 3> by_bike;
    for (std::size_t i = first; i < first + count; ++i) {
        const auto row = row_of(i);
        by_bike.at(static_cast<std::size_t>(row.bike)).push_back(record_of(row));
    }
    std::vector<Bytes> frames;
    for (std::size_t bike = 0; bike < by_bike.size(); ++bike) {
        if (by_bike[bike].empty()) continue;
        const auto batches = encode_records(by_bike[bike]);
        if (!batches) give_up(batches.error().sentence);
        for (const auto& one : *batches)
            frames.push_back(chains.next_frame(bike_of(row_of(bike)), one));
    }
    return frames;
}

} // namespace

Row row_of(std::size_t number) {
    const auto n = static_cast<std::int64_t>(number);
    return {.bike = n % 3,
            .recorded = 1'000'000'000 + 600 * n,
            .day = 11'000 + n % 7'000,
            .odometer = 1'000 + 7 * (n % 100'000),
            .odometer_unit = "km",
            .millilitres = 9'000 + n * 37 % 9'000,
            .volume_unit = "mL",
            .full = n % 7 == 0 ? 0 : 1,
            .missed_before = n % 50 == 0 ? 1 : 0,
            .octane = n % 2 == 0 ? std::nullopt : std::optional<std::int64_t>(95),
            .paid = 1'500 + n * 11 % 2'500,
            .currency = "EUR",
            .note = "Stop " + std::to_string(n)};
}

SubjectId bike_of(const Row& row) {
    SubjectId subject;
    subject.bytes.fill(static_cast<std::uint8_t>(row.bike + 1));
    return subject;
}

Record record_of(const Row& row) {
    Entry entry;
    entry.date = std::chrono::sys_days(std::chrono::days(row.day));
    entry.odometer = WrittenDistance{Decimal(row.odometer), DistanceUnit::km};
    entry.note = row.note;
    entry.paid = Money{row.paid, *Currency::from_code(row.currency)};
    entry.body = Fuel{.volume = WrittenVolume{Decimal(row.millilitres), VolumeUnit::ml},
                      .price = {},
                      .full = row.full == 1,
                      .missed_before = row.missed_before == 1,
                      .octane = row.octane ? std::optional(Decimal(*row.octane)) : std::nullopt,
                      .trip = {}};
    return {{row.recorded}, {}, entry};
}

std::uint64_t write_garage_file(const std::string& path, std::size_t rows, std::size_t batch) {
    std::ofstream out(path, std::ios::binary | std::ios::trunc);
    const auto put = [&out](const Bytes& bytes) {
        out.write(reinterpret_cast<const char*>(bytes.data()), // NOLINT: bytes of a stream
                  static_cast<std::streamsize>(bytes.size()));
    };
    put(encode_file_header(SubjectId{{9}}));
    Chains chains;
    for (std::size_t first = 0; first < rows; first += batch)
        put(encode_action(frames_of(first, std::min(batch, rows - first), chains)));
    out.close();
    if (!out) give_up("could not write " + path);
    return std::filesystem::file_size(path);
}

void give_up(const std::string& why) {
    std::fprintf(stderr, "bench: %s\n", why.c_str());
    std::exit(1);
}

} // namespace sumpbook::bench
