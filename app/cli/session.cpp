// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/session.h"

#include "app/cli/pasted_commands.h"
#include "app/cli/suggestions.h"
#include "model/garage/currencies.h"
#include "model/store/garage_file.h"
#include "model/store/left_out.h"
#include "model/store/named_by_run.h"
#include "model/store/posix_file_layer.h"
#include "reports/compose/left_out.h"
#include "reports/write/json.h"
#include "reports/write/text.h"

#include <algorithm>
#include <cstdio>
#include <iostream>
#include <thread>

namespace sumpbook::cli {

namespace {

std::unique_ptr<store::RandomSource> random_source(const std::optional<std::uint64_t>& seed) {
    if (seed) return std::make_unique<store::SeededRandom>("sumpbook sample " + std::to_string(*seed));
    return std::make_unique<store::SystemRandom>();
}

/// Asks again after an answer that is neither yes nor no; the end of the input is a no.
bool asked_until_answered(const std::string& question, std::istream& in) {
    std::fputs((question + " [yes/no] ").c_str(), stderr);
    for (std::string answer; std::getline(in, answer);) {
        if (answer == "yes" || answer == "y" || answer == "Y" || answer == "YES" || answer == "Yes")
            return true;
        if (answer == "no" || answer == "n" || answer == "N" || answer == "NO" || answer == "No")
            return false;
        std::fputs("Please answer yes or no. [yes/no] ", stderr);
    }
    std::fputc('\n', stderr);
    return false;
}

store::Surroundings around(store::FileLayer& files, store::RandomSource& random, const World& world) {
    return {files, random, world.state_folder, {}, std::max(1U, std::thread::hardware_concurrency())};
}

/// Asks before a version is replaced of which this file does not hold all parts.
Result<void> confirm_left_out(Session& session, const store::GarageFile& file,
                              const std::vector<Change>& changes) {
    std::vector<RecordName> replaced;
    for (const auto& change : changes) {
        if (!std::holds_alternative<Withdrawal>(change.content))
            replaced.insert(replaced.end(), change.replaces.begin(), change.replaces.end());
    }
    const auto left_out = store::left_out_of(file.index(), replaced);
    if (left_out.records.empty()) return {};
    const auto words = compose::left_out_words(left_out, file.records());
    if (session.options().yes) {
        session.remark(words);
        return {};
    }
    return session.confirm(words + " Write it all the same?");
}

} // namespace

Session::Session(World world, GlobalOptions options)
    : world_(std::move(world))
    , options_(std::move(options))
    , today_(world_.today)
    , files_(std::make_unique<store::PosixFileLayer>())
    , random_(random_source(options_.sample_seed)) {}

Session::~Session() = default;

Result<void> Session::prepare() {
    if (options_.today.empty()) return {};
    const auto day = parse_iso_date(options_.today);
    if (!day) {
        Problem problem = day.error();
        problem.place.column = "--today";
        return pass_on(problem);
    }
    today_ = *day;
    return {};
}

DecimalMark Session::decimal_mark() const {
    if (options_.decimal == "point") return DecimalMark::point;
    return options_.decimal == "comma" ? DecimalMark::comma : DecimalMark::unknown;
}

DateOrder Session::date_order() const {
    if (options_.date_order == "ymd") return DateOrder::year_month_day;
    if (options_.date_order == "dmy") return DateOrder::day_month_year;
    return options_.date_order == "mdy" ? DateOrder::month_day_year : DateOrder::unknown;
}

RecordedTime Session::recorded_time() const {
    if (!options_.sample_seed) return world_.now;
    // Noon of the day, and a second a seed: repeatable, and later commands are recorded later.
    constexpr std::int64_t seconds_a_day = 86'400;
    constexpr std::int64_t noon = 43'200;
    const auto days = std::chrono::sys_days{today_}.time_since_epoch().count();
    return {days * seconds_a_day + noon + static_cast<std::int64_t>(*options_.sample_seed % 40'000)};
}

Result<std::string> Session::garage_path() const {
    if (!options_.garage_file.empty()) return options_.garage_file;
    return fail(ProblemKind::wrong_usage,
                "Which garage? Name its file with -g FILE, or set SUMPBOOK_GARAGE. A new one is "
                "made with: sumpbook new my.sumpbook --currency EUR");
}

Result<void> Session::create(const std::string& path, const GarageSettings& settings) {
    auto made = store::GarageFile::create(around(*files_, *random_, world_), path, settings, recorded_time());
    if (!made) return pass_on(made.error());
    return {};
}

Result<store::GarageFile*> Session::file() {
    if (file_) return file_.get();
    const auto path = garage_path();
    if (!path) return pass_on(path.error());
    auto opened = store::GarageFile::open(around(*files_, *random_, world_), *path);
    if (!opened) return pass_on(opened.error());
    file_ = std::make_unique<store::GarageFile>(std::move(*opened));
    tell_notices();
    return file_.get();
}

Result<store::GarageFile*> Session::open_in_full() {
    const auto path = garage_path();
    if (!path) return pass_on(path.error());
    auto opened =
        store::GarageFile::open(around(*files_, *random_, world_), *path, store::ScanDepth::everything);
    if (!opened) return pass_on(opened.error());
    file_ = std::make_unique<store::GarageFile>(std::move(*opened));
    set_open_aside();
    notices_told_ = 0;
    tell_notices();
    return file_.get();
}

Result<const OpenGarage*> Session::open() {
    if (open_) return open_.get();
    const auto opened = file();
    if (!opened) return pass_on(opened.error());
    open_ = std::make_unique<OpenGarage>(OpenGarage{fold((*opened)->subject(), (*opened)->records()),
                                                    (*opened)->records(), (*opened)->attachments()});
    store::name_by_run(open_->garage, (*opened)->index());
    // One bike handed over by itself has none: its only currency is that of amounts to come.
    if (auto settings = settings_from_amounts(open_->garage))
        open_->garage.settings = Versioned<GarageSettings>{.name = {},
                                                           .id = {},
                                                           .recorded = {},
                                                           .earlier_ids = {},
                                                           .heads = {},
                                                           .value = *std::move(settings)};
    return open_.get();
}

Result<std::vector<std::string>> Session::write(std::vector<Change> changes) {
    return write(std::move(changes), {});
}

Result<std::vector<std::string>> Session::write(std::vector<Change> changes,
                                                const std::vector<store::NewAttachment>& files) {
    const auto opened = file();
    if (!opened) return pass_on(opened.error());
    if (auto yes = confirm_left_out(*this, **opened, changes); !yes) return pass_on(yes.error());
    std::vector<store::NewRecord> records;
    for (auto& change : changes) {
        std::ranges::sort(change.replaces);
        records.push_back(
            {change.subject, {recorded_time(), std::move(change.replaces), std::move(change.content)}});
    }
    auto ids = (*opened)->append(records, files);
    tell_notices();
    set_open_aside();
    if (!ids && (*opened)->has_unsaved()) return pass_on(saved_elsewhere(ids.error()));
    return ids;
}

Problem Session::saved_elsewhere(const Problem& why) {
    if (!world_.in_is_terminal || !world_.err_is_terminal) return why;
    constexpr const char* question =
        "Save the whole garage, with this in it, in a new file? Type its name, on "
        "another disk; an empty line leaves it: ";
    remark(why.sentence);
    std::fputs(question, stderr);
    for (std::string path; std::getline(std::cin, path) && !path.empty();) {
        const auto saved = file_->save_elsewhere(path);
        if (saved) {
            return {
                ProblemKind::io,
                "Everything is saved in " + path +
                    ", this too. Go on with that file: this one lacks it, and its disk is not to be trusted.",
                why.place};
        }
        remark(saved.error().sentence);
        std::fputs(question, stderr);
    }
    return {ProblemKind::io, "It is NOT saved.", why.place};
}

void Session::set_open_aside() {
    if (open_) earlier_.push_back(std::move(open_));
}

SubjectId Session::new_subject() { return {random_->sixteen()}; }

void Session::tell_notices() {
    const auto& notices = file_->notices();
    for (; notices_told_ < notices.size(); ++notices_told_)
        remark(notices[notices_told_]);
}

Result<const Bike*> Session::bike_named(const std::string& name) {
    const auto opened = open();
    if (!opened) return pass_on(opened.error());
    const Garage& garage = (*opened)->garage;
    if (const Bike* bike = find_bike(garage, name)) return bike;
    std::vector<std::string> known;
    std::string list;
    for (const auto& bike : garage.bikes) {
        known.push_back(bike.details.value.name);
        list += (list.empty() ? "" : ", ") + bike.details.value.name;
    }
    return refuse("There is no bike called \"" + name + "\"." + did_you_mean(name, known) +
                      (list.empty() ? " The garage has no bike yet." : " The bikes are: " + list + "."),
                  {.file = {}, .line = {}, .column = {}, .text = name});
}

Result<const Bike*> Session::one_bike() {
    if (!options_.bike.empty()) return bike_named(options_.bike);
    const auto opened = open();
    if (!opened) return pass_on(opened.error());
    const auto& bikes = (*opened)->garage.bikes;
    if (bikes.size() == 1) return &bikes.front();
    if (bikes.empty()) {
        return refuse(
            "The garage has no bike yet. Add one: sumpbook -g FILE bike add \"Old twin\" --odometer-unit km");
    }
    std::string list;
    for (const auto& bike : bikes)
        list += (list.empty() ? "" : ", ") + bike.details.value.name;
    return fail(ProblemKind::wrong_usage, "Which bike? Name it with -b. The bikes are: " + list + ".");
}

Result<std::vector<const Bike*>> Session::bikes() {
    std::vector<const Bike*> chosen;
    if (!options_.bike.empty()) {
        const auto bike = bike_named(options_.bike);
        if (!bike) return pass_on(bike.error());
        chosen.push_back(*bike);
        return chosen;
    }
    const auto opened = open();
    if (!opened) return pass_on(opened.error());
    for (const auto& bike : (*opened)->garage.bikes)
        chosen.push_back(&bike);
    return chosen;
}

Result<void> Session::confirm(const std::string& question) {
    if (options_.yes) return {};
    if (!world_.in_is_terminal || !world_.err_is_terminal) {
        return fail(ProblemKind::unconfirmed, question + " Nothing was written. Add --yes to do it.");
    }
    std::fflush(stdout);
    if (asked_until_answered(question, std::cin)) return {};
    return fail(ProblemKind::unconfirmed, "Nothing was written.");
}

void Session::show(const document::Value& json, const document::Document& text) {
    if (options_.json) return print(write::json(json));
    if (options_.plain) return print(write::plain(text));
    const bool colour = world_.out_is_terminal && !world_.wants_no_colour && !options_.no_color;
    print(write::text(with_garage(text, options_),
                      {.width = world_.terminal_width, .colour = colour, .table_width = world_.table_width}));
}

void Session::print(const std::string& text) { std::fwrite(text.data(), 1, text.size(), stdout); }

void Session::remark(const std::string& sentence) {
    std::fflush(stdout); // what was said before stands before
    std::fputs((write::printable(with_garage(sentence, options_)) + "\n").c_str(), stderr);
}

Result<void> Session::finish_output() {
    if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) return {};
    return fail(ProblemKind::io,
                "The answer could not be written out: the disk may be full or the reader gone.");
}

} // namespace sumpbook::cli
