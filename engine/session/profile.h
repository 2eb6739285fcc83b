// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/procedures/procedure.h"
#include "engine/proof/proof.h"
#include "engine/session/edge.h"

/// What is on file of a machine and of what it carries. README.md beside this file describes both formats.
namespace hingepin::session {

/// What a unit's monitor shows of one quantity.
struct Shown {
  std::string quantity;  ///< as procedures name it
  std::string unit;      ///< UCUM code; it says which "ton"
  std::string step{};    ///< the last digit that it shows, as a quantity; "" if that is not known
};

using Entries = std::map<std::string, std::string, std::less<>>;

/// "hingepin-unit/1"
struct UnitProfile {
  std::string id;
  std::string block;    ///< canonical JSON, as the `unit` of a calibration job
  std::string place{};  ///< canonical JSON of `gravity` or `site`, with its key, as members of a job; or ""
  std::vector<Shown> monitor{};         ///< empty: not known
  std::vector<std::string> teaching{};  ///< variants of a teaching procedure that it offers; empty: not known
  Entries entries{};
  std::string recheck_after{};      ///< a duration, after which a scale is due again; "": never by itself
  std::string recheck_after_use{};  ///< likewise, in hours of use by its meter
  proof::Terms terms{};             ///< by what its proofs are judged; empty: by the limits of procedures
  bool practice = false;            ///< an invented machine
};

/// "hingepin-yard/1": what holds for each unit whose own profile does not say it.
struct YardProfile {
  proof::Terms terms{};
};

/// "hingepin-attachment/1"
struct AttachmentProfile {
  std::string id;
  std::string block;  ///< canonical JSON, as the `attachment` of a calibration job
  Entries entries{};
};

/// Errors: InvalidInput with file, line, column and JSON Pointer: those of readJson and JsonNode, of the
/// edge, "format-unsupported", "quantity-unknown", "unit-wrong-dimension" and others of readAnyQuantity.
[[nodiscard]] Expected<UnitProfile> readUnitProfile(std::string text, const std::string& file,
                                                    const Edge& edge);
[[nodiscard]] Expected<AttachmentProfile> readAttachmentProfile(std::string text, const std::string& file,
                                                                const Edge& edge);
[[nodiscard]] Expected<YardProfile> readYardProfile(std::string text, const std::string& file,
                                                    const Edge& edge);

/// Whether the pins of its linkage are on file.
[[nodiscard]] bool hasLinkage(const UnitProfile& unit);

/// A unit's profile with what the yard's says where the unit's says nothing; unchanged where that adds
/// nothing. A job keeps it so, and its record tells what held.
/// @param yard profile of the yard, "" where there is none. Errors: those of readJson.
[[nodiscard]] Expected<std::string> withYard(const std::string& unit, const std::string& yard);

/// The entries that a procedure asks for: those given, else the attachment's, else the unit's. One that
/// nobody gives is left to the procedure. @param given all must be entries of the procedure; beginning the
/// job says if one is not.
[[nodiscard]] Entries entriesFor(const procedures::Procedure& procedure, const UnitProfile& unit,
                                 const AttachmentProfile* attachment, const Entries& given);

}  // namespace hingepin::session
