// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace sumpbook::sample {

/// A folder of its own that is gone at the end of the test.
class TemporaryFolder {
public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// All bytes of a file; throws std::runtime_error where it cannot be read.
[[nodiscard]] std::string bytes_of(const std::filesystem::path& file);
void write_bytes(const std::filesystem::path& file, const std::string& bytes);

/// Copies the source files of the example, its build script among them, into `folder`.
void copy_example(const std::filesystem::path& folder);

/// Runs the build script of `example` to make `garage`. `environment` stands in front of the command:
/// "TZ=Asia/Tokyo". Throws std::runtime_error, with what was printed, where it fails.
void build_garage(const std::filesystem::path& example, const std::filesystem::path& garage,
                  const std::string& environment = "");

/// The names of the example's bikes, as `bike list` gives them.
[[nodiscard]] std::vector<std::string> bikes_of(const std::filesystem::path& garage);

/// What a command answers as JSON on the day of the example: answer(garage, "due"). Throws
/// std::runtime_error where the command fails or its answer is no JSON.
[[nodiscard]] nlohmann::json answer(const std::filesystem::path& garage, const std::string& command);

/// Makes the locale LANGUAGE.UTF-8 in a folder, for LOCPATH; the package "locales" holds its source. Throws
/// std::runtime_error where that cannot be done.
void make_locale(const std::filesystem::path& folder, const std::string& language);

} // namespace sumpbook::sample
