// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/base/strict_json.h"
#include "engine/calibration/model.h"
#include "engine/proof/proof.h"
#include "engine/session/empty_lift.h"
#include "engine/session/linkage_table.h"
#include "engine/units/ucum.h"

namespace hingepin::cli {

/// What a terminal can show.
enum class Charset { Utf8, Ascii };

using Table = std::vector<std::vector<std::string>>;

/// Columns as wide as need be, the first `texts` of them to the left, the others to the right.
[[nodiscard]] std::string layOut(const Table& table, Charset charset, std::size_t texts = 1);

/// The text as the terminal can show it: in ASCII "deg" for the degree sign and so on, '?' for what has no
/// likeness.
[[nodiscard]] std::string in(const std::string& text, Charset charset);

/// The sentence of a message, in English.
[[nodiscard]] std::string words(const Message& message, UnitSystem system);

/// A value as people of the system read it.
[[nodiscard]] std::string shown(double value, const char* ucum, int decimals, UnitSystem system);
[[nodiscard]] std::string angle(double radians, int decimals = 1);
[[nodiscard]] std::string sensorText(double value, std::optional<calibration::SensorUnit> unit);

/// Decimals that show two significant digits of an uncertainty.
[[nodiscard]] int decimalsOf(double uncertainty);

/// What part of the whole variance each line of a budget has, 0 to 1.
[[nodiscard]] std::vector<double> varianceShares(const std::vector<statistics::Contribution>& budget);

/// "file:line:column: /json/pointer: sentence", what does not apply left out.
[[nodiscard]] std::string sayError(const Error& error, UnitSystem system);

/// A result of weighing for a person: mass, uncertainty, budget with bars, warnings.
[[nodiscard]] std::string sayWeighing(const std::string& log, const calibration::Weighing& weighing,
                                      UnitSystem system, Charset charset);

/// One line of JSON as the contract of `weigh --json` has it, with its line end.
[[nodiscard]] std::string weighingJson(const std::string& log, const calibration::Weighing& weighing,
                                       UnitSystem system);
[[nodiscard]] std::string errorJson(const std::string& log, const Error& error, UnitSystem system);

/// The same of what concerns no log.
[[nodiscard]] std::string errorJson(const Error& error, UnitSystem system);

/// What a calibration found, for a person, with a plot of the empty passes.
[[nodiscard]] std::string sayCalibration(const calibration::Job& job,
                                         const calibration::Calibration& calibration,
                                         const session::EmptyLift& empty, UnitSystem system, Charset charset);

/// Parts of the same. @param line what the pose's angles are held against; nullptr: nothing
[[nodiscard]] Table summaryTable(const calibration::Calibration& calibration, UnitSystem system);
[[nodiscard]] Table poseTable(const calibration::Job& job, const calibration::SensorLine* line);
[[nodiscard]] Table passTable(const calibration::Calibration& calibration, UnitSystem system);
[[nodiscard]] Table massTable(const calibration::Calibration& calibration, UnitSystem system);

/// What a proof says, for a person: verdicts, what to enter, what it costs, warnings.
[[nodiscard]] std::string sayProof(const proof::Proof& proof, const proof::ProofResult& result,
                                   UnitSystem system, Charset charset);

/// One line of JSON as the contract of `prove --json` has it, with its line end.
[[nodiscard]] std::string proofJson(const proof::Proof& proof, const proof::ProofResult& result,
                                    UnitSystem system);

/// Poses, moment arms and ranges as tables.
[[nodiscard]] std::string sayLinkage(const calibration::Job& job, const session::LinkageTable& table,
                                     UnitSystem system, Charset charset);

}  // namespace hingepin::cli
