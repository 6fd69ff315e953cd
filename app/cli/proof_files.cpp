// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/proof_files.h"

#include "app/cli/input_file.h"
#include "model/store/time_stamp.h"

namespace sumpbook::cli {
namespace {

constexpr std::size_t largest_certificates_bytes = std::size_t{1024} * 1024;

} // namespace

tl::unexpected<Problem> in_file(Problem problem, const std::string& path) {
    problem.place.file = path;
    return pass_on(std::move(problem));
}

Result<store::Bytes> time_stamp_file(const std::string& path) {
    const auto text =
        bytes_of_input(path, store::max_time_stamp_bytes, "This is too long to be a time stamp.");
    if (!text) return pass_on(text.error());
    return store::Bytes(text->begin(), text->end());
}

Result<std::optional<std::string>> certificates_file(const std::string& path) {
    if (path.empty()) return std::optional<std::string>{};
    auto text = bytes_of_input(path, largest_certificates_bytes, "This is too long to be a certificate.");
    if (!text) return pass_on(text.error());
    if (text->find("CERTIFICATE-----") == std::string::npos)
        return refuse("There is no certificate in this file. It begins with \"-----BEGIN CERTIFICATE-----\".",
                      {.file = path});
    return std::optional<std::string>(*std::move(text));
}

} // namespace sumpbook::cli
