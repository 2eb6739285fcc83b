// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <CLI/App.hpp>
#include <CLI/Config.hpp>     // App.hpp only declares them,
#include <CLI/Formatter.hpp>  // and each App has one
#include <functional>
#include <string>

#include "engine/units/ucum.h"

/// The commands about procedures, jobs and records. Each group adds its commands to the program and says what
/// runs when one of them was asked for.
namespace hingepin::cli {

/// What all of them share.
struct Common {
  UnitSystem system = UnitSystem::Metric;
  std::string store;            ///< the folder
  std::string passphrase_file;  ///< "": from the environment
};

/// What is to be done once the command line has been read. @return the exit status
using Action = std::function<int()>;

void addProcedureCommands(CLI::App& app, const Common& common, Action& action);
void addYardCommands(CLI::App& app, const Common& common, Action& action);
void addJobCommands(CLI::App& app, const Common& common, Action& action);
void addRecordCommands(CLI::App& app, const Common& common, Action& action);
void addCertificateCommand(CLI::App& app, const Common& common, Action& action);
void addSyncCommands(CLI::App& app, const Common& common, Action& action);

}  // namespace hingepin::cli
