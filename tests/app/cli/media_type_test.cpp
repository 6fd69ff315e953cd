// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/media_type.h"

#include "tests/catch.h"

using sumpbook::cli::media_type_of;

TEST_CASE("The ending of a name says the media type, others are bytes") {
    CHECK(media_type_of("invoice.pdf") == "application/pdf");           // RFC 8118
    CHECK(media_type_of("IMG_0001.JPG") == "image/jpeg");               // RFC 2045, ending by common use
    CHECK(media_type_of("samples.2026.csv") == "text/csv");             // RFC 7111
    CHECK(media_type_of("engine.noise") == "application/octet-stream"); // RFC 2046, 4.5.1
    CHECK(media_type_of("pdf") == "application/octet-stream");
    CHECK(media_type_of("") == "application/octet-stream");
}
