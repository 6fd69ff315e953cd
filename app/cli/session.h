// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"
#include "app/cli/world.h"
#include "model/garage/garage.h"
#include "model/store/attachment_spot.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook::store {
class FileLayer;
class GarageFile;
class RandomSource;
struct NewAttachment;
} // namespace sumpbook::store

namespace sumpbook::cli {

/// One record to be written: what it is about, what it says and which versions it stands for.
struct Change {
    SubjectId subject;
    RecordContent content;
    std::vector<RecordName> replaces;
};

/// The garage as it was read, with every record in it.
struct OpenGarage {
    Garage garage;
    std::vector<NamedRecord> records;
    std::vector<store::AttachmentSpot> attachments;
};

/// One run of the program: the options, the garage file, and where answers go.
class Session {
public:
    Session(World world, GlobalOptions options);
    ~Session();
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;

    /// Checks the options that need it; called once before the action.
    [[nodiscard]] Result<void> prepare();

    [[nodiscard]] Date today() const { return today_; }
    [[nodiscard]] DecimalMark decimal_mark() const;
    [[nodiscard]] DateOrder date_order() const;
    [[nodiscard]] const GlobalOptions& options() const { return options_; }
    [[nodiscard]] const World& world() const { return world_; }
    [[nodiscard]] store::FileLayer& files() { return *files_; }
    [[nodiscard]] store::RandomSource& random() { return *random_; }
    /// The time put on records: the computer's clock, or one made from --sample-seed and today.
    [[nodiscard]] RecordedTime recorded_time() const;

    /// Makes a garage file that holds the settings; refused where a file stands already.
    [[nodiscard]] Result<void> create(const std::string& path, const GarageSettings& settings);
    /// Path of the garage file, refused when none was named.
    [[nodiscard]] Result<std::string> garage_path() const;
    /// Reads and verifies the garage file on first use.
    [[nodiscard]] Result<const OpenGarage*> open();
    /// The file itself, for what goes beyond today's state: its chains and fingerprints.
    [[nodiscard]] Result<store::GarageFile*> file();
    /// The file with every byte of it verified, attachments too.
    [[nodiscard]] Result<store::GarageFile*> open_in_full();
    /// The bike of -b, or the only one; else refused with the list of bikes.
    [[nodiscard]] Result<const Bike*> one_bike();
    /// The bike of -b, or all of them.
    [[nodiscard]] Result<std::vector<const Bike*>> bikes();
    /// A bike by a typed name, refused with near misses.
    [[nodiscard]] Result<const Bike*> bike_named(const std::string& name);

    /// Writes all changes as one action: all or nothing, on the disk before it returns. Returns the ids
    /// given to the records, in order. The garage is read again on next use;
    /// what was handed out before stays as it was.
    [[nodiscard]] Result<std::vector<std::string>> write(std::vector<Change> changes);
    /// The same with files that the changes name.
    [[nodiscard]] Result<std::vector<std::string>> write(std::vector<Change> changes,
                                                         const std::vector<store::NewAttachment>& files);
    [[nodiscard]] SubjectId new_subject();

    /// Asks on the terminal until the answer is yes or no, unless --yes was given; refused without a
    /// terminal, after no, and at the end of the input. `question` is a whole sentence: "Write 12 entries?".
    [[nodiscard]] Result<void> confirm(const std::string& question);

    /// The answer, as JSON, plain lines or text, whichever was asked for.
    void show(const document::Value& json, const document::Document& text);
    /// Text as it is (a CSV file, a fingerprint).
    void print(const std::string& text);
    /// A remark beside the answer, on standard error.
    void remark(const std::string& sentence);
    /// Standard output that could not be written: a problem; called once at the end.
    [[nodiscard]] Result<void> finish_output();

private:
    void tell_notices();
    /// After a failed sync: offers another place on the terminal. Returns what there is to say at the end.
    [[nodiscard]] Problem saved_elsewhere(const Problem& why);
    /// The garage is read again on next use; what was handed out stays valid.
    void set_open_aside();

    World world_;
    GlobalOptions options_;
    Date today_;
    std::unique_ptr<store::FileLayer> files_;
    std::unique_ptr<store::RandomSource> random_;
    std::unique_ptr<store::GarageFile> file_;
    std::unique_ptr<OpenGarage> open_;
    std::vector<std::unique_ptr<OpenGarage>>
        earlier_; ///< From before a write: commands still point into them.
    std::size_t notices_told_ = 0;
};

} // namespace sumpbook::cli
