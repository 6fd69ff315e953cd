// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sample/garage_run.h"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>

namespace sumpbook::sample {
namespace {

namespace fs = std::filesystem;

constexpr const char* day_of_example = "2026-11-15";

std::string quoted(const std::string& text) {
    std::string out = "'";
    for (const char c : text)
        out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

/// Runs a shell command and returns its standard output; throws where it ends with anything but 0.
std::string output_of(const std::string& command) {
    std::FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) throw std::runtime_error("cannot run: " + command);
    std::string output;
    std::array<char, 65536> buffer{};
    while (const auto count = std::fread(buffer.data(), 1, buffer.size(), pipe))
        output.append(buffer.data(), count);
    if (const int status = pclose(pipe); status != 0)
        throw std::runtime_error(command + "\nended with " + std::to_string(status) + ":\n" + output);
    return output;
}

} // namespace

TemporaryFolder::TemporaryFolder() {
    std::string name = (fs::temp_directory_path() / "sumpbook-sample-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("cannot make a folder like " + name);
    path_ = name;
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code ignored; // a folder left behind is no failure of what was tested
    fs::remove_all(path_, ignored);
}

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    if (!in) throw std::runtime_error("cannot read " + file.string());
    return bytes.str();
}

void write_bytes(const fs::path& file, const std::string& bytes) {
    std::ofstream out(file, std::ios::binary);
    out << bytes;
    if (!out.flush()) throw std::runtime_error("cannot write " + file.string());
}

void copy_example(const fs::path& folder) {
    const fs::path source = fs::path(SUMPBOOK_SOURCE_DIR) / "sample_garage";
    for (const auto& entry : fs::recursive_directory_iterator(source)) {
        const auto target = folder / fs::relative(entry.path(), source);
        if (entry.is_directory()) {
            fs::create_directories(target);
        } else if (entry.path().extension() == ".csv" || entry.path().filename() == "build") {
            fs::create_directories(target.parent_path());
            fs::copy_file(entry.path(), target);
        }
    }
}

void build_garage(const fs::path& example, const fs::path& garage, const std::string& environment) {
    output_of("env SUMPBOOK=" + quoted(SUMPBOOK_PROGRAM) + " " + environment + " " +
              quoted((example / "build").string()) + " " + quoted(garage.string()) + " 2>&1");
}

std::vector<std::string> bikes_of(const fs::path& garage) {
    std::vector<std::string> names;
    const nlohmann::json list = answer(garage, "bike list");
    for (const auto& item : list.at("items"))
        names.push_back(item.at("bike").get<std::string>());
    if (names.empty()) throw std::runtime_error("the example has no bikes");
    return names;
}

nlohmann::json answer(const fs::path& garage, const std::string& command) {
    return nlohmann::json::parse(
        output_of("env -u SUMPBOOK_GARAGE XDG_STATE_HOME=" + quoted(garage.parent_path().string()) + " " +
                  quoted(SUMPBOOK_PROGRAM) + " -g " + quoted(garage.string()) + " --today " + day_of_example +
                  " --json " + command));
}

void make_locale(const fs::path& folder, const std::string& language) {
    fs::create_directories(folder);
    output_of("localedef --no-archive -i " + quoted(language) + " -f UTF-8 " +
              quoted((folder / (language + ".UTF-8")).string()) + " 2>&1");
}

} // namespace sumpbook::sample
