// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "engine/certificate/certificate.h"

namespace hingepin::certificate {

/// A certificate as a Digital Calibration Certificate, schema version 3.2.1, its quantities in D-SI 2.1.
/// Texts stand in the language of the certificate and, where that is another, in English beside it. What a
/// reading was is a quantity with the id "reading-<number>"; each result names those it comes from by refId.
/// @param english the voice for what stands beside
[[nodiscard]] std::string renderDcc(const Certificate& certificate, const Voice& voice, const Voice& english);

/// The D-SI code of a UCUM unit's SI unit, and how a value in the UCUM unit becomes one of it. Angles are in
/// degrees and temperatures in degrees Celsius, which D-SI takes beside the SI.
struct SiUnit {
  std::string_view code;  ///< "\kilogram"
  double factor = 1.0;    ///< value_si = value * factor + offset
  double offset = 0.0;
};
/// Of a unit that is not known: "\one", as it is.
[[nodiscard]] SiUnit siUnitOf(std::string_view ucum);

}  // namespace hingepin::certificate
