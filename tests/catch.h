// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// The one place that knows which Catch2 is installed: 2 (Debian 12) or 3.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
