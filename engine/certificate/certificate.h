// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/proof/proof.h"
#include "engine/units/ucum.h"

/// What a calibration certificate says, as values, and its renderings for people (html.h) and for programs
/// (dcc.h). What stands in it follows ISO/IEC 17025:2017, 7.8.2 and 7.8.4, as far as that applies to somebody
/// who is not accredited; it claims no accreditation.
namespace hingepin::certificate {

/// What an uncertainty is stated for.
inline constexpr double kCoverage = 0.9545;

/// A reading as it stands in the record.
struct Reading {
  std::size_t number = 0;  ///< its place among the record's events, the first is 1
  std::string what{};      ///< the words of its step, in the certificate's language
  std::string typed{};     ///< the quantity exactly as it stands in the record: "1985 kg"
  std::string how{};       ///< "typed", "monitor", "log", "live"
  std::int64_t utc_ms = 0;
  bool counts = true;  ///< false: done again later
};

/// A number of a certificate and what stands behind it.
struct Figure {
  Amount amount{0, "1", 0};                         ///< with the decimals that its uncertainty leaves
  std::optional<double> expanded_uncertainty = {};  ///< for kCoverage, in the amount's unit
  double coverage_factor = 0;                       ///< of it
  std::vector<std::size_t> readings{};              ///< numbers of the readings that it comes from
  std::string entry{};                              ///< or the entry of the job that says it
};

using proof::Verdict;
using proof::When;

/// The scale against one known mass, one truck's net, or the loader on a truck scale.
struct Result {
  Message what;        ///< "certificate-mass", "certificate-truck" and the like
  std::string pace{};  ///< "slow", "fast", "own", or "" where it isn't known
  Figure reference{};
  Figure indication{};                    ///< mean, or the sum of a truck's buckets
  Figure error{};                         ///< indication less reference
  std::optional<Figure> repeatability{};  ///< standard deviation of one indication
  std::optional<Figure> limit{};          ///< largest error that is allowed, either way
  std::optional<Verdict> verdict{};
  std::optional<Figure> probability{};  ///< of conformity, %
};

/// A number with its name: zero, linearity, hysteresis, ...
struct Characteristic {
  Message name;
  Figure figure;
};

/// Everything that one proof showed.
struct Proof {
  When when = When::AsLeft;
  std::int64_t utc_ms = 0;        ///< of its last reading
  std::vector<Result> results{};  ///< by reference
  std::vector<Characteristic> others{};
  std::optional<Verdict> verdict{};
  Message tolerance{};             ///< the scheme, in words
  Message rule{};                  ///< the decision rule
  std::vector<Message> remarks{};  ///< what the readings can't show
};

/// What the machine takes: corrected = (indication - zero) times span factor.
struct Correction {
  std::optional<Figure> span_factor{};
  std::optional<Figure> zero{};
  Message reason{};  ///< why there are none; code "" where there are
};

struct Stop {
  std::string name{};  ///< in the certificate's language
  Figure wanted{};
  Figure reached{};  ///< mean of the cycles
  std::optional<Figure> scatter{};
  std::optional<Figure> limit{};
  std::optional<Verdict> verdict{};
};

/// Something that was read and has an influence on the results.
struct Condition {
  std::string name{};  ///< in the certificate's language
  Figure figure{};
};

struct Signatory {
  std::string name{};
  std::string role{};  ///< in the certificate's language
  std::string key{};   ///< "" for a signature on the glass
  std::int64_t utc_ms = 0;
  bool sealed = false;  ///< the record itself; false: a further signature
};

/// What no record holds, and whoever issues the certificate may state.
struct Particulars {
  std::string laboratory{};  ///< who calibrated: name and address
  std::string customer{};    ///< for whom: name and address
  std::string place{};       ///< where it was done
  std::string country{};     ///< ISO 3166-1, two capital letters
  std::string references{};  ///< the certificates of the reference masses or of the truck scale
};

struct Certificate {
  std::string record{};  ///< its name, 64 hexadecimal digits; the certificate has no other number
  std::string qr_text{};
  std::string unit{};
  std::string attachment{};
  std::optional<Figure> rated_payload{};
  std::string procedure{};       ///< title and way, in the certificate's language
  std::string procedure_hash{};  ///< SHA-256 of its exact text
  std::int64_t version = 0;      ///< of the procedure
  std::string program{};         ///< with which the job was done
  std::string issued_by{};       ///< program and version that issues this
  std::int64_t begun_utc_ms = 0;
  std::int64_t ended_utc_ms = 0;
  std::int64_t issued_utc_ms = 0;
  Particulars particulars{};
  std::vector<Message> stamps{};  ///< what must be seen first: practice, given up, corrected
  std::string do_not_use{};       ///< the tag's words; "" where nothing forbids
  std::vector<Condition> conditions{};
  std::vector<Proof> proofs{};  ///< as found, then as left
  Correction correction{};
  std::vector<Stop> stops{};
  std::vector<std::string> remarks{};      ///< as typed
  std::vector<std::string> corrections{};  ///< of the record, as typed
  std::vector<Signatory> signatories{};
  std::vector<Reading> readings{};  ///< those behind its numbers, in the record's order
};

/// Every number of a certificate with its name, "as-left/2/error": for those who want to walk them all.
struct NamedFigure {
  std::string name;
  const Figure* figure;
};
[[nodiscard]] std::vector<NamedFigure> figuresOf(const Certificate& certificate);
/// What the names of a proof's numbers begin with: "as-left", of a second one "as-left-2".
[[nodiscard]] std::string nameOfProof(const Certificate& certificate, std::size_t index);

/// How a certificate is put into the words of one language.
struct Voice {
  std::string language = "en";  ///< BCP 47
  bool right_to_left = false;
  UnitSystem system = UnitSystem::Metric;
  std::function<std::string(const Message&)> say;
  std::function<std::string(const Amount&)> show;          ///< a number with its unit
  std::function<std::string(const std::string&)> asTyped;  ///< a quantity as it was typed
  std::function<std::string(std::int64_t)> time;           ///< of a clock time in ms
};

/// What every certificate states, as codes.
inline constexpr std::array kStatements = {"document-not-for-trade",      "certificate-probability-note",
                                           "certificate-traceability",    "certificate-item-only",
                                           "certificate-not-accredited",  "certificate-in-full",
                                           "certificate-particulars-note"};
/// What its uncertainties mean.
[[nodiscard]] Message aboutUncertainty();

/// Decimals of a number so that its uncertainty shows two digits (JCGM 100, 7.2.6), no more than 9.
[[nodiscard]] int decimalsFor(double uncertainty);

}  // namespace hingepin::certificate
