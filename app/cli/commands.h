// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

// One function a command, in the order of the help page. Each lives in <name>_command.cpp.
void add_new_command(CommandLine& line);
void add_bike_command(CommandLine& line);
void add_add_command(CommandLine& line);
void add_log_command(CommandLine& line);
void add_plan_command(CommandLine& line);
void add_due_command(CommandLine& line);
void add_oil_command(CommandLine& line);
void add_costs_command(CommandLine& line);
void add_faults_command(CommandLine& line);
void add_compare_command(CommandLine& line);
void add_import_command(CommandLine& line);
void add_check_command(CommandLine& line);
void add_export_command(CommandLine& line);
void add_report_command(CommandLine& line);
void add_verify_command(CommandLine& line);
void add_fingerprint_command(CommandLine& line);
void add_stamp_command(CommandLine& line);
void add_calc_command(CommandLine& line);

} // namespace sumpbook::cli
