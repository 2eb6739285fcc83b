// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/strict_json.h"

/// The content of a job's record (README.md), as values.
namespace hingepin::session {

struct RecordedPerson {
  std::string key{};
  std::string role{};
  std::string device{};
};

struct RecordedCheck {
  std::string kind{};
  std::vector<std::string> of{};
  std::string low{}, high{}, value{}, target{}, within{}, at_most{}, reference_entry{}, reference{};
  std::string duration{};
  std::string fit{};
  std::string gross{}, tare{}, interval{}, legal_gross{};    ///< of a truck proof
  std::vector<std::pair<std::string, std::string>> scale{};  ///< key and step
};

struct RecordedTry {
  std::string type{};
  std::string about{};
  std::string kind{};  ///< of the step
  std::string answer{};
  std::string value{};
  std::string how{};
  std::string quantity{};
  bool independent = false;
  std::vector<std::string> hashes{};
  RecordedPerson by{};
  std::int64_t utc_ms = 0;  ///< by the phone's clock
  std::string outcome{};
  bool counts = false;
  std::string result{};
  std::string reason{};
  std::string limit{};         ///< of a proof
  std::int64_t more = 0;       ///< likewise: how many readings more would decide
  std::string step{};          ///< of a survey: what disagreed, or would help most
  std::string confirmation{};  ///< of a second person on their own phone: what they sealed
  std::optional<RecordedCheck> check{};
};

struct RecordedMark {
  std::string step{};
  std::string mark{};
};

struct RecordedJob {
  std::string job{}, unit{}, unit_profile{}, attachment{}, procedure{}, procedure_hash{}, words{}, language{};
  std::string variant{}, phase{}, tag{}, failed_step{}, engine{};
  std::int64_t version = 0;
  bool practice = false;
  std::int64_t begun_utc_ms = 0;
  std::int64_t ended_utc_ms = 0;
  std::vector<std::pair<std::string, std::string>> entries{};
  std::vector<RecordedPerson> people{};
  std::vector<RecordedTry> tries{};
  std::vector<RecordedMark> marks{};
  const JsonValue* calibration = nullptr;  ///< in the content; nullptr for none
};

/// What is missing stays empty, for records of other versions. Nothing for a content that is no job's.
/// @param content outlives the result
[[nodiscard]] std::optional<RecordedJob> readRecordedJob(const JsonValue& content);

/// A quantity in SI; nothing where it is none.
[[nodiscard]] std::optional<double> siOf(std::string_view quantity);

/// The counting readings of steps before a try, as their places among the tries; those of the last round
/// where none of them counts.
[[nodiscard]] std::vector<std::size_t> readingsBefore(const RecordedJob& job, std::size_t index,
                                                      const std::vector<std::string>& steps);
/// Their values, SI.
[[nodiscard]] std::vector<double> valuesBefore(const RecordedJob& job, std::size_t index,
                                               const std::vector<std::string>& steps);

}  // namespace hingepin::session
